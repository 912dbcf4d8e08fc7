import { type Judgement, judged } from '../../chain/rules/rule.ts';
import { measured, said } from '../../finding/measure.ts';
import { type Answer, answerOf, fromAll, unanswered } from '../../quantity/index.ts';
import type { AreaComparison } from '../area-comparison.ts';
import { atMost } from '../at-most.ts';
import type { Marking } from '../marking.ts';
import { atmosphereOf } from '../protection-level.ts';
import { highestSurfaceOf, powerForT4, temperatureClassSources } from '../temperature-class.ts';
import { areaRule, markingFor } from './area-rule.ts';

const id = 'area/temperature-class';

export const temperatureClass = areaRule({
  id,
  title: 'No surface gets hotter than the gas or dust bears',
  prose:
    'A temperature class bounds the hottest surface of a part; it is no ambient. T4 covers T3. Simple apparatus takes its ' +
    'class from the power that reaches it: T4 where that is little enough, and less power where it is warmer.',
  remedy: ['a part of a better class', 'a barrier with a lower Po, for simple apparatus'],
  sources: temperatureClassSources,
  judge: (compared) =>
    compared.loop.apparatus.flatMap(({ of, certificate, markings }) =>
      judged(
        fromAll(
          {
            allowed: allowedSurface(compared),
            found: certificate.simple ? surfaceOfSimple(compared, of) : surfaceOf(compared, markings, of),
          },
          (known) => known,
        ),
        { rule: id, what: `hottest surface of ${of}` },
        ({ allowed, found }): readonly Judgement[] => {
          const within = atMost(found, allowed);
          return [
            {
              rule: id,
              outcome: within ? 'meets' : 'fails',
              what: `hottest surface of ${of}`,
              found: { is: 'quantity', quantity: 'temperature', value: found },
              limit: { is: 'quantity', quantity: 'temperature', value: allowed },
              ...(within ? {} : { needs: said`a class that ends at ${measured('temperature', allowed)} or below` }),
            },
          ];
        },
      ),
    ),
});

function allowedSurface({ area, required }: AreaComparison): Answer<number> {
  if (!required.known) return required;
  if (atmosphereOf(required.value) === 'dust') {
    return answerOf<number>(area.values.highestSurface, area.of, 'highest surface');
  }
  const asked = answerOf(area.values.temperatureClass, area.of, 'temperature class');
  return fromAll({ asked }, (known) => highestSurfaceOf(known.asked));
}

function surfaceOf({ required }: AreaComparison, markings: Answer<readonly Marking[]>, of: string): Answer<number> {
  if (!markings.known) return markings;
  if (!required.known) return required;
  const marking = markingFor(markings.value, required.value);
  const hottest =
    marking.highestSurface ??
    (marking.temperatureClass === undefined ? undefined : highestSurfaceOf(marking.temperatureClass));
  return hottest === undefined
    ? unanswered([{ of, what: 'temperature class of its marking' }])
    : { known: true, value: hottest };
}

/** T4 where the power of the barrier is small enough for the ambient; otherwise nothing is known of its surface. */
function surfaceOfSimple({ area, loop }: AreaComparison, of: string): Answer<number> {
  const power = loop.barrier?.certificate.power ?? unanswered([{ of: 'the loop', what: 'barrier' }]);
  const ambient = answerOf(area.values.ambient, area.of, 'ambient');
  if (!power.known) return power;
  if (!ambient.known) return ambient;
  const bears = powerForT4(ambient.value.high);
  return bears !== undefined && atMost(power.value, bears)
    ? { known: true, value: highestSurfaceOf('T4') }
    : unanswered([{ of, what: 'hottest surface at the power of its barrier' }]);
}
