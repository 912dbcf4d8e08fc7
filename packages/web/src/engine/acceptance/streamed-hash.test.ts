import { createHash as ofNode } from 'node:crypto';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { createHash } from './streamed-hash.ts';

test('printed: FIPS 180-4, the example of one block', () => {
  const digest = createHash('sha256').update(new TextEncoder().encode('abc')).digest('hex');
  expect(digest).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
});

test('independent: whatever the pieces, the digest is that of the platform', () => {
  fc.assert(
    fc.property(fc.array(fc.uint8Array({ maxLength: 300 }), { maxLength: 6 }), (pieces) => {
      const [own, other] = [createHash('sha256'), ofNode('sha256')];
      for (const piece of pieces) {
        own.update(piece);
        other.update(piece);
      }
      expect(own.digest('hex')).toBe(other.digest('hex'));
    }),
  );
});
