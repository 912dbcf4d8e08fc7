import { bareNumber, type Measure, measuredSpan, said, saidTogether } from '../../finding/measure.ts';
import { si } from '../../quantity/index.ts';
import { iso20816x1 } from '../../source/iso-20816-1.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { frequencyLines } from '../frequency-line.ts';
import { type MapMeeting, speedMap } from '../speed-map.ts';
import { oneElement } from './example-trains.ts';
import { trainRule } from './train-rule.ts';

/** Lines strong enough to shake what they meet: once per turn, and the pass of blades. */
const strong = ['1x', 'vane-pass', 'blade-pass', 'stroke'];

const fan = (frequency: string) => {
  const train = oneElement({ kind: 'impeller', on: 'fan', vanes: 12 });
  return {
    ...train,
    elements: { ...train.elements, base: { kind: 'structural-mode', frequency } },
    operation: { shaft: 'fan', speed: '900..1486 r/min' },
  };
};

export const modeInRange = trainRule({
  id: 'machine/mode-in-range',
  title: 'No strong order runs through a mode or a critical speed within the operating range',
  prose:
    'Where once per turn or a blade pass meets a natural frequency, the level there tells of the structure and not of the machine: limits are passed with nothing wrong, and trends at different speeds do not compare.',
  sources: [
    clause(iso20816x1, 'natural frequencies away from the exciting ones', 'from memory'),
    clause(tradePractice),
  ],
  finds: (solved) => {
    if (!frequencyLines(solved).some((line) => resonates(line.name))) return [];
    const map = speedMap(solved.train);
    if (!map.known) return [];
    const { along, meetings } = map.value;
    return meetings
      .filter(({ order, standing, inside }) => inside.length > 0 && isStrong(order.name) && resonates(standing.name))
      .filter(({ standing, order }) => ofThatShaft(standing, order))
      .map(({ order, standing, inside }) => ({
        weight: 'warns' as const,
        at: `${solved.train.of}/${standing.element}`,
        found: said`${order.name} lies in it ${saidTogether(
          inside.map((span) => atSpeeds(span, along.by)),
          ' and ',
        )} of ${along.name}`,
        limit: 'no strong order inside the band of a mode',
        because: 'A level there is that of a resonance; it falls and rises with the speed and not with the condition.',
        remedy: [
          'keep the operation away from these speeds',
          'judge and trend only records taken outside them',
          'measure the natural frequency, if it is only believed',
        ],
      }));
  },
  valid: fan('35..40 Hz'),
  invalid: fan('19..21 Hz'),
});

function isStrong(name: string): boolean {
  return strong.some((each) => name.endsWith(`/${each}`));
}

function resonates(name: string): boolean {
  return name.endsWith('/mode') || name.endsWith('/critical');
}

/** A critical speed is one of its own shaft; what that is stands in its meaning, and any order may shake a structure. */
function ofThatShaft(standing: MapMeeting['standing'], order: MapMeeting['order']): boolean {
  return !standing.name.endsWith('/critical') || order.name.endsWith('/1x');
}

function atSpeeds(span: { readonly low: number; readonly high: number }, by: 'shaft' | 'line'): Measure {
  if (span.high - span.low < 1e-9 * span.high) return said`at ${at(span.low, by)}`;
  const name = by === 'shaft' ? 'shaft speed' : 'frequency';
  return said`from ${measuredSpan(name, { low: si(name, span.low), high: si(name, span.high) })}`;
}

function at(value: number, by: 'shaft' | 'line'): Measure {
  return by === 'shaft' ? said`${bareNumber(value * 60)} r/min` : said`${bareNumber(value)} Hz`;
}
