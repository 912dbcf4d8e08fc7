import { functionWords, type Token, tokensOf } from './formula-tokens.ts';

/** A formula as it is set: what stands over what, under what, behind what. */
export type Piece =
  | { readonly is: 'letter' | 'number' | 'words' | 'sign'; readonly text: string }
  | { readonly is: 'quantity'; readonly number: string; readonly unit: string }
  | { readonly is: 'row'; readonly pieces: readonly Piece[] }
  | { readonly is: 'gap'; readonly wide: boolean }
  | { readonly is: 'fraction'; readonly over: Piece; readonly under: Piece }
  | { readonly is: 'root'; readonly of: Piece }
  | { readonly is: 'power' | 'index'; readonly of: Piece; readonly at: Piece }
  | { readonly is: 'fence'; readonly open: string; readonly close: string; readonly of: Piece };

/** The formula taken apart; undefined where it cannot be read, and then it stays the text it is. */
export function formulaPiece(formula: string): Piece | undefined {
  const tokens = tokensOf(formula);
  if (tokens === undefined || tokens.length === 0) return undefined;
  try {
    return new FormulaReader(tokens).whole();
  } catch (error) {
    if (error instanceof Unread) return undefined;
    throw error;
  }
}

/** The words behind a formula that say when it holds, `…, zero without a barrier`, apart from it: they may wrap. */
export function withoutAside(formula: string): { readonly formula: string; readonly aside: string } {
  let depth = 0;
  for (let at = 0; at < formula.length; at++) {
    if ('(['.includes(formula[at]!)) depth += 1;
    else if (')]'.includes(formula[at]!)) depth -= 1;
    else if (depth === 0 && /^[,;] [a-z]{2,} [^=]*$/.test(formula.slice(at))) {
      return { formula: formula.slice(0, at), aside: formula.slice(at) };
    }
  }
  return { formula, aside: '' };
}

/** Whether it is a sentence and no formula: `bits 14 to 28`. */
export function isSentence(formula: string): boolean {
  return !/[=+−·/^√|_]/.test(formula);
}

class Unread extends Error {}

const prefixes = '−-+±∓∂Σ∫Π√';
const separators = ',;:';
const closing: Readonly<Record<string, string>> = { '(': ')', '[': ']', '⌊': '⌋' };
/** What ends the numerator of a fraction whose line stands between spaces. */
const looser = new Set(['=', '≈', '≤', '≥', '<', '>', '+', '-', '−', '±', '∓', ',', ';', ':', '…']);

class FormulaReader {
  readonly #tokens: readonly Token[];
  #at = 0;

  constructor(tokens: readonly Token[]) {
    this.#tokens = tokens;
  }

  whole(): Piece {
    const row = this.#row(undefined);
    if (this.#next !== undefined) throw new Unread();
    return row;
  }

  get #next(): Token | undefined {
    return this.#tokens[this.#at];
  }

