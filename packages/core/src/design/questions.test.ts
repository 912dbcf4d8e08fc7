import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { plantOf, root } from '../../../../evidence/reading.ts';
import { appraisal } from '../selection/appraisal.ts';
import { openValues } from '../selection/assumptions.ts';
import { verdictOf } from '../selection/flip-points.ts';
import { design } from './design.ts';
import { questions } from './questions.ts';

const text = readFileSync(resolve(root, 'examples/raw-water-pump/plant.yaml'), 'utf8');

/** The demo plant with a transducer of which three values are not known, two of them between bounds. */
const unsure = text.replace('          transducer: ACC-100\n', '          transducer: ACC-U\n').replace(
  'policy:\n',
  `parts:
  transducers:
    ACC-U:
      kind: iepe-accelerometer
      sensitivity: 100 mV/g
      sensitivity-tolerance: ±5 %
      range: 80 g peak
      low-corner: 0.5 Hz
      low-corner-order: 1
      mounted-resonance: { unknown: true, ask: the maker, between: [12 kHz, 30 kHz] }
      quality: 12
      noise: unknown
      bias: 10..14 V
      saturation: { unknown: true, between: [1 V, 2 V] }
      own-current: 1 mA
      supply-current: 2..10 mA
      output-resistance: 100 ohm
      temperature: -50..120 °C
      temperature-coefficient: 0.06 %/K
      transverse: 5 %
      sealing: IP67 (mated)
      case-isolated: yes
policy:
`,
);

test('law: the answer that turns a verdict is asked first, as trying out every bound shows', () => {
  const designed = design(plantOf(unsure), 1);
  const asked = questions(designed);
  const point = designed.machines[0]!.points[0]!;
  const subject = { point: point.point, parts: { ...point.stated.way!, ...point.stated.chosen! } };
  const turning = openValues(subject).filter((value) => {
    const verdicts = (['low', 'high'] as const).map((end) => {
      const filled = value.filled(subject, end);
      return verdictOf(appraisal(filled.point, filled.parts, designed.plant.policy));
    });
    return verdicts[0] !== verdicts[1];
  });
  expect(asked.filter((each) => each.turns === 'verdict').map((each) => each.what)).toEqual(
    turning.map((each) => each.what),
  );
  expect(asked[0]).toMatchObject({ what: 'mounted resonance', ask: 'the maker', turns: 'verdict' });
  expect(asked.find((each) => each.what === 'noise')).toMatchObject({ turns: 'not bounded' });
  expect(asked.at(-1)).toMatchObject({ what: 'saturation', turns: 'nothing' });
});

test('law: what is unknown is asked, and never makes a verdict', () => {
  const designed = design(plantOf(unsure), 1);
  expect(designed.machines[0]!.points[0]!.appraisal!.outcome).toBe('cannot tell');
  expect(designed.verdict).not.toBe('proven');
});
