import { clause, type DesignedPoint, namurNe43, type Showing, showQuantity } from '@soundpost/core';
import { type Explain, step } from '../derivation/explained.ts';

/** The resistance of a loop, the most it may be, and the voltage that is left. */
export function explainedLoad(
  { appraisal }: DesignedPoint,
  of: 'resistance' | 'largestResistance' | 'spare',
  showing: Showing,
): Explain | undefined {
  const prediction = appraisal?.prediction;
  const loop = prediction?.loop;
  if (loop === undefined || !loop[of].known) return undefined;
  const minimum = prediction!.chain.transducer.oneNumber?.minimumVoltage;
  const ohms = (value: number) => showQuantity('resistance', value, { ...showing, digits: 6 });
  const volts = (value: number) => showQuantity('voltage', value, { ...showing, digits: 6 });
  const sources = [clause(namurNe43, 'signal levels')];
  const current = showQuantity('current', loop.failureCurrent, showing);
  if (of === 'resistance') {
    const shown = showQuantity('resistance', loop.resistance.known ? loop.resistance.value : 0, showing);
    return () => ({
      title: 'Resistance in the loop',
      sentence: `The card and everything in the line add to ${shown}.`,
      numbers: [{ name: 'resistance', shown }],
      steps: loop.resistances.known
        ? [
            step(
              'R = R_card + R_line',
              `${ohms(loop.resistances.value.card)} + ${ohms(loop.resistances.value.line)}`,
              shown,
            ),
          ]
        : [],
      sources: [],
    });
  }
  if (minimum?.known !== true || !loop.largestResistance.known || !loop.resistance.known) return undefined;
  const supply = loop.largestResistance.value * loop.failureCurrent + minimum.value;
  const numbers = [
    { name: 'lowest supply', shown: showQuantity('voltage', supply, showing) },
    { name: 'least for the sensor', shown: showQuantity('voltage', minimum.value, showing) },
    { name: 'failure current', shown: current },
  ];
  const largest = showQuantity('resistance', loop.largestResistance.value, showing);
  if (of === 'largestResistance') {
    return () => ({
      title: 'Largest resistance of the loop',
      sentence: `At the failure current the loop may have ${largest} and still leave the sensor its voltage.`,
      numbers,
      steps: [
        step(
          'R_max = (U_supply − U_min) / I_failure',
          `(${volts(supply)} − ${volts(minimum.value)}) / ${current}`,
          largest,
        ),
      ],
      sources,
    });
  }
  const spare = showQuantity('voltage', loop.spare.known ? loop.spare.value : 0, showing);
  return () => ({
    title: 'Voltage to spare',
    sentence: `At the failure current and the lowest supply ${spare} are left over.`,
    numbers: [
      ...numbers,
      { name: 'resistance in the loop', shown: ohms(loop.resistance.known ? loop.resistance.value : 0) },
    ],
    steps: [
      step(
        'U_left = U_supply − U_min − I_failure · R',
        `${volts(supply)} − ${volts(minimum.value)} − ${current} · ${ohms(loop.resistance.known ? loop.resistance.value : 0)}`,
        spare,
      ),
    ],
    sources,
  });
}
