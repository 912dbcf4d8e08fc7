import { type Field, Refusal, type Showing, showNumber } from '../quantity/index.ts';
import type { DegreesOfFreedom } from './distribution/distribution.ts';

/** A number of a budget, which carries the uncertainty that says how many of its digits mean anything. */
export interface Reported {
  readonly value: number;
  readonly uncertainty: number;
  /** A label from the budget file. */
  readonly unit?: string;
}

/** A reported number as text, with `digits` significant digits of its uncertainty. Source: JCGM 100, 7.2.6. */
export function showReported(reported: Reported, digits: number, decimal: Showing['decimal'] = 'point'): string {
  const label = reported.unit === undefined ? '' : ` ${reported.unit}`;
  return `${withDigits(reported.value, reported.uncertainty, digits, decimal)}${label}`;
}

function withDigits(value: number, uncertainty: number, digits: number, decimal: Showing['decimal']): string {
  const size = Math.abs(value);
  if (!(uncertainty > 0)) return showNumber(value, 9, decimal);
  const last = Math.floor(Math.log10(uncertainty)) - digits + 1;
  if (last < -15 || last > 12 || size >= 1e15) {
    const significant = size === 0 ? digits : Math.floor(Math.log10(size)) - last + 1;
    return showNumber(value, Math.max(1, Math.min(17, significant)), decimal);
  }
  const text = value.toFixed(Math.max(0, -last)).replace(/^-(?=0\.?0*$)/, '');
  return text.replace('-', '\u2212').replace('.', decimal === 'comma' ? ',' : '.');
}

/** A field for a number of a budget; `digits` significant digits of its uncertainty are shown. */
export function reportedField(
  meaning: string,
  options: { readonly symbol: string; readonly digits: number },
): Field<Reported> {
  const expected = 'a number, with its unit as a label where it has one';
  return {
    type: 'quantity',
    meaning,
    symbol: options.symbol,
    expected,
    example: '50.000838 mm',
    schema: { type: 'string', description: meaning, examples: ['50.000838 mm'] },
    read: (raw) => {
      const text = typeof raw === 'number' ? String(raw) : raw;
      const match =
        typeof text === 'string' ? /^\s*([-+\u2212]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?)\s*(.*?)\s*$/i.exec(text) : null;
      if (match === null) throw new Refusal({ read: typeof text === 'string' ? text : '', expected });
      const value = Number(match[1]!.replace('\u2212', '-'));
      if (!Number.isFinite(value)) throw new Refusal({ read: match[1]!, expected });
      return { value, uncertainty: 0, ...(match[2] === '' ? {} : { unit: match[2]! }) };
    },
    show: (value, showing) => showReported(value, options.digits, showing?.decimal),
    json: (value) => ({ value: value.value, unit: value.unit ?? '1', shown: showReported(value, options.digits) }),
  };
}

/** A field for degrees of freedom: a number, or the word `infinite`, whose JSON value is null. */
export function degreesOfFreedomField(meaning: string, options: { readonly symbol: string }): Field<DegreesOfFreedom> {
  const expected = "degrees of freedom, 1 or more, or 'infinite'";
  const show = (value: DegreesOfFreedom, showing?: Showing) =>
    value === 'infinite' ? 'infinite' : showNumber(value, 4, showing?.decimal);
  return {
    type: 'quantity',
    meaning,
    symbol: options.symbol,
    expected,
    example: '16.7',
    schema: { type: ['number', 'string'], description: meaning },
    read: (raw) => {
      if (raw === 'infinite') return 'infinite';
      const value = typeof raw === 'number' ? raw : typeof raw === 'string' && raw.trim() !== '' ? Number(raw) : 0;
      if (!(value >= 1 && Number.isFinite(value))) throw new Refusal({ read: String(raw), expected });
      return value;
    },
    show,
    json: (value) => ({ value: value === 'infinite' ? null : value, unit: '1', shown: show(value) }),
  };
}
