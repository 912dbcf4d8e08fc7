import type { Edit, Journal, Saving, Step } from './protocol.ts';

/** A history as it came over the wire or out of a file; undefined where it is none. */
export function journalIn(said: unknown): Journal | undefined {
  if (!isRecord(said) || !Array.isArray(said.steps)) return undefined;
  const { steps, done } = said;
  const fits = typeof done === 'number' && Number.isInteger(done) && done >= 0 && done <= steps.length;
  return fits && steps.every(isStep) ? { steps, done } : undefined;
}

/** A save as it came over the wire; undefined where it is none. */
export function savingIn(said: unknown): Saving | undefined {
  if (!isRecord(said) || typeof said.base !== 'string' || typeof said.text !== 'string') return undefined;
  // Half a sign has no bytes of its own: what is written would not be what was said.
  if (/\p{Surrogate}/u.test(said.text)) return undefined;
  const journal = journalIn(said.journal);
  return journal === undefined ? undefined : { base: said.base, text: said.text, journal };
}

function isStep(said: unknown): said is Step {
  if (!isRecord(said) || typeof said.label !== 'string' || typeof said.at !== 'string') return false;
  return [said.edits, said.undo].every((edits) => Array.isArray(edits) && edits.every(isEdit));
}

function isEdit(said: unknown): said is Edit {
  if (!isRecord(said) || !Array.isArray(said.path) || !said.path.every(isKey)) return false;
  return (
    (said.yaml === undefined || typeof said.yaml === 'string') &&
    (said.key === undefined || typeof said.key === 'string') &&
    (said.before === undefined || isKey(said.before))
  );
}

function isKey(said: unknown): said is string | number {
  return typeof said === 'string' || (typeof said === 'number' && Number.isInteger(said) && said >= 0);
}

function isRecord(said: unknown): said is Readonly<Record<string, unknown>> {
  return typeof said === 'object' && said !== null && !Array.isArray(said);
}
