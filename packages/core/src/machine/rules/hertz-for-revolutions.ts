import { measured, said } from '../../finding/measure.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { kindOf, type MachineElement } from '../kinds.ts';
import type { SolvedTrain } from '../solved-train.ts';
import { speedRange } from '../speed-range.ts';
import { oneElement } from './example-trains.ts';
import { trainRule } from './train-rule.ts';

/** How near to 60 a ratio of two speeds is called a confusion of units. Common practice, no source. */
const nearness = 0.1;

/** 60 or 1/60 where a speed lies that far off a range, within a tenth. */
export function hertzRatio(
  speed: number,
  range: { readonly low: number; readonly high: number },
): 60 | 'sixtieth' | undefined {
  const inside = (value: number) => value >= range.low * (1 - nearness) && value <= range.high * (1 + nearness);
  if (!(speed > 0) || inside(speed)) return undefined;
  if (inside(speed / 60)) return 60;
  return inside(speed * 60) ? 'sixtieth' : undefined;
}

interface StatedSpeed {
  readonly shaft: string;
  readonly where: string;
  readonly speed: number;
}

/** Plates, and the rated speeds of motors. */
function statedSpeeds({ train }: SolvedTrain): readonly StatedSpeed[] {
  const plates = (train.plates ?? []).flatMap(({ shaft, speed }) =>
    speed.known ? [{ shaft, where: `${train.of}/${shaft}`, speed: speed.value }] : [],
  );
  return [...plates, ...train.elements.flatMap((element) => ratedSpeed(element, train.of))];
}

function ratedSpeed(element: MachineElement, of: string): readonly StatedSpeed[] {
  const drive = kindOf(element).drive;
  const rated = 'ratedSpeed' in element.sheet.values ? element.sheet.values.ratedSpeed : undefined;
  if (drive === undefined || rated?.known !== true) return [];
  const shaft = (element.shafts as Readonly<Record<string, string>>)[drive.on]!;
  return [{ shaft, where: `${of}/${element.name}`, speed: rated.value }];
}

export const hertzForRevolutions = trainRule({
  id: 'machine/hertz-for-revolutions',
  title: 'A speed in hertz is not one in revolutions per minute',
  prose: 'Two statements of one speed that differ by a factor of 60 were made in different units: 12 Hz is 720 r/min.',
  sources: [clause(tradePractice, 'r/min and Hz mixed')],
  finds: (solved) =>
    statedSpeeds(solved).flatMap(({ shaft, where, speed }) => {
      const range = speedRange(solved, shaft);
      const ratio = range === undefined ? undefined : hertzRatio(speed, range);
      if (range === undefined || ratio === undefined) return [];
      return [
        {
          weight: 'question',
          at: where,
          found: said`a stated speed of ${measured('shaft speed', speed)} where the train gives ${measured('shaft speed', range.high)}`,
          limit: 'one speed; these differ by about 60',
          because:
            'One of the two was typed in hertz and meant in r/min, or the other way round; every frequency is 60 times off.',
          remedy: [`if ${ratio === 60 ? 'the stated speed' : 'the operating speed'} was meant in r/min, write it so`],
          asks: said`Is it ${measured('shaft speed', ratio === 60 ? speed / 60 : speed)} or ${measured('shaft speed', ratio === 60 ? speed : speed * 60)}?`,
        },
      ];
    }),
  valid: { ...oneElement({ kind: 'impeller', on: 'fan', vanes: 6 }), plates: { fan: '1480 r/min' } },
  invalid: {
    ...oneElement({ kind: 'impeller', on: 'fan', vanes: 6 }),
    operation: { shaft: 'fan', speed: '12 Hz' },
    plates: { fan: '12 r/min' },
  },
});
