import {
  type Field,
  pointDecimals,
  quantityField,
  Refusal,
  si,
  splitAtDetector,
  type Voltage,
} from '../../quantity/index.ts';

/** A voltage that is a peak by its meaning: reads `5 V` and `5 V peak`, refuses every other detector. */
export function peakVoltageField(meaning: string, symbol: string): Field<Voltage> {
  const plain = quantityField('voltage', meaning, { symbol, example: '5 V peak' });
  const expected = "a peak voltage, such as '5 V peak'";
  return {
    ...plain,
    expected,
    read: (raw, writing = pointDecimals) => {
      if (typeof raw !== 'string') return plain.read(raw, writing);
      const { before, detector, after } = splitAtDetector(raw);
      if (detector === undefined) return positive(plain.read(raw, writing), raw);
      if (detector !== 'peak' || after.trim() !== '') {
        throw new Refusal({
          read: raw,
          expected,
          suggestion: 'A peak is asked for; it follows from another detector only for a known waveform.',
        });
      }
      return positive(plain.read(before, writing), raw);
    },
    show: (value, showing) => `${plain.show(value, showing)} peak`,
  };

  function positive(value: number, text: string): Voltage {
    if (!(value > 0)) throw new Refusal({ read: text, expected: `${expected}, above zero` });
    return si('voltage', value);
  }
}
