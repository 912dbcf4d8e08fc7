import { type Design, partCalled, Refusal, refusalSentence, type Writing } from '@soundpost/core';
import { pastedQuantity, saidBefore } from '@soundpost/files';
import type { FlatColumn } from './flat-table.ts';
import type { CellPlace } from './round-trip-places.ts';

/** What an edited cell is read against. */
export interface CellWriting {
  readonly design: Design;
  /** How the plant file writes numbers. */
  readonly file: Writing['decimal'];
  /** How a table of texts writes numbers; a number of a workbook is never in doubt. */
  readonly read: Writing['decimal'] | undefined;
}

/** As far as a conversion of units keeps the digits. */
function rounded(value: unknown): string {
  return JSON.stringify(value, (_, each) => (typeof each === 'number' ? each.toPrecision(10) : each));
}

/** Whether the plant file says a value already, in other words perhaps: 149 °F are 65 °C. */
export function saysTheSame(
  before: string | undefined,
  after: string,
  place: Exclude<CellPlace, { is: 'derived' }>,
  decimal: Writing['decimal'],
): boolean {
  if (before === undefined) return false;
  const scalar = /\bvalue:\s*([^,}\n]+)/.exec(before)?.[1] ?? before;
  if (scalar.trim() === after) return true;
  if (place.is === 'part' || !place.quantity || after === 'unknown') return false;
  try {
    const [was, is] = [scalar.trim(), after].map((text) => rounded(place.field.read(text, { decimal })));
    return was === is;
  } catch (error) {
    if (error instanceof Refusal) return false;
    throw error;
  }
}

export function yamlOf(
  place: Exclude<CellPlace, { is: 'derived' }>,
  edited: string,
  column: FlatColumn,
  isNumber: boolean,
  { design, read: writing, file }: CellWriting,
): { readonly text: string } | { readonly refused: string } {
  if (place.is === 'part') {
    const silent = saidBefore(edited);
    if (silent !== undefined)
      return { refused: silent.says === 'refused' ? silent.words : `'${edited}' cannot be built. Name one.` };
    const found = partCalled(design.plant.catalogue, place.shelf, edited);
    if (found.found !== undefined) return { text: yamlText(edited) };
    const near = found.nearest === undefined ? '' : ` Did you mean '${found.nearest}'?`;
    return { refused: `The catalogues have no such part among their ${place.shelf}.${near}` };
  }
  if (place.quantity) {
    const decimal = isNumber ? 'point' : writing;
    const said = pastedQuantity(edited, column.unit, place.field, decimal, file);
    if (said.says === 'refused') return { refused: said.words };
    if (said.says !== 'value') return { text: 'unknown' };
    const { ending } = place;
    return { text: yamlText(ending === undefined || /\bHz\b/.test(said.text) ? said.text : `${said.text}${ending}`) };
  }
  const silent = saidBefore(edited);
  const read = readAs(place, edited, file);
  // Among choices 'none' may be one of them; as a text it would be no value.
  if (place.field.type === 'choice' && read === undefined) return { text: yamlText(edited) };
  if (silent?.says === 'refused') return { refused: silent.words };
  if (silent?.says === 'unknown') return { text: 'unknown' };
  if (read === undefined) return { text: yamlText(edited) };
  return { refused: refusalSentence(read.reason).replace(/^./, (first) => first.toUpperCase()) };
}

/** Why a text cannot stand there; undefined where it can. */
function readAs(
  { field }: Extract<CellPlace, { is: 'stated' }>,
  text: string,
  decimal: Writing['decimal'],
): Refusal | undefined {
  try {
    field.read(text, { decimal });
    return undefined;
  } catch (error) {
    if (error instanceof Refusal) return error;
    throw error;
  }
}

/** Plain where YAML takes it for the same text, otherwise in quotes. */
function yamlText(text: string): string {
  const plain =
    /^\p{L}[\p{L}\p{N} /._+()-]*$|^\d[\d.,]* [\p{L}°%µΩ/²()0-9 .,+-]+$/u.test(text) &&
    !/^(?:true|false|null|yes|no)$/i.test(text);
  return plain ? text.trim() : JSON.stringify(text);
}
