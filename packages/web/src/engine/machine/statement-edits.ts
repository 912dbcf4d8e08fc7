import type { Edit } from '@soundpost/server/protocol';
import { stringify } from 'yaml';
import { hasOrigin, noOrigin, type Origin } from '../origin.ts';
import type { FieldForm, StatementForm } from './views.ts';

/**
 * The edits that state a field otherwise, and no more than those: of a value with its origin only the part that
 * changed. A value taken away is left out where it may be, and otherwise stands there as unknown.
 */
export function statementEdits(
  { path, statement: before, mayBeLeftOut }: Pick<FieldForm, 'path' | 'statement' | 'mayBeLeftOut'>,
  typed: StatementForm,
): readonly Edit[] {
  const after = { value: typed.value.trim(), status: typed.status, source: typed.source.trim() };
  if (isUnknown(after.value, mayBeLeftOut)) return unknownEdits(path, before, typed, mayBeLeftOut);
  if (after.value === before.value && after.status === before.status && after.source === before.source) return [];
  if (after.value === '') return before.value === '' ? [] : [{ path, yaml: undefined }];
  const hasOrigin = after.status !== '' || after.source !== '';
  const hadOrigin = before.status !== '' || before.source !== '';
  if (!hasOrigin) return [{ path, yaml: yamlScalar(after.value) }];
  if (!hadOrigin || isUnknown(before.value, mayBeLeftOut)) return [{ path, yaml: mapping(after) }];
  return (['value', 'status', 'source'] as const)
    .filter((key) => after[key] !== before[key])
    .map((key) => ({ path: [...path, key], yaml: after[key] === '' ? undefined : yamlScalar(after[key]) }));
}

/**
 * The edits that put another value where one stands, with the origin of the new value: what was said of the old one
 * does not pass over to it. `was` is that of the old one, where it has one.
 */
export function restatedEdits(
  path: Edit['path'],
  was: Origin | undefined,
  value: string,
  origin: Origin,
): readonly Edit[] {
  const now = value === 'unknown' ? noOrigin : origin;
  if (!hasOrigin(now)) return [{ path, yaml: stringify(value, { lineWidth: 0 }).trim() }];
  if (was === undefined || !hasOrigin(was)) return [{ path, yaml: mapping({ value, ...now }) }];
  return [
    { path: [...path, 'value'], yaml: yamlScalar(value) },
    ...(['status', 'source'] as const)
      .filter((key) => now[key] !== was[key])
      .map((key) => ({ path: [...path, key], yaml: now[key] === '' ? undefined : yamlScalar(now[key]) })),
  ];
}

/** Whether a field that holds this is not known: an empty one is, unless it may be left out. */
export function isUnknown(value: string, mayBeLeftOut: boolean): boolean {
  return value.trim() === 'unknown' || (value.trim() === '' && !mayBeLeftOut);
}

/** Why the bounds of what is not known cannot stand in the file yet. */
export function boundsWait({ low = '', high = '' }: StatementForm): string | undefined {
  return (low.trim() === '') === (high.trim() === '')
    ? undefined
    : 'Both bounds are needed, the low one and the high one.';
}

function unknownEdits(
  path: Edit['path'],
  before: StatementForm,
  typed: StatementForm,
  mayBeLeftOut: boolean,
): readonly Edit[] {
  if (boundsWait(typed) !== undefined) return [];
  const guess = (form: StatementForm) => ({
    ask: (form.ask ?? '').trim(),
    between:
      (form.low ?? '').trim() === '' ? '' : `[${yamlScalar(form.low!.trim())}, ${yamlScalar(form.high!.trim())}]`,
  });
  const now = guess(typed);
  const wasUnknown = isUnknown(before.value, mayBeLeftOut);
  const was = wasUnknown ? guess(before) : { ask: '', between: '' };
  if (wasUnknown && now.ask === was.ask && now.between === was.between) return [];
  if (now.ask === '' && now.between === '') return [{ path, yaml: 'unknown' }];
  if (was.ask === '' && was.between === '') {
    const parts = [
      'unknown: true',
      ...(now.ask === '' ? [] : [`ask: ${yamlScalar(now.ask)}`]),
      ...(now.between === '' ? [] : [`between: ${now.between}`]),
    ];
    return [{ path, yaml: `{ ${parts.join(', ')} }` }];
  }
  return [
    ...(now.ask === was.ask
      ? []
      : [{ path: [...path, 'ask'], yaml: now.ask === '' ? undefined : yamlScalar(now.ask) }]),
    ...(now.between === was.between
      ? []
      : [{ path: [...path, 'between'], yaml: now.between === '' ? undefined : now.between }]),
  ];
}

function mapping(statement: Pick<StatementForm, 'value' | 'status' | 'source'>): string {
  const parts = (['value', 'status', 'source'] as const).flatMap((key) =>
    statement[key] === '' ? [] : [`${key}: ${yamlScalar(statement[key])}`],
  );
  return `{ ${parts.join(', ')} }`;
}

/** Letters, digits and the signs of units, which YAML takes as they are inside braces too. */
const plain = /^[\p{L}\p{N}+±\u2212.][\p{L}\p{N} .+±\u2212°%/()·^-]*$/u;
/** Words that YAML takes for something else than text. */
const otherwise = /^(?:true|false|null|~|\.inf|\.nan)$/i;

/** A text as a YAML scalar: as it is where YAML reads it back as it is, otherwise in quotes. */
export function yamlScalar(text: string): string {
  return plain.test(text) && !otherwise.test(text) && !/\s$/.test(text) ? text : JSON.stringify(text);
}
