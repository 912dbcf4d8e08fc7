import { type Judgement, judged } from '../../chain/rules/rule.ts';
import { measuredSpan, said } from '../../finding/measure.ts';
import { type Answer, answerOf, fromAll, type showSpan } from '../../quantity/index.ts';
import { iec60079x0 } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { usualAmbient } from '../temperature-class.ts';
import { areaRule } from './area-rule.ts';

const id = 'area/ambient';

export const ambient = areaRule({
  id,
  title: 'The place is no warmer or colder than the certificates speak for',
  prose:
    'A certificate holds for the usual ambient of its standard unless it names another. A transducer on a hot surface has ' +
    'that surface for its ambient, whatever the air is.',
  remedy: ['a part whose certificate names that ambient', 'a cooler position'],
  sources: [clause(iec60079x0, 'ambient temperature')],
  judge: ({ area, loop }, { point, prediction }) => {
    const air = answerOf(area.values.ambient, area.of, 'ambient');
    const surface: Answer<number> = answerOf(point.surfaceTemperature, point.of, 'surface temperature');
    const transducer = prediction.chain.parts.transducer.sheet.of;
    return loop.apparatus
      .filter((each) => !each.certificate.simple)
      .flatMap(({ of, certificate }) => {
        const hottest: Answer<number> =
          of === transducer
            ? fromAll({ air, surface }, (known) => Math.max(known.air.high, known.surface))
            : fromAll({ air }, (known) => known.air.high as number);
        const what = `ambient of ${of}`;
        return judged(
          fromAll({ air, hottest, certified: certificate.ambient }, (known) => ({
            place: { low: known.air.low as number, high: known.hottest },
            named: known.certified,
          })),
          { rule: id, what },
          ({ place, named }): readonly Judgement[] => {
            const certified = named ?? usualAmbient;
            const inside = place.low >= certified.low && place.high <= certified.high;
            const told = named === undefined ? ', where the certificate names no other' : '';
            return [
              {
                rule: id,
                outcome: inside ? 'meets' : 'fails',
                what,
                found: measuredSpan('temperature', place as Parameters<typeof showSpan>[1]),
                limit: said`${measuredSpan('temperature', certified as Parameters<typeof showSpan>[1])}${told}`,
                ...(inside ? {} : { needs: 'a certificate that names this ambient' }),
              },
            ];
          },
        );
      });
  },
});
