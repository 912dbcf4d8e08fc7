import { type Field, Refusal, shortened } from '../../quantity/index.ts';

/** Bytes as typed, and how the digits were taken. */
export interface ByteList {
  readonly bytes: readonly number[];
  readonly notation: 'hexadecimal' | 'decimal';
  /** Whether the text could be meant only so. */
  readonly certain: boolean;
}

/** The largest memory of the kind holds 2560 bytes. */
const mostBytes = 4096;
const mostCharacters = 6 * mostBytes;
const expected =
  `at most ${mostBytes} bytes as hexadecimal pairs ('64 70 1E', '64701E') or as decimal numbers from 0 to 255 with commas ` +
  "('100, 112, 30')";

/**
 * Bytes read from text. A letter a to f, 0x, a run without gaps or nothing but pairs without a comma: hexadecimal;
 * otherwise decimal. Throws Refusal where a digit, a pair or a range does not fit.
 */
export function byteList(text: string): ByteList {
  if (text.length > mostCharacters) throw refused(text, `It has ${text.length} characters.`);
  const stranger = /[^0-9a-fA-FxX\s,;]/u.exec(text)?.[0];
  if (stranger !== undefined) throw refused(text, `'${shortened(stranger)}' is no digit.`);
  const words = text.split(/[\s,;]+/).filter((word) => word !== '');
  if (words.length === 0) throw refused(text);
  const pairsOnly = !/[,;]/.test(text) && words.every((word) => word.length === 2);
  const one = words.length === 1 && words[0]!.length > 3;
  const hexadecimal = /[a-fx]/i.test(text) || pairsOnly || one;
  const certain = /[a-fx,;]/i.test(text) || one || words.some((word) => word.length > 2);
  const bytes = hexadecimal ? words.flatMap((word) => pairs(word, text)) : words.map((word) => decimal(word, text));
  if (bytes.length > mostBytes) throw refused(text, `It has ${bytes.length} bytes.`);
  return { bytes, notation: hexadecimal ? 'hexadecimal' : 'decimal', certain };
}

function pairs(word: string, text: string): readonly number[] {
  const digits = word.replace(/^0x/i, '');
  if (!/^[0-9a-f]+$/i.test(digits)) throw refused(text, `'${shortened(word, 20)}' is no hexadecimal number.`);
  if (digits.length % 2 === 1) {
    throw refused(text, `'${shortened(word, 20)}' has ${digits.length} digits: a byte has two, so one is missing.`);
  }
  return digits.match(/../g)!.map((pair) => Number.parseInt(pair, 16));
}

function decimal(word: string, text: string): number {
  const value = Number(word);
  if (value <= 255) return value;
  throw refused(text, `'${shortened(word, 20)}' is above 255, and without a letter or 0x it is read as decimal.`);
}

function refused(text: string, suggestion?: string): Refusal {
  return new Refusal({ read: text, expected, ...(suggestion === undefined ? {} : { suggestion }) });
}

export function byteListField(meaning: string, example: string): Field<ByteList> {
  return {
    type: 'text',
    meaning,
    expected,
    example,
    schema: { type: 'string', description: meaning, maxLength: mostCharacters },
    read: (raw) => {
      if (typeof raw === 'string') return byteList(raw);
      throw new Refusal({ read: String(raw), expected });
    },
    show: ({ bytes }) => bytes.map((byte) => byte.toString(16).padStart(2, '0').toUpperCase()).join(' '),
    json: ({ bytes }) => bytes,
  };
}
