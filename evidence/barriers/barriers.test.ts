import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { answer, failureCurrent, type Prediction, terminalVoltages } from '../../packages/core/src/index.ts';
import { cable, changed, input, known, predicted, supply, transducer } from '../bench.ts';
import { root } from '../reading.ts';

/** Barriers and isolators beside a circuit simulator that knows nothing of them: loading, and every direct voltage. */
interface Circuits {
  readonly [name: string]: {
    readonly title: string;
    readonly 'frequency-re-im': readonly (readonly [number, number, number])[];
    readonly rows: readonly Readonly<Record<string, number>>[];
  };
}
const circuits = JSON.parse(readFileSync(resolve(root, 'evidence/barriers/circuits.json'), 'utf8')) as Circuits;

const onward = [{ behind: 0, cable: cable('TSP'), length: answer(40) }];
const accelerometer = { transducer: transducer('ACC-100X'), metres: 160, input: input('ONL-24'), onward };
const velocity = { transducer: transducer('LPV-25X'), metres: 160, input: input('AI-16') };
const through = (name: string) => predicted({ ...accelerometer, inLine: [supply(name)] });

/** The largest distance between our response and the circuit's, over the size of the circuit's; 0.1 V is one g. */
function distance(chain: Prediction, name: string): number {
  const response = known(chain.response);
  return Math.max(
    ...circuits[name]!['frequency-re-im'].map(([frequency, re, im]) => {
      const ours = response(frequency);
      return Math.hypot(ours.re - re / 0.1, ours.im - im / 0.1) / Math.hypot(re / 0.1, im / 0.1);
    }),
  );
}

test.each([
  ['ac-shunt-diode-barrier', 'ZB-28'],
  ['ac-isolator', 'GI-VIB'],
])('independent: response through %s, magnitude and phase, is that of the circuit (ngspice)', (circuit, name) => {
  expect(circuits[circuit]!['frequency-re-im'].length).toBeGreaterThan(200);
  expect(distance(through(name), circuit)).toBeLessThan(1e-8);
});

test('independent: the comparison sees a barrier that is left out, and an isolator in its place', () => {
  expect(
    distance(predicted({ ...accelerometer, inLine: [supply('JB-IS')] }), 'ac-shunt-diode-barrier'),
  ).toBeGreaterThan(1e-2);
  expect(distance(through('GI-VIB'), 'ac-shunt-diode-barrier')).toBeGreaterThan(1e-2);
});

/** The simulator prints six digits. */
const close = (ours: number, theirs: number) => expect(Math.abs(ours / theirs - 1)).toBeLessThan(1e-5);

test('independent: direct voltages through a barrier, terminal by terminal, at both ends of the bias (ngspice)', () => {
  const found = terminalVoltages(through('ZB-28').chain).map((each) => known(each.voltage));
  const [low, high] = circuits['dc-bias']!.rows;
  const names = ['transducer', 'field', 'card', 'input'];
  for (const [index, name] of names.entries()) close(found[index]!.high, high![name]!);
  // The lowest goes with the usual 320 ohm: 80 mV less than the 340 ohm of the circuit, from the card side on.
  for (const [index, name] of names.entries()) close(found[index]!.low + (index > 1 ? 0.08 : 0), low![name]!);
});

test('independent: a loop on an isolator with 100 ohm of its own: voltages and what is to spare (ngspice)', () => {
  const chain = predicted({ ...velocity, inLine: [changed(supply('GI-420'), { sourceResistance: '100 ohm' })] });
  const { rows } = circuits['dc-loop-isolator']!;
  const found = terminalVoltages(chain.chain);
  for (const [state, current] of [
    ['at 4 mA', 0.004],
    ['at 20 mA', 0.02],
  ] as const) {
    const row = rows.find((each) => each.current === current)!;
    const volts = found.filter((each) => each.state === state).map((each) => known(each.voltage).low);
    close(volts[0]!, row.transducer!);
    close(volts[1]!, row.field!);
    close(volts[2]!, row.card!);
  }
  const failing = rows.find((each) => each.current === failureCurrent)!;
  expect(Math.abs(known(chain.loop!.spare) - (failing.transducer! - 12.5))).toBeLessThan(1e-4);
});

test('independent: a loop through a shunt-diode barrier starves its sensor where the prediction says so (ngspice)', () => {
  const chain = predicted({
    ...velocity,
    inLine: [
      changed(supply('ZB-28'), { usualResistance: '340 ohm' }),
      changed(supply('LOOP-24'), { voltage: '21.6 V' }),
    ],
    onward,
  });
  const { rows } = circuits['dc-loop-barrier']!;
  const volts = terminalVoltages(chain.chain).filter((each) => each.state === 'at 4 mA');
  const row = rows[0]!;
  for (const [index, name] of ['transducer', 'field', 'cardside', 'card'].entries()) {
    close(known(volts[index]!.voltage).low, row[name]!);
  }
  // From the circuit: its voltage at the sensor falls by the loop resistance times the current, to 12.5 V at 15 mA.
  const resistance = (rows[0]!.transducer! - rows[2]!.transducer!) / (rows[2]!.current! - rows[0]!.current!);
  expect(Math.abs(known(chain.loop!.resistance) / resistance - 1)).toBeLessThan(1e-4);
  expect(known(chain.loop!.spare)).toBeLessThan(0);
});
