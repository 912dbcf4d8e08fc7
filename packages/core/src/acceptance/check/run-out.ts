import { shaftSpeedIn } from '../../acquisition/set-kind.ts';
import { allowedRunout } from '../../chain/proximity/arrangement/slow-roll.ts';
import { runoutAllowance, shaftAcceptance } from '../../demand/zones/shaft-acceptance.ts';
import type { DesignedMachine, DesignedPoint } from '../../design/design.ts';
import { measured, measuredLevel, measuredSpan, type Said, said } from '../../finding/measure.ts';
import { type Answer, fromAll, type Level, level, unanswered } from '../../quantity/index.ts';
import { measured as gathered } from '../../signal/measures/gathering.ts';
import { toneAt } from '../../signal/measures/tone.ts';
import { api670 } from '../../source/api-670.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { chainOf, motionPerNumber } from '../expected.ts';
import { meanOverTurn } from '../mean-over-turn.ts';
import type { MeasuredRecord } from '../measured-record.ts';
import { speedMarked, speedNear } from '../speed-of-record.ts';
import {
  type CheckedRecord,
  cannotTell,
  checkKind,
  fails,
  type Judged,
  meets,
  type RivalCause,
  wants,
} from './check-kind.ts';

/** Slow is below this share of the highest speed, and of the first critical speed. */
const slow = { speed: 0.1, critical: 0.3 } as const;
const fewestTurns = 5;
/** A vector that is the same at speed within this share of it is no motion. */
const unchanged = 0.2;

/** What a probe shows of a shaft that only turns and does not vibrate. */
export const runOut = checkKind({
  kind: 'run-out',
  title: 'Slow-roll run-out',
  question: 'Is the track under the probe round and even enough for what is to be read there?',
  on: ['slow-roll', 'running'],
  applies: (designed) => chainOf(designed)?.transducer.reference === 'shaft-relative' && marks(designed) === false,
  sources: [
    clause(api670, 'run-out', 'from memory'),
    clause(tradePractice, 'slow roll below a tenth of the speed and 0.3 of the first critical', 'from memory'),
  ],
  judge: (looked): readonly Judged[] =>
    looked.record.occasion.kind === 'slow-roll' ? atSlowRoll(looked) : atSpeed(looked),
});

/** A probe that looks at the mark of each turn, or at a collar, shows no run-out of a round track. */
function marks({ stated }: DesignedPoint): boolean {
  return stated.probes?.some((each) => each.kind === 'once-per-turn' || each.kind === 'thrust-pair') === true;
}

function allowedAt(designed: DesignedPoint, machine: DesignedMachine): Answer<Level<'displacement'>> {
  const own = designed.stated.probes?.find((each) => each.kind === 'slow-roll');
  if (own?.kind === 'slow-roll' && designed.probes !== undefined) {
    return allowedRunout(own.sheet, designed.probes.around);
  }
  return fromAll({ fastest: fastestOf(designed, machine) }, (known) => runoutAllowance(shaftAcceptance(known.fastest)));
}

function fastestOf({ stated }: DesignedPoint, machine: DesignedMachine): Answer<number> {
  const fastest = shaftSpeedIn(
    machine.frequencies,
    stated.shaft === undefined ? {} : { shaft: stated.shaft },
    'highest',
  );
  return fastest.known && !(fastest.value > 0)
    ? unanswered([{ of: machine.stated.name, what: 'highest speed, above zero' }])
    : fastest;
}

function atSlowRoll({ designed, machine, record, serving, others }: CheckedRecord): readonly Judged[] {
  if (record.occasion.kind !== 'slow-roll') return [];
  const { speed } = record.occasion.sheet.values;
  const known = fromAll(
    {
      rate: record.measures.rate,
      speed: speed.known ? speed : unanswered([{ of: record.recording, what: 'speed of the slow roll' }]),
      per: motionPerNumber(designed, record),
      allowed: allowedAt(designed, machine),
      fastest: fastestOf(designed, machine),
    },
    (each) => each,
  );
  if (!known.known) return wants(known.missing);
  const { rate, per, allowed, fastest } = known.value;
  const stated = known.value.speed as number;
  const critical = designed.probes?.around.firstCritical;
  const most = Math.min(
    slow.speed * fastest,
    critical?.known === true ? slow.critical * critical.value : Number.POSITIVE_INFINITY,
  );
  const facts = {
    expected: said`up to ${measuredLevel(allowed)}`,
    tolerance: 'none beyond the allowance',
    because: 'Run-out is read as vibration that is not there; only a slow roll tells it.',
  };
  if (stated > most * (1 + 1e-9)) {
    return [
      cannotTell(
        { ...facts, because: said`At ${measured('shaft speed', stated)} bow and unbalance move the shaft already.` },
        [said`a record below ${measured('shaft speed', most)}`],
      ),
    ];
  }
  const { excerpt } = record.measures;
  const turning = speedMarked(serving) ?? speedNear(excerpt, rate, stated) ?? stated;
  const mean = meanOverTurn(excerpt, rate, turning);
  if (mean === undefined || mean.turns < fewestTurns) {
    return [
      cannotTell({ ...facts, because: said`The record holds fewer than ${fewestTurns} turns.` }, [
        said`${measured('time', (2 * fewestTurns) / stated)} or more at this speed`,
      ]),
    ];
  }
  const scale = Math.abs(per.scale);
  const found = level('displacement', mean.peakToPeak * scale, 'peak-to-peak');
  const reach = mean.error * scale;
  const shown = {
    ...facts,
    found: said`${measuredLevel(found)} over ${mean.turns} turns`,
    interval: measuredSpan('displacement', {
      low: Math.max(0, found.value - reach),
      high: found.value + reach,
    }),
  };
  if (found.value - reach <= allowed.value && found.value + reach > allowed.value) {
    return [
      cannotTell({ ...shown, because: 'The allowance lies within what the noise leaves open.' }, [
        'a longer record, so that noise averages out',
      ]),
    ];
  }
  if (found.value <= allowed.value) return [meets(shown)];
  const once = toneOf(record, rate, turning);
  const spike = once !== undefined && mean.peakToPeak > 4 * once;
  return [
    fails(
      shown,
      tooMuch(
        shown.found,
        spike,
        others.some((each) => each.at === record.at),
      ),
    ),
  ];
}

