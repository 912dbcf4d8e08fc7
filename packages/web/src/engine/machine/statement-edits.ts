import type { Edit } from '@soundpost/server/protocol';
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
  if (after.value === before.value && after.status === before.status && after.source === before.source) return [];
  if (after.value === '') {
    if (before.value === '') return [];
    return [{ path, yaml: mayBeLeftOut ? undefined : 'unknown' }];
  }
  const hasOrigin = after.status !== '' || after.source !== '';
  const hadOrigin = before.status !== '' || before.source !== '';
  if (!hasOrigin || after.value === 'unknown') return [{ path, yaml: yamlScalar(after.value) }];
  if (!hadOrigin || before.value === '') return [{ path, yaml: mapping(after) }];
  return (['value', 'status', 'source'] as const)
    .filter((key) => after[key] !== before[key])
    .map((key) => ({ path: [...path, key], yaml: after[key] === '' ? undefined : yamlScalar(after[key]) }));
}

function mapping(statement: StatementForm): string {
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
