import type { DesignedPoint } from '../../design/design.ts';
import { measuredSpan, said } from '../../finding/measure.ts';
import { fromAll, unanswered } from '../../quantity/index.ts';
import { measured as gathered } from '../../signal/measures/gathering.ts';
import { phasorOf, shaftVectors, whirl } from '../../signal/measures/orbit.ts';
import { type Tone, toneAt } from '../../signal/measures/tone.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { motionPerNumber } from '../expected.ts';
import type { MeasuredRecord } from '../measured-record.ts';
import { declaredSpeed, speedMarked, speedNear } from '../speed-of-record.ts';
import { cannotTell, checkKind, fails, type Judged, meets, wants } from './check-kind.ts';

/** A tone that is no higher than this many of its standard errors is not there. */
const sure = 10;
/** Probes that do not look a quarter turn apart, within this of it, make no orbit. */
const apart = Math.cos((10 * Math.PI) / 180);
const letter = (name: string) => /(?:^|[^a-z])([xy])(?:[^a-z]|$)/i.exec(name)?.[1]?.toLowerCase();

/** Which way the shaft goes round in its bearing once per turn: with its rotation, unless two channels are exchanged. */
export const orbitDirection = checkKind({
  kind: 'orbit-direction',
  title: 'Direction of the orbit',
  question: 'Are the two probes of the bearing the ones they are said to be?',
  on: ['running'],
  applies: (designed) => pairOf(designed) !== undefined,
  sources: [clause(tradePractice, 'once per turn the orbit runs forward; backward means channels exchanged')],
  judge: (looked): readonly Judged[] => {
    const { designed, record, others, serving } = looked;
    const mine = letter(record.channel);
    if (mine === 'y') return [];
    const beside = others.find(
      (each) => each.recording === record.recording && each.at === record.at && letter(each.channel) === 'y',
    );
    if (mine !== 'x' || beside === undefined) {
      return [
        cannotTell({ because: 'Both probes of the pair, named X and Y, are not in this recording.' }, [
          'one recording of both probes together, the channels named X and Y',
        ]),
      ];
    }
    const known = fromAll(
      {
        rate: record.measures.rate,
        other: beside.measures.rate,
        speed: declaredSpeed(record),
        pair: pairOf(designed)!,
        x: motionPerNumber(designed, record),
        y: motionPerNumber(designed, beside),
      },
      (each) => each,
    );
    if (!known.known) return wants(known.missing);
    const { rate, speed, pair, x, y } = known.value;
    const turning = speedMarked(serving) ?? speedNear(record.measures.excerpt, rate, speed) ?? speed;
    const [first, second] = [toneOf(record, rate, turning), toneOf(beside, rate, turning)];
    const facts = {
      expected: 'forward, with the rotation',
      tolerance: 'clear of a line: the smaller half axis is four times what the noise leaves open',
      because: 'Unbalance drives the orbit forward; a rub or exchanged channels turn it round.',
    };
    if (
      rate !== known.value.other ||
      Math.abs(Math.sin(pair.first - pair.second)) < apart ||
      first === undefined ||
      second === undefined
    ) {
      return [
        cannotTell({ ...facts, because: 'Once per turn does not stand out of the noise on both probes.' }, [
          'the machine at speed, both probes a quarter turn apart and sampled together',
        ]),
      ];
    }
    const seen = whirl(shaftVectors(scaledPhasor(first, x.scale), scaledPhasor(second, y.scale), pair), pair.rotating);
    const error = Math.hypot(first.amplitudeError * x.scale, second.amplitudeError * y.scale);
    const found = said`${seen.precession}`;
    const interval = measuredSpan('displacement', {
      low: Math.max(0, seen.minor - 2 * error),
      high: seen.minor + 2 * error,
    });
    if (seen.precession === 'on a line' || seen.minor < 4 * error || seen.minor < seen.major / 20) {
      return [
        cannotTell({ ...facts, found: 'a narrow orbit', interval, because: 'So narrow an orbit tells no direction.' }, [
          'a record at another speed or load, where the orbit is wider',
        ]),
      ];
    }
    const shown = { ...facts, found, interval };
    if (seen.precession === 'forward') return [meets(shown)];
    return [
      fails(shown, [
        {
          cause: 'channels X and Y are exchanged',
          evidence: found,
          next: 'Push the shaft at rest towards one probe and see which channel moves.',
        },
        {
          cause: 'angles or rotation were stated as seen from the other end',
          evidence: found,
          next: 'Compare drawing and arrow on the casing with the plant file.',
        },
        {
          cause: 'polarity of one channel is reversed',
          evidence: found,
          next: 'Both gap voltages must go the same way when the shaft comes nearer.',
        },
        {
          cause: 'the machine itself: a rub, or a speed between two split critical speeds',
          evidence: found,
          next: 'Record a run-down with both probes and the mark of each turn.',
        },
      ]),
    ];
  },
});

function toneOf({ measures }: MeasuredRecord, rate: number, speed: number): Tone | undefined {
  const tone = gathered(toneAt(speed, rate), measures.excerpt);
  return tone.known && tone.value.amplitude > sure * tone.value.amplitudeError ? tone.value : undefined;
}

function scaledPhasor(tone: Tone, scale: number) {
  return phasorOf({ ...tone, amplitude: tone.amplitude * scale });
}

/** Angles are stated from the top, to the right positive; an orbit counts them anticlockwise from the right. */
function pairOf({ stated, point }: DesignedPoint) {
  const pair = stated.probes?.find((each) => each.kind === 'xy-pair');
  if (pair?.kind !== 'xy-pair') return undefined;
  const { angleX, angleY, rotation } = pair.sheet.values;
  const told = <T>(value: { readonly known: boolean; readonly value?: T }, what: string) =>
    value.known ? ({ known: true, value: value.value as T } as const) : unanswered([{ of: point.of, what }]);
  return fromAll(
    {
      x: told<number>(angleX, 'angle of probe X'),
      y: told<number>(angleY, 'angle of probe Y'),
      rotation: told<string>(rotation, 'rotation'),
    },
    (known) => ({
      first: Math.PI / 2 - known.x,
      second: Math.PI / 2 - known.y,
      rotating: known.rotation === 'clockwise' ? ('clockwise' as const) : ('anticlockwise' as const),
    }),
  );
}