function toneOf({ measures }: MeasuredRecord, rate: number, speed: number): number | undefined {
  const tone = gathered(toneAt(speed, rate), measures.excerpt);
  return tone.known ? tone.value.amplitude : undefined;
}

/** Whether the vector at speed is that of the slow roll: then it is the track, and no motion of the shaft. */
function atSpeed({ designed, machine, record, others }: CheckedRecord): readonly Judged[] {
  const rolled = others.find(
    (each) => each.at === record.at && each.channel === record.channel && each.occasion.kind === 'slow-roll',
  );
  if (rolled === undefined || rolled.occasion.kind !== 'slow-roll') return [];
  const slowSpeed = rolled.occasion.sheet.values.speed;
  const fast = record.occasion.kind === 'running' ? record.occasion.sheet.values.speed : undefined;
  const known = fromAll(
    {
      rate: record.measures.rate,
      slowRate: rolled.measures.rate,
      slowSpeed: slowSpeed.known ? slowSpeed : unanswered([{ of: rolled.recording, what: 'speed' }]),
      fast: fast?.known === true ? fast : unanswered([{ of: record.recording, what: 'speed' }]),
      per: motionPerNumber(designed, record),
      slowPer: motionPerNumber(designed, rolled),
      allowed: allowedAt(designed, machine),
    },
    (each) => each,
  );
  if (!known.known) return [];
  const { rate, slowRate, per, slowPer, allowed } = known.value;
  const speed = speedNear(record.measures.excerpt, rate, known.value.fast as number) ?? (known.value.fast as number);
  const slowTurn = speedNear(rolled.measures.excerpt, slowRate, known.value.slowSpeed as number);
  const [now, then] = [
    toneOf(record, rate, speed),
    toneOf(rolled, slowRate, slowTurn ?? (known.value.slowSpeed as number)),
  ];
  if (now === undefined || then === undefined) return [];
  const [fastPeak, slowPeak] = [2 * now * Math.abs(per.scale), 2 * then * Math.abs(slowPer.scale)];
  // Below half the allowance there is nothing to explain.
  if (slowPeak < allowed.value / 2) return [];
  const found = said`${measuredLevel(level('displacement', fastPeak, 'peak-to-peak'))} once per turn at speed, ${measuredLevel(level('displacement', slowPeak, 'peak-to-peak'))} at slow roll`;
  const facts = {
    of: 'at speed',
    expected: 'once per turn at speed differs from the slow roll',
    tolerance: said`a fifth of it`,
    found,
    because: 'Vibration follows the speed; scratches and residual magnetism do not.',
  };
  if (Math.abs(fastPeak - slowPeak) > unchanged * slowPeak) return [meets(facts)];
  return [
    cannotTell(
      {
        ...facts,
        because: 'As large at speed as at slow roll: what is read at speed may be run-out alone.',
      },
      ['the phase of both against the mark of each turn; where it is the same too, it is the track'],
    ),
  ];
}

function tooMuch(evidence: Said, spike: boolean, more: boolean): readonly RivalCause[] {
  const scratch = {
    cause: 'a scratch or dent in the track',
    evidence: said`${evidence}, as a short spike in each turn`,
    next: 'Look at the track; burnish it or move the probe to a sound one.',
  };
  return [
    ...(spike ? [scratch] : []),
    {
      cause: 'residual magnetism or uneven steel of the track',
      evidence: more ? said`${evidence}; compare with the vector at speed` : evidence,
      next: 'Measure the field at the track; demagnetise and roll again.',
    },
    { cause: 'the rotor is bowed', evidence, next: 'Roll until it is warm and straight, then record again.' },
    { cause: 'the track is out of round', evidence, next: 'Hold a dial gauge against the track.' },
  ];
}
