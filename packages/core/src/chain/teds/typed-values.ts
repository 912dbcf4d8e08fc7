import { nearest, numberField, pointDecimals, Refusal } from '../../quantity/index.ts';
import { basicEntries, type TedsValues } from './teds.ts';
import type { Template } from './template.ts';

const numberTyped = numberField('Value of a field');

/**
 * Values of a data sheet from what was typed: numbers in the unit of their field, words as they are, `unknown` for a
 * field that is to state nothing. Throws Refusal for a name the layout does not have.
 */
export function typedValues(layout: Template, typed: Readonly<Record<string, string>>): TedsValues {
  const entries = [...basicEntries, ...layout.sections.flatMap((each) => each.entries)];
  return Object.fromEntries(
    Object.entries(typed).map(([name, text]) => {
      const each = entries.find((one) => one.name === name);
      if (each === undefined) throw strange(name, layout, entries);
      if (text === 'unknown') return [name, undefined];
      return [name, each.coding.words === true ? text : numberTyped.read(text, pointDecimals)];
    }),
  );
}

function strange(name: string, layout: Template, entries: readonly { readonly name: string }[]): Refusal {
  const names = entries.map((each) => each.name);
  const near = nearest(name, names);
  return new Refusal({
    read: name,
    expected: `a field of the basic part or of template ${layout.id}: ${names.join(', ')}`,
    ...(near === undefined ? {} : { suggestion: `Did you mean '${near}'?` }),
  });
}
