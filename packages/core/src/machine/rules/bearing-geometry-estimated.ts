import { measuredChange, said } from '../../finding/measure.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { bearingRow, type RollingBearingSheet, slipOfOrder, usualSlip } from '../bearing-geometry.ts';
import type { RoleSpeeds } from '../element.ts';
import { bearingTrain } from './example-trains.ts';
import { machineRule } from './rule.ts';

export const bearingGeometryEstimated = machineRule<[RollingBearingSheet, RoleSpeeds<'inner' | 'outer'>]>({
  id: 'machine/bearing-geometry-estimated',
  title: 'A bearing known only by bore and outside diameter is estimated, and says so',
  prose:
    'Pitch diameter near the mean of bore and outside diameter, elements near 0.29 of their difference, filling 0.45 to 1 of the pitch circle. The lines carry the band that follows.',
  sources: [clause(tradePractice, 'estimate of bearing geometry from bore and outside diameter')],
  finds(sheet) {
    const known = bearingRow(sheet);
    if (!known.known || known.value.assumed.length === 0) return [];
    const { low, high } = slipOfOrder(known.value, usualSlip, (orders) => orders.outerRing);
    return [
      {
        weight: 'question',
        at: sheet.of,
        found: `${known.value.assumed.join(', ')} estimated from bore and outside diameter (assumed)`,
        limit: '',
        because: said`The outer-ring line may lie ${measuredChange(low)} to ${measuredChange(high)} from the value given.`,
        remedy: [`ask for the drawing of the bearing: ${known.value.assumed.join(', ')}`],
        asks: known.value.assumed.includes('number of elements')
          ? 'How many elements are in one row, which narrows the band most?'
          : `What is the ${known.value.assumed[0]}?`,
      },
    ];
  },
  valid: bearingTrain({ bore: '25 mm', outside: '52 mm' }),
  invalid: bearingTrain({
    bore: '25 mm',
    outside: '52 mm',
    elements: 'unknown',
    'element-diameter': 'unknown',
    'pitch-diameter': 'unknown',
  }),
});
