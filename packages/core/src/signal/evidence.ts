import { conversionNotes } from '../source/conversion-notes.ts';
import { harris1978 } from '../source/harris-1978.ts';
import { heinzel2002 } from '../source/heinzel-2002.ts';
import { iso1683 } from '../source/iso-1683.ts';
import { iso80000x3 } from '../source/iso-80000-3.ts';
import { oscilloscopeWindowTable } from '../source/oscilloscope-window-table.ts';
import { samplingPractice } from '../source/sampling-practice.ts';
import { signalLibraryReference } from '../source/signal-library-reference.ts';
import { type Clause, clause } from '../source/source.ts';
import { symmetricWindowTable } from '../source/symmetric-window-table.ts';
import { type Printed, printed } from '../working/printed.ts';
import { spectrumSettings } from './workings/spectrum-settings.ts';
import { vibrationConversion } from './workings/vibration-conversion.ts';
import { windowProperties } from './workings/window-properties.ts';

function windowRow(source: Clause, window: string, row: Readonly<Record<string, string>>): Printed {
  const given = { window, length: '4096', definition: 'periodic' };
  return printed({ working: windowProperties, given, printed: row, source });
}

const row = (gain: string, lines: string, loss: string) => ({
  'coherent-gain': gain,
  'enbw-bins': lines,
  scalloping: `${loss} dB`,
});

/** Harris's rows of Hamming (scalloping) and of the exact Blackman are left out: their windows do not give them. */
const harris = clause(harris1978, 'Table I');
const harrisRows = [
  windowRow(harris, 'rectangular', row('1.00', '1.00', '3.92')),
  windowRow(harris, 'hann', row('.50', '1.50', '1.42')),
  windowRow(harris, 'hamming', { 'coherent-gain': '.54', 'enbw-bins': '1.36' }),
  windowRow(harris, 'blackman', row('.42', '1.73', '1.10')),
  windowRow(harris, 'kaiser-bessel-3', row('.40', '1.80', '1.02')),
  windowRow(harris, 'kaiser-bessel-3.5', row('.37', '1.93', '.89')),
  windowRow(harris, 'blackman-harris-3-term', row('.42', '1.71', '1.13')),
  windowRow(harris, 'blackman-harris-4-term', row('.36', '2.00', '.83')),
];

const otherWindowRows = [
  windowRow(clause(oscilloscopeWindowTable), 'rectangular', { scalloping: '3.92 dB' }),
  windowRow(clause(oscilloscopeWindowTable), 'hann', { scalloping: '1.42 dB', 'enbw-bins': '1.5' }),
  windowRow(clause(oscilloscopeWindowTable), 'blackman-harris-3-term', { scalloping: '1.13 dB', 'enbw-bins': '1.71' }),
  windowRow(clause(signalLibraryReference), 'hann', { scalloping: '1.4236 dB', 'enbw-bins': '1.5' }),
  windowRow(clause(heinzel2002, 'HFT95', 'from memory'), 'flat-top-hft95', { 'enbw-bins': '3.8112' }),
  printed({
    working: windowProperties,
    given: { window: 'hann', length: '64', definition: 'symmetric' },
    printed: { 'enbw-bins': '1.524', scalloping: '1.38 dB' },
    source: clause(symmetricWindowTable, 'Hann'),
  }),
];

function settings(highest: string, lines: string, results: Readonly<Record<string, string>>): Printed {
  const given = { 'highest-frequency': highest, lines, window: 'hann' };
  return printed({ working: spectrumSettings, given, printed: results, source: clause(samplingPractice) });
}

const settingsRows = [
  settings('1 kHz', '400', {
    'sampling-rate': '2560 Hz',
    samples: '1024',
    'record-length': '0.4 s',
    resolution: '2.5 Hz',
    'noise-bandwidth': '3.75 Hz',
  }),
  settings('1 kHz', '1600', {
    'sampling-rate': '2560 Hz',
    samples: '4096',
    'record-length': '1.6 s',
    resolution: '0.625 Hz',
  }),
  settings('5 kHz', '3200', {
    'sampling-rate': '12800 Hz',
    samples: '8192',
    'record-length': '0.64 s',
    resolution: '1.5625 Hz',
  }),
  settings('10 kHz', '6400', {
    'sampling-rate': '25600 Hz',
    samples: '16384',
    'record-length': '0.64 s',
    resolution: '1.5625 Hz',
  }),
];

function converted(source: Clause, from: string, frequency: string, result: string, looser?: Printed['looser']) {
  const to = result.replace(/^\S+ /, '');
  return printed({
    working: vibrationConversion,
    given: { from, frequency, to },
    printed: { result },
    source,
    ...(looser === undefined ? {} : { looser }),
  });
}

