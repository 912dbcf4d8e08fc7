import {
  type Answer,
  type Band,
  type Missing,
  type Showing,
  showBand,
  showQuantity,
  theMissing,
} from '@soundpost/core';

/** `unknown: the mass of transducer ACC-100`. */
export function missingText(missing: readonly Missing[]): string {
  if (missing.length === 0) return 'unknown';
  return `unknown: ${theMissing(missing)}`;
}

export function answerText<T>(answer: Answer<T>, show: (value: T) => string): string {
  return answer.known ? show(answer.value) : missingText(answer.missing);
}

/** In a narrow cell: the value, or a question mark that a list beside the table explains. */
export function cellText<T>(answer: Answer<T>, show: (value: T) => string): string {
  return answer.known ? show(answer.value) : '?';
}

/** A band whose ends read well: `2..1000 Hz`, `2..10 kHz`. */
export function bandText(band: Band, showing: Showing): string {
  return band.low === band.high ? showQuantity('frequency', band.low, showing) : showBand(band, showing);
}

/** `one line`, `3 lines`. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return count === 1 ? `one ${one}` : `${count} ${many}`;
}

export function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}

/** Ends a sentence that has no end yet. */
export function sentence(text: string): string {
  return /[.!?…]$/.test(text) ? text : `${text}.`;
}

/** Each missing thing once. */
export function distinctMissing(missing: readonly Missing[]): readonly Missing[] {
  return [...new Map(missing.map((each) => [`${each.of}/${each.what}`, each])).values()];
}
