import { sees } from '../../demand/target.ts';
import { inWords } from '../../finding/measure.ts';
import { answerOf, fromAll } from '../../quantity/index.ts';
import { api670 } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { type Judgement, judged, rule } from './rule.ts';

export const targetMaterial = rule({
  id: 'chain/target-material',
  title: 'The scale factor holds for the steel it was calibrated on',
  prose:
    'An eddy-current probe sees conductivity and permeability too. On another alloy its scale factor is another by ten to ' +
    'fifty per cent, and the tolerance on the data sheet says nothing of that.',
  remedy: ['calibrate the set on that steel', 'ask for the steel of the shaft, with its certificate'],
  sources: [clause(api670, 'target material')],
  judge: ({ point, prediction }) => {
    const { probe, reference } = prediction.chain.transducer;
    if (probe?.calibratedOn === undefined) return [];
    if (!point.targets.some((target) => sees(reference, target.reference))) return [];
    const stated = point.surroundings.values.shaftMaterial;
    const what = 'steel it looks at';
    if (stated === undefined) {
      return judged(probe.calibratedOn, { rule: 'chain/target-material', what }, (steel) => [
        warning(what, 'not stated', steel),
      ]);
    }
    return judged(
      fromAll({ steel: probe.calibratedOn, shaft: answerOf(stated, point.of, 'shaft material') }, (known) => known),
      { rule: 'chain/target-material', what },
      ({ steel, shaft }): readonly Judgement[] => [
        sameSteel(steel, shaft)
          ? { rule: 'chain/target-material', outcome: 'meets', what, found: inWords(shaft), limit: inWords(steel) }
          : warning(what, shaft, steel),
      ],
    );
  },
});

function warning(what: string, found: string, steel: string): Judgement {
  return {
    rule: 'chain/target-material',
    outcome: 'warns',
    what,
    found: inWords(found),
    limit: inWords(`${steel}, on which it was calibrated`),
    needs: 'a calibration on that steel',
  };
}

/** The designation of the calibration steel stands in what is said of the shaft: `4140` in `forged 4140, certificate 12`. */
function sameSteel(calibrated: string, shaft: string): boolean {
  const wanted = words(calibrated).filter((word) => /\d/.test(word));
  const said = words(shaft);
  return wanted.length > 0 && wanted.every((word) => said.includes(word));
}

function words(text: string): readonly string[] {
  return text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
}
