import type { Finding } from '../../../finding/finding.ts';
import { measured, measuredLevel, said } from '../../../finding/measure.ts';
import {
  type Answer,
  choiceField,
  fromAll,
  type Level,
  levelField,
  optional,
  quantityField,
  type Sheet,
  textField,
  thenAnswer,
  unanswered,
  valueIfStated,
} from '../../../quantity/index.ts';
import { iso20816x1 } from '../../../source/iso-20816-1.ts';
import { clause } from '../../../source/source.ts';
import type { Derived } from '../../../uncertainty/contribution.ts';
import { absoluteSums } from '../shaft-absolute.ts';
import { rmsSum, vectorSum } from '../vectors.ts';
import {
  arrangementKind,
  askedFor,
  derivedFrom,
  type ProbeSurroundings,
  saying,
  statedIn,
} from './arrangement-kind.ts';

const sources = [clause(iso20816x1, 'shaft absolute from relative and casing', 'from memory')];

const displacement = (meaning: string, example: string) => levelField(['displacement'], meaning, { example });
const angle = (meaning: string) => quantityField('angle', meaning, { example: '30 deg' });

const dataSheet = {
  casingPoint: textField('The point whose transducer stands beside the probe', { example: 'bearing-1-casing' }),
  sum: choiceField(absoluteSums, 'Added as vectors of one order, or as rms where the phases are not known'),
  relative: optional(displacement('Shaft relative to its bearing', '40 um pp')),
  relativePhase: optional(angle('Its phase')),
  casing: optional(displacement('Bearing in space, integrated to displacement', '15 um pp')),
  casingPhase: optional(angle('Its phase, integration allowed for')),
} as const;

type CasingSheet = Sheet<typeof dataSheet>;

const asked = {
  casingPoint: {
    asks: 'Which transducer stands on the bearing in the direction of the probe?',
    because: 'The shaft in space is the sum of both; one of another direction cannot stand for it.',
  },
  sum: {
    asks: 'Are the two added as vectors or as rms? Who set up the rack says.',
    because: 'Of two motions that are locked together an rms sum may be too small by up to 29 %.',
  },
} as const;

function absolute(sheet: CasingSheet): Answer<Level<'displacement'>> {
  return thenAnswer(
    fromAll({ sum: statedIn(sheet, 'sum'), r: statedIn(sheet, 'relative'), c: statedIn(sheet, 'casing') }, (k) => k),
    ({ sum, r, c }) => {
      if (r.detector !== c.detector) {
        return unanswered([{ of: sheet.of, what: `relative and casing of one detector` }]);
      }
      if (sum === 'rms') return { known: true, value: rmsSum(r, c) };
      return fromAll(
        { rp: statedIn(sheet, 'relativePhase'), cp: statedIn(sheet, 'casingPhase') },
        ({ rp, cp }) => vectorSum({ amplitude: r, phase: rp }, { amplitude: c, phase: cp }).amplitude,
      );
    },
  );
}

/** √(r² + c²), or the length of the sum of both vectors. */
function absoluteDerived(sheet: CasingSheet): Answer<Derived> {
  const of = { r: statedIn(sheet, 'relative'), c: statedIn(sheet, 'casing'), whole: absolute(sheet) };
  if (valueIfStated(sheet.values.sum) === 'rms') {
    return derivedFrom('s = √(r² + c²)', of, ({ r, c, whole }) => {
      return said`√((${measuredLevel(r)})² + (${measuredLevel(c)})²) = ${measuredLevel(whole)}`;
    });
  }
  return derivedFrom(
    's = √(r² + c² + 2 · r · c · cos(α − β))',
    { ...of, rp: statedIn(sheet, 'relativePhase'), cp: statedIn(sheet, 'casingPhase') },
    ({ r, c, whole, rp, cp }) =>
      said`√((${measuredLevel(r)})² + (${measuredLevel(c)})² + 2 · ${measuredLevel(r)} · ${measuredLevel(c)} · cos(${measured('angle', rp)} − ${measured('angle', cp)})) = ${measuredLevel(whole)}`,
  );
}

/** A casing transducer beside a probe: together they tell the motion of the shaft in space. */
export const casingBeside = arrangementKind({
  kind: 'casing-beside',
  name: 'Casing transducer beside a probe, for the shaft in space',
  dataSheet,
  sources,
  rows: (sheet) => [
    {
      name: 'absolute',
      value: fromAll({ level: absolute(sheet) }, ({ level }) => measuredLevel(level)),
      because: `shaft in its bearing and bearing in space, added as ${valueIfStated(sheet.values.sum) ?? 'not stated'}`,
      derived: absoluteDerived(sheet),
    },
  ],
  doubts: (sheet, around) => [...askedFor(sheet, around, asked, sources), ...withoutPhase(sheet, around)],
});

function withoutPhase(sheet: CasingSheet, { at }: ProbeSurroundings): readonly Finding[] {
  if (valueIfStated(sheet.values.sum) !== 'vector' || sheet.values.relative === undefined) return [];
  const missing = (['relativePhase', 'casingPhase'] as const).filter((name) => sheet.values[name]?.known !== true);
  if (missing.length === 0) return [];
  return [
    saying(at, sources)('absolute-without-phase', 'question', {
      found: 'a vector sum without both phases',
      limit: 'both phases against one once-per-turn mark',
      because: 'Without the phases the sum lies anywhere between the difference and the sum of the two.',
      remedy: ['state both phases', "state the sum as 'rms'"],
      asks: 'At which phases do shaft and casing move, the integration of the casing signal allowed for?',
    }),
  ];
}
