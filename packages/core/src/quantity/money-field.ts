import { type Field, symbolOf, textOf } from './field.ts';
import { showNumber } from './format.ts';
import { leadingNumber } from './number.ts';
import { Refusal } from './refusal.ts';

/** An amount of money in a currency; amounts of unlike currencies are never added. */
export interface Money {
  readonly amount: number;
  /** Three letters, as ISO 4217 writes it. */
  readonly currency: string;
}

/** An amount with its currency, `320 EUR`. No rate of exchange is known here: a file keeps to one currency. */
export function moneyField(
  meaning: string,
  options: { readonly symbol?: string; readonly example?: string } = {},
): Field<Money> {
  const expected = "an amount of money with its currency, such as '320 EUR'";
  const example = options.example ?? '320 EUR';
  return {
    type: 'text',
    meaning,
    expected,
    example,
    ...symbolOf(options),
    schema: { type: 'string', description: `${meaning} (${expected})`, examples: [example] },
    read: (raw, writing) => {
      const text = textOf(raw, expected).trim();
      const { value, rest } = leadingNumber(text, expected, writing);
      const currency = rest.trim();
      if (!/^[A-Z]{3}$/.test(currency)) {
        throw new Refusal({
          read: text,
          expected,
          suggestion: currency === '' ? 'Which currency?' : 'Write the three letters of the currency after the amount.',
        });
      }
      if (value < 0) throw new Refusal({ read: text, expected: `${expected}, zero or more` });
      return { amount: value, currency };
    },
    show: (value, showing) => showMoney(value, showing?.decimal),
    json: (value) => ({ value: value.amount, unit: value.currency, shown: showMoney(value) }),
  };
}

/** To the whole unit from a hundred on, to the hundredth below: prices are known no better. */
export function showMoney({ amount, currency }: Money, decimal: 'point' | 'comma' = 'point'): string {
  const rounded = Math.abs(amount) >= 100 ? Math.round(amount) : Math.round(amount * 100) / 100;
  return `${showNumber(rounded, Math.max(4, String(Math.trunc(Math.abs(rounded))).length), decimal)} ${currency}`;
}
