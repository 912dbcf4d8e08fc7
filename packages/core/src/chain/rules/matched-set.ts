import { measured, said } from '../../finding/measure.ts';
import { api670 } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { type Judgement, judged, rule } from './rule.ts';

/** Lengths are catalogue values; a part of a cable is never a tenth of a metre short. */
const reading = 1e-3;

export const matchedSet = rule({
  id: 'chain/matched-set',
  title: 'Probe, extension cable and driver belong together',
  prose:
    'The driver is tuned to a probe and a cable of one electrical length. With another it oscillates elsewhere: scale ' +
    'factor and linear range are gone, though it still gives a voltage that looks like a gap.',
  remedy: ['the extension cable of the matched length', 'a driver for the length that is there'],
  sources: [clause(api670, 'matched system length')],
  judge: ({ prediction }) => {
    const { probe } = prediction.chain.transducer;
    if (probe?.electricalLength === undefined) return [];
    return judged(
      probe.electricalLength,
      { rule: 'chain/matched-set', what: 'probe and extension cable' },
      ({ together, matched }): readonly Judgement[] => {
        const fits = Math.abs(together - matched) <= reading;
        return [
          {
            rule: 'chain/matched-set',
            outcome: fits ? 'meets' : 'fails',
            what: 'probe and extension cable, electrical length',
            found: measured('length', together),
            limit: said`${measured('length', matched)}, which the driver is matched to`,
            ...(fits ? {} : { needs: said`a set of one electrical length, ${measured('length', matched)}` }),
          },
        ];
      },
    );
  },
});
