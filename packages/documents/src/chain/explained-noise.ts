import {
  type Clause,
  clause,
  magnitudeOf,
  type Prediction,
  type QuantityName,
  type Showing,
  type Stage,
  showNumber,
  showQuantity,
  thermalNoise,
  transfer,
} from '@soundpost/core';
import { type Explain, step } from '../derivation/explained.ts';
import { densityOf, type NoiseShare, noiseShares } from './noise-plot.ts';

const added: readonly Clause[] = [clause(thermalNoise, 'independent noise adds as squares')];

/** The noise one stage brings, or all of them together, told in the motion that is sensed. */
export function explainedNoise(
  prediction: Prediction,
  share: NoiseShare,
  frequency: number,
  showing: Showing,
): Explain {
  const name = densityOf(prediction.chain.transducer.senses) as QuantityName;
  const density = (value: number, digits = 4) => showQuantity(name, value, { ...showing, digits });
  const at = showQuantity('frequency', frequency, showing);
  const shown = density(share.density(frequency), 3);
  return share.part === '' ? whole : ofStage;

  function whole() {
    const parts = noiseShares(prediction).slice(1);
    return {
      title: `Noise of the whole chain at ${at}`,
      sentence: `The stages are noisy independently of each other, so their noise adds as squares: ${shown} at ${at}.`,
      numbers: parts.map((each) => ({ name: each.name, shown: density(each.density(frequency)) })),
      steps: [
        step(
          'n = √(Σ n_i²)',
          `√(${parts.map((each) => `(${density(each.density(frequency), 5)})²`).join(' + ')})`,
          shown,
        ),
      ],
      sources: added,
    };
  }

  function ofStage() {
    const { stages, sensitivity } = prediction.chain;
    const index = stages.known
      ? stages.value.findIndex((each) => each.name === share.name && each.part === share.part)
      : -1;
    const stage: Stage | undefined = stages.known ? stages.value[index] : undefined;
    const own = stage?.noise?.known === true ? stage.noise.value(frequency) : undefined;
    const all = noiseShares(prediction)[0]!.density(frequency);
    const part = all > 0 ? (share.density(frequency) / all) ** 2 : 0;
    const unit: QuantityName | undefined = stage?.leaves === 'voltage' ? 'voltage density' : undefined;
    const onward =
      stages.known && own !== undefined && own > 0 && sensitivity.known
        ? (share.density(frequency) * sensitivity.value) / own
        : undefined;
    const before =
      stages.known && index >= 0 ? magnitudeOf(transfer(stages.value.slice(0, index + 1), frequency)) : undefined;
    const senses = prediction.chain.transducer.senses;
    const per = sensitivity.known
      ? showQuantity(`voltage per ${senses}`, sensitivity.value, { ...showing, digits: 6 })
      : '';
    return {
      title: `Noise of ${share.name} (${share.part}) at ${at}`,
      sentence: `What this stage adds arrives at the end of the chain and is told in the motion that is sensed: ${shown}, ${showNumber(part * 100, 2, showing.decimal)} % of the power of all noise there.`,
      numbers: [
        { name: 'of this stage', shown: density(share.density(frequency)) },
        ...(own === undefined || unit === undefined
          ? []
          : [{ name: 'where it arises', shown: showQuantity(unit, own, showing) }]),
        ...(before === undefined || unit === undefined
          ? []
          : [{ name: 'gain before it', shown: showQuantity(`voltage per ${senses}`, before, showing) }]),
        { name: 'all noise', shown: density(all) },
      ],
      steps:
        own === undefined || unit === undefined || onward === undefined
          ? [
              {
                formula: 'n_i = e_i · |H_i| / S',
                notes: [
                  'e_i: noise where it arises, H_i: from there to the end of the chain, S: sensitivity of the chain',
                ],
              },
            ]
          : [
              step(
                'n_i = e_i · |H_i| / S',
                `${showQuantity(unit, own, { ...showing, digits: 6 })} · ${showNumber(onward, 6, showing.decimal)} / ${per}`,
                shown,
                'e_i: noise where it arises, H_i: from there to the end of the chain, S: sensitivity of the chain',
              ),
            ],
      sources: added,
    };
  }
}
