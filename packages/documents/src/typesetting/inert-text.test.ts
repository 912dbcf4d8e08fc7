import fc from 'fast-check';
import { expect, test } from 'vitest';
import { html, markupOf, named } from './html.ts';
import { cssString, cut, escaped, inert } from './inert-text.ts';

const anyText = fc.string({ unit: 'binary', maxLength: 300 });

test('law: no text keeps a sign that acts, whatever it was', () => {
  fc.assert(
    fc.property(anyText, (text) => {
      expect(inert(text)).not.toMatch(/[\p{Cc}\u061C\u200E\u200F\u202A-\u202E\u2066-\u2069\uFEFF\p{Zl}\p{Zp}\p{Cs}]/u);
    }),
  );
});

test('law: nothing that is put into a template opens or closes a tag or a quote', () => {
  fc.assert(
    fc.property(anyText, (text) => {
      const markup = markupOf(html`<p title="${text}">${text}</p>`);
      expect(markup.slice(10, -4)).not.toMatch(/<|(?<!p title=|^)"(?!>)/);
      expect(escaped(text)).not.toMatch(/[<>"']/);
    }),
  );
});

test('law: a CSS string holds no sign that could end it', () => {
  fc.assert(
    fc.property(anyText, (text) => {
      expect(cssString(text).slice(1, -1)).toMatch(/^(?:[a-zA-Z0-9]|\\[0-9a-f]{1,6} )*$/);
    }),
  );
});

test('a direction that is turned around and a script become what they are: text', () => {
  expect(markupOf(named('P\u202E103-<script>alert(1)</script>'))).toBe(
    '<bdi>P·103-&lt;script&gt;alert(1)&lt;/<wbr>script&gt;</bdi>',
  );
});

test('a tower of combining marks is cut, an accent stays', () => {
  expect(inert(`a${'\u0301'.repeat(40)}`)).toBe(`a${'\u0301'.repeat(4)}`);
  expect(inert('Pompe à eau nº 3, Förderhöhe')).toBe('Pompe à eau nº 3, Förderhöhe');
});

test('what is cut says how long it was, and no character is halved', () => {
  expect(cut('𝒜𝒜𝒜𝒜', 2)).toBe('𝒜𝒜… (4 characters in all)');
  expect(cut('short', 5)).toBe('short');
});
