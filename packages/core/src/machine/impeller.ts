import { type Answer, answerOf, ask, countField, fromAll, greatestCommonDivisor, optional } from '../quantity/index.ts';
import { clause } from '../source/source.ts';
import { tradePractice } from '../source/trade-practice.ts';
import { couplesNothing, type ElementLine, type ElementPlace, machineElementKind, present } from './element.ts';
import { counted, type FrequencyForm, turning } from './form.ts';

const sources = [clause(tradePractice, 'vane and blade pass: count times speed')];

export const impellerSheet = {
  vanes: countField('Vanes or blades that reach from inlet to outlet', { symbol: 'z', example: '6' }),
  splitters: optional(countField('Splitter vanes between them', { symbol: 'z_s', example: '6' })),
  diffuserVanes: optional(countField('Vanes or struts that stand still beside it', { symbol: 'z_d', example: '13' })),
} as const;

/** Pump impeller, fan wheel, compressor or turbine wheel, propeller. */
export const impeller = machineElementKind({
  kind: 'impeller',
  name: 'Impeller, fan wheel or other bladed wheel',
  sheet: impellerSheet,
  places: ['on'],
  relations: () => couplesNothing,
  lines: (sheet, place) => {
    const vanes = ask(sheet, ['vanes'], (stated) => stated.vanes);
    const lines = [passing(place, 'vane-pass', 'Vane or blade pass: full vanes times speed', vanes, 3)];
    const splitters = present(sheet, 'splitters');
    if (splitters !== undefined) {
      const all = fromAll(
        { vanes, more: answerOf(splitters, sheet.of, 'splitters') },
        (known) => known.vanes + known.more,
      );
      lines.push(passing(place, 'all-vane-pass', 'Pass of full and splitter vanes together, at the outlet', all, 2));
    }
    const standing = present(sheet, 'diffuserVanes');
    if (standing !== undefined) {
      const still = answerOf(standing, sheet.of, 'diffuser vanes');
      const meeting = fromAll({ vanes, still }, (known) => leastCommonMultiple(known.vanes, known.still));
      lines.push(
        passing(place, 'diffuser-vane-pass', 'Pass of the standing vanes, as a point of the wheel sees them', still, 2),
        passing(place, 'vane-diffuser', 'Lowest order at which running and standing vanes repeat together', meeting, 1),
      );
    }
    return lines;
  },
  doubts: () => [],
  sources,
});

function passing(
  place: ElementPlace<'on'>,
  name: string,
  meaning: string,
  count: Answer<number>,
  harmonics: number,
): ElementLine {
  const form: Answer<FrequencyForm> = fromAll({ count }, (known) => [counted(known.count, turning(place.shafts.on))]);
  return { name, meaning, form, harmonics, sources };
}

function leastCommonMultiple(a: number, b: number): number {
  return (a / Number(greatestCommonDivisor(BigInt(a), BigInt(b)))) * b;
}
