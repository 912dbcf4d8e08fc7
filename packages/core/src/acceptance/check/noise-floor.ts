import { measured, measuredSpan, said } from '../../finding/measure.ts';
import { fromAll } from '../../quantity/index.ts';
import { densityRms, type PowerDensity } from '../../signal/measures/power-density.ts';
import { screeningRules } from '../../source/screening-rules.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import type { ChannelMeasures } from '../channel-measures.ts';
import { chainOf, lowerCorner, noiseAtInput, residualAtInput } from '../expected.ts';
import { voltsPerNumber } from '../measured-record.ts';
import { cannotTell, checkKind, fails, type Judged, meets, type RivalCause, wants } from './check-kind.ts';

/** Found over predicted: a floor within these is as designed. */
const allowed = { low: 0.5, high: 2 } as const;
/** Below this nothing that is connected is as quiet. */
const dead = 0.3;
/** Lines that are needed for a median to mean something. */
const fewestLines = 20;

/** The noise of the chain with the machine stopped, against what its stages add up to. */
export const noiseFloor = checkKind({
  kind: 'noise-floor',
  title: 'Noise floor',
  question: 'Is the chain as quiet as designed, and not quieter than it can be?',
  on: ['stopped'],
  applies: (designed) => chainOf(designed)?.transducer.signal === 'dynamic',
  sources: [
    clause(screeningRules, 'noise of the sensor and of the input over its sensitivity'),
    clause(tradePractice, 'half to twice the predicted noise; below 0.3 of it nothing is connected'),
  ],
  judge: ({ designed, record }): readonly Judged[] => {
    const { density } = record.measures;
    const known = fromAll(
      { density, noise: noiseAtInput(designed), scale: voltsPerNumber(record), corner: lowerCorner(designed) },
      (each) => each,
    );
    if (!known.known) return wants(known.missing);
    const { density: found, noise, scale, corner } = known.value;
    const band = { low: Math.max(3 * corner, 3 * found.resolution), high: 0.4 * found.rate };
    const step = stepOf(record.measures, scale);
    const predicted = Math.sqrt(band.high - band.low) * noise(Math.sqrt(band.low * band.high));
    const digitised = step / Math.sqrt(6 * found.rate);
    const all = (frequency: number) => Math.hypot(noise(frequency), digitised);
    const compared = medianRatio(found, all, scale, band);
    const expected = said`${measured('voltage density', all(Math.sqrt(band.low * band.high)))} in the middle of ${measuredSpan('frequency', band)}`;
    const tolerance = 'half to twice, by the middle of all lines: noise of single pieces differs';
    const because =
      'With the machine stopped only the noise of the chain is left, and what the neighbours and the mains add.';
    // Below a step nothing moves, or all of it at once: what is left says nothing of the noise.
    if (step > 2 * predicted) {
      return [
        cannotTell(
          {
            expected,
            tolerance,
            because: said`The steps of the record, ${measured('voltage', step)}, hide the noise.`,
          },
          ['the same record in a smaller range of the recorder'],
        ),
      ];
    }
    if (compared === undefined) {
      return [
        cannotTell(
          { expected, tolerance, because: said`The record holds fewer than ${fewestLines} lines of the band.` },
          [said`a longer record: ${measured('time', (20 * fewestLines) / band.high)} or more`],
        ),
      ];
    }
    const residual = residualAtInput(designed, Math.sqrt(band.low * band.high));
    if (residual > 0) return [wholeBand(found, scale, band, Math.hypot(predicted, residual), compared.ratio)];
    const { ratio, spread } = compared;
    const found2 = said`${ratio.toPrecision(3)} times that`;
    const facts = {
      expected,
      tolerance,
      found: found2,
      interval: said`${(ratio * (1 - spread)).toPrecision(3)} to ${(ratio * (1 + spread)).toPrecision(3)} times`,
      because,
    };
    if (ratio >= allowed.low && ratio <= allowed.high) return [meets(facts)];
    if (ratio > dead && ratio < allowed.low) {
      return [
        cannotTell(
          { ...facts, because: 'Quieter than designed, but a good piece may be: data sheets state a usual noise.' },
          ['a tap beside the transducer that the record shows'],
        ),
      ];
    }
    return [fails(facts, ratio < dead ? silent : noisy(ratio))];
  },
});

