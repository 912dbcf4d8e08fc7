import { numberField, optional, quantityField, Refusal, showQuantity, si, stated } from '../../quantity/index.ts';
import { rollingBearingKinematics } from '../../source/rolling-bearing-kinematics.ts';
import { clause } from '../../source/source.ts';
import { output, working } from '../../working/index.ts';
import { bearingFrequencies, diameterRatio } from '../bearing-frequencies.ts';
import { rollingBearingSheet } from '../bearing-geometry.ts';
import { contactAnglePlausible } from '../rules/contact-angle-plausible.ts';
import { elementsFitPitchCircle } from '../rules/elements-fit-pitch-circle.ts';

const frequency = (meaning: string, symbol: string) => quantityField('frequency', meaning, { symbol });
const { elements, elementDiameter, pitchDiameter, contactAngle } = rollingBearingSheet;

export const rollingBearingFrequencies = working({
  name: 'rolling-bearing-frequencies',
  title: 'Kinematic frequencies of a rolling bearing',
  inputs: {
    elements,
    elementDiameter,
    pitchDiameter,
    contactAngle,
    shaftSpeed: quantityField('shaft speed', 'Speed of the inner ring; negative turns the other way', {
      symbol: 'f_i',
      example: '1797 r/min',
    }),
    outerSpeed: optional(
      quantityField('shaft speed', 'Speed of the outer ring; standing still where left out', {
        symbol: 'f_a',
        example: '0 r/min',
      }),
    ),
  },
  outputs: {
    diameterRatio: output(
      numberField('Element over pitch diameter, in the radial plane', { symbol: 'k' }),
      'k = (d/D) · cos φ',
    ),
    cage: output(frequency('One turn of the cage', 'f_c'), 'f_c = |f_i · (1 − k) + f_a · (1 + k)| / 2'),
    outerRing: output(
      frequency('Elements passing a spot on the outer ring', 'f_o'),
      'f_o = n/2 · |f_i − f_a| · (1 − k)',
    ),
    innerRing: output(
      frequency('Elements passing a spot on the inner ring', 'f_r'),
      'f_r = n/2 · |f_i − f_a| · (1 + k)',
    ),
    elementSpin: output(
      frequency(
        'One turn of an element about its own axis: once the spin, not the defect line, which is twice this',
        'f_s',
      ),
      'f_s = D/(2·d) · |f_i − f_a| · (1 − k²)',
    ),
    elementSpinTwice: output(
      frequency('Twice element spin: a spot on an element strikes both rings in each of its turns', 'f_e'),
      'f_e = 2 · f_s',
    ),
  },
  holds: 'pure rolling; real lines lie 1 to 2 % off, which is a contribution to the uncertainty and not corrected here',
  sources: [clause(rollingBearingKinematics), clause(rollingBearingKinematics, 'general form with both rings turning')],
  evaluate: ({ elements: n, elementDiameter: d, pitchDiameter: D, contactAngle: φ, shaftSpeed, outerSpeed }) => {
    if (!(d > 0 && d < D)) {
      throw new Refusal({
        read: `element-diameter=${showQuantity('length', d)}, pitch-diameter=${showQuantity('length', D)}`,
        expected: 'an element diameter above zero and below the pitch diameter',
        ...(d > D && D > 0 ? { suggestion: 'Are the two exchanged?' } : {}),
      });
    }
    const row = { elements: n, elementDiameter: d, pitchDiameter: D, contactAngle: φ };
    const found = bearingFrequencies(row, shaftSpeed, outerSpeed ?? 0);
    return {
      diameterRatio: si('ratio', diameterRatio(row)),
      cage: si('frequency', found.cage),
      outerRing: si('frequency', found.outerRing),
      innerRing: si('frequency', found.innerRing),
      elementSpin: si('frequency', found.elementSpin),
      elementSpinTwice: si('frequency', found.elementSpinTwice),
    };
  },
  doubts: (row) => {
    const sheet = {
      of: 'rolling-bearing-frequencies',
      values: {
        elements: stated(row.elements),
        elementDiameter: stated(row.elementDiameter),
        pitchDiameter: stated(row.pitchDiameter),
        contactAngle: stated(row.contactAngle),
        rows: undefined,
        slip: undefined,
        load: undefined,
        bore: undefined,
        outside: undefined,
      },
    };
    const speeds = { inner: nowhere, outer: nowhere };
    return [...elementsFitPitchCircle.check(sheet, speeds), ...contactAnglePlausible.check(sheet, speeds)];
  },
  example: {
    elements: '9',
    'element-diameter': '0.3126 in',
    'pitch-diameter': '1.537 in',
    'contact-angle': '0 deg',
    'shaft-speed': '1797 r/min',
  },
});

const nowhere = { known: false, missing: [] } as const;
