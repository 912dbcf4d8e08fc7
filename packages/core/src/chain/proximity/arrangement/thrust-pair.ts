import type { Finding } from '../../../finding/finding.ts';
import { measured, said } from '../../../finding/measure.ts';
import {
  type Answer,
  aboveZeroField,
  fromAll,
  notBelowZeroField,
  optional,
  quantityField,
  type Sheet,
  textField,
  valueIfStated,
} from '../../../quantity/index.ts';
import { api670 } from '../../../source/api-670.ts';
import { clause } from '../../../source/source.ts';
import { tradePractice } from '../../../source/trade-practice.ts';
import type { Derived } from '../../../uncertainty/contribution.ts';
import { thrustVoltages } from '../thrust-positions.ts';
import { arrangementKind, askedFor, derivedFrom, type ProbeRow, rowOf, saying, statedIn } from './arrangement-kind.ts';

const sources = [
  clause(api670, 'axial position', 'from memory'),
  clause(tradePractice, 'float of thrust bearings, 0.2 to 1 mm', 'from memory'),
];

const dataSheet = {
  float: aboveZeroField(quantityField('length', 'Whole float of the thrust bearing, cold', { example: '0.35 mm' })),
  alarmBeyond: notBelowZeroField(
    quantityField('length', 'Alarm, beyond either end of the float', { example: '0.25 mm' }),
  ),
  tripBeyond: notBelowZeroField(quantityField('length', 'Trip, beyond either end of the float', { example: '0.4 mm' })),
  gapVoltage: quantityField('voltage', 'Voltage with the collar in the middle of its float', { example: '-10 V' }),
  toward: textField('Which thrust moves the collar toward the probes', { example: 'thrust on the active side' }),
  remark: optional(textField('Where the two probes stand, and what they look at')),
} as const;

type ThrustSheet = Sheet<typeof dataSheet>;

const asked = {
  float: {
    asks: 'What is the whole float of the thrust bearing, cold? The bearing drawing or a bump check says.',
    because: 'Alarm and trip begin where the float ends.',
  },
  alarmBeyond: {
    asks: 'How far beyond the float does the alarm lie?',
    because: 'It is the room that is left to act in.',
  },
  tripBeyond: {
    asks: 'How far beyond the float does the trip lie? The maker of the machine says what the wheels have.',
    because: 'Beyond it the wheels touch.',
  },
  gapVoltage: {
    asks: 'At which voltage is the collar in the middle of its float?',
    because: 'Every voltage of the table counts from there.',
  },
  toward: {
    asks: 'Does the collar come nearer to the probes with thrust on the active or on the inactive side?',
    because: 'With the sense exchanged the alarm of one side acts for the other.',
  },
} as const;

/** Positions of the table, in its order, and the field that tells how far beyond the float each lies. */
const positions = [
  { name: 'end-of-float', beyond: undefined },
  { name: 'alarm', beyond: 'alarmBeyond' },
  { name: 'trip', beyond: 'tripBeyond' },
] as const;

function positionOf(sheet: ThrustSheet, beyond: (typeof positions)[number]['beyond']): Answer<number> {
  const half = fromAll({ float: statedIn(sheet, 'float') }, ({ float }) => float / 2);
  if (beyond === undefined) return half;
  return fromAll({ half, more: statedIn(sheet, beyond) }, (known) => known.half + known.more);
}

function positionDerived(
  sheet: ThrustSheet,
  beyond: (typeof positions)[number]['beyond'],
  position: Answer<number>,
): Answer<Derived> {
  const float = statedIn(sheet, 'float');
  if (beyond === undefined) {
    return derivedFrom('x = float / 2', { float, position }, (known) => {
      return said`${measured('length', known.float, 6)} / 2 = ${measured('length', known.position)}`;
    });
  }
  return derivedFrom('x = float / 2 + beyond', { float, position, more: statedIn(sheet, beyond) }, (known) => {
    return said`${measured('length', known.float, 6)} / 2 + ${measured('length', known.more, 6)} = ${measured('length', known.position)}`;
  });
}

