import { oneOf, singlePrecision } from '../coding.ts';
import { entry, template } from '../template.ts';

/** Template 30: voltage output. Of the measurands only code 0, kelvin, is known here; of its fields the first three. */
export const voltageOutput = template({
  kind: 'template-30',
  id: 30,
  name: 'High-level voltage output',
  sections: [
    {
      entries: [
        entry('measurand', 6, oneOf(['temperature in K'])),
        entry('physical-minimum', 32, singlePrecision),
        entry('physical-maximum', 32, singlePrecision),
      ],
    },
  ],
  edges: [{ behind: 'measurand', unless: 0, notKnown: ['measurand of that code', 'physical minimum and maximum'] }],
  notKnown: [
    'electrical minimum and maximum',
    'output impedance, response time and supply',
    'calibration date, initials and period',
  ],
});
