/** What was read, what was expected there, and what the writer may have meant. */
export interface RefusalReason {
  readonly read: string;
  readonly expected: string;
  readonly suggestion?: string;
}

/** Input that cannot be read. Thrown at the door only; the reader of a file adds the place. */
export class Refusal extends Error {
  readonly reason: RefusalReason;

  constructor(reason: RefusalReason) {
    super(refusalSentence(reason));
    this.name = 'Refusal';
    this.reason = reason;
  }
}

export function refusalSentence(reason: RefusalReason): string {
  const read = reason.read === '' ? 'nothing' : `'${shortened(reason.read)}'`;
  const suggestion = reason.suggestion === undefined ? '' : ` ${reason.suggestion}`;
  return `read ${read}, expected ${reason.expected}.${suggestion}`;
}

/** Keeps a hostile or very long text from filling the screen, and its control characters from acting there. */
export function shortened(text: string, length = 80): string {
  const start = [...text.slice(0, 2 * length + 2)];
  const shown = start.slice(0, length).join('');
  const visible = shown.replace(/[\p{Cc}\p{Cf}\p{Co}\p{Cs}\p{Zl}\p{Zp}]/gu, '·');
  return start.length <= length && shown.length === text.length ? visible : `${visible}…`;
}

/** Our own invariant is broken: loud, with what is needed to reproduce it. */
export class Broken extends Error {
  constructor(invariant: string, inputs: Readonly<Record<string, unknown>> = {}) {
    super(`${invariant} (${JSON.stringify(inputs)})`);
    this.name = 'Broken';
  }
}
