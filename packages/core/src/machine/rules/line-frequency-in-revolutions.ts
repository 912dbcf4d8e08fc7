import { measured, measuredSpan, said } from '../../finding/measure.ts';
import { valueIfStated } from '../../quantity/index.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { motorTrain } from './example-trains.ts';
import { trainRule } from './train-rule.ts';

const inRevolutions = /r\/min|rpm|cpm|1\/min|min\^?-1|min⁻¹/i;
/** A converter runs a motor up to this many times its rated frequency before the number is doubted. Common practice, no source. */
const farAboveRated = 4;

export const lineFrequencyInRevolutions = trainRule({
  id: 'machine/line-frequency-in-revolutions',
  title: 'A line frequency is not a speed',
  prose:
    'The line frequency of a motor of several pole pairs is not its speed in other units: 1500 r/min is 25 Hz, and a motor of two pole pairs turns so at 50 Hz.',
  sources: [clause(tradePractice, 'r/min and Hz mixed')],
  finds: ({ train }) => {
    const { operation } = train;
    if (operation.by !== 'line' || !operation.range.known) return [];
    const { value: range, written } = operation.range;
    const values = train.elements.find((element) => element.name === operation.motor)!.sheet.values;
    const rated = 'lineFrequency' in values ? valueIfStated(values.lineFrequency) : undefined;
    const poles = 'poles' in values ? valueIfStated(values.poles) : undefined;
    const asTyped = inRevolutions.test(written);
    const asNumber = rated !== undefined && range.high > farAboveRated * rated;
    if (!asTyped && !asNumber) return [];
    // The speed that was probably meant: as typed, or the same number in r/min.
    const meant = asTyped ? range : { low: range.low / 60, high: range.high / 60 };
    const speed = measuredSpan('shaft speed', meant as typeof range);
    const line =
      poles === undefined
        ? ''
        : said`: of a motor of ${poles} poles that is about ${measuredSpan('frequency', { low: (meant.low * poles) / 2, high: (meant.high * poles) / 2 } as typeof range)}`;
    return [
      {
        weight: 'question',
        at: `${train.of}/operation`,
        found: said`a line frequency of '${written}', read as ${measuredSpan('frequency', range)}`,
        limit:
          rated === undefined ? 'a line frequency in Hz' : said`rated line frequency ${measured('frequency', rated)}`,
        because: 'Every speed and every line of the machine follows from it.',
        remedy: ['state the line frequency in Hz', 'state the speed of the shaft instead'],
        asks: said`Was a synchronous speed of ${speed} meant${line}?`,
      },
    ];
  },
  valid: motorTrain({}),
  invalid: { ...motorTrain({}), operation: { motor: 'motor', frequency: '750..1500 r/min' } },
});
