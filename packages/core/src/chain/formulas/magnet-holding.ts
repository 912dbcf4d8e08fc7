import { type Finding, finding } from '../../finding/finding.ts';
import {
  aboveZeroField,
  choiceField,
  type Field,
  type Level,
  level,
  levelField,
  numberField,
  optional,
  quantityField,
  standardGravity,
} from '../../quantity/index.ts';
import { clause } from '../../source/source.ts';
import { statics } from '../../source/statics.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { optionalOutput, output, working } from '../../working/index.ts';
import { aboveZero } from './above-zero.ts';

/** A transducer on its magnet, SI. */
export interface HeldMagnet {
  readonly pull: number;
  readonly mass: number;
  /** Of the centre of gravity over the surface. */
  readonly height: number;
  /** Smallest width over which it stands. */
  readonly foot: number;
  readonly friction: number;
}

/** How a magnet gives way, in words. */
export const waysToGive = ['slips', 'tips', 'lifts'] as const;
export type WayToGive = (typeof waysToGive)[number];

/**
 * Peak accelerations at which a magnet gives way, m/s²: slips at μF/m − g, tips at F·d/(2m·h) − g, lifts at F/m − g, with
 * the weight always taken in the worst direction. Never below zero. The pull is that on this surface, with its paint,
 * curvature and thickness, not that of the data sheet. Source: statics.
 */
export function magnetGivesAt(magnet: HeldMagnet): Readonly<Record<WayToGive, number>> {
  const { pull: F, mass: m, height: h, foot: d, friction: mu } = magnet;
  aboveZero({ pull: F, mass: m, height: h, foot: d, friction: mu });
  const beyondWeight = (force: number) => Math.max(0, force / m - standardGravity);
  return { slips: beyondWeight(mu * F), tips: beyondWeight((F * d) / (2 * h)), lifts: beyondWeight(F) };
}

/** The smallest of the three, and which it is. */
export function magnetHoldsTo(magnet: HeldMagnet): { readonly acceleration: number; readonly gives: WayToGive } {
  const at = magnetGivesAt(magnet);
  const gives = waysToGive.reduce((first, way) => (at[way] < at[first] ? way : first));
  return { acceleration: at[gives], gives };
}

const peak = (value: number): Level<'acceleration'> => level('acceleration', value, 'peak');
const accelerationOf = (meaning: string, symbol: string): Field<Level<'acceleration'>> =>
  levelField(['acceleration'], meaning, { symbol, example: '10 g peak' });

export const magnetHolding = working({
  name: 'magnet-holding',
  title: 'Up to which acceleration a magnet holds its transducer',
  inputs: {
    pull: aboveZeroField(
      quantityField('force', 'Pull on this surface, as tried with a balance', { symbol: 'F', example: '200 N' }),
    ),
    mass: aboveZeroField(quantityField('mass', 'Magnet and transducer', { symbol: 'm', example: '200 g' })),
    height: aboveZeroField(
      quantityField('length', 'Centre of gravity over the surface', { symbol: 'h', example: '30 mm' }),
    ),
    foot: aboveZeroField(
      quantityField('length', 'Smallest width over which it stands; of a two-pole magnet the gap between its lines', {
        symbol: 'd',
        example: '25 mm',
      }),
    ),
    friction: aboveZeroField(
      numberField('Friction on the surface; 0.1 where oil lies', { symbol: 'μ', example: '0.2' }),
    ),
    acceleration: optional(accelerationOf('Largest acceleration there, peak', 'a')),
  },
  outputs: {
    slipsAt: output(accelerationOf('It slips at', 'a_s'), 'a_s = μ · F/m − g_n'),
    tipsAt: output(accelerationOf('It tips at', 'a_t'), 'a_t = F · d/(2 · m · h) − g_n'),
    liftsAt: output(accelerationOf('It lifts at', 'a_l'), 'a_l = F/m − g_n'),
    holdsTo: output(accelerationOf('It holds up to', 'a_h'), 'a_h = smallest of a_s, a_t and a_l'),
    gives: output(choiceField(waysToGive, 'How it gives way first', { symbol: 'way' }), 'way = which of them'),
    share: optionalOutput(numberField('Acceleration over what it holds', { symbol: 'q' }), 'q = a/a_h'),
  },
  holds:
    'a rigid body on a flat face, the weight in the worst direction, one direction of shaking at a time. It rocks and loses ' +
    'true motion far below: this tells when it falls, not when it measures.',
  sources: [clause(statics), clause(tradePractice, 'magnets give way')],
  evaluate: ({ acceleration, ...magnet }) => {
    const at = magnetGivesAt(magnet);
    const holds = magnetHoldsTo(magnet);
    const loud = acceleration === undefined ? undefined : acceleration.value;
    return {
      slipsAt: peak(at.slips),
      tipsAt: peak(at.tips),
      liftsAt: peak(at.lifts),
      holdsTo: peak(holds.acceleration),
      gives: holds.gives,
      share: loud === undefined || holds.acceleration === 0 ? undefined : loud / holds.acceleration,
    };
  },
  doubts: ({ acceleration, ...magnet }): readonly Finding[] => {
    const { acceleration: holds, gives } = magnetHoldsTo(magnet);
    const detector = acceleration !== undefined && acceleration.detector !== 'peak';
    return [
      ...(holds === 0
        ? [doubt('magnet/weight', `it ${gives} under its own weight`, 'an acceleration above zero')]
        : []),
      ...(detector ? [doubt('magnet/detector', 'the acceleration is no peak', 'a peak')] : []),
    ];
  },
  example: { pull: '200 N', mass: '200 g', height: '30 mm', foot: '25 mm', friction: '0.2', acceleration: '10 g peak' },
});

function doubt(rule: string, found: string, limit: string): Finding {
  return finding({
    rule,
    weight: 'warns',
    at: 'magnet-holding',
    found,
    limit,
    because: 'A magnet that moves measures itself, and one that falls strikes somebody.',
    remedy: ['a stronger magnet', 'a lower transducer', 'a stud'],
    sources: [clause(statics)],
  });
}
