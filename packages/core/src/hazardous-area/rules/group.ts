import { type Judgement, judged } from '../../chain/rules/rule.ts';
import type { Group } from '../../demand/hazardous-area.ts';
import { inWords } from '../../finding/measure.ts';
import { answerOf, fromAll } from '../../quantity/index.ts';
import { atmosphereOfGroup, coversGroup, groupSources, typicalOf } from '../group.ts';
import { atmosphereOf } from '../protection-level.ts';
import { areaRule, markingFor } from './area-rule.ts';

const id = 'area/group';

export const group = areaRule({
  id,
  title: 'Every certificate covers the group of the area',
  prose:
    'The group comes from the area drawing and from nowhere else. IIC covers IIB covers IIA; a certificate for a lesser ' +
    'group proves nothing here, and one for gas proves nothing for dust.',
  remedy: ['parts certified for the group', 'a look at the area drawing, whether the group is right'],
  sources: groupSources,
  judge: ({ area, required, loop }) => {
    const asked = answerOf(area.values.group, area.of, 'group');
    const fits = judged(
      fromAll({ asked, required }, (known) => known),
      { rule: id, what: 'group of the area' },
      (known): readonly Judgement[] => {
        const same = atmosphereOfGroup(known.asked) === atmosphereOf(known.required);
        const found = inWords(`${known.asked} (${typicalOf[known.asked]})`);
        const limit = inWords(`a group of ${atmosphereOf(known.required)}, as the zone says`);
        return same
          ? [{ rule: id, outcome: 'meets', what: 'group of the area', found, limit }]
          : [
              {
                rule: id,
                outcome: 'fails',
                what: 'group of the area',
                found,
                limit,
                needs: 'zone and group of one drawing',
              },
            ];
      },
    );
    const parts = [
      ...loop.apparatus.filter((each) => !each.certificate.simple),
      ...(loop.barrier === undefined ? [] : [loop.barrier]),
    ];
    const covered = parts.flatMap(({ of, markings }) =>
      judged(
        fromAll({ asked, required, markings }, (known) => known),
        { rule: id, what: `group of ${of}` },
        (known) => [judgement(of, markingFor(known.markings, known.required).group, known.asked)],
      ),
    );
    return [...fits, ...covered];
  },
});

function judgement(of: string, offered: Group | undefined, asked: Group): Judgement {
  const what = `group of ${of}`;
  const limit = inWords(`${asked} or one that covers it`);
  if (offered === undefined) {
    return {
      rule: id,
      outcome: 'cannot tell',
      what,
      found: inWords('not in the marking'),
      limit,
      missing: [{ of, what: 'group of its marking' }],
      needs: 'the group as the certificate has it',
    };
  }
  const covers = coversGroup(offered, asked);
  return {
    rule: id,
    outcome: covers ? 'meets' : 'fails',
    what,
    found: inWords(offered),
    limit,
    ...(covers ? {} : { needs: `a certificate for ${asked}` }),
  };
}
