import { quarterAboveBaseline } from '../alarm/policies/quarter-above-baseline.ts';
import {
  type LoopScale,
  type RegisterEntry,
  type RegisterRow,
  register,
  type VoltageScale,
} from '../alarm/register.ts';
import { alarmRules } from '../alarm/rules/rules.ts';
import { type SetPoints, setPoints } from '../alarm/set-points.ts';
import type { MeasuringChain } from '../chain/chain.ts';
import type { InputCard } from '../chain/formulas/counts-scaling.ts';
import type { MeasuringPoint } from '../demand/measuring-point.ts';
import type { Boundaries } from '../demand/zones/zone-table.ts';
import type { Finding } from '../finding/finding.ts';
import { type Answer, answerOf, fromAll, type Level, level, type Motion } from '../quantity/index.ts';
import type { AlarmStatement } from './plant.ts';

/** When somebody is told: the levels, and how each is read on the loop and on the card. */
export interface PointAlarms {
  readonly stated: AlarmStatement;
  readonly setPoints: SetPoints;
  readonly register: readonly RegisterRow[];
  readonly findings: readonly Finding[];
}

/** Set points of a point from the limits of its machine and its baseline, through the chain that will carry them. */
export function pointAlarms(
  point: MeasuringPoint,
  stated: AlarmStatement,
  boundaries: Answer<Boundaries>,
  chain: MeasuringChain | undefined,
  slowest: Answer<number>,
): PointAlarms {
  const points = setPoints({ at: point.of, baseline: stated.baseline, boundaries, policy: quarterAboveBaseline });
  const { loop, card } = chain === undefined ? {} : loopAndCard(chain);
  const voltage = chain === undefined ? undefined : voltageScale(chain, boundaries, stated);
  const rows = register(entriesOf(points, stated, loop, point.of), {
    ...(loop === undefined ? {} : { loop }),
    ...(card === undefined ? {} : { card }),
    ...(voltage === undefined ? {} : { voltage }),
  });
  const range = chain?.transducer.oneNumber?.range;
  const subject = {
    at: point.of,
    rows,
    slowest,
    baseline: stated.baseline,
    ...(stated.logic === undefined ? {} : { logic: stated.logic }),
    ...(stated.response === undefined ? {} : { response: stated.response }),
    ...(loop === undefined ? {} : { loop }),
    ...(range === undefined
      ? {}
      : { output: fromAll({ range }, ({ range: r }) => ({ quantity: r.quantity, detector: r.detector })) }),
  };
  return {
    stated,
    setPoints: points,
    register: rows,
    findings: [...points.findings, ...alarmRules.flatMap((rule) => rule.findings(subject))],
  };
}

/** What the loop of a chain and the card at its end make of a value; a chain without a loop has neither. */
export function loopAndCard({ transducer, input }: MeasuringChain): {
  readonly loop?: Answer<LoopScale>;
  readonly card?: Answer<InputCard>;
} {
  const { oneNumber } = transducer;
  const { loopCard } = input;
  return {
    ...(oneNumber === undefined ? {} : { loop: loopScale(oneNumber.range) }),
    ...(loopCard === undefined ? {} : { card: fromAll({ ...loopCard }, (known) => known) }),
  };
}

/** Volts at the output of a transducer that puts out the motion the set points are stated in. */
function voltageScale(
  { transducer }: MeasuringChain,
  boundaries: Answer<Boundaries>,
  stated: AlarmStatement,
): Answer<VoltageScale> | undefined {
  if (transducer.signal !== 'dynamic') return undefined;
  const own = stated.setPoints?.find((each) => each.level.known)?.level;
  const like = boundaries.known
    ? boundaries.value.bc
    : [stated.baseline, own].find((each) => each?.known === true)?.value;
  if (like?.quantity !== transducer.senses) return undefined;
  return fromAll({ volts: transducer.sensitivity }, ({ volts }) => ({ of: transducer.senses, voltsPer: volts }));
}

/** 4 mA is the zero of the range, 20 mA its end. */
function loopScale(range: Answer<Level<Motion>>): Answer<LoopScale> {
  return fromAll({ range }, ({ range: high }) => ({ low: level(high.quantity, 0, high.detector), high }));
}

function entriesOf(
  points: SetPoints,
  stated: AlarmStatement,
  loop: Answer<LoopScale> | undefined,
  of: string,
): readonly RegisterEntry[] {
  const delay = stated.delay;
  const baseline = answerOf(stated.baseline, of, 'baseline');
  const ends: readonly RegisterEntry[] =
    loop === undefined
      ? []
      : [
          { name: 'zero', level: fromAll({ loop }, ({ loop: scale }) => scale.low), because: 'live zero of the loop' },
          { name: 'range', level: fromAll({ loop }, ({ loop: scale }) => scale.high), because: 'end of the range' },
        ];
  return [
    ...ends.slice(0, 1),
    { name: 'baseline', level: baseline, because: 'this machine when it was known to be well' },
    { name: 'alert', level: points.alert, because: points.reasons.alert, delay },
    { name: 'trip', level: points.trip, because: points.reasons.trip, delay: stated.tripDelay ?? delay },
    ...(stated.setPoints ?? []).map((each) => ({
      name: each.name,
      does: each.does,
      level: answerOf(each.level, `${of}/${each.name}`, 'level'),
      because: each.because,
      delay: each.delay,
    })),
    ...ends.slice(1),
  ];
}
