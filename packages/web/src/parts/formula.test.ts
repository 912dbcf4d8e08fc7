import { calculate, workings } from '@soundpost/core';
import { describe, expect, test } from 'vitest';
import { formulaPiece, type Piece, withoutAside } from './formula-parser.ts';

interface Written {
  readonly formula: string;
}

/** Every formula of every working, with its letters and with the numbers of its example put in. */
const formulas = workings.map((working) => {
  const outputs = Object.values(working.outputs as Readonly<Record<string, Written>>).map((each) => each.formula);
  const runs = Object.values(working.inputs).every((each) => (each as { type?: string }).type !== 'file');
  const results = runs ? calculate(working, working.example).results.map((each) => each.substituted) : [];
  return { name: working.name, texts: [...outputs, ...results] };
});

/** What cannot be read and stays text. The list may only shrink. */
const stayText: readonly string[] = [];

test('every formula is read', () => {
  const unread = formulas.flatMap(({ texts }) => texts.filter((each) => formulaPiece(each) === undefined));
  expect(unread).toEqual(stayText);
});

test.each(formulas)('law: nothing of the formulas of $name is lost or put in another order', ({ texts }) => {
  for (const each of texts) {
    const piece = formulaPiece(each);
    if (piece !== undefined) expect(lettersOf(flat(piece)), each).toBe(lettersOf(each));
  }
});

describe('hand reading', () => {
  test('a line between spaces divides the product before it, one without only what touches it', () => {
    expect(outline('a · b / c')).toBe('frac[a · b|c]');
    expect(outline('a · b/c')).toBe('a · frac[b|c]');
    expect(outline('x = a + b · c / d')).toBe('x = a + frac[b · c|d]');
  });

  test('brackets that the line, the root and the raised place make needless go', () => {
    expect(outline('(a − b)/(2 · c)')).toBe('frac[a − b|2 · c]');
    expect(outline('√(a + b)')).toBe('root[a + b]');
    expect(outline('e^(−j·x)')).toBe('e^[− j · x]');
    expect(outline('(a + b)^2')).toBe('(a + b)^[2]');
  });

  test('a number keeps its unit, detector and band', () => {
    expect(outline('x = 4800 µm/√(n/(1 r/min))')).toBe('x = frac[4800⎵µm|root[frac[n|1⎵r/min]]]');
    expect(outline('20 · lg(80 m/s² pk / 8 m/s² pk)')).toBe('20 · lg (frac[80⎵m/s² pk|8⎵m/s² pk])');
    expect(outline('3,5 mm/s rms 10..1000 Hz')).toBe('3,5⎵mm/s rms 10..1000 Hz');
  });

  test('bars close the nearest open one', () => {
    expect(outline('20 · lg(|Σ w_n| / N)')).toBe('20 · lg (frac[|Σ ␣ w_[n]||N])');
  });

  test('words that name one thing stay together, and the letters in them stay letters', () => {
    expect(outline('G = 1 − the lower side of e')).toBe('G = 1 − the ␣ lower ␣ side ␣ of ␣ e');
    expect(outline('top = compliance − source drop − I · R_line')).toBe(
      'top = compliance − source ␣ drop − I · R_[line]',
    );
  });

  test('a raised number is not followed by a unit', () => {
    expect(outline('√(∫ n^2 df)')).toBe('root[∫ ␣ n^[2] ␣ df]');
  });

  test('the words behind a formula come apart from it, what is computed does not', () => {
    expect(withoutAside('V_R = I_s · R, zero without a series resistance')).toEqual({
      formula: 'V_R = I_s · R',
      aside: ', zero without a series resistance',
    });
    for (const whole of ['min(a, b)', 'u_c = √(c), c_i = ∂f/∂x_i', 'k = max(a, or the larger)']) {
      expect(withoutAside(whole)).toEqual({ formula: whole, aside: '' });
    }
  });

  test('what has no meaning in a formula is not read', () => {
    for (const text of ['', '(a', 'a)', 'a ^', '<script>', '|a', 'a · ?', '√'])
      expect(formulaPiece(text)).toBeUndefined();
  });

  test('law: no text, however deep or odd, does anything but be read or not', () => {
    for (const text of ['('.repeat(2000), 'a/'.repeat(500), '||||||', '²²²', '_x', 'a_(b', '−'.repeat(3000)]) {
      expect(() => formulaPiece(text)).not.toThrow();
    }
  });
});

function outline(text: string): string {
  const piece = formulaPiece(text);
  if (piece === undefined) throw new Error(`'${text}' is not read`);
  return told(piece);
}

function told(piece: Piece): string {
  switch (piece.is) {
    case 'row':
      return piece.pieces.map(told).join(' ').replaceAll(' \u2062 ', '');
    case 'gap':
      return '␣';
    case 'fraction':
      return `frac[${told(piece.over)}|${told(piece.under)}]`;
    case 'root':
      return `root[${told(piece.of)}]`;
    case 'power':
      return `${told(piece.of)}^[${told(piece.at)}]`;
    case 'index':
      return `${told(piece.of)}_[${told(piece.at)}]`;
    case 'fence':
      return `${piece.open}${told(piece.of)}${piece.close}`;
    case 'quantity':
      return `${piece.number}⎵${piece.unit}`;
    default:
      return piece.text;
  }
}

function flat(piece: Piece): string {
  return told(piece);
}

/** Letters, digits and units in their order, without brackets, lines and marks of setting. */
function lettersOf(text: string): string {
  return text
    .replace(/frac\[|root\[/g, '')
    .replace(/[⁰¹²³⁴⁵⁶⁷⁸⁹]/gu, (sign) => String('⁰¹²³⁴⁵⁶⁷⁸⁹'.indexOf(sign)))
    .replace(/[^\p{L}\p{Nd}%°=≤>+−·,]/gu, '');
}
