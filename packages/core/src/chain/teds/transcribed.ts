import { Refusal } from '../../quantity/index.ts';
import { type CodingKind, type CodingKindName, type CodingTerms, codingKinds } from './coding-kinds.ts';
import { basicEntries } from './teds.ts';
import { type Entry, type Section, type Template, template } from './template.ts';

/** One field as a reader of the standard copied it down. */
export interface TranscribedField extends CodingTerms {
  readonly name: string;
  readonly bits: number;
  readonly coding: CodingKindName;
  /** As it stands in the copy: shown beside the value, and computed with by nobody. */
  readonly unit?: string;
  /** Stands there only where an earlier field has that code. */
  readonly onlyWhere?: { readonly field: string; readonly code: number };
}

/** The layout of a template behind its number, as a reader copied it from a licensed edition. */
export interface TranscribedLayout {
  readonly title: string;
  readonly edition: string;
  readonly templateId: number;
  readonly fields: readonly TranscribedField[];
}

/** What is to be said wherever such a layout was used. */
export const transcribedByUser = 'transcribed by the user, edition as stated';

const outsideTemplate = [...basicEntries.map(({ name }) => name), 'selector', 'template'];

/** The field as it is read and written. Throws Refusal where bits, coding and terms do not fit one another. */
export function transcribedEntry(field: TranscribedField): Entry {
  const { name, bits, coding, unit } = field;
  const kind: CodingKind = codingKinds.find((each) => each.kind === coding)!;
  const { least, most, whole } = kind.bits;
  if (outsideTemplate.includes(name)) {
    throw new Refusal({ read: name, expected: 'a name that no field before the template has' });
  }
  if (bits < least || bits > most || bits % whole !== 0) {
    const range = least === most ? `${least} bits` : `${least} to ${most} bits`;
    const multiples = whole === 1 ? '' : `, a multiple of ${whole}`;
    throw new Refusal({ read: `${bits} bits`, expected: `${range}${multiples} for the coding '${coding}'` });
  }
  const given = (['start', 'step', 'tolerance', 'words'] as const).filter((term) => field[term] !== undefined);
  for (const one of kind.asks) {
    if (given.filter((term) => one.includes(term)).length === 1) continue;
    const either = one.map((term) => `'${term}'`).join(' or ');
    throw new Refusal({
      read: given.length === 0 ? '' : given.join(', '),
      expected: `${either}${one.length > 1 ? ', one of the two,' : ''} for the coding '${coding}': ${kind.meaning}`,
    });
  }
  const strange = given.find((term) => !kind.asks.flat().includes(term));
  if (strange !== undefined) {
    throw new Refusal({ read: strange, expected: `no '${strange}' for the coding '${coding}': ${kind.meaning}` });
  }
  return { name, bits, coding: kind.of(field, bits), ...(unit === undefined ? {} : { unit }) };
}

/** Throws Refusal where the field has the name of an earlier one, or depends on what does not stand before it. */
export function checkAgainstEarlier(field: TranscribedField, earlier: readonly TranscribedField[]): void {
  if (earlier.some(({ name }) => name === field.name)) {
    throw new Refusal({ read: field.name, expected: 'each name once' });
  }
  if (field.onlyWhere === undefined) return;
  const { field: of, code } = field.onlyWhere;
  const selector = earlier.find(({ name }) => name === of);
  if (selector === undefined) {
    throw new Refusal({ read: of, expected: `the name of a field that stands before '${field.name}'` });
  }
  if (code >= 2 ** selector.bits) {
    throw new Refusal({ read: String(code), expected: `a code below ${2 ** selector.bits}: '${of}' has no other` });
  }
}

/** The template a transcribed layout amounts to. Throws Refusal where it contradicts itself. */
export function transcribedTemplate(layout: TranscribedLayout): Template {
  const sections = layout.fields.map((field, index): Section => {
    checkAgainstEarlier(field, layout.fields.slice(0, index));
    return { entries: [transcribedEntry(field)], ...(field.onlyWhere === undefined ? {} : { only: field.onlyWhere }) };
  });
  return template({
    kind: 'transcribed',
    id: layout.templateId,
    name: layout.title,
    sections,
    edges: [],
    notKnown: [],
  });
}
