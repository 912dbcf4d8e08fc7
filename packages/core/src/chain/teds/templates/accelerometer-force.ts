import { constantRelative, constantStep, counted, daysSince1998, fiveBitLetters, oneOf } from '../coding.ts';
import { entry, template, writtenEntry } from '../template.ts';

const days = 86400;
const celsiusZero = 273.15;

/**
 * Template 25: accelerometer or force transducer with constant-current electronics. SI throughout: V/(m/s²), Hz, kg, K, s.
 * 103 bits after the template number without the transfer function, then the end selector. What stands for force and for
 * extended functionality is not known here.
 */
export const accelerometerForce = template({
  kind: 'template-25',
  id: 25,
  name: 'Accelerometer or force transducer, constant current',
  sections: [
    {
      entries: [
        entry('senses', 1, oneOf(['acceleration', 'force'])),
        entry('extended-functionality', 1, counted()),
        writtenEntry('sensitivity', 16, constantRelative(5e-7, 0.00015), 'V/(m/s²)'),
        writtenEntry('high-pass-corner', 8, constantRelative(0.005, 0.03), 'Hz'),
        entry('direction', 2, oneOf(['x', 'y', 'z', 'none'])),
        writtenEntry('weight', 6, constantRelative(1e-4, 0.1), 'kg'),
        entry('polarity', 1, counted()),
        entry('transfer-function', 1, counted()),
      ],
    },
    {
      only: { field: 'transfer-function', code: 1 },
      entries: [
        writtenEntry('low-pass-corner', 7, constantRelative(10, 0.05), 'Hz'),
        writtenEntry('resonance', 9, constantRelative(100, 0.01), 'Hz'),
        writtenEntry('quality', 9, constantRelative(0.4, 0.01)),
        writtenEntry('amplitude-slope', 7, constantStep(-6.3, 0.1)),
        writtenEntry('temperature-coefficient', 6, constantStep(-0.8, 0.025)),
      ],
    },
    {
      entries: [
        writtenEntry('reference-frequency', 8, constantRelative(0.35, 0.0175), 'Hz'),
        writtenEntry('reference-temperature', 5, constantStep(15 + celsiusZero, 0.5), 'K'),
        writtenEntry('calibration-date', 16, daysSince1998),
        entry('calibration-initials', 15, fiveBitLetters),
        writtenEntry('calibration-period', 12, counted(days), 's'),
        entry('measurement-location', 11, counted()),
        entry('end-selector', 2, counted()),
      ],
    },
  ],
  edges: [
    { behind: 'senses', unless: 0, notKnown: ['force sensitivity', 'all that follows it in the force template'] },
    {
      behind: 'extended-functionality',
      unless: 0,
      notKnown: ['settings of the switchable transducer', 'sensitivity', 'all that follows'],
    },
  ],
  notKnown: ['extended end selector', 'user text in 7-bit letters'],
});
