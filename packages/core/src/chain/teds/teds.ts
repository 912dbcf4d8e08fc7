import { Refusal } from '../../quantity/index.ts';
import { bitsAt, bytesOf } from './bits.ts';
import { counted, fiveBitLetters } from './coding.ts';
import { type Entry, entry, type Template } from './template.ts';
import { templateKinds } from './templates/kinds.ts';

/** A field as it stands in memory; no value where its code tells nothing. */
export interface Told {
  readonly name: string;
  readonly value: number | string | undefined;
  readonly code: number;
  /** Its first bit; bit 0 is the lowest of byte 0. */
  readonly from: number;
  readonly bits: number;
  readonly unit?: string;
  /** The lowest code, which a field nobody wrote has as well. */
  readonly mayBeUnwritten: boolean;
}

/** What a transducer electronic data sheet says, and what of it is not known here. */
export interface Teds {
  readonly told: readonly Told[];
  readonly template: { readonly id: number; readonly name: string } | undefined;
  readonly notKnown: readonly string[];
  readonly bitsRead: number;
  readonly bitsLeft: number;
}

/** The basic part of IEEE 1451.4: 64 bits. */
export const basicEntries: readonly Entry[] = [
  entry('manufacturer', 14, counted()),
  entry('model', 15, counted()),
  entry('version-letter', 5, fiveBitLetters),
  entry('version-number', 6, counted()),
  entry('serial', 24, counted()),
];

const selectorEntry = entry('selector', 2, counted());
const templateEntry = entry('template', 8, counted());
/** Standard templates 25 to 39, calibration templates 40 to 42. */
const templateNumbers = { lowest: 25, highest: 42 } as const;
const standardFollows = 0;
const noneFollows = 3;

/**
 * Reads the bytes of a data sheet: basic part, selector, template. Throws Refusal where a field is cut off, and where the
 * bytes cannot be in the layout of the standard, as those of a device after draft 0.9 are not. With a layout given, its
 * template is the one to be there, and another is refused.
 */
export function tedsOf(bytes: readonly number[], given?: Template): Teds {
  const told: Told[] = [];
  let at = 0;
  const take = (each: Entry, of: string): Told => {
    if (at + each.bits > 8 * bytes.length) throw cutOff(bytes, each.name, of, at, each.bits);
    const code = bitsAt(bytes, at, each.bits);
    const value = each.coding.decode(code, each.bits);
    const mayBeUnwritten = each.lowestMayBeUnwritten === true && code === 0;
    const unit = each.unit === undefined ? {} : { unit: each.unit };
    const one: Told = { name: each.name, value, code, from: at, bits: each.bits, ...unit, mayBeUnwritten };
    told.push(one);
    at += each.bits;
    return one;
  };
  const rest = (found: Teds['template'], notKnown: readonly string[]): Teds => ({
    told,
    template: found,
    notKnown,
    bitsRead: at,
    bitsLeft: 8 * bytes.length - at,
  });

  for (const each of basicEntries) take(each, 'the basic part');
  const letter = told.find(({ name }) => name === 'version-letter')!;
  if (letter.code > 26) throw notStandard(bytes, `its version letter has code ${letter.code}`);
  if (8 * bytes.length === at)
    return rest(undefined, ['whether a template follows: the bytes end with the basic part']);
  const selector = take(selectorEntry, 'the selector').code;
  if (selector === noneFollows) return rest(undefined, []);
  if (selector !== standardFollows) return rest(undefined, [behindSelector(selector, bytes)]);
  const id = take(templateEntry, 'the template number').code;
  if (id < templateNumbers.lowest || id > templateNumbers.highest) {
    throw notStandard(bytes, `its template number would be ${id}`);
  }
  if (given !== undefined && given.id !== id) {
    throw new Refusal({
      read: `bytes of template ${id}`,
      expected: `template ${given.id}, as the layout given has it`,
      suggestion: 'Read them without that layout, or with the layout of their own template.',
    });
  }
  const layout: Template | undefined = given ?? templateKinds.find((each) => each.id === id);
  if (layout === undefined) return rest({ id, name: 'not known here' }, [`every field of template ${id}`]);
  const found = { id, name: layout.name };
  for (const { only, entries } of layout.sections) {
    if (only !== undefined && told.find(({ name }) => name === only.field)?.code !== only.code) continue;
    for (const each of entries) {
      const { code } = take(each, `template ${id}`);
      const edge = layout.edges.find(({ behind, unless }) => behind === each.name && unless !== code);
      if (edge !== undefined) return rest(found, edge.notKnown);
    }
  }
  return rest(found, layout.notKnown);
}

