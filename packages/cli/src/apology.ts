import { grave, type Line, pageWidth, plainLines } from '@soundpost/commands';

/** What is said when Soundpost itself is at fault: one plain sentence, and where it happened only where asked for. */
export function apology(error: unknown, debug: boolean): readonly Line[] {
  const what = error instanceof Error ? error.message : String(error);
  const sentence =
    `Soundpost itself failed here, and your input is probably not to blame: ${what}. Please report it with the command ` +
    'you gave; --debug shows where it happened.';
  const where = debug && error instanceof Error ? plainLines((error.stack ?? '').split('\n')) : [];
  return [...grave(sentence, pageWidth), ...where];
}
