import { choiceField, levelField, quantityField, Refusal, si } from '../../quantity/index.ts';
import { optional } from '../../quantity/stated.ts';
import { iso20816x1 } from '../../source/iso-20816-1.ts';
import { clause } from '../../source/source.ts';
import { optionalOutput, output, working } from '../../working/index.ts';
import { rmsSum, vectorSum } from './vectors.ts';

const displacement = (meaning: string, symbol: string, example: string) =>
  levelField(['displacement'], meaning, { symbol, example });
const angle = (meaning: string, symbol: string) => quantityField('angle', meaning, { symbol, example: '30 deg' });

/** How the shaft in its bearing and the bearing in space are added. */
export const absoluteSums = ['vector', 'rms'] as const;
export type AbsoluteSum = (typeof absoluteSums)[number];

export const shaftAbsoluteWorking = working({
  name: 'shaft-absolute',
  title: 'Shaft in space from shaft in its bearing and casing',
  inputs: {
    sum: choiceField(absoluteSums, 'Vectors of one order, or rms where the phases are not known'),
    relative: displacement('Shaft relative to its bearing', 'r', '40 um pp'),
    relativePhase: optional(angle('Its phase', 'ρ')),
    casing: displacement('Bearing in space, integrated to displacement in the same direction', 'c', '15 um pp'),
    casingPhase: optional(angle('Its phase, integration allowed for', 'κ')),
  },
  outputs: {
    absolute: output(
      displacement('Shaft in space', 's', '50 um pp'),
      's = |r·e^(jρ) + c·e^(jκ)| (vector), s = √(r² + c²) (rms)',
    ),
    absolutePhase: optionalOutput(angle('Its phase', 'σ'), 'σ = arg(r·e^(jρ) + c·e^(jκ))'),
    most: output(displacement('Most it can be, whatever the phases', 's_m', '55 um pp'), 's_m = r + c'),
  },
  holds:
    'probe and casing transducer on one line of measurement and one order; the casing signal integrated with its phase corrected. The rms sum holds for motions whose phases wander; of two locked ones it may be too small by up to 29 %.',
  sources: [clause(iso20816x1, 'shaft absolute from relative and casing', 'from memory')],
  evaluate: ({ sum, relative, relativePhase, casing, casingPhase }) => {
    const most = { ...relative, value: relative.value + casing.value };
    if (sum === 'rms') return { absolute: rmsSum(relative, casing), absolutePhase: undefined, most };
    if (relativePhase === undefined || casingPhase === undefined) {
      throw new Refusal({
        read: 'a vector sum without both phases',
        expected: "'relative-phase' and 'casing-phase', or the sum 'rms'",
      });
    }
    const absolute = vectorSum(
      { amplitude: relative, phase: relativePhase },
      { amplitude: casing, phase: casingPhase },
    );
    return { absolute: absolute.amplitude, absolutePhase: si('angle', absolute.phase), most };
  },
  example: {
    sum: 'vector',
    relative: '40 um pp',
    'relative-phase': '30 deg',
    casing: '15 um pp',
    'casing-phase': '120 deg',
  },
});