/**
 * A set whose data sheet states one noise and run-out for its whole band: nobody says where in it that lies, so the rms of
 * the band is held against it and not each line.
 */
function wholeBand(
  found: PowerDensity,
  scale: number,
  band: { readonly low: number; readonly high: number },
  stated: number,
  ofStages: number,
): Judged {
  const rms = densityRms(found, band.low, band.high) * Math.abs(scale);
  const facts = {
    expected: said`up to ${measured('voltage', stated)} rms between ${measuredSpan('frequency', band)}, stated for the whole set`,
    tolerance: said`twice that: noise of single pieces differs`,
    found: said`${measured('voltage', rms)} rms`,
    because: 'The data sheet of the set states one number for noise and run-out over its whole band.',
  };
  if (ofStages < dead) return fails(facts, silent);
  const ratio = rms / stated;
  return ratio <= allowed.high ? meets(facts) : fails(facts, noisy(ratio));
}

/** The step of the converter in volts, as the values themselves show it; 0 where they show none. */
function stepOf({ values }: ChannelMeasures, scale: number): number {
  if (!values.known) return 0;
  const { step, greatest, least, highRail, lowRail, samples } = values.value;
  if (step.known) return step.value.step * Math.abs(scale);
  // Two or three values that it goes between: one step, or two.
  return highRail.samples + lowRail.samples > samples / 2 ? (greatest - least) * Math.abs(scale) : 0;
}

/**
 * Median over the lines of found over predicted density, as an amplitude ratio: hum, lines of neighbours and a few
 * knocks do not move it. The median of a density averaged K times lies (1 − 1/(9K))³ below its mean (Wilson and
 * Hilferty 1931, from memory). Its spread, k = 2: √(π/2)/√(2·K·n) of an amplitude over n lines, twice.
 */
export function medianRatio(
  { density, resolution, effectiveAverages, noiseBandwidth }: PowerDensity,
  noise: (frequency: number) => number,
  scale: number,
  band: { readonly low: number; readonly high: number },
): { readonly ratio: number; readonly spread: number } | undefined {
  const from = Math.ceil(band.low / resolution);
  const to = Math.min(density.length - 2, Math.floor(band.high / resolution));
  const ratios: number[] = [];
  for (let k = from; k <= to; k++) ratios.push((density[k]! * scale * scale) / noise(k * resolution) ** 2);
  if (ratios.length < fewestLines) return undefined;
  ratios.sort((a, b) => a - b);
  const median = ratios[ratios.length >> 1]!;
  const averages = Math.max(1, effectiveAverages);
  const independent = ratios.length / Math.max(1, noiseBandwidth / resolution);
  return {
    ratio: Math.sqrt(median / (1 - 1 / (9 * averages)) ** 3),
    spread: (2 * Math.sqrt(Math.PI / 2)) / (2 * Math.sqrt(averages * independent)),
  };
}

const silent: readonly RivalCause[] = [
  {
    cause: 'nothing is connected, or another channel was recorded',
    evidence: 'quieter than the transducer alone can be',
    next: 'Tap beside the transducer and watch this channel.',
  },
  {
    cause: 'the transducer is dead though its bias stands',
    evidence: 'quieter than the transducer alone can be',
    next: 'Put a known good transducer on the same cable.',
  },
  {
    cause: 'a sensitivity, gain or unit that makes numbers smaller than they are',
    evidence: 'the whole floor is lower by one factor',
    next: 'Put the transducer on a calibrator.',
  },
];

function noisy(ratio: number): readonly RivalCause[] {
  const evidence = said`the whole floor is ${ratio.toPrecision(2)} times as high`;
  return [
    {
      cause: 'another input, range or gain than designed',
      evidence,
      next: 'Short the input and record again: its own noise is then all that is left.',
    },
    {
      cause: 'moisture or a damaged screen along the cable',
      evidence,
      next: 'Unplug the transducer and close the cable with a dummy; move the cable.',
    },
    {
      cause: 'vibration of neighbours, which is no noise of the chain',
      evidence: 'the machine stood, its neighbours did not',
      next: 'Record once with the neighbours stopped.',
    },
    {
      cause: 'a sensitivity, gain or unit that makes numbers larger than they are',
      evidence,
      next: 'Put the transducer on a calibrator.',
    },
  ];
}
