import {
  type MeasuringChain,
  magnitudeOf,
  type Showing,
  type Stage,
  showNumber,
  showPercent,
  showQuantity,
  transfer,
} from '@soundpost/core';
import { comparison } from './comparison.ts';
import { type Derivation, type Derive, gives, marginDerivation, ratioNumber } from './derivation.ts';

/** e(f) = |H(f)|/S − 1 at the frequency that decides, with the share of each stage in it. */
export const responseDerivation: Derive = (judged) => {
  const { prediction, judgement, target, showing } = judged;
  const { chain, response } = prediction;
  const f = judgement.frequency;
  if (f === undefined || !response.known || !chain.stages.known || !chain.sensitivity.known) {
    return comparison(judged);
  }
  const gain = magnitudeOf(response.value(f));
  const at = showQuantity('frequency', f, showing);
  const error = gain - 1;
  const digits = digitsFor(error);
  const resonance = chain.transducer.mountedResonance;
  const notes = [
    'H is the row of stages, each loaded by the next, S the nominal sensitivity; the stages give:',
    ...stageGains(chain, chain.stages.value, f, digits, showing),
    ...(resonance?.known === true
      ? [
          `mounted resonance f_m = ${showQuantity('frequency', resonance.value, showing)}, so r = f / f_m = ${showNumber(f / resonance.value, 4, showing.decimal)}`,
        ]
      : []),
  ];
  const allowed =
    target?.tolerance.known === true
      ? error >= 0
        ? target.tolerance.value.high
        : -target.tolerance.value.low
      : undefined;
  const first: Derivation = {
    formula: 'e(f) = |H(f)| / S − 1',
    substituted: `e(${at}) = ${ratioNumber(gain, showing, digits)} − 1 = ${showPercent(error, 4, showing.decimal)}`,
    notes,
  };
  return allowed === undefined
    ? [first]
    : [first, ...marginDerivation(judged, percent(allowed, showing), percent(Math.abs(error), showing))];
};

/** So many digits that a gain close to 1 still shows the error in it. */
function digitsFor(error: number): number {
  return error === 0 ? 5 : Math.min(12, Math.max(5, 4 - Math.floor(Math.log10(Math.abs(error)))));
}

function percent(value: number, { decimal }: Showing): string {
  return showPercent(value, 4, decimal).replace('+', '');
}

/**
 * What each stage multiplies the signal by at one frequency; the one that turns motion into volts relative to the
 * sensitivity of the transducer. Those that leave it as it is share a line.
 */
function stageGains(
  { transducer, sensitivity }: MeasuringChain,
  stages: readonly Stage[],
  f: number,
  digits: number,
  showing: Showing,
): readonly string[] {
  const own = transducer.sensitivity.known ? transducer.sensitivity.value : 1;
  const outputs = stages.map((_, index) => magnitudeOf(transfer(stages.slice(0, index + 1), f)));
  let [before, turned] = [1, false];
  const gains = stages.map((stage, index) => {
    const turns = !turned && stage.enters === 'motion' && stage.leaves !== 'motion';
    if (turns) turned = true;
    const gain = outputs[index]! / before / (turns ? own : 1);
    before = outputs[index]!;
    return { name: `${stage.name} (${stage.part})`, shown: ratioNumber(gain, showing, digits) };
  });
  const passing = gains.filter((each) => each.shown === '1').map((each) => each.name);
  const line = sensitivity.known ? sensitivity.value / own : 1;
  return [
    ...gains.filter((each) => each.shown !== '1').map((each) => `× ${each.shown} ${each.name}`),
    ...(passing.length === 0 ? [] : [`× 1 ${passing.join(', ')}`]),
    ...(gives(line, 1) ? [] : [`÷ ${ratioNumber(line, showing, digits)} gain of the line, which is part of S`]),
  ];
}