/** What a field says, and nothing where it says nothing. */
export function toldOf(teds: Teds, name: string): number | string | undefined {
  return teds.told.find((each) => each.name === name)?.value;
}

/** Fields by name; a field that is to tell nothing stands there as undefined. */
export type TedsValues = Readonly<Record<string, number | string | undefined>>;

/**
 * Writes a data sheet of a known template; every field must be named. Throws Refusal for a value no code stands for, for
 * a field that is not named, and where the layout is not known here.
 */
export function tedsBytes(id: number, values: TedsValues): readonly number[] {
  const layout: Template | undefined = templateKinds.find((each) => each.id === id);
  if (layout === undefined || layout.sections.length === 0) {
    throw new Refusal({ read: String(id), expected: 'a template whose layout is known here' });
  }
  return bytesInLayout(layout, values);
}

/** The same in a layout that is given. Throws Refusal for a value no code stands for, and for a field left out. */
export function bytesInLayout(layout: Template, values: TedsValues): readonly number[] {
  const runs: { name: string; code: number; bits: number }[] = [];
  const put = (each: Entry, value: number | string | undefined) => {
    runs.push({ name: each.name, code: codeOf(each, value), bits: each.bits });
  };
  const putNamed = (each: Entry) => {
    if (!Object.hasOwn(values, each.name)) {
      throw new Refusal({ read: '', expected: `'${each.name}', stated or unknown` });
    }
    put(each, values[each.name]);
  };
  for (const each of basicEntries) putNamed(each);
  put(selectorEntry, standardFollows);
  put(templateEntry, layout.id);
  for (const { only, entries } of layout.sections) {
    if (only !== undefined && runs.find(({ name }) => name === only.field)?.code !== only.code) continue;
    for (const each of entries) {
      putNamed(each);
      const edge = layout.edges.find(({ behind, unless }) => behind === each.name && unless !== runs.at(-1)!.code);
      if (edge !== undefined) {
        throw new Refusal({
          read: `${each.name}=${values[each.name]}`,
          expected: 'a data sheet whose layout is known here',
        });
      }
    }
  }
  return bytesOf(runs);
}

/** The code that stands for a value. Throws Refusal, with the name of the field, where there is none. */
function codeOf(each: Entry, value: number | string | undefined): number {
  try {
    return each.coding.encode(value as never, each.bits);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    throw new Refusal({ ...error.reason, read: `${each.name}=${value ?? 'unknown'}` });
  }
}

function cutOff(bytes: readonly number[], name: string, of: string, from: number, bits: number): Refusal {
  return new Refusal({
    read: `${bytes.length} bytes (${8 * bytes.length} bits)`,
    expected: `'${name}' of ${of} in bits ${from} to ${from + bits - 1}: the bytes are cut off before it ends`,
  });
}

/** Basic part after draft 0.9, as one public driver has it: manufacturer, model, letter, number, serial. */
const draftBits = [12, 16, 5, 6, 24] as const;

/** What the bytes would be after draft 0.9, in words; nothing where its version letter would be none. */
function afterDraft(bytes: readonly number[]): string | undefined {
  const [maker, model, letter, version] = draftBits;
  const draftLetter = bitsAt(bytes, maker + model, letter);
  if (draftLetter < 1 || draftLetter > 26) return undefined;
  const shown = `${fiveBitLetters.decode(draftLetter, letter)}${bitsAt(bytes, maker + model + letter, version)}`;
  return `manufacturer ${bitsAt(bytes, 0, maker)}, model ${bitsAt(bytes, maker, model)}, version ${shown}`;
}

/** Behind a selector nobody here knows: another template, or no data sheet of this standard at all. */
function behindSelector(selector: number, bytes: readonly number[]): string {
  const draft = afterDraft(bytes);
  const perhaps = draft === undefined ? '' : `, unless the device is laid out after draft 0.9: then it is ${draft}`;
  return `what follows selector ${selector}${perhaps}`;
}

function notStandard(bytes: readonly number[], why: string): Refusal {
  const draft = afterDraft(bytes);
  return new Refusal({
    read: bytes
      .slice(0, 10)
      .map((byte) => byte.toString(16).padStart(2, '0'))
      .join(' '),
    expected: `the layout of IEEE 1451.4:2004, and ${why}`,
    suggestion:
      draft === undefined
        ? 'Neither is it the layout of draft 0.9. Were page checksums or the head of a file left in?'
        : `Devices after draft 0.9 are laid out otherwise; as such this would be ${draft}. Their templates are not known ` +
          'here: read the data sheet on paper.',
  });
}
