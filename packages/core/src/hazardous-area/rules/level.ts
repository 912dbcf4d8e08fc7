import { type Judgement, judged } from '../../chain/rules/rule.ts';
import { inWords } from '../../finding/measure.ts';
import { fromAll } from '../../quantity/index.ts';
import { atmosphereOf, coversLevel, levelOf } from '../protection-level.ts';
import { zoneSource } from '../zone.ts';
import { areaRule, markingFor } from './area-rule.ts';

const id = 'area/level';

export const level = areaRule({
  id,
  title: 'The level of protection suits the zone, part by part and for the loop',
  prose:
    'Each zone asks for a level of protection, and a loop is worth its weakest part: an ia transducer on an ib barrier is ' +
    'an ib loop.',
  remedy: ['parts of the level that the zone asks for', 'another position, in a lesser zone'],
  sources: [zoneSource],
  judge: ({ required, loop, lowest }) => {
    const parts = loop.apparatus
      .filter((each) => !each.certificate.simple)
      .flatMap(({ of, markings }) =>
        judged(
          fromAll({ required, markings }, (known) => known),
          { rule: id, what: `level of ${of}` },
          (known) => [judgement(`level of ${of}`, markingFor(known.markings, known.required).level, known.required)],
        ),
      );
    if (loop.uncertified !== undefined) return parts;
    const whole = judged(
      fromAll({ required, lowest }, (known) => known),
      { rule: id, what: 'lowest level of the loop' },
      (known) => [
        judgement('lowest level of the loop', levelOf(known.lowest, atmosphereOf(known.required)), known.required),
      ],
    );
    return [...parts, ...whole];
  },
});

type Level = Parameters<typeof coversLevel>[0];

function judgement(what: string, found: Level, required: Level): Judgement {
  const covers = coversLevel(found, required);
  return {
    rule: id,
    outcome: covers ? 'meets' : 'fails',
    what,
    found: inWords(found),
    limit: inWords(`${required} or better`),
    ...(covers ? {} : { needs: `level ${required} or better` }),
  };
}
