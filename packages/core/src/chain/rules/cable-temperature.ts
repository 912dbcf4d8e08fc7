import { measured, measuredSpan } from '../../finding/measure.ts';
import { answerOf, fromAll, valueIfStated } from '../../quantity/index.ts';
import { tradePractice } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { type Judgement, judged, rule } from './rule.ts';

export const cableTemperature = rule({
  id: 'chain/cable-temperature',
  title: 'The cable bears what it lies in and on',
  prose:
    'The first metre touches the machine, and the route may pass hotter things. A jacket over its rating hardens, cracks ' +
    'or melts, long after everybody has left.',
  remedy: [
    'a cable for that temperature, at least as far as the junction box',
    'another route, clear of the hot surface',
    'state the temperature along the cable',
  ],
  sources: [clause(tradePractice, 'temperature above melting of the jacket')],
  judge: ({ point, prediction }) => {
    const { cable } = prediction.chain.parts;
    const along = valueIfStated(point.surroundings.values.cableTemperature);
    const surface = valueIfStated(point.surfaceTemperature);
    if (along === undefined && surface === undefined) return [];
    return judged(
      fromAll({ rated: answerOf(cable.sheet.values.temperature, cable.sheet.of, 'temperature') }, (known) => known),
      { rule: 'chain/cable-temperature', what: `temperature along ${cable.name}` },
      ({ rated }): readonly Judgement[] => {
        const limit = measuredSpan('temperature', rated);
        const inside = (degrees: number) => degrees >= rated.low && degrees <= rated.high;
        if (along !== undefined) {
          return [
            {
              rule: 'chain/cable-temperature',
              outcome: inside(along) ? 'meets' : 'fails',
              what: `temperature along ${cable.name}`,
              found: measured('temperature', along),
              limit,
              ...(inside(along) ? {} : { needs: 'a cable with a rating that includes it' }),
            },
          ];
        }
        if (surface === undefined || inside(surface)) return [];
        return [
          {
            rule: 'chain/cable-temperature',
            outcome: 'cannot tell',
            what: `${cable.name} leaves a surface of`,
            found: measured('temperature', surface),
            limit,
            missing: [{ of: point.of, what: 'temperature along the cable' }],
            needs: 'to know how hot the cable gets',
          },
        ];
      },
    );
  },
});
