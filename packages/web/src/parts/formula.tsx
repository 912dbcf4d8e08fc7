import '../style/formula.css';
import { createElement, type ReactNode, useEffect, useRef, useState } from 'react';
import { formulaPiece, isSentence, type Piece, withoutAside } from './formula-parser.ts';

/** A formula set as one; where it cannot be read, or is a sentence, it stands as it was typed. */
export function Formula({ text, block = false }: { readonly text: string; readonly block?: boolean }) {
  const { formula, aside } = withoutAside(text);
  const piece = isSentence(formula) ? undefined : formulaPiece(formula);
  if (piece === undefined) return <span className="formula-text">{text}</span>;
  return (
    <Line block={block}>
      {createElement('math', { className: 'formula', ...(block ? { displaystyle: 'true' } : {}) }, set(piece))}
      {aside === '' ? undefined : <span className="formula-aside">{aside}</span>}
    </Line>
  );
}

/** On a line of its own a formula wider than its place is scrolled, by key too. */
function Line({ block, children }: { readonly block: boolean; readonly children: ReactNode }) {
  const place = useRef<HTMLSpanElement>(null);
  const [wider, setWider] = useState(false);
  useEffect(() => {
    const held = place.current;
    if (!block || held === null) return;
    const watch = new ResizeObserver(() => setWider(held.scrollWidth > held.clientWidth));
    watch.observe(held);
    return () => watch.disconnect();
  }, [block]);
  return (
    <span ref={place} className={block ? 'formula-box' : 'formula-line'} tabIndex={wider ? 0 : undefined}>
      {children}
    </span>
  );
}

/** One letter of a formula: `f_o`. */
export function Letter({ text }: { readonly text: string }) {
  const piece = formulaPiece(text);
  return piece === undefined ? <i>{text}</i> : createElement('math', { className: 'formula' }, set(piece));
}

function set(piece: Piece, key?: number): ReactNode {
  const element = (tag: string, ...content: ReactNode[]) => createElement(tag, { key }, ...content);
  switch (piece.is) {
    case 'letter':
      return element('mi', piece.text);
    case 'number':
      return element('mn', piece.text);
    case 'words':
      return element('mtext', piece.text);
    case 'sign':
      return element('mo', piece.text);
    case 'quantity':
      return element('mrow', element0('mn', piece.number), element0('mtext', `${gapBefore(piece.unit)}${piece.unit}`));
    case 'gap':
      return createElement('mspace', { key, width: piece.wide ? '0.3em' : '0.17em' });
    case 'row':
      return element('mrow', ...piece.pieces.map(set));
    case 'fraction':
      return element('mfrac', set(piece.over, 0), set(piece.under, 1));
    case 'root':
      return element('msqrt', set(piece.of, 0));
    case 'power':
      return element('msup', set(piece.of, 0), set(piece.at, 1));
    case 'index':
      return element('msub', set(piece.of, 0), set(piece.at, 1));
    case 'fence':
      return element(
        'mrow',
        createElement('mo', { key: 'open', fence: 'true', stretchy: 'true' }, piece.open),
        set(piece.of, 1),
        createElement('mo', { key: 'close', fence: 'true', stretchy: 'true' }, piece.close),
      );
  }
}

function element0(tag: string, text: string): ReactNode {
  return createElement(tag, { key: tag }, text);
}

/** Degrees stand close to their number, every other unit at a distance. */
function gapBefore(unit: string): string {
  return unit === '°' ? '' : '\u00a0';
}
