import { type Judgement, judged } from '../../chain/rules/rule.ts';
import { inWords } from '../../finding/measure.ts';
import { fromAll } from '../../quantity/index.ts';
import { iec60079x14 } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { areaRule } from './area-rule.ts';

const id = 'area/certificate';

export const certificate = areaRule({
  id,
  title: 'Every part of the loop in the area has a certificate',
  prose:
    'What stands in a classified area, and what limits its energy from outside, must be certified for it, by number and ' +
    'marking. A part without a certificate is refused whatever else it does well.',
  remedy: ['a part with a certificate for the area', 'another position, outside the area'],
  sources: [clause(iec60079x14, 'selection of equipment')],
  judge: ({ loop, name }) => {
    const parts = [
      ...loop.apparatus.filter((each) => !each.certificate.simple),
      ...(loop.barrier ? [loop.barrier] : []),
    ];
    const limit = inWords(`a certificate for ${name}`);
    const refused: readonly Judgement[] =
      loop.uncertified === undefined
        ? []
        : [
            {
              rule: id,
              outcome: 'fails',
              what: `${loop.uncertified}:`,
              found: inWords(`no certificate for ${name}`),
              limit,
              needs: `a certificate for ${name}`,
            },
          ];
    const told = parts.flatMap(({ of, certificate: { number, marking } }) =>
      judged(
        fromAll({ number, marking }, (known) => known),
        { rule: id, what: `certificate of ${of}`, limit },
        (known): readonly Judgement[] => [
          {
            rule: id,
            outcome: 'meets',
            what: `certificate of ${of}:`,
            found: inWords(`${known.number}, ${known.marking}`),
            limit: inWords('number and marking stated'),
          },
        ],
      ),
    );
    return [...refused, ...told];
  },
});