/** Two probes on the thrust collar or the end of the shaft. */
export const thrustPair = arrangementKind({
  kind: 'thrust-pair',
  name: 'Two axial probes',
  dataSheet,
  sources,
  rows: (sheet, around) =>
    positions.flatMap(({ name, beyond }): readonly ProbeRow[] => {
      const position = positionOf(sheet, beyond);
      const volts = fromAll({ position, centre: statedIn(sheet, 'gapVoltage'), system: around.system }, (known) =>
        thrustVoltages(known.centre, known.position, known.system.scaleFactor),
      );
      const along = (which: 'toward' | 'away') =>
        derivedFrom(
          `V = V_0 ${which === 'toward' ? '+' : '−'} S · x`,
          { position, centre: statedIn(sheet, 'gapVoltage'), system: around.system, volts },
          ({ position: x, centre, system: { scaleFactor }, volts: found }) =>
            said`${measured('voltage', centre, 6)} ${which === 'toward' ? '+' : '−'} ${measured('voltage per displacement', scaleFactor, 6)} · ${measured('length', x, 6)} = ${measured('voltage', found[which])}`,
        );
      const side = (which: 'toward' | 'away') => fromAll({ volts }, (known) => known.volts[which]);
      return [
        rowOf(
          name,
          'length',
          position,
          'from the middle of the float, to either side',
          positionDerived(sheet, beyond, position),
        ),
        rowOf(`${name}-toward`, 'voltage', side('toward'), 'the collar nearer to the probes', along('toward')),
        rowOf(`${name}-away`, 'voltage', side('away'), 'the collar farther from the probes', along('away')),
      ];
    }),
  doubts: (sheet, around) => {
    const say = saying(around.at, sources);
    return [
      ...askedFor(sheet, around, asked, sources),
      ...plausible(sheet, say),
      ...inOrder(sheet, say),
      ...insideRange(sheet, around, say),
    ];
  },
});

/** Floats of thrust bearings that are neither seized nor worn out. */
const usualFloat = { low: 0.1e-3, high: 1e-3 } as const;

type Say = ReturnType<typeof saying>;

function plausible(sheet: ThrustSheet, say: Say): readonly Finding[] {
  const float = valueIfStated(sheet.values.float);
  if (float === undefined || (float >= usualFloat.low && float <= usualFloat.high)) return [];
  return [
    say('float-unusual', 'question', {
      found: said`a float of ${measured('length', float)}`,
      limit: said`${measured('length', usualFloat.low)} to ${measured('length', usualFloat.high)}`,
      because: 'No thrust bearing floats so far or so little; the unit is probably another one.',
      remedy: ['check the unit of the float on the bearing drawing'],
      asks: said`Is the float really ${measured('length', float)}, or was it read in millimetres for inches or the other way round?`,
    }),
  ];
}

function inOrder(sheet: ThrustSheet, say: Say): readonly Finding[] {
  const [alarm, trip] = [valueIfStated(sheet.values.alarmBeyond), valueIfStated(sheet.values.tripBeyond)];
  if (alarm === undefined || trip === undefined || alarm < trip) return [];
  return [
    say('thrust-order', 'blocks-issue', {
      found: measured('length', alarm),
      limit: measured('length', trip),
      because: 'The alarm is not before the trip: the machine would stop before anybody is told.',
      remedy: ['check that the two were not exchanged', 'lower the alarm'],
    }),
  ];
}

function insideRange(sheet: ThrustSheet, around: Parameters<typeof askedFor>[1], say: Say): readonly Finding[] {
  const known = fromAll(
    { trip: positionOf(sheet, 'tripBeyond'), centre: statedIn(sheet, 'gapVoltage'), system: around.system },
    (each) => each,
  );
  if (!known.known) return [];
  const { trip, centre, system } = known.value;
  const { toward, away } = thrustVoltages(centre, trip, system.scaleFactor);
  const ends = {
    low: -system.scaleFactor * system.linearRange.high,
    high: -system.scaleFactor * system.linearRange.low,
  };
  return (
    [
      ['toward', toward],
      ['away from', away],
    ] as const
  )
    .filter(([, volts]) => volts < ends.low || volts > ends.high)
    .map(([way, volts]) =>
      say('thrust-outside-range', 'blocks-issue', {
        found: said`the trip with the collar ${way} the probes: ${measured('voltage', volts)}`,
        limit: said`${measured('voltage', ends.low)} to ${measured('voltage', ends.high)}, the linear range of the set`,
        because: 'Beyond the linear range the voltage hardly moves any more: this trip never acts, or acts as not-OK.',
        remedy: ['a probe with a longer range', 'set the gap so that both trips lie inside'],
      }),
    );
}