const roundedGravity = { relative: 1e-3, because: 'the notes round the acceleration of gravity, each in its own way' };
const notes = (place: string) => clause(conversionNotes, place);
const noteRows = [
  converted(notes('V in/s pk = c·g/f'), '1 g pk', '1 Hz', '61.4 in/s pk', roundedGravity),
  converted(notes('V in/s pk = c·g/f'), '1 g pk', '1 Hz', '61.45 in/s pk', roundedGravity),
  converted(notes('V in/s pk = c·g/f'), '1 g pk', '1 Hz', '61.48 in/s pk', roundedGravity),
  converted(
    clause(conversionNotes, 'V in/s pk = c·g/f', 'from memory'),
    '1 g pk',
    '1 Hz',
    '61.44 in/s pk',
    roundedGravity,
  ),
  converted(notes('D in pp = c·g/f²'), '1 g pk', '1 Hz', '19.56 in pp'),
  converted(notes('D in pp = c·g/f²'), '1 g pk', '1 Hz', '19.57 in pp', roundedGravity),
  converted(notes('g pk = c·f²·D'), '1 in pp', '1 Hz', '0.0511 g pk'),
  converted(notes('g pk = c·f·V'), '1 in/s pk', '1 Hz', '0.0163 g pk'),
  converted(notes('g pk = c·f·V'), '1 in/s pk', '1 Hz', '0.016266 g pk', roundedGravity),
  converted(notes('V m/s pk = c·g/f'), '1 g pk', '1 Hz', '1.56 m/s pk'),
  converted(notes('D m pp = c·g/f²'), '1 g pk', '1 Hz', '0.4968 m pp'),
  converted(notes('g rms to in/s pk'), '1 g rms', '1 Hz', '86.901 in/s pk', roundedGravity),
  converted(notes('g rms to in pp'), '1 g rms', '1 Hz', '27.661 in pp', roundedGravity),
  converted(notes('multipliers of a sine'), '1 mm/s pk', '1 Hz', '0.707 mm/s rms'),
  converted(notes('multipliers of a sine'), '1 mm/s pk', '1 Hz', '0.637 mm/s average', roundedGravity),
  converted(notes('multipliers of a sine'), '1 mm/s rms', '1 Hz', '1.414 mm/s pk'),
  converted(notes('multipliers of a sine'), '1 mm/s average', '1 Hz', '1.110 mm/s rms', roundedGravity),
  converted(notes('multipliers of a sine'), '1 mm/s rms', '1 Hz', '0.901 mm/s average', roundedGravity),
];

const gravity = clause(iso80000x3, 'arithmetic on the standard acceleration of free fall', 'computed here');
const gravityRows = [
  converted(gravity, '1 g pk', '1 Hz', '61.4479 in/s pk'),
  converted(gravity, '1 g pk', '1 Hz', '19.5595 in pp'),
  converted(gravity, '1 in pp', '1 Hz', '0.0511261 g pk'),
  converted(gravity, '1 in/s pk', '1 Hz', '0.0162739 g pk'),
  converted(gravity, '1 g pk', '1 Hz', '1.560777 m/s pk'),
  converted(gravity, '1 g pk', '1 Hz', '0.496811 m pp'),
  converted(gravity, '1 g rms', '1 Hz', '86.9005 in/s pk'),
  converted(gravity, '1 g rms', '1 Hz', '27.6613 in pp'),
  converted(gravity, '1 g pk', '10 Hz', '156.078 mm/s pk'),
  converted(gravity, '1 g pk', '10 Hz', '4968.11 um pp'),
  converted(gravity, '1 g pk', '50 Hz', '31.2155 mm/s pk'),
  converted(gravity, '1 g pk', '50 Hz', '198.724 um pp'),
  converted(gravity, '1 g pk', '1000 Hz', '1.56078 mm/s pk'),
  converted(gravity, '1 g pk', '1000 Hz', '0.496811 um pp'),
  converted(gravity, '4.5 mm/s rms', '25 Hz', '81.03 um pp'),
  converted(gravity, '4.5 mm/s rms', '25 Hz', '0.07208 g rms'),
  converted(gravity, '10 m/s2 rms', '159.155 Hz', '10.0000 mm/s rms'),
  converted(gravity, '10 m/s2 rms', '159.155 Hz', '10.0000 um rms'),
  converted(gravity, '10 m/s2 rms', '1000 rad/s', '10.00000000 um rms'),
  converted(gravity, '10 m/s2 rms', '79.577 Hz', '20.000 mm/s rms'),
  converted(gravity, '10 m/s2 rms', '500 rad/s', '40.00000000 um rms'),
];

const lastDecibelDigit = {
  relative: 10 ** (0.00005 / 20) - 1,
  because: 'half a unit of the fourth decimal of a decibel, as a ratio',
};
const reference = clause(iso1683, 'reference values; the levels computed here');
const levelRows = [
  converted(reference, '1 g rms', '1 Hz', '139.8304 dB re 1 um/s2 rms', lastDecibelDigit),
  converted(reference, '1 m/s2 rms', '1 Hz', '120.0000 dB re 1 um/s2 rms', lastDecibelDigit),
  converted(reference, '1 mm/s rms', '1 Hz', '120.0000 dB re 1 nm/s rms', lastDecibelDigit),
  converted(reference, '4.5 mm/s rms', '1 Hz', '133.0643 dB re 1 nm/s rms', lastDecibelDigit),
  converted(reference, '1 in/s rms', '1 Hz', '148.0967 dB re 1 nm/s rms', lastDecibelDigit),
  converted(reference, '1 um rms', '1 Hz', '120.0000 dB re 1 pm rms', lastDecibelDigit),
];

/** Other people's numbers for the workings of this room. */
export const signalEvidence: readonly Printed[] = [
  ...harrisRows,
  ...otherWindowRows,
  ...settingsRows,
  ...noteRows,
  ...gravityRows,
  ...levelRows,
];
