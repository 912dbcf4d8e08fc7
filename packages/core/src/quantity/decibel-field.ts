import { type Field, textOf } from './field.ts';
import { showNumber } from './format.ts';
import { parseDecibels } from './parse.ts';

/**
 * A loss, gain or margin told in decibels. The value is the number of decibels itself: it is never mixed with the
 * ratio it stands for, which a field of quantity `ratio` carries.
 */
export function decibelField(
  meaning: string,
  options: { readonly symbol?: string; readonly example?: string } = {},
): Field<number> {
  const expected = "a number of decibels, such as '1.42 dB'";
  const example = options.example ?? '1.42 dB';
  return {
    type: 'quantity',
    meaning,
    expected,
    example,
    ...(options.symbol === undefined ? {} : { symbol: options.symbol }),
    schema: { type: 'string', description: `${meaning} (${expected})`, examples: [example] },
    read: (raw, writing) => parseDecibels(textOf(raw, expected), writing),
    show: (value, showing) => `${showNumber(value, showing?.digits, showing?.decimal)} dB`,
    json: (value) => ({ value, unit: 'dB', shown: `${showNumber(value)} dB` }),
  };
}
