import { type Field, type Fields, fieldOf, isOptional, kebab, type Plant, Refusal } from '@soundpost/core';
import { applyEdits, yamlAt } from '@soundpost/files';
import { refusalWords, writing } from '../worked.ts';
import { kindOn } from './part-kinds.ts';
import { catalogueText, type Texts } from './shelves.ts';
import type { PartEdits, PartTyped, TypedField } from './views.ts';

/** What a filled-in form changes in the plant file, or which of its fields cannot be read. */
export function partEdits(plant: Plant, texts: Texts, typed: PartTyped): PartEdits {
  const kind = kindOn(typed.shelf, typed.kind);
  const refused: Record<string, string> = {};
  const written = new Map<string, string | undefined>();
  for (const [key, entry] of Object.entries((kind?.dataSheet ?? {}) as Fields)) {
    const field = typed.fields[kebab(key)];
    if (field === undefined) continue;
    try {
      written.set(kebab(key), yamlOf(fieldOf(entry), field));
    } catch (error) {
      refused[kebab(key)] = refusalWords(error);
    }
    if (field.text.trim() === '' && !isOptional(entry) && (field.status !== '' || field.source !== '')) {
      refused[kebab(key)] = "A value, or 'unknown'; how it is known says nothing without it.";
    }
  }
  const name = typed.name.trim();
  const doubt = typed.changes === undefined ? nameDoubt(plant, typed) : undefined;
  if (doubt !== undefined) refused.name = doubt;
  if (Object.keys(refused).length > 0) return { refused };
  const at = ['parts', typed.shelf, name];
  const fields = [...written].map(([key, yaml]) => ({ path: [key], yaml }));
  const label = `${typed.changes === undefined ? 'New entry' : 'Data sheet of'} ${name}`;
  if (typed.changes !== undefined && yamlAt(texts.text, at) !== undefined) {
    return { label, edits: fields.map(({ path, yaml }) => ({ path: [...at, ...path], yaml })) };
  }
  const before = typed.changes === undefined ? undefined : catalogueText(texts.catalogues, typed.shelf, typed.changes);
  const { text } = applyEdits(before ?? `kind: ${typed.kind}\n`, fields);
  return { label, edits: [{ path: at, yaml: text }] };
}

/** What takes an entry of the plant's own away; one of a catalogue it hid shows again. */
export function removalEdits({ text }: Texts, shelf: string, name: string): PartEdits {
  const alone = (path: readonly string[]) => {
    const { text: without } = applyEdits(text, [{ path: [...path], yaml: undefined }]);
    return (yamlAt(without, path.slice(0, -1)) ?? '').trim() === '' || yamlAt(without, path.slice(0, -1)) === '{}';
  };
  let path: readonly string[] = ['parts', shelf, name];
  while (path.length > 1 && alone(path)) path = path.slice(0, -1);
  return { label: `Own entry ${name} taken away`, edits: [{ path, yaml: undefined }] };
}

/** What a plant file may not hold: it acts on the screen and does not stand on it. */
const invisible = /[^\P{Cc}\t\n]|[\p{Cf}\p{Co}\p{Cs}\p{Zl}\p{Zp}]/u;

function checkVisible(text: string): void {
  if (invisible.test(text)) throw new Refusal({ read: text, expected: 'visible characters, tabs and line ends only' });
}

const longestName = 80;

function nameDoubt({ catalogue }: Plant, { shelf, name }: PartTyped): string | undefined {
  const trimmed = name.trim();
  if (trimmed === '' || trimmed.length > longestName || trimmed.includes('/') || invisible.test(trimmed)) {
    return `Needed: a name of at most ${longestName} visible characters, without '/'`;
  }
  return catalogue[shelf].some((each) => each.name === trimmed)
    ? `'${trimmed}' stands on this shelf already; change that entry, or take another name`
    : undefined;
}

/** A field as the file has it: the value alone, or with how and whence it is known. Throws Refusal. */
function yamlOf(field: Field<unknown>, { text, status, source }: TypedField): string | undefined {
  const trimmed = text.trim();
  if (trimmed === '') return undefined;
  for (const each of [trimmed, source]) checkVisible(each);
  const value = trimmed === 'unknown' ? 'unknown' : valueYaml(field, trimmed);
  const origin = [
    ...(status === '' ? [] : [`status: ${status}`]),
    ...(source.trim() === '' ? [] : [`source: ${scalar(source.trim(), true)}`]),
  ];
  return origin.length === 0 || trimmed === 'unknown' ? value : `{ value: ${value}, ${origin.join(', ')} }`;
}

function valueYaml(field: Field<unknown>, text: string): string {
  if (field.type === 'curve') {
    const points = text.split(/,\s+|\n/).filter((each) => each.trim() !== '');
    const pairs = points.map((each) => {
      const cut = each.indexOf(':');
      return [each.slice(0, Math.max(0, cut)).trim(), each.slice(cut + 1).trim()] as const;
    });
    field.read(Object.fromEntries(pairs), writing);
    return `{ ${pairs.map(([frequency, density]) => `${scalar(frequency, true)}: ${scalar(density, true)}`).join(', ')} }`;
  }
  field.read(text, writing);
  return scalar(text, field.type === 'text');
}

/** As it is where that reads as the same text again, otherwise in quotes. */
function scalar(text: string, word: boolean): string {
  const plain = /^[\p{L}\d±°µ+][\p{L}\d .%°µΩ/±+√·²³_()−-]*$/u.test(text) && !text.endsWith(' ');
  const other = /^(?:true|false|null|~|[-+]?[\d.]+(?:e[-+]?\d+)?|0x\p{AHex}+)$/iu.test(text);
  return plain && !(word && other) ? text : JSON.stringify(text);
}
