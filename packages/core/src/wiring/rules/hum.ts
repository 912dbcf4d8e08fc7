import { type Finding, finding } from '../../finding/finding.ts';
import { measuredLevel, said } from '../../finding/measure.ts';
import { type Answer, answerOf, asMotion, asSineDetector, fromAll, type Level } from '../../quantity/index.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import type { WiredPoint } from '../graph.ts';
import type { GroundLoop } from '../ground-loops.ts';
import { humAs } from '../hum.ts';
import { wiringRule } from './rule.ts';

const id = 'wiring/hum';
const sources = [clause(tradePractice, 'hum at standstill below target − 10 dB')];
/** Hum must lie so far below the smallest level of a target: 10 dB. */
const below = 10 ** (-10 / 20);

export const hum = wiringRule({
  id,
  title: 'What a ground loop adds lies below what is looked for',
  prose:
    'The voltage between two earths, once measured, tells the most a loop through the signal can add: all of it. Read as a ' +
    'vibration at the frequency of the mains it is compared with the smallest level of every target of the point.',
  remedy: ['open the loop', 'measure at standstill: what stays is hum'],
  sources,
  findings: ({ points, loops }) => points.flatMap((each) => humAt(each, loops)),
});

function humAt({ point, chain, wiring }: WiredPoint, loops: readonly GroundLoop[]): readonly Finding[] {
  const own = loops.find((loop) => loop.through === 'signal' && loop.points.includes(point.of));
  if (wiring?.values.earthVoltage === undefined || own === undefined) return [];
  const predicted = fromAll(
    {
      voltage: answerOf(wiring.values.earthVoltage, point.of, 'voltage between the earths'),
      mains: answerOf<number>(wiring.values.mains, point.of, 'mains frequency'),
      sensitivity: chain.sensitivity,
    },
    ({ voltage, mains, sensitivity }) => ({ read: humAs(voltage, sensitivity, chain.transducer.senses), mains }),
  );
  if (!predicted.known) {
    const names = predicted.missing.map((each) => `${each.what} of ${each.of}`).join(', ');
    return [
      finding({
        rule: id,
        weight: 'question',
        at: point.of,
        found: `not known: ${names}`,
        limit: 'hum 10 dB below the smallest level of each target',
        because: 'The ground loop adds hum, and how much cannot be told.',
        remedy: own.remedy,
        sources,
        asks: `What is the ${names}?`,
      }),
    ];
  }
  const { read, mains } = predicted.value;
  return point.targets.flatMap((target): readonly Finding[] => {
    if (target.observable.atRest || !isNear(target.band, mains) || !target.smallest.known) return [];
    const smallest = target.smallest.value;
    const heard: Level = asMotion(asSineDetector(read, smallest.detector), smallest.quantity, mains);
    if (heard.value <= smallest.value * below) return [];
    return [
      finding({
        rule: id,
        weight: 'blocks-issue',
        at: point.of,
        found: measuredLevel(heard),
        limit: said`10 dB below the smallest level of ${target.name}, ${measuredLevel(smallest)}`,
        because: 'All of the voltage between the earths, read as a vibration at the frequency of the mains.',
        remedy: own.remedy,
        sources,
      }),
    ];
  });
}

/** Whether the mains lies in the band a target is looked for in, or within a tenth of its ends. */
function isNear(band: Answer<{ readonly low: number; readonly high: number }>, mains: number): boolean {
  if (!band.known) return true;
  return mains >= band.value.low * 0.9 && mains <= band.value.high * 1.1;
}
