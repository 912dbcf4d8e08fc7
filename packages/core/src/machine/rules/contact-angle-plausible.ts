import { bareNumber, measured, type Said, said } from '../../finding/measure.ts';
import type { Found } from '../../finding/rule-text.ts';
import { rollingBearingKinematics } from '../../source/rolling-bearing-kinematics.ts';
import { clause } from '../../source/source.ts';
import type { RollingBearingSheet } from '../bearing-geometry.ts';
import type { RoleSpeeds } from '../element.ts';
import { bearingTrain } from './example-trains.ts';
import { machineRule } from './rule.ts';

const degree = Math.PI / 180;
const rightAngle = Math.PI / 2;

export const contactAnglePlausible = machineRule<[RollingBearingSheet, RoleSpeeds<'inner' | 'outer'>]>({
  id: 'machine/contact-angle-plausible',
  title: 'A contact angle is a plausible number of degrees',
  prose:
    'A contact angle lies between 0° and 90°. One between 0 and 1.57 degrees is likely radians with the wrong unit.',
  sources: [clause(rollingBearingKinematics, 'contact angle in degrees')],
  finds(sheet) {
    const stated = sheet.values.contactAngle;
    if (!stated.known) return [];
    const φ: number = stated.value;
    const written = stated.written;
    const about = (limit: Said, asks: Said, weight: 'question' | 'blocks-issue' = 'question'): readonly Found[] => [
      {
        weight,
        at: sheet.of,
        found: said`a contact angle of ${measured('angle', φ)}${written === '' ? '' : `, written '${written}'`}`,
        limit,
        because: 'The angle moves the inner-ring lines down and the outer-ring lines up.',
        remedy: ["write degrees as '15 deg', radians as '1 rad'"],
        asks,
      },
    ];
    if (φ < 0 || φ > rightAngle * (1 + 1e-9)) {
      return about('0°..90°', said`Was ${written === '' ? bareNumber(φ) : written} meant in degrees?`, 'blocks-issue');
    }
    if (φ > 0 && φ < rightAngle * degree) {
      return about(
        said`0°, or more than ${measured('angle', rightAngle * degree)}`,
        said`Is it ${bareNumber(φ / degree)} radians, ${bareNumber(φ / degree / degree)}°?`,
      );
    }
    return [];
  },
  valid: bearingTrain({ 'contact-angle': '15 deg' }),
  invalid: bearingTrain({ 'contact-angle': '0.698 deg' }),
});
