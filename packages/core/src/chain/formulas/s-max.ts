import { type Finding, finding } from '../../finding/finding.ts';
import {
  type Field,
  type Level,
  level,
  levelField,
  parseQuantity,
  pointDecimals,
  Refusal,
  showQuantity,
} from '../../quantity/index.ts';
import { iso20816x1 } from '../../source/iso-20816-1.ts';
import { clause } from '../../source/source.ts';
import { output, working } from '../../working/index.ts';
import { largestExtent, largestFromMean, type OrbitPoint, peakToPeak } from './orbit.ts';

/** What is pasted is read as a whole; more than this is a recording, not a list. */
const mostSamples = 16_384;
const longestList = 2_000_000;
/** Fewer samples than this leave the extent of an orbit open by some per cent. */
const fewSamples = 32;

const expected =
  "displacements separated by commas or lines, with the unit after each, after the last or in brackets on top: '0, 12, 25, 12 um'";
const number = /^[+\-\u2212]?[\d.]+(?:[eE][+\-\u2212]?\d+)?/;

/** A row of displacements as text, in m: `0, 12, 25, 12 um`, or one column of a table with its unit: `x (um)` on top. */
function samplesField(meaning: string, symbol: string): Field<readonly number[]> {
  return {
    type: 'text',
    meaning,
    symbol,
    expected,
    example: '0, 12, 25, 12 um',
    orTable: true,
    schema: { type: 'string', description: `${meaning} (${expected})`, maxLength: longestList },
    read: (raw) => samplesOf(raw),
    show: (value) => `${value.length} samples of ${showQuantity('displacement', peakToPeak(value))} pp`,
    json: (value) => ({ values: value, unit: 'm' }),
  };
}

function samplesOf(raw: unknown): readonly number[] {
  const text = Array.isArray(raw) ? raw.join(',') : raw;
  if (typeof text !== 'string' || text.length > longestList) {
    throw new Refusal({ read: typeof raw === 'string' ? `${raw.length} characters` : String(raw), expected });
  }
  const entries = text
    .split(/[,;\n\t]+/)
    .map((entry) => entry.trim())
    .filter((entry) => entry !== '');
  const top = number.test(entries[0] ?? '') ? undefined : /[[(]([^\])]+)[\])]$/.exec(entries[0] ?? '')?.[1];
  const samples = top === undefined ? entries : entries.slice(1);
  if (samples.length < 3 || samples.length > mostSamples) {
    throw new Refusal({ read: `${samples.length} samples`, expected: `3 to ${mostSamples} samples: ${expected}` });
  }
  const unit = top ?? samples.at(-1)!.replace(number, '').trim();
  return samples.map((sample) => {
    const bare = sample.replace(number, '') === '';
    return parseQuantity(bare ? `${sample} ${unit}` : sample, 'displacement', pointDecimals);
  });
}

const extent = (meaning: string, symbol: string) =>
  levelField(['displacement'], meaning, { symbol, example: '50 um pp' });
const pp = (value: number): Level<'displacement'> => level('displacement', value, 'peak-to-peak');

export const sMax = working({
  name: 's-max',
  title: 'Largest shaft displacement from two probes at right angles',
  inputs: {
    x: samplesField('Samples of the first probe', 'x'),
    y: samplesField('Samples of the second probe at the same moments, at right angles', 'y'),
  },
  outputs: {
    alongX: output(extent('Peak-to-peak of the first probe', 'S_x'), 'S_x = max(x) − min(x)'),
    alongY: output(extent('Peak-to-peak of the second probe', 'S_y'), 'S_y = max(y) − min(y)'),
    methodA: output(extent('Method A: never too low, up to 41 % too high', 'S_A'), 'S_A = √(S_x^2 + S_y^2)'),
    methodB: output(extent('Method B: never too high, up to 29 % too low', 'S_B'), 'S_B = max(S_x, S_y)'),
    methodC: output(
      extent('Method C, search of the orbit: largest peak-to-peak in any direction', 'S_C'),
      'S_C = the largest distance between two points of the orbit',
    ),
    fromMean: output(
      levelField(['displacement'], 'Largest displacement from the mean position', {
        symbol: 'S_max',
        example: '25 um peak',
      }),
      'S_max = the largest of √((x − mean of x)^2 + (y − mean of y)^2)',
    ),
  },
  holds:
    'both probes at right angles, sampled at the same moments and over whole turns; slow-roll is not taken off. S_B ≤ S_C ≤ S_A for every orbit.',
  sources: [clause(iso20816x1, 'S_max, methods A, B and C')],
  evaluate: ({ x, y }) => {
    const orbit = orbitOf(x, y);
    const [alongX, alongY] = [peakToPeak(x), peakToPeak(y)];
    return {
      alongX: pp(alongX),
      alongY: pp(alongY),
      methodA: pp(Math.hypot(alongX, alongY)),
      methodB: pp(Math.max(alongX, alongY)),
      methodC: pp(largestExtent(orbit)),
      fromMean: level('displacement', largestFromMean(orbit), 'peak'),
    };
  },
  doubts: ({ x }) => sparse(x.length),
  example: { x: '0, 17.7, 25, 17.7, 0, -17.7, -25, -17.7 um', y: '25, 17.7, 0, -17.7, -25, -17.7, 0, 17.7 um' },
});

function orbitOf(x: readonly number[], y: readonly number[]): readonly OrbitPoint[] {
  if (x.length !== y.length) {
    throw new Refusal({
      read: `${x.length} samples of x, ${y.length} of y`,
      expected: 'as many samples of y as of x, taken at the same moments',
    });
  }
  return x.map((each, index) => ({ x: each, y: y[index]! }));
}

function sparse(count: number): readonly Finding[] {
  if (count >= fewSamples) return [];
  return [
    finding({
      rule: 'orbit/few-samples',
      weight: 'warns',
      at: 's-max',
      found: `${count} samples`,
      limit: `${fewSamples} samples over a turn`,
      because: 'Between two samples the shaft goes on: the largest displacement found is too low.',
      remedy: ['sample faster, or over more turns'],
      sources: [],
    }),
  ];
}