  #take(): Token {
    const token = this.#next;
    if (token === undefined) throw new Unread();
    this.#at += 1;
    return token;
  }

  #isOperator(text: string): boolean {
    return this.#next?.is === 'operator' && this.#next.text === text;
  }

  /** Operands and operators up to the end, or to what closes it. */
  #row(until: string | undefined): Piece {
    const pieces: Piece[] = [];
    let operand = false;
    for (let token = this.#next; token !== undefined; token = this.#next) {
      if (token.is === 'closes' || (token.is === 'bar' && until === '|' && operand)) break;
      if (operand && token.is === 'operator' && token.text === '/') {
        this.#fraction(pieces, this.#take());
      } else if (token.is === 'operator' && this.#joins(token, operand, pieces)) {
        const { text } = this.#take();
        pieces.push({ is: 'sign', text });
        if (separators.includes(text)) pieces.push({ is: 'gap', wide: true });
        operand = text === '…';
      } else {
        const before = pieces.at(-1);
        const next = this.#postfix();
        if (operand && before !== undefined) pieces.push(between(before, next, token.spaced));
        pieces.push(next);
        operand = true;
      }
    }
    if (pieces.length === 0) throw new Unread();
    return rowOf(pieces);
  }

  /** Whether a sign stands between operands; after a comma an equals sign may begin: `k = 1, = 3 mm`. */
  #joins({ text }: Token, operand: boolean, pieces: readonly Piece[]): boolean {
    if (operand) return text !== '^' && !'√Σ∫Π∂'.includes(text);
    return text === '…' || (text === '=' && pieces.at(-1)?.is === 'gap');
  }

  /** `a · b / c` divides the whole product, `a · b/c` only what touches the line. */
  #fraction(pieces: Piece[], line: Token): void {
    const loose = line.spaced;
    let start = pieces.length - 1;
    while (loose && start > 0 && !(pieces[start - 1]!.is === 'sign' && looser.has(textOf(pieces[start - 1]!)))) {
      if (pieces[start - 1]!.is === 'gap' && (pieces[start - 1] as { wide: boolean }).wide) break;
      start -= 1;
    }
    const over = rowOf(pieces.splice(start));
    const under: Piece[] = [this.#postfix()];
    while (loose && this.#startsOperand()) {
      const spaced = this.#next!.spaced;
      const next = this.#postfix();
      under.push(between(under.at(-1)!, next, spaced), next);
    }
    pieces.push({ is: 'fraction', over: bare(over), under: bare(rowOf(under)) });
  }

  #startsOperand(): boolean {
    const token = this.#next;
    if (token === undefined || token.is === 'closes' || token.is === 'bar' || token.is === 'power') return false;
    return token.is !== 'operator' || '√Σ∫Π'.includes(token.text);
  }

  #postfix(): Piece {
    let piece = this.#atom();
    for (;;) {
      if (this.#isOperator('^')) {
        this.#take();
        piece = { is: 'power', of: piece, at: bare(this.#atom()) };
      } else if (this.#next?.is === 'power' && !this.#next.spaced) {
        piece = { is: 'power', of: piece, at: { is: 'number', text: this.#take().text } };
      } else return piece;
    }
  }

  #atom(): Piece {
    const token = this.#take();
    switch (token.is) {
      case 'number':
        return token.more === undefined
          ? { is: 'number', text: token.text }
          : { is: 'quantity', number: token.text, unit: token.more.trimStart() };
      case 'opens':
        return this.#fenced(token.text, closing[token.text]!);
      case 'bar':
        return this.#fenced('|', '|');
      case 'word':
        return this.#named(token);
      case 'operator':
        if (token.text === '…') return { is: 'sign', text: token.text };
        if (!prefixes.includes(token.text)) throw new Unread();
        return this.#prefixed(token);
      default:
        throw new Unread();
    }
  }

  #prefixed(token: Token): Piece {
    if (token.text === '√') return { is: 'root', of: bare(this.#atom()) };
    const sign: Piece =
      token.more === undefined
        ? { is: 'sign', text: token.text }
        : { is: 'index', of: { is: 'sign', text: token.text }, at: indexOf(token.more) };
    return rowOf([sign, ...('Σ∫Π'.includes(token.text) ? [{ is: 'gap', wide: false } as const] : []), this.#postfix()]);
  }

  #fenced(open: string, close: string): Piece {
    const of = this.#row(close);
    const end = this.#take();
    if (end.text !== close) throw new Unread();
    return { is: 'fence', open, close, of };
  }

  /** A letter, a function with what it is of, or several words that name one thing. */
  #named(token: Token): Piece {
    const own = letter(token);
    const next = this.#next;
    if (next?.is === 'opens' && next.text === '(' && !next.spaced) {
      return rowOf([own, this.#atom()]);
    }
    if (functionWords.has(token.text) && token.more === undefined) {
      return rowOf([own, { is: 'gap', wide: false }, this.#postfix()]);
    }
    return isPlainWord(token) ? this.#phrase(token) : own;
  }

  #phrase(first: Token): Piece {
    const pieces: Piece[] = [{ is: 'words', text: first.text }];
    for (let token = this.#next; token !== undefined && this.#continues(token); token = this.#next) {
      this.#take();
      const word = isPlainWord(token) || (token.text === 'a' && this.#next?.is === 'word' && isPlainWord(this.#next));
      pieces.push({ is: 'gap', wide: true }, word ? { is: 'words', text: token.text } : letter(token));
    }
    return rowOf(pieces);
  }

  /** Whether a word goes on with this one; a letter that is computed with does not belong to the words before it. */
  #continues(token: Token): boolean {
    if (token.is !== 'word' || !token.spaced || functionWords.has(token.text)) return false;
    const after = this.#tokens[this.#at + 1];
    if (after?.is === 'opens' && !after.spaced) return false;
    if (isPlainWord(token) || after === undefined) return true;
    return after.is === 'word' || after.is === 'closes' || (after.is === 'operator' && separators.includes(after.text));
  }
}

function isPlainWord(token: Token): boolean {
  return token.more === undefined && token.text.length > 1 && !functionWords.has(token.text);
}

function letter({ text, more }: Token): Piece {
  const own: Piece = { is: 'letter', text };
  return more === undefined ? own : { is: 'index', of: own, at: indexOf(more) };
}

function indexOf(text: string): Piece {
  return { is: /^\d+$/.test(text) ? 'number' : 'letter', text };
}

function rowOf(pieces: readonly Piece[]): Piece {
  return pieces.length === 1 ? pieces[0]! : { is: 'row', pieces };
}

/** Round brackets that a line, a root or a raised place makes needless are left out. */
function bare(piece: Piece): Piece {
  return piece.is === 'fence' && piece.open === '(' ? piece.of : piece;
}

/** What stands between two operands that no sign joins. */
function between(before: Piece, next: Piece, spaced: boolean): Piece {
  const wordy = [before, next].some((each) => isWordy(each));
  return wordy ? { is: 'gap', wide: true } : spaced ? { is: 'gap', wide: false } : { is: 'sign', text: '\u2062' };
}

function isWordy(piece: Piece): boolean {
  return piece.is === 'words' || piece.is === 'quantity' || (piece.is === 'row' && piece.pieces.some(isWordy));
}

function textOf(piece: Piece): string {
  return 'text' in piece ? piece.text : '';
}
