import { lineNoise } from '../../chain/formulas/noise.ts';
import type { Prediction } from '../../chain/prediction.ts';
import { type Finding, finding } from '../../finding/finding.ts';
import { bareNumber, measured, measuredChange, measuredLevel, said } from '../../finding/measure.ts';
import {
  type Answer,
  answer,
  asMotion,
  asSineDetector,
  Broken,
  fromAll,
  type Level,
  type Motion,
  thenAnswer,
} from '../../quantity/index.ts';
import { screeningRules } from '../../source/screening-rules.ts';
import { clause } from '../../source/source.ts';
import { type AlarmDay, alarmDay, type EventScales, firstDay, type WatchingSetPoint } from './alarm-day.ts';
import { eventReader, type MachineEvent } from './event-reading.ts';
import { levelOn } from './growth.ts';

/** What a chain does not tell of a part at the end of the event. */
export interface MissedPart {
  readonly part: string;
  readonly frequency: number;
  readonly why: 'read too low' | 'read too high' | 'outside the band';
  /** Indicated over true, less one. */
  readonly error: number;
  readonly truth: Level<Motion>;
  readonly indicated: Level<Motion>;
}

/** On which day an analyst first sees a part stand out of the noise of its line. */
export interface SeenPart {
  readonly part: string;
  readonly day: number | undefined;
}

export interface EventRecord {
  readonly event: string;
  readonly days: number;
  readonly alarms: readonly Answer<AlarmDay>[];
  /** Against the band and motion of the first set point that is known. */
  readonly missed: Answer<readonly MissedPart[]>;
  /** Only of a chain that passes a signal on. */
  readonly seen: Answer<readonly SeenPart[]>;
  readonly findings: readonly Finding[];
}

/** A part that is shown within this of its size is not missed. */
const shown = 0.1;

/**
 * When each alarm acts while damage grows: every part through the predicted response, summed by the detector of the set
 * point, with the noise of the chain, and read as current and counts where it is a loop. Delays of seconds do not show
 * in days. Pure: the same event and chain give the same record.
 */
export function simulatedEvent(
  event: MachineEvent,
  predicted: Prediction,
  setPoints: readonly WatchingSetPoint[],
  scales: EventScales = {},
): EventRecord {
  const still = event.parts.find(({ frequency }) => !(frequency > 0));
  if (!(event.days > 0) || still !== undefined) {
    throw new Broken('an event lasts some time, and its parts move', { days: event.days, part: still?.name ?? '' });
  }
  const alarms = setPoints.map((each) => alarmDay(event, predicted, each, scales));
  const missed = missedOf(event, predicted, alarms);
  return {
    event: event.name,
    days: event.days,
    alarms,
    missed,
    seen: seenParts(event, predicted, scales),
    findings: eventFindings(event, alarms, missed.known ? missed.value : []),
  };
}

function missedOf(
  event: MachineEvent,
  predicted: Prediction,
  alarms: readonly Answer<AlarmDay>[],
): Answer<readonly MissedPart[]> {
  const first = alarms.find((each) => each.known) ?? alarms[0];
  if (first === undefined) return answer([]);
  return thenAnswer(first, ({ level: like }) => missedParts(event, predicted, like));
}

function missedParts(event: MachineEvent, predicted: Prediction, like: Level<Motion>): Answer<readonly MissedPart[]> {
  return fromAll({ read: eventReader(event.parts, like, predicted) }, ({ read }) =>
    read.parts(event.days).flatMap(({ part, inBand, truth, indicated }): readonly MissedPart[] => {
      const error = indicated.value / truth.value - 1;
      if (inBand && Math.abs(error) <= shown) return [];
      const why = !inBand ? 'outside the band' : error < 0 ? 'read too low' : 'read too high';
      return [{ part: part.name, frequency: part.frequency, why, error, truth, indicated }];
    }),
  );
}

/** Of a chain that passes a signal on: when a part stands out of the noise of its own line. */
function seenParts(event: MachineEvent, predicted: Prediction, { lines }: EventScales): Answer<readonly SeenPart[]> {
  const { senses, signal } = predicted.chain.transducer;
  if (lines === undefined || signal === 'overall') return answer([]);
  return fromAll(
    { response: predicted.response, noise: predicted.noise, residual: predicted.residual },
    ({ noise, residual, response }) =>
      event.parts.map((part) => {
        const floor = Math.hypot(lineNoise(noise(part.frequency), lines.spacing), residual(part.frequency));
        const gain = Math.hypot(response(part.frequency).re, response(part.frequency).im);
        const least = floor * 10 ** (lines.detection / 20);
        const rms = (day: number) =>
          asMotion(asSineDetector(levelOn(part.growth, day), 'rms'), senses, part.frequency).value * gain;
        return { part: part.name, day: firstDay(event.days, (day) => rms(day) >= least) };
      }),
  );
}

const sources = [clause(screeningRules, 'response through the chain, F11, F16, F19')];

function eventFindings(
  event: MachineEvent,
  alarms: readonly Answer<AlarmDay>[],
  missed: readonly MissedPart[],
): readonly Finding[] {
  const known = alarms.flatMap((each) => (each.known ? [each.value] : []));
  return [
    ...known.flatMap((each) => late(event, each)),
    ...missed.map(({ part, frequency, why, error, truth, indicated }) =>
      finding({
        rule: 'event/part-missed',
        weight: 'warns',
        at: event.at,
        found:
          why === 'outside the band'
            ? said`${part} at ${measured('frequency', frequency)} lies outside the band of the set point`
            : said`${part} at ${measured('frequency', frequency)} is shown as ${measuredLevel(indicated)} (${measuredChange(error)})`,
        limit: measuredLevel(truth),
        because: 'What the chain does not show no set point can act on.',
        remedy: ['a chain that reaches this frequency', 'a set point of its own for this part'],
        sources,
      }),
    ),
  ];
}

/** An alarm that the chain delays, or keeps from acting at all. */
function late(event: MachineEvent, each: AlarmDay): readonly Finding[] {
  if (each.trueDay === undefined) return [];
  const delay = each.day === undefined ? undefined : each.day - each.trueDay;
  if (delay !== undefined && delay < event.days * 0.02) return [];
  return [
    finding({
      rule: 'event/alarm-late',
      weight: each.day === undefined ? 'blocks-issue' : 'warns',
      at: event.at,
      found:
        each.day === undefined
          ? said`the ${each.name} never acts in ${event.days} days`
          : said`the ${each.name} acts on day ${bareNumber(each.day, 3)}`,
      limit: said`day ${bareNumber(each.trueDay, 3)}, on which the motion itself reaches ${measuredLevel(each.level)}`,
      because: 'The chain shows less than there is: the set point is right and acts too late.',
      remedy: ['a chain that passes the frequency that grows', 'a set point of its own for it'],
      sources,
    }),
  ];
}
