import { wrapped } from './wrap.ts';

/** What a line is, so that a screen may set it off. The words alone must say the same. */
export type Tone = 'heading' | 'grave';

/** A line of text for people. */
export interface Line {
  readonly text: string;
  readonly tone?: Tone;
}

export function plainLines(texts: readonly string[]): readonly Line[] {
  return texts.map((text) => ({ text }));
}

export function heading(text: string, width: number): readonly Line[] {
  return wrapped(text, width, '  ').map((each) => ({ text: each, tone: 'heading' as const }));
}

export function grave(text: string, width: number, hanging = '  '): readonly Line[] {
  return wrapped(text, width, hanging).map((each) => ({ text: each, tone: 'grave' as const }));
}

export function paragraph(text: string, width: number, hanging = ''): readonly Line[] {
  return plainLines(wrapped(text, width, hanging));
}

/** `label   text`, the text wrapped beside its label. */
export function labelled(label: string, text: string, width: number, indent = '  ', column = 14): readonly Line[] {
  const start = `${indent}${label.padEnd(column)}`;
  const lines = wrapped(text, width - start.length);
  const space = ' '.repeat(start.length);
  return lines.map((each, index) => ({ text: ((index === 0 ? start : space) + each).trimEnd() }));
}

export function bullet(text: string, width: number, indent = '  ', mark = '-'): readonly Line[] {
  return plainLines(wrapped(`${indent}${mark} ${text}`, width, '  '));
}

export const blank: Line = { text: '' };

export function textOf(lines: readonly Line[]): string {
  return lines.map((line) => line.text).join('\n');
}
