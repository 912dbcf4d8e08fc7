import type { Outcome, Weight } from '@soundpost/core';
import { asMarkup, type Html, html } from './html.ts';

/**
 * Verdicts are told by word and shape, so that a copy in black and white says the same. A full square is met, a half
 * one met with a warning, a crossed one not met; a diamond is a question, a ring a remark.
 */
const paths = {
  full: '<rect x="1" y="1" width="10" height="10" fill="currentColor"/>',
  half: '<rect x="1.5" y="1.5" width="9" height="9" fill="none" stroke="currentColor"/><path d="M1.5 10.5V1.5H10.5Z" fill="currentColor"/>',
  crossed:
    '<rect x="1.5" y="1.5" width="9" height="9" fill="none" stroke="currentColor"/><path d="M1.5 1.5L10.5 10.5M10.5 1.5L1.5 10.5" stroke="currentColor" stroke-width="1.6"/>',
  diamond: '<path d="M6 0.8L11.2 6L6 11.2L0.8 6Z" fill="none" stroke="currentColor" stroke-width="1.2"/>',
  ring: '<circle cx="6" cy="6" r="4" fill="none" stroke="currentColor"/>',
} as const;

export type Shape = keyof typeof paths;

/** The shape of every word that judges. */
const shapeOf = {
  meets: 'full',
  warns: 'half',
  'cannot tell': 'diamond',
  fails: 'crossed',
  'blocks issue': 'crossed',
  question: 'diamond',
  notes: 'ring',
  proven: 'full',
  'open questions': 'diamond',
  'not proven': 'crossed',
  kept: 'full',
  unknown: 'diamond',
} as const satisfies Record<string, Shape>;

export type JudgingWord = keyof typeof shapeOf;

/** A judging word with its shape before it. */
export function sign(word: JudgingWord): Html {
  const shape = asMarkup(
    `<svg class="shape" viewBox="0 0 12 12" width="12" height="12" aria-hidden="true">${paths[shapeOf[word]]}</svg>`,
  );
  return html`<span class="sign">${shape}\u00a0${word}</span>`;
}

export function outcomeSign(outcome: Outcome): Html {
  return sign(outcome);
}

export function weightSign(weight: Weight): Html {
  return sign(weight === 'blocks-issue' ? 'blocks issue' : weight);
}
