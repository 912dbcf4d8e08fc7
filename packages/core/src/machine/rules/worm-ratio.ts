import { bareNumber, measuredChange, said } from '../../finding/measure.ts';
import { valueIfStated } from '../../quantity/index.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import type { WormPairSheet } from '../worm-pair.ts';
import { wormTrain } from './example-trains.ts';
import { ratioMismatch } from './ratio-against-teeth.ts';
import { machineRule } from './rule.ts';

export const wormRatio = machineRule<[WormPairSheet]>({
  id: 'machine/worm-ratio',
  title: 'A stated ratio of a worm pair agrees with starts and teeth',
  prose:
    'The ratio of a worm pair is teeth over starts. A stated ratio that is a small whole number of times larger says that the starts were counted wrong, most often as one.',
  sources: [clause(tradePractice, 'ratio mismatch above 0.5 %: stop and ask')],
  finds(sheet) {
    const starts = valueIfStated(sheet.values.starts);
    const teeth = valueIfStated(sheet.values.wheelTeeth);
    const ratio = valueIfStated(sheet.values.ratio);
    if (starts === undefined || teeth === undefined || ratio === undefined) return [];
    const counted = teeth / starts;
    const mismatch = counted / ratio - 1;
    if (Math.abs(mismatch) <= ratioMismatch) return [];
    const startsThatFit = Math.round(teeth / ratio);
    const fits = startsThatFit >= 1 && Math.abs(teeth / startsThatFit / ratio - 1) <= ratioMismatch;
    return [
      {
        weight: 'question',
        at: sheet.of,
        found: said`${teeth}/${starts} = ${bareNumber(counted, 5)} beside a stated ratio of ${bareNumber(ratio, 5)}`,
        limit: said`a difference of up to ${ratioMismatch * 100} %, found ${measuredChange(mismatch)}`,
        because: 'The mesh is starts times the speed of the worm.',
        remedy: [
          ...(fits ? [`count the starts again: ${startsThatFit} would fit`] : []),
          'count the teeth of the wheel',
        ],
        asks: fits
          ? `Has the worm ${startsThatFit} start${startsThatFit === 1 ? '' : 's'}?`
          : 'Which is right, the counts or the ratio?',
      },
    ];
  },
  valid: wormTrain({ ratio: 20.5 }),
  invalid: wormTrain({ starts: 1, ratio: 20.5 }),
});
