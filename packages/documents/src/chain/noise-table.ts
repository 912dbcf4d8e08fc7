import { type DesignedPoint, quantities, showNumber, showQuantity, spelledUnit, valueIn } from '@soundpost/core';
import { opened } from '../derivation/opened.ts';
import { roundDown } from '../drawing/axis.ts';
import { type Html, html, joined, named, type Piece } from '../typesetting/html.ts';
import type { Setting } from '../typesetting/setting.ts';
import { type Column, table } from '../typesetting/table.ts';
import { explainedDrive, explainedOfSheet, explainedResonance } from './explained-facts.ts';
import { explainedNoise } from './explained-noise.ts';
import { densityOf, type NoiseShare, noiseShares } from './noise-plot.ts';

/** The noise budget by stage, at the frequencies the targets lie at and at the decades about them. */
export function noiseTable({ point, appraisal }: DesignedPoint, setting: Setting): Html | undefined {
  const { showing } = setting;
  if (appraisal === undefined) return undefined;
  const shares = noiseShares(appraisal.prediction);
  if (shares.length === 0) return undefined;
  const name = densityOf(appraisal.prediction.chain.transducer.senses);
  const targets = point.targets.flatMap((target) => (target.frequencies.known ? target.frequencies.value : []));
  const frequencies = [...new Set(targets.filter((each) => each > 0).flatMap((each) => [roundDown(each), each]))].sort(
    (a, b) => a - b,
  );
  const unit = quantities[name][showing.units ?? 'metric'][0]!;
  const kept = thinned(frequencies, 6);
  return table({
    caption: html`Noise by stage, as ${name} in ${spelledUnit(unit)}; added as squares`,
    columns: [
      {
        head: 'Stage',
        cell: (share: NoiseShare) =>
          share.part === '' ? html`<b>${share.name}</b>` : html`${share.name}, ${named(share.part)}`,
      },
      ...kept.map(
        (frequency): Column<NoiseShare> => ({
          head: `at ${showQuantity('frequency', frequency, showing)}`,
          kind: 'number',
          cell: (share) => showNumber(valueIn(unit, name, share.density(frequency)), 3, showing.decimal),
          opened: (share, set) => opened(set, explainedNoise(appraisal.prediction, share, frequency, showing), setting),
        }),
      ),
    ],
    rows: [...shares.slice(1), shares[0]!],
  });
}

function thinned(values: readonly number[], most: number): readonly number[] {
  if (values.length <= most) return values;
  return Array.from({ length: most }, (_, index) => values[Math.round((index * (values.length - 1)) / (most - 1))]!);
}

/** Settling, cable drive and what else the prediction tells in a number. */
export function chainFacts({ appraisal }: DesignedPoint, setting: Setting): Html | undefined {
  if (appraisal === undefined) return undefined;
  const { showing } = setting;
  const { prediction } = appraisal;
  const { chain, drive } = prediction;
  const { settling, mountedResonance } = chain.transducer;
  const facts: Html[] = [];
  const say = (term: string, words: Piece) => facts.push(html`<dt>${term}</dt><dd>${words}</dd>`);
  if (mountedResonance?.known === true) {
    const shown = showQuantity('frequency', mountedResonance.value, showing);
    say('mounted resonance', html`${opened(shown, explainedResonance(chain, shown, showing), setting)}, on this mount`);
  }
  if (drive !== undefined) {
    say(
      'cable drive',
      drive.known
        ? html`${opened(showQuantity('current', drive.value.current, showing), explainedDrive(prediction, 'current', showing), setting)} left to drive ${opened(showQuantity('capacitance', drive.value.capacitance, showing), explainedDrive(prediction, 'capacitance', showing), setting)}; judged above at the largest level of each target`
        : `unknown: ${drive.missing.map((each) => `${each.what} of ${each.of}`).join(', ')}`,
    );
  }
  if (settling?.known === true) {
    const shown = showQuantity('duration', settling.value, showing);
    const explain = explainedOfSheet(chain, 'settling', 'settling', shown);
    say('settles after power comes on', opened(shown, explain, setting));
  }
  return facts.length === 0 ? undefined : html`<dl class="facts">${joined(facts, '')}</dl>`;
}
