import { type Finding, finding } from '../../finding/finding.ts';
import { bareNumber, measured, said } from '../../finding/measure.ts';
import {
  type Answer,
  aboveZeroField,
  answerOf,
  fromAll,
  notBelowZeroField,
  optional,
  quantityField,
  type Sheet,
  type Stated,
  si,
} from '../../quantity/index.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { optionalOutput, output, working } from '../../working/index.ts';
import type { responseTimeSheet } from './statement.ts';

/** What a trip waits for, one after the other, in seconds. */
export interface ResponseTimes {
  readonly detector: number;
  readonly filter: number;
  readonly scan: number;
  readonly delay: number;
  readonly finalElement: number;
}

/** Turns of the shaft that a slow machine's trip must wait for, so that one event is not taken for a state. */
export const leastTurns = 10;

/**
 * Time from the level at the bearing to the machine that stops: detector + filter + scan + delay + final element. Each
 * waits for the one before, so the times add; of the detector one time constant counts, in which an exponential
 * detector shows 63 % of a step. Source: common practice.
 */
export function responseTime({ detector, filter, scan, delay, finalElement }: ResponseTimes): number {
  return detector + filter + scan + delay + finalElement;
}

const practice = clause(tradePractice, 'trip time: sensor time constant, filter, scan, delay, final element');
const seconds = (meaning: string, symbol: string, example: string) =>
  notBelowZeroField(quantityField('time', meaning, { symbol, example }));

export const responseTimeWorking = working({
  name: 'trip-response-time',
  title: 'From the level at the bearing to the machine that stops',
  inputs: {
    detector: seconds('Time constant of the detector', 't_d', '0.5 s'),
    filter: seconds('Delay of filters before it', 't_f', '0.05 s'),
    scan: seconds('Time between two looks of the controller', 't_s', '0.1 s'),
    delay: seconds('How long the level must stand', 't_w', '3 s'),
    finalElement: seconds('From the order to stop until the machine no longer drives', 't_e', '0.5 s'),
    slowest: optional(
      aboveZeroField(
        quantityField('shaft speed', 'Slowest speed of the shaft', { symbol: 'n', example: '8000 r/min' }),
      ),
    ),
    allowed: optional(seconds('Most time that damage allows', 'T_a', '5 s')),
  },
  outputs: {
    total: output(seconds('In all', 'T', '4.15 s'), 'T = t_d + t_f + t_s + t_w + t_e'),
    leastDelay: optionalOutput(
      seconds('Least delay at the slowest speed: ten turns', 'T_10', '0.075 s'),
      `T_10 = ${leastTurns}/n`,
    ),
    spare: optionalOutput(
      quantityField('time', 'What is left of the allowed time', { symbol: 'T_l', example: '0.85 s' }),
      'T_l = T_a − T',
    ),
  },
  holds:
    'one after the other, a step well above the set point; a level just above it takes the detector longer, and a level that grows slowly is told by its growth, not by these times.',
  sources: [practice],
  evaluate: ({ detector, filter, scan, delay, finalElement, slowest, allowed }) => {
    const total = responseTime({ detector, filter, scan, delay, finalElement });
    return {
      total: si('time', total),
      leastDelay: slowest === undefined ? undefined : si('time', leastTurns / slowest),
      spare: allowed === undefined ? undefined : si('time', allowed - total),
    };
  },
  doubts: (typed) => {
    const total = responseTime(typed);
    return [
      ...(typed.slowest === undefined ? [] : tooQuick('trip-response-time', typed.delay, typed.slowest)),
      ...(typed.allowed === undefined ? [] : tooSlow('trip-response-time', total, typed.allowed)),
    ];
  },
  example: {
    detector: '0.5 s',
    filter: '0.05 s',
    scan: '0.1 s',
    delay: '3 s',
    'final-element': '0.5 s',
    slowest: '8000 r/min',
    allowed: '5 s',
  },
});

/** What each wait of a point is, and the sum of all; unknown names what is missing. */
export function statedResponseTime(
  sheet: Sheet<typeof responseTimeSheet>,
  delay: Stated<number>,
  at: string,
): { readonly total: Answer<number>; readonly allowed: Answer<number>; readonly times: Answer<ResponseTimes> } {
  const { detector, filter, scan, finalElement, allowed } = sheet.values;
  const of = `${at}, response time`;
  const times = fromAll(
    {
      detector: answerOf<number>(detector, of, 'detector'),
      filter: answerOf<number>(filter, of, 'filter'),
      scan: answerOf<number>(scan, of, 'scan'),
      finalElement: answerOf<number>(finalElement, of, 'final element'),
      delay: answerOf<number>(delay, at, 'delay'),
    },
    (known) => known,
  );
  return {
    times,
    total: fromAll({ times }, (known) => responseTime(known.times)),
    allowed: answerOf<number>(allowed, of, 'allowed time'),
  };
}

export function tooSlow(at: string, total: number, allowed: number): readonly Finding[] {
  if (total <= allowed * (1 + 1e-9)) return [];
  return [
    finding({
      rule: 'alarm/response-time',
      weight: 'blocks-issue',
      at,
      found: measured('time', total),
      limit: measured('time', allowed),
      because: 'The machine would be damaged before it stops: the trip is there and comes too late.',
      remedy: ['a shorter delay', 'a faster detector or scan', 'a faster final element', 'a lower set point'],
      sources: [practice],
    }),
  ];
}

export function tooQuick(at: string, delay: number, slowest: number): readonly Finding[] {
  const least = leastTurns / slowest;
  if (delay >= least * (1 - 1e-9)) return [];
  return [
    finding({
      rule: 'alarm/response-time',
      weight: 'warns',
      at,
      found: measured('time', delay),
      limit: measured('time', least),
      because: said`The shaft turns ${bareNumber(delay * slowest, 2)} times within the delay at its slowest: single events would trip it.`,
      remedy: ['a longer delay', 'a set point for slow running of its own'],
      sources: [practice],
    }),
  ];
}
