import { clause } from '../../source/source.ts';
import { tedsModalLibrary } from '../../source/teds-modal-library.ts';
import { tedsTestStreams } from '../../source/teds-test-streams.ts';
import { type Printed, printed } from '../../working/printed.ts';
import { tedsWorking } from './working.ts';

/** The accelerometer stream, basic part all zero. */
export const accelerometerStream = '00 00 00 00 00 00 00 00 64 70 1E 0D 00 00 00 00 00 00 00 00 00 00 06';
/** The voltage-output stream, decimal. */
export const voltageStream = '17,64,0,32,4,57,48,0,120,0,0,0,200,194,0,0,200,66,0,0,0,0,0,0,0,0,0,48';

/** A stream of template 25 with a transfer function; who made it and who calibrated it are blanked here. */
export const transferFunctionStream = '00000000000000006480E63944255BE14412290BE94600006D01800300';

export const tedsEvidence: readonly Printed[] = [
  printed({
    working: tedsWorking,
    given: { bytes: accelerometerStream },
    printed: { sensitivity: '49.03 V/g' },
    source: clause(tedsTestStreams, 'accelerometer, asserted within 0.01 V/g'),
  }),
  printed({
    working: tedsWorking,
    given: { bytes: transferFunctionStream },
    printed: { 'high-pass-corner': '0.248006450707 Hz', weight: '4.60051199094 g' },
    source: clause(tedsModalLibrary, 'values of the manual for the built-in stream'),
  }),
  printed({
    working: tedsWorking,
    given: { bytes: voltageStream },
    printed: { manufacturer: '17', model: '1', 'version-number': '1', template: '30' },
    source: clause(tedsTestStreams, 'voltage output, asserted identity and template'),
  }),
  printed({
    working: tedsWorking,
    given: { bytes: voltageStream },
    printed: { serial: '12345', 'physical-minimum': '-100.0', 'physical-maximum': '100.0' },
    source: clause(tedsTestStreams, 'voltage output, its single-precision numbers', 'computed here'),
  }),
];
