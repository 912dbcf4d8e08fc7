import type { Judgement } from '../../chain/rules/rule.ts';
import { inWords } from '../../finding/measure.ts';
import { iec60079x14 } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import type { AreaComparison } from '../area-comparison.ts';
import { areaRule } from './area-rule.ts';

const id = 'area/barrier';

export const barrier = areaRule({
  id,
  title: 'One barrier or isolator stands between the area and everything outside',
  prose:
    'Energy is limited at one place, outside the area. A supply before the barrier is not limited by it; a part without a ' +
    'certificate before it is not proven; and two barriers in a row are not the sum of both.',
  remedy: [
    'a barrier or isolator certified for the group',
    'supplies and indicators behind the barrier, on the card side',
    'one barrier for one loop',
  ],
  sources: [clause(iec60079x14, 'intrinsically safe circuits')],
  judge: (compared, { point, prediction }) => {
    const { loop } = compared;
    if (ownProtection(compared)) return [];
    const judgements: Judgement[] = [];
    const what = 'between the area and the input:';
    if (loop.barrier !== undefined) {
      judgements.push({
        rule: id,
        outcome: 'meets',
        what,
        found: inWords(loop.barrier.tag ?? loop.barrier.of),
        limit: inWords('a barrier or isolator'),
      });
    } else if (point.installation === 'portable') {
      const { of } = prediction.chain.input;
      judgements.push({
        rule: id,
        outcome: 'cannot tell',
        what: 'instrument brought into the area:',
        found: inWords(of),
        limit: inWords(`a certificate for ${compared.name}, with its output values`),
        missing: [{ of, what: `certificate as an instrument for ${compared.name}` }],
        needs: 'an instrument certified for the area, or a permit that keeps the gas away',
      });
    } else {
      judgements.push({
        rule: id,
        outcome: 'fails',
        what,
        found: inWords('no barrier'),
        limit: inWords('a barrier or isolator'),
        needs: 'a certified barrier or isolator in the line',
      });
    }
    for (const { of, source } of loop.strangers) {
      judgements.push({
        rule: id,
        outcome: source ? 'fails' : 'cannot tell',
        what: 'on the field side of the barrier:',
        found: inWords(of),
        limit: inWords('certified parts and simple apparatus only'),
        ...(source
          ? { needs: 'the supply on the card side' }
          : { missing: [{ of, what: 'certificate, or declaration as simple apparatus' }] }),
      });
    }
    for (const of of loop.further) {
      judgements.push({
        rule: id,
        outcome: 'cannot tell',
        what: 'a second barrier in the line:',
        found: inWords(of),
        limit: inWords('one source for one loop'),
        missing: [{ of, what: 'proof of the combination with the first barrier' }],
      });
    }
    return judgements;
  },
});

/** Whether the transducer is protected otherwise than by limiting the energy of its circuit. */
export function ownProtection({ loop }: AreaComparison): boolean {
  const known = loop.apparatus[0]?.markings;
  return (
    loop.uncertified === undefined &&
    loop.apparatus[0]?.certificate.simple === false &&
    known?.known === true &&
    known.value.every((each) => each.concepts.every((concept) => concept.intrinsic !== true))
  );
}
