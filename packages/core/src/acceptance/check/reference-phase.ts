import { measured, measuredSpan, type Said, said } from '../../finding/measure.ts';
import { delayBetween } from '../../signal/measures/delay.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { type OverReference, responseOverReference, wrapped } from '../beside-reference.ts';
import { chainOf } from '../expected.ts';
import { cannotTell, checkKind, fails, type Judged, meets, type RivalCause, wants } from './check-kind.ts';

/** How far the phase may lie from that of the reference, and from half a turn to be called reversed. */
const allowed = (5 * Math.PI) / 180;
/** Lines that do not agree on one phase: a delay, or another place. */
const agreeing = 0.97;
/** Lines that span this much in frequency tell a delay. */
const fewest = 12;
const span = 1.5;

/** Whether channel and reference keep step. */
export const referencePhase = checkKind({
  kind: 'reference-phase',
  title: 'Phase and polarity beside a reference',
  question: 'Does the channel go the way the reference goes, at the same time?',
  on: ['beside-reference'],
  applies: (designed) => chainOf(designed)?.transducer.signal === 'dynamic',
  sources: [clause(tradePractice, 'phase within 5° of the reference; 180° is polarity')],
  judge: (looked): readonly Judged[] => {
    const response = responseOverReference(looked);
    if (!response.known) return wants(response.missing);
    const { lines } = response.value;
    if (lines.length === 0) {
      return [
        cannotTell({ because: 'Channel and reference have no line in common.' }, [
          'both transducers back to back, excited well above their noise, recorded at the same time',
        ]),
      ];
    }
    const delay = delayOf(response.value);
    const late = delay !== undefined && delay.verdict === 'fails';
    return [...(delay === undefined ? [] : [delay]), phaseOf(response.value, late)];
  },
});

/** The delay where the shared lines span enough of the frequency; its expected part is taken off line by line. */
function delayOf({ lines, cross }: OverReference): Judged | undefined {
  const [low, high] = [lines[0]!.frequency, lines.at(-1)!.frequency];
  if (lines.length < fewest || high < span * low) return undefined;
  const found = delayBetween(cross, low, high);
  if (!found.known) return undefined;
  // Slope of the predicted-free phase by least squares; the correlation only tells that no whole turn is missed.
  const slope = slopeOf(lines, found.value.delay);
  const reach = Math.max(0.5 / cross.rate, allowed / (2 * Math.PI * high));
  const facts = {
    of: 'delay',
    expected: measured('time', 0),
    tolerance: said`${measured('time', reach)}: half a sample, or 5° at the highest shared line`,
    found: measured('time', slope.delay, 3),
    interval: measuredSpan('time', { low: slope.delay - 2 * slope.deviation, high: slope.delay + 2 * slope.deviation }),
    because: 'Phases between channels are told only where both are sampled at one instant.',
  };
  if (Math.abs(slope.delay) <= reach + 2 * slope.deviation) return meets(facts);
  const samples = slope.delay * cross.rate;
  const evidence = said`${samples.toPrecision(3)} samples`;
  return fails(facts, [
    {
      cause: 'channels sampled one after the other, or filters that differ from channel to channel',
      evidence,
      next: 'Feed both inputs the same signal and record again.',
    },
    {
      cause: 'the transducers stand apart, and what they see travels',
      evidence,
      next: 'Mount them back to back.',
    },
  ]);
}

function slopeOf(lines: OverReference['lines'], begun: number) {
  let [w, wf, wp, wff, wfp] = [0, 0, 0, 0, 0];
  const turned = lines.map((each) => ({ ...each, left: each.phase + 2 * Math.PI * each.frequency * begun }));
  const around = Math.atan2(
    turned.reduce((sum, each) => sum + Math.sin(each.left), 0),
    turned.reduce((sum, each) => sum + Math.cos(each.left), 0),
  );
  for (const { left, frequency, deviation } of turned) {
    const [weight, rest] = [1 / deviation ** 2, wrapped(left - around)];
    w += weight;
    wf += weight * frequency;
    wp += weight * rest;
    wff += weight * frequency * frequency;
    wfp += weight * frequency * rest;
  }
  const spread = wff - (wf * wf) / w;
  const slope = (wfp - (wf * wp) / w) / spread;
  return { delay: begun - slope / (2 * Math.PI), deviation: Math.sqrt(1.5 / spread) / (2 * Math.PI) };
}

function phaseOf(response: OverReference, late: boolean): Judged {
  const { phase, deviation, agreement } = response;
  const degrees = (angle: number) => measured('angle', angle, 3);
  const facts = {
    expected: degrees(0),
    tolerance: said`${degrees(allowed)} either way`,
    found: degrees(phase),
    interval: measuredSpan('angle', { low: phase - 2 * deviation, high: phase + 2 * deviation }),
    because: 'Balancing, orbits and directions of travel hang on phase; a reversed channel turns them round.',
  };
  if (late || agreement < agreeing) {
    return cannotTell({ ...facts, because: 'The phase changes with the frequency: one angle does not describe it.' }, [
      'both transducers back to back, sampled at one instant',
    ]);
  }
  const reach = allowed + 2 * deviation;
  if (Math.abs(phase) <= reach) return meets(facts);
  return fails(
    facts,
    Math.abs(Math.abs(phase) - Math.PI) <= 2 * reach ? reversed(facts.found) : turnedCauses(phase, facts.found),
  );
}

function reversed(evidence: Said): readonly RivalCause[] {
  return [
    { cause: 'polarity: the cores are exchanged', evidence, next: 'Follow polarity from terminal to terminal.' },
    {
      cause: 'transducer or reference stands the other way round',
      evidence,
      next: 'Compare the arrows of both.',
    },
    { cause: 'the recorder inverts one channel', evidence, next: 'Read the channel settings.' },
  ];
}

function turnedCauses(phase: number, evidence: Said): readonly RivalCause[] {
  const quarter = Math.abs(Math.abs(phase) - Math.PI / 2) < 2 * allowed;
  return [
    ...(quarter
      ? [
          {
            cause: 'one of the two is integrated and the other is not, or another motion than designed is sensed',
            evidence,
            next: 'Read unit and integration of both channels.',
          },
        ]
      : []),
    {
      cause: 'a corner or filter that differs from what was designed',
      evidence,
      next: 'Read the filter settings; compare the phase at two frequencies.',
    },
  ];
}
