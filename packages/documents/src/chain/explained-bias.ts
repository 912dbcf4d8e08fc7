import {
  clause,
  iepePractice,
  type Prediction,
  type Showing,
  showQuantity,
  type TerminalVoltage,
} from '@soundpost/core';
import { type Explain, step, typedNumber } from '../derivation/explained.ts';

/** A stretch of voltages of the output: where it stands, or how far it may swing. */
export interface BiasStretch {
  readonly of: 'bias' | 'swing up' | 'swing down' | 'lost in line and source';
  readonly low: number;
  readonly high: number;
}

/** Where the output of a constant-current transducer stands and how far it may swing, as numbers. */
export function biasStretches({ bias, chain }: Prediction): readonly BiasStretch[] {
  const { biased } = chain.transducer;
  if (bias?.known !== true || biased?.saturation.known !== true || chain.fedBy?.compliance.known !== true) return [];
  const { low, high, swing } = bias.value;
  return [
    { of: 'lost in line and source', low: high + swing.top, high: chain.fedBy.compliance.value },
    { of: 'swing up', low: high, high: high + swing.top },
    { of: 'bias', low, high },
    { of: 'swing down', low: low - swing.bottom, high: low },
  ];
}

export function explainedStretch(
  prediction: Prediction,
  { of, low: from, high: to }: BiasStretch,
  showing: Showing,
): Explain | undefined {
  const { bias, chain } = prediction;
  const { biased } = chain.transducer;
  const { fedBy } = chain;
  if (
    bias?.known !== true ||
    biased?.saturation.known !== true ||
    fedBy?.compliance.known !== true ||
    !fedBy.drop.known
  )
    return undefined;
  const { low, high, lineDrop, swing } = bias.value;
  const volts = (value: number) => showQuantity('voltage', value, { ...showing, digits: 6 });
  const [compliance, drop, saturation] = [fedBy.compliance.value, fedBy.drop.value, biased.saturation.value];
  const numbers = [
    { name: 'compliance', shown: volts(compliance) },
    { name: 'source keeps', shown: volts(drop) },
    { name: 'line keeps', shown: volts(lineDrop) },
    { name: 'bias', shown: `${volts(low)} to ${volts(high)}` },
    { name: 'saturation', shown: volts(saturation) },
    { name: 'from', shown: volts(from) },
    { name: 'to', shown: volts(to) },
  ];
  const sources = [clause(iepePractice)];
  if (of === 'bias') {
    const { sheet } = chain.parts.transducer;
    const entry = (sheet.values as Readonly<Record<string, unknown>>).bias as
      | Parameters<typeof typedNumber>[2]
      | undefined;
    return entry?.known === true
      ? () =>
          typedNumber(
            'bias',
            sheet.of,
            entry,
            `${volts(low)} to ${volts(high)}`,
            'where the output rests, from the lowest to the highest piece',
          )
      : () => ({
          title: 'Bias',
          sentence: 'Where the output rests, from the lowest to the highest piece.',
          numbers,
          steps: [],
          sources,
        });
  }
  if (of === 'swing up') {
    return () => ({
      title: 'Swing towards the supply',
      sentence: `From the highest bias the output may rise by ${volts(swing.top)} before the source runs out of voltage.`,
      numbers,
      steps: [
        step(
          'top = U_compliance − U_source − U_line − U_bias',
          `${volts(compliance)} − ${volts(drop)} − ${volts(lineDrop)} − ${volts(high)}`,
          volts(swing.top),
        ),
        step('U_to = U_bias + top', `${volts(high)} + ${volts(swing.top)}`, volts(to)),
      ],
      sources,
    });
  }
  if (of === 'swing down') {
    return () => ({
      title: 'Swing towards saturation',
      sentence: `From the lowest bias the output may fall by ${volts(swing.bottom)} before it saturates.`,
      numbers,
      steps: [
        step('bottom = U_bias − U_saturation', `${volts(low)} − ${volts(saturation)}`, volts(swing.bottom)),
        step('U_from = U_bias − bottom', `${volts(low)} − ${volts(swing.bottom)}`, volts(from)),
      ],
      sources,
    });
  }
  return () => ({
    title: 'Lost in line and source',
    sentence: 'The source and the resistance of the line keep so much of the compliance for themselves.',
    numbers,
    steps: [
      step('U_lost = U_source + U_line', `${volts(drop)} + ${volts(lineDrop)}`, volts(drop + lineDrop)),
      step('U_from = U_compliance − U_lost', `${volts(compliance)} − ${volts(drop + lineDrop)}`, volts(from)),
    ],
    sources,
  });
}

/** The voltage a hand meter should show at a terminal. */
export function explainedTerminal(told: TerminalVoltage, shown: string, showing: Showing): Explain | undefined {
  const { terminal, state, voltage, of } = told;
  if (!voltage.known || !of.known) return undefined;
  const { start, current, resistance } = of.value;
  const volts = (value: number) => showQuantity('voltage', value, { ...showing, digits: 6 });
  const ohms = (value: number) => showQuantity('resistance', value, { ...showing, digits: 6 });
  const falls = current < 0;
  const amperes = showQuantity('current', Math.abs(current), { ...showing, digits: 6 });
  const end = (name: 'low' | 'high') =>
    step(
      `U_${name} = U_start ${falls ? '−' : '+'} I · R`,
      `${volts(start[name])} ${falls ? '−' : '+'} ${amperes} · ${ohms(resistance[name])}`,
      volts(voltage.value[name]),
      `R: ${falls ? 'resistance from here back to the supply' : 'resistance from the start of the line to this terminal'}, ${name === 'low' ? 'for the lowest voltage' : 'for the highest voltage'}`,
    );
  return () => ({
    title: `Voltage at ${terminal}, ${state}`,
    sentence: `A hand meter across the pair should show ${shown} here, over the tolerances of the parts; outside it something is open, shorted or not what was chosen.`,
    numbers: [
      { name: 'lowest', shown: volts(voltage.value.low) },
      { name: 'highest', shown: volts(voltage.value.high) },
      { name: 'current', shown: amperes },
    ],
    steps: [end('low'), end('high')],
    sources: [clause(iepePractice)],
  });
}
