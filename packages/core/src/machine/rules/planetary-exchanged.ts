import { measured, measuredSpan, said } from '../../finding/measure.ts';
import { si, toNumber, valueIfStated } from '../../quantity/index.ts';
import { planetaryKinematics } from '../../source/planetary-kinematics.ts';
import { clause } from '../../source/source.ts';
import { fixed } from '../form.ts';
import { planetaryMembers, ratioWithHeld } from '../planetary-frequencies.ts';
import { speedRange } from '../speed-range.ts';
import { planetaryTrain } from './example-trains.ts';
import { trainRule } from './train-rule.ts';

/** How far a plate may lie from the train. Common practice, no source. */
const agreement = 0.005;

export const planetaryExchanged = trainRule({
  id: 'machine/planetary-exchanged',
  title: 'The moving members of a planetary stage are not exchanged',
  prose:
    'With its two moving members exchanged a stage gears down where it gears up, and everything behind it is off by its ratio twice. A plate behind it that would be met by that says so.',
  sources: [clause(planetaryKinematics, 'Willis equation')],
  finds: (solved) =>
    solved.train.elements.flatMap((element) => {
      if (element.kind !== 'planetary-stage') return [];
      const sun = valueIfStated(element.sheet.values.sunTeeth);
      const ring = valueIfStated(element.sheet.values.ringTeeth);
      const held = planetaryMembers.find((member) => element.shafts[member] === fixed);
      if (sun === undefined || ring === undefined || held === undefined) return [];
      const twice = toNumber(ratioWithHeld({ sun, ring }, held)) ** 2;
      const moving = planetaryMembers.filter((member) => member !== held);
      return (solved.train.plates ?? []).flatMap(({ shaft, speed }) => {
        const range = speedRange(solved, shaft);
        if (range === undefined || !speed.known || within(speed.value, range)) return [];
        const met = [twice, 1 / twice].some((factor) =>
          within(speed.value, { low: range.low * factor, high: range.high * factor }),
        );
        if (!met) return [];
        return [
          {
            weight: 'question' as const,
            at: `${solved.train.of}/${element.name}`,
            found: said`a plate of ${measured('shaft speed', speed.value)} at '${shaft}', which would be met with ${moving.join(' and ')} exchanged`,
            limit: said`${measuredSpan('shaft speed', { low: si('shaft speed', range.low), high: si('shaft speed', range.high) })} from the train as stated`,
            because: 'Every speed behind the stage is off by its ratio twice.',
            remedy: [`exchange the shafts of ${moving.join(' and ')}`, 'read the plate again'],
            asks: `Are ${moving.join(' and ')} exchanged?`,
          },
        ];
      });
    }),
  valid: { ...planetaryTrain({}), plates: { sun: '88 r/min' } },
  invalid: { ...planetaryTrain({ sun: 'rotor', carrier: 'sun' }), plates: { sun: '88 r/min' } },
});

function within(speed: number, { low, high }: { readonly low: number; readonly high: number }): boolean {
  return speed >= low * (1 - agreement) && speed <= high * (1 + agreement);
}
