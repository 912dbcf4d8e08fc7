import { Refusal } from '../../quantity/index.ts';
import { dayCalled, dayNumber } from './day.ts';

/** How a value is written into a run of bits. A code that tells nothing decodes to nothing. */
export interface Coding<T extends number | string = number | string> {
  /** Whether its values are words; numbers otherwise. */
  readonly words?: true;
  decode(code: number, bits: number): T | undefined;
  /** Throws Refusal where no code stands for the value. Nothing is written as the reserved code, where there is one. */
  encode(value: T | undefined, bits: number): number;
}

/** The reserved code: every bit one, 2^n − 1. */
export function allOnes(bits: number): number {
  return 2 ** bits - 1;
}

function nearestCode(code: number, largest: number, value: number, ends: readonly [number, number]): number {
  const whole = Math.round(code);
  if (whole >= 0 && whole <= largest) return whole;
  throw new Refusal({ read: String(value), expected: `a value from ${ends[0]} to ${ends[1]}` });
}

/** ConRelRes: constant relative resolution, x = start·(1 + 2·tolerance)^code; all ones is reserved. */
export function constantRelative(start: number, tolerance: number): Coding<number> {
  const ratio = 1 + 2 * tolerance;
  const at = (code: number) => start * ratio ** code;
  return {
    decode: (code, bits) => (code === allOnes(bits) ? undefined : at(code)),
    encode: (value, bits) => {
      if (value === undefined) return allOnes(bits);
      const largest = allOnes(bits) - 1;
      const code = value > 0 ? Math.log(value / start) / Math.log(ratio) : Number.NaN;
      return nearestCode(code, largest, value, [at(0), at(largest)]);
    },
  };
}

/** ConRes: constant resolution, x = start + step·code; all ones is taken as reserved, as in ConRelRes. */
export function constantStep(start: number, step: number): Coding<number> {
  const at = (code: number) => start + step * code;
  return {
    decode: (code, bits) => (code === allOnes(bits) ? undefined : at(code)),
    encode: (value, bits) => {
      if (value === undefined) return allOnes(bits);
      const largest = allOnes(bits) - 1;
      return nearestCode((value - start) / step, largest, value, [at(0), at(largest)]);
    },
  };
}

/** A whole number of units; every code counts. */
export function counted(unit = 1): Coding<number> {
  return {
    decode: (code) => code * unit,
    encode: (value, bits) => {
      const code = value === undefined ? Number.NaN : value / unit;
      if (Number.isInteger(code) && code >= 0 && code <= allOnes(bits)) return code;
      throw new Refusal({ read: String(value ?? ''), expected: `a whole number from 0 to ${allOnes(bits)}` });
    },
  };
}

/** One of a list of words, the first as code 0. */
export function oneOf(words: readonly string[]): Coding<string> {
  return {
    words: true,
    decode: (code) => words[code],
    encode: (value) => {
      const code = words.indexOf(value ?? '');
      if (code >= 0) return code;
      throw new Refusal({ read: value ?? '', expected: `one of: ${words.join(', ')}` });
    },
  };
}

/** Chr5: letters of five bits, the first lowest; A is 1, 0 is a blank, above 26 no letter is known here: shown `?`. */
export const fiveBitLetters: Coding<string> = {
  words: true,
  decode: (code, bits) => {
    const letters = Array.from({ length: bits / 5 }, (_, k) => {
      const five = Math.floor(code / 32 ** k) % 32;
      return five === 0 ? ' ' : five <= 26 ? String.fromCharCode(64 + five) : '?';
    });
    const text = letters.join('').trimEnd();
    return text === '' ? undefined : text;
  },
  encode: (value, bits) => {
    const text = value ?? '';
    if (!/^[A-Z ]*$/.test(text) || text.length > bits / 5) {
      throw new Refusal({ read: text, expected: `at most ${bits / 5} capital letters A to Z` });
    }
    return [...text].reduce((sum, letter, k) => sum + (letter === ' ' ? 0 : letter.charCodeAt(0) - 64) * 32 ** k, 0);
  },
};

/** ASCII characters of seven or eight bits, zeros behind the last; a code that shows nothing reads as `?`. */
export function characters(width: 7 | 8): Coding<string> {
  return {
    words: true,
    decode: (code, bits) => {
      const codes = Array.from({ length: bits / width }, (_, k) => Math.floor(code / 2 ** (width * k)) % 2 ** width);
      const shown = codes.map((one) => (one === 0 ? ' ' : one >= 32 && one <= 126 ? String.fromCharCode(one) : '?'));
      const text = shown.join('').trimEnd();
      return text === '' ? undefined : text;
    },
    encode: (value, bits) => {
      const text = value ?? '';
      if (!/^[ -~]*$/.test(text) || text.length > bits / width) {
        throw new Refusal({ read: text, expected: `at most ${bits / width} ASCII characters` });
      }
      return [...text].reduce((sum, character, k) => sum + character.charCodeAt(0) * 2 ** (width * k), 0);
    },
  };
}

/** Days since 1998-01-01; all ones is reserved. */
export const daysSince1998: Coding<string> = {
  words: true,
  decode: (code, bits) => (code === allOnes(bits) ? undefined : dayCalled(dayNumber('1998-01-01') + code)),
  encode: (value, bits) => {
    if (value === undefined) return allOnes(bits);
    const code = /^\d{4}-\d{2}-\d{2}$/.test(value) ? dayNumber(value) - dayNumber('1998-01-01') : Number.NaN;
    if (code >= 0 && code < allOnes(bits) && daysSince1998.decode(code, bits) === value) return code;
    throw new Refusal({ read: value, expected: 'a date as year-month-day, from 1998-01-01 to 2177-06-05' });
  },
};

/** Single precision of IEEE 754; what is no finite number tells nothing. */
export const singlePrecision: Coding<number> = {
  decode: (code) => {
    const view = new DataView(new ArrayBuffer(4));
    view.setUint32(0, code);
    const value = view.getFloat32(0);
    return Number.isFinite(value) ? value : undefined;
  },
  encode: (value) => {
    const view = new DataView(new ArrayBuffer(4));
    view.setFloat32(0, value ?? Number.NaN);
    return view.getUint32(0);
  },
};
