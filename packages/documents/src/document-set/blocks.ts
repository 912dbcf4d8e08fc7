import type { Drawing } from '../drawing/drawing.ts';
import type { Block, BlockOf, Fact, SetDerivation } from './record.ts';

export function heading(text: string): Block {
  return { is: 'heading', text };
}

export function paragraph(text: string): Block {
  return { is: 'paragraph', text };
}

export function note(text: string): Block {
  return { is: 'note', text };
}

export function caution(text: string): Block {
  return { is: 'caution', text };
}

/** Nothing where there is nothing to list. */
export function list(entries: readonly string[]): readonly BlockOf<'list'>[] {
  return entries.length === 0 ? [] : [{ is: 'list', entries }];
}

/** Terms with their values; a term without a value is left out. */
export function facts(entries: readonly (readonly [term: string, value: string | undefined])[]): Block {
  return {
    is: 'facts',
    facts: entries.flatMap(([term, value]): readonly Fact[] => (value === undefined ? [] : [{ term, value }])),
  };
}

export function derivationBlock(derivation: SetDerivation): Block {
  return { is: 'derivation', derivation };
}

export function drawn(name: string, drawing: Drawing | undefined, caption: string): readonly Block[] {
  return drawing === undefined ? [] : [{ is: 'drawing', name, drawing, caption }];
}

/** The same, drawn each time somebody looks: whoever reads only the tables of a sheet pays for no drawing. */
export function drawnWhenSeen(name: string, draw: () => Drawing, caption: string): Block {
  return {
    is: 'drawing',
    name,
    caption,
    get drawing() {
      return draw();
    },
  };
}

/** Who signs: each with name, date and signature to be written by hand. */
export function signatures(...signed: readonly string[]): Block {
  return { is: 'signatures', signed };
}

export const preparedCheckedApproved: Block = signatures('prepared', 'checked', 'approved');
