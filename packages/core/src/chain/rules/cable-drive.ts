import type { Target } from '../../demand/target.ts';
import { inWords, measured, said } from '../../finding/measure.ts';
import { type Answer, asMotion, asSineDetector, fromAll } from '../../quantity/index.ts';
import { iepePractice } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { slewLimit } from '../formulas/iepe-cable-drive.ts';
import type { Prediction } from '../prediction.ts';
import { type Judgement, judged, largestMargin, marginOf, rule } from './rule.ts';

export const cableDrive = rule({
  id: 'chain/cable-drive',
  title: 'The supply current drives the cable',
  prose:
    'The current that is left must charge the capacitance of the cable as fast as the signal moves. It is judged at the ' +
    'largest level of each target at its highest frequency; full scale at high frequency is seldom what a machine does.',
  remedy: ['a higher supply current', 'a shorter cable or one with less capacitance', 'a lower sensitivity'],
  sources: [clause(iepePractice)],
  judge: ({ point, prediction }) => {
    const { drive } = prediction;
    if (drive === undefined) return [];
    return point.targets
      .filter((target) => !target.observable.atRest)
      .flatMap((target) =>
        judged(
          fromAll({ drive, peak: peakVoltage(target, prediction), band: target.band }, (known) => known),
          { rule: 'chain/cable-drive', what: 'cable drive', target },
          ({ drive: { current, capacitance }, peak, band }) => {
            if (!(capacitance * peak > 0)) return [nothingToDrive(target)];
            const limit = slewLimit(capacitance, current, 0, peak);
            const judgement: Judgement = {
              rule: 'chain/cable-drive',
              target: target.name,
              outcome: limit < band.high ? 'fails' : 'meets',
              what: said`highest frequency with ${measured('voltage', peak)} peak on ${measured('capacitance', capacitance)}, cable driven to`,
              found: measured('frequency', limit),
              limit: said`at least ${measured('frequency', band.high)}`,
              margin: marginOf(limit / band.high),
              ...(limit < band.high ? { needs: neededCurrent(current, band.high / limit) } : {}),
            };
            return [judgement];
          },
        ),
      );
  },
});

function nothingToDrive(target: Target): Judgement {
  return {
    rule: 'chain/cable-drive',
    target: target.name,
    outcome: 'meets',
    what: 'cable drive',
    found: inWords('nothing to drive: no capacitance, or no signal'),
    limit: inWords(''),
    margin: largestMargin,
  };
}

function neededCurrent(left: number, factor: number): string {
  if (left <= 0) return 'more supply current than the electronics keep for themselves';
  return `a current left for the cable higher by a factor ${factor.toFixed(2)}`;
}

/** Largest level of a target as peak voltage at the nominal sensitivity. */
function peakVoltage(target: Target, prediction: Prediction): Answer<number> {
  const { transducer } = prediction.chain;
  return fromAll(
    { largest: target.largest, at: target.largestAt, sensitivity: transducer.sensitivity },
    ({ largest, at, sensitivity }) =>
      asMotion(asSineDetector(largest, 'peak'), transducer.senses, at).value * sensitivity,
  );
}
