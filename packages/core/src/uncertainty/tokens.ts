import { Refusal } from '../quantity/index.ts';

/** A word of a model, with the column where it stands, counted from 1. */
export interface Token {
  readonly text: string;
  readonly column: number;
  readonly is: 'number' | 'name' | 'sign' | 'end';
}

const tokenPattern =
  /\s*(?:((?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?)|([\p{L}_][\p{L}\p{N}_]*)|([-+*/^(),\u2212\u00b7\u00d7]))/uy;
const sameSign: Readonly<Record<string, string>> = { '\u2212': '-', '\u00b7': '*', '\u00d7': '*' };

/** The words of a model from a place in its text on, closed by an end. Throws Refusal at a sign that has no meaning. */
export function tokensOf(text: string, start: number): readonly Token[] {
  const tokens: Token[] = [];
  let at = start;
  while (text.slice(at).trim() !== '') {
    tokenPattern.lastIndex = at;
    const match = tokenPattern.exec(text);
    const blank = /^\s*/.exec(text.slice(at))![0].length;
    const column = at + blank + 1;
    if (match === null) {
      const stranger = String.fromCodePoint(text.codePointAt(at + blank)!);
      throw new Refusal({
        read: text.trim(),
        expected: `numbers, names and the signs + - * / ^ ( ) , but at column ${column} stands '${stranger}'`,
        ...(stranger === '=' ? { suggestion: 'A model has one equals sign, after the name of its result.' } : {}),
      });
    }
    const [whole, number, name, sign] = match;
    if (number !== undefined) tokens.push({ is: 'number', text: number, column });
    else if (name !== undefined) tokens.push({ is: 'name', text: name, column });
    else tokens.push({ is: 'sign', text: sameSign[sign!] ?? sign!, column });
    at += whole.length;
  }
  tokens.push({ is: 'end', text: '', column: text.trimEnd().length + 1 });
  return tokens;
}
