import { measured, measuredSpan, type Said, said } from '../../finding/measure.ts';
import { rollingBearingKinematics } from '../../source/rolling-bearing-kinematics.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { type SeenLine, seenAt } from '../lines-seen.ts';
import type { MachineLine } from '../machine-at-speed.ts';
import { type FamilyEvidence, type FamilyJudged, familyKind } from './family-kind.ts';

/** Lines at which a bearing is struck, and what is defective then. */
export const bearingRings: Readonly<Record<string, string>> = {
  'outer-ring': 'a defect of the outer ring',
  'inner-ring': 'a defect of the inner ring',
  'element-spin-twice': 'a defect of a rolling element',
};
const harmonics = [1, 2, 3, 4] as const;
/** Harmonics in the envelope that must agree, the first among them. */
const fewest = 3;
/** A line may lie this far from its kinematic place where the bearing tells nothing of its slip. */
const usualSlip = { low: 0.025, high: 0.01 } as const;
/** Shaft multiples that explain a line as well. */
const shaftMultiples = 25;
/**
 * A blow once per turn shows its multiples in the envelope, all about as high: so many of these at this share of the line
 * explain what lies this near to a multiple. The load on a moving spot makes the first two only.
 */
const comb = { of: [3, 4, 5], fewest: 2, share: 0.5, apart: 0.008 } as const;

/** A ring or an element that is struck at its own frequency: its harmonics stand in the envelope. */
export const bearingFamily = familyKind({
  kind: 'rolling-bearing',
  name: 'Rolling-bearing defect',
  sources: [
    clause(rollingBearingKinematics),
    clause(tradePractice, 'three harmonics of the kinematic line in the envelope, within slip'),
  ],
  judge: (evidence): readonly FamilyJudged[] => {
    const sought = evidence.running.lines.filter(({ called }) => called in bearingRings);
    if (sought.length === 0) return [];
    const envelope = evidence.envelope(Math.max(...sought.map(({ high }) => high)));
    if (!envelope.known) return [];
    const { spectrum, band } = envelope.value;
    const { resolution } = spectrum.density;
    return sought.flatMap((line): readonly FamilyJudged[] => {
      const seen = harmonicsOf(evidence, line);
      if (seen.length < fewest || seen[0]!.times !== 1) return [];
      const base = seen.at(-1)!.line.frequency / seen.at(-1)!.times;
      const shown: readonly Said[] = [
        said`${seen.length} of ${harmonics.length} harmonics of ${measured('frequency', base, 5)} in the envelope, where ${line.line.name} is expected at ${measured('frequency', line.frequency, 5)}`,
        said`the band ${measuredSpan('frequency', band)} is impulsive, its kurtosis ${band.kurtosis.toPrecision(3)} above noise`,
        ...sidesOf(evidence, line, base),
      ];
      const others = otherExplanations(evidence, line, base, resolution);
      if (others.length > 0) {
        return [
          {
            open: {
              because: said`${shown[0]!}; ${others.join(' and ')} would explain it as well`,
              needs: 'a record at another speed, or a longer one that tells the two apart',
            },
          },
        ];
      }
      return [
        {
          named: {
            cause: said`${bearingRings[line.called]!} of ${line.line.element}`,
            evidence: shown,
            next: 'Record again in a month at the same speed; listen at the housing; look at grease and temperature.',
            rivals: [
              {
                cause: 'a periodic shock of something else with that very period',
                next: 'Record at another speed: a bearing line moves with the shaft and keeps its order.',
              },
              {
                cause: 'the same bearing on a neighbouring machine that runs as fast',
                next: 'Record with the neighbour stopped.',
              },
            ],
          },
        },
      ];
    });
  },
});

/** Harmonics in the envelope that keep step with one base inside the slip of the line. */
function harmonicsOf(evidence: FamilyEvidence, line: MachineLine) {
  const envelope = evidence.envelope(line.high);
  if (!envelope.known) return [];
  const { spectrum } = envelope.value;
  const { resolution } = spectrum.density;
  const low = Math.min(line.low, line.frequency * (1 - usualSlip.low));
  const high = Math.max(line.high, line.frequency * (1 + usualSlip.high));
  const first = seenAt(spectrum, (low + high) / 2, (high - low) / 2 + resolution / 2);
  if (first === undefined) return [];
  let base = first.frequency;
  const seen: { readonly times: number; readonly line: SeenLine }[] = [{ times: 1, line: first }];
  for (const times of harmonics.slice(1)) {
    const next = seenAt(spectrum, times * base, Math.max(1.5 * resolution, 0.004 * times * base));
    if (next === undefined) continue;
    seen.push({ times, line: next });
    base = next.frequency / times;
  }
  return seen;
}

/** Side lines of the turning ring, or of the cage: what the load does to a spot that moves. */
function sidesOf(evidence: FamilyEvidence, line: MachineLine, base: number): readonly Said[] {
  const envelope = evidence.envelope(line.high);
  if (!envelope.known || line.called === 'outer-ring') return [];
  const { spectrum } = envelope.value;
  const modulating =
    line.called === 'inner-ring'
      ? evidence.running.speed
      : evidence.running.lines.find((each) => each.called === 'cage' && each.line.element === line.line.element)
          ?.frequency;
  if (modulating === undefined) return [];
  const sides = [-1, 1].filter(
    (side) => seenAt(spectrum, base + side * modulating, 1.5 * spectrum.density.resolution) !== undefined,
  ).length;
  return sides === 0
    ? []
    : [said`${sides} of 2 side lines ${measured('frequency', modulating)} apart, as the load would make them`];
}

function otherExplanations(
  evidence: FamilyEvidence,
  own: MachineLine,
  base: number,
  resolution: number,
): readonly string[] {
  const { lines, speed } = evidence.running;
  const envelope = evidence.envelope(own.high);
  const struck =
    envelope.known &&
    comb.of.filter((times) => {
      const [multiple, first] = [times * speed, base].map((at) =>
        seenAt(envelope.value.spectrum, at, 1.5 * resolution),
      );
      return (multiple?.amplitude ?? 0) >= comb.share * (first?.amplitude ?? 0);
    }).length >= comb.fewest;
  const within = struck ? Math.max(resolution, comb.apart * base) : resolution;
  const turns = lines
    .filter(({ called }) => called === '1x')
    .flatMap(({ frequency, line }) => {
      const times = Math.round(base / frequency);
      const near = times >= 1 && times <= shaftMultiples && Math.abs(base - times * frequency) <= within;
      return near ? [`${times} times ${line.name}`] : [];
    });
  const others = lines
    .filter(
      (each) =>
        each !== own &&
        each.called in bearingRings === true &&
        each.line.name !== own.line.name &&
        Math.abs(each.frequency - base) < Math.abs(own.frequency - base) + resolution / 4,
    )
    .map(({ line }) => line.name);
  const passing = lines
    .filter(
      (each) =>
        !(each.called in bearingRings) &&
        !['1x', '2x', 'half-order'].includes(each.called) &&
        each.line.element !== own.line.element &&
        Math.abs(each.frequency - base) <= resolution,
    )
    .map(({ line }) => line.name);
  return [...turns, ...others, ...passing];
}
