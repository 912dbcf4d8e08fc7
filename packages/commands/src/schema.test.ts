import { expect, test } from 'vitest';
import { schema } from './schema.ts';
import { done, flowing, text } from './testing/house.ts';

test.each(['plant', 'catalogue', 'teds-layout'])(
  'the schema of a %s is one JSON document of the 2020-12 dialect',
  async (file) => {
    const outcome = await done(schema, { file });
    expect(outcome.exit).toBe(0);
    expect(JSON.parse(text(outcome))).toEqual(JSON.parse(JSON.stringify(outcome.json)));
    expect(outcome.json).toMatchObject({
      $schema: 'https://json-schema.org/draft/2020-12/schema',
      type: 'object',
      properties: { soundpost: { enum: [file] } },
    });
  },
);

test('another word is refused with the nearest', async () => {
  const outcome = await done(schema, { file: 'catalog' });
  expect(outcome.exit).toBe(2);
  expect(flowing(outcome)).toContain("Did you mean 'catalogue'?");
});
