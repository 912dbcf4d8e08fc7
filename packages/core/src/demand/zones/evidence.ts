import { api617 } from '../../source/api-617.ts';
import { iso7919x3 } from '../../source/iso-7919-3.ts';
import { screeningRules } from '../../source/screening-rules.ts';
import { clause } from '../../source/source.ts';
import { type Printed, printed } from '../../working/printed.ts';
import { shaftAcceptanceWorking } from './shaft-acceptance.ts';
import { shaftLimitsWorking } from './shaft-limits.ts';

/** Speed in r/min and the three boundaries in micrometres, computed by the author of the check values. */
const curve: readonly (readonly [speed: number, ab: string, bc: string, cd: string])[] = [
  [1000, '151.8', '284.6', '417.4'],
  [1500, '123.9', '232.4', '340.8'],
  [1800, '113.1', '212.1', '311.1'],
  [3000, '87.6', '164.3', '241.0'],
  [3600, '80.0', '150.0', '220.0'],
  [6000, '62.0', '116.2', '170.4'],
  [10000, '48.0', '90.0', '132.0'],
  [12000, '43.8', '82.2', '120.5'],
];

export const zonesEvidence: readonly Printed[] = [
  ...curve.map(([speed, ab, bc, cd]) =>
    printed({
      working: shaftLimitsWorking,
      given: { speed: `${speed} r/min` },
      printed: { 'a-b': `${ab} um pp`, 'b-c': `${bc} um pp`, 'c-d': `${cd} um pp` },
      source: clause(iso7919x3, 'boundary curves', 'computed here'),
    }),
  ),
  printed({
    working: shaftLimitsWorking,
    given: { speed: '11400 r/min', clearance: '165 um' },
    printed: { 'a-b': '44.96 um pp', 'b-c': '84.29 um pp', 'c-d': '115.5 um pp' },
    source: clause(screeningRules, 'plant 3, limits with the clearance of the bearing'),
  }),
  printed({
    working: shaftLimitsWorking,
    given: { speed: '11400 r/min', clearance: '0.0825 mm' },
    printed: { 'b-c': '49.5 um pp' },
    source: clause(screeningRules, 'plant 3, the radial clearance entered by mistake'),
  }),
  ...(
    [
      ['12000 r/min', '25.4 um pp'],
      ['20000 r/min', '19.67 um pp'],
    ] as const
  ).map(([speed, accepted]) =>
    printed({
      working: shaftAcceptanceWorking,
      given: { speed },
      printed: { accepted },
      source: clause(api617, 'vibration limit', 'computed here'),
    }),
  ),
  printed({
    working: shaftAcceptanceWorking,
    given: { speed: '11400 r/min' },
    printed: { accepted: '25.4 um pp', runout: '6.35 um pp' },
    source: clause(screeningRules, 'plant 3, shop acceptance and run-out'),
  }),
];
