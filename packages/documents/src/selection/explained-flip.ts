import { type FlipPoint, reason, type Showing, showNumber } from '@soundpost/core';
import { type Explained, step } from '../derivation/explained.ts';
import { ruleTextOf } from '../finding/rule-texts.ts';

/** Kelvin by which a temperature is moved for each decade another value would be. */
const kelvinPerDecade = 150;

/** At which value of one assumption, moved by itself, the verdict on the chain turns, and what turns it. */
export function explainedFlip(flip: FlipPoint, showing: Showing): Explained {
  const { of, what, stated, flipsAt, decades, from, to, decides } = flip;
  const temperature = / (?:°[CF]|K)$/.test(stated);
  const moved = showNumber(Math.abs(decades), 5, showing.decimal);
  const sign = decades < 0 ? '−' : '+';
  const because = decides === undefined ? '' : `: ${reason(decides, showing)}`;
  return {
    title: `${what} of ${of}`,
    sentence: `As stated it is ${stated}, and the chain is ${from}. Moved by itself to ${flipsAt} the chain is ${to}${because}.`,
    numbers: [
      { name: 'as stated', shown: stated },
      { name: 'turns at', shown: flipsAt },
      {
        name: temperature ? 'moved by' : 'decades',
        shown: temperature
          ? `${sign}${showNumber(Math.abs(decades) * kelvinPerDecade, 4, showing.decimal)} K`
          : `${sign}${moved}`,
      },
    ],
    steps:
      isAmount(stated) && isAmount(flipsAt)
        ? [
            temperature
              ? step(
                  `T = T_0 ${sign} ${kelvinPerDecade} K · d`,
                  `${stated} ${sign} ${kelvinPerDecade} K · ${moved}`,
                  flipsAt,
                )
              : step(
                  'x = x_0 · 10^d',
                  `${stated} · 10^(${decades < 0 ? '−' : ''}${moved})`,
                  flipsAt,
                  'a walk outwards from the stated value, then halving of the step in which the verdict turns, to 0.02 %',
                ),
          ]
        : [
            {
              formula: 'x = x_0 moved by d decades',
              notes: [`d = ${decades < 0 ? '−' : ''}${moved}; halved to 0.02 %`],
            },
          ],
    sources: decides === undefined ? [] : (ruleTextOf(decides.rule)?.sources ?? []),
  };
}

/** One number with a unit and nothing behind it: only that can stand in a product. */
function isAmount(text: string): boolean {
  return /^[\u2212-]?[\d.,]+(?:e-?\d+)?(?: [^\d\s]+(?: (?:rms|pk|pp))?)?$/.test(text);
}
