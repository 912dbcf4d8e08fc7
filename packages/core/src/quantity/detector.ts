/**
 * How an amplitude was taken from the waveform. `peak` is the true peak; `derived-peak` is √2 × rms whatever the
 * waveform, and equals the true peak for a sine only. Source: ISO 2041 (terms, from memory); common practice.
 */
export const detectors = ['rms', 'peak', 'peak-to-peak', 'derived-peak', 'average'] as const;
export type Detector = (typeof detectors)[number];

/** Amplitude of a sine of rms 1 as each detector reads it. */
export const sineFactor: Readonly<Record<Detector, number>> = {
  rms: 1,
  peak: Math.SQRT2,
  'peak-to-peak': 2 * Math.SQRT2,
  'derived-peak': Math.SQRT2,
  average: (2 * Math.SQRT2) / Math.PI,
};

const writings: Readonly<Record<string, Detector>> = {
  rms: 'rms',
  'r.m.s.': 'rms',
  'true rms': 'rms',
  pk: 'peak',
  peak: 'peak',
  '0-pk': 'peak',
  '0-p': 'peak',
  'true peak': 'peak',
  'true pk': 'peak',
  pp: 'peak-to-peak',
  'p-p': 'peak-to-peak',
  'pk-pk': 'peak-to-peak',
  'peak-to-peak': 'peak-to-peak',
  'peak to peak': 'peak-to-peak',
  'derived peak': 'derived-peak',
  'derived-peak': 'derived-peak',
  'derived pk': 'derived-peak',
  avg: 'average',
  average: 'average',
};

const longestFirst = Object.keys(writings).sort((a, b) => b.length - a.length);
const pattern = new RegExp(
  `(^|[\\s(])(${longestFirst.map((word) => word.replace(/[.]/g, '\\.').replace(/ /g, '\\s+')).join('|')})(?=$|[\\s,;()])`,
  'i',
);

/** Finds the detector in what follows a number: what stands before it is the unit, what follows is the band. */
export function splitAtDetector(text: string): { before: string; detector: Detector | undefined; after: string } {
  const match = pattern.exec(text);
  if (match === null) return { before: text, detector: undefined, after: '' };
  const written = match[2]!.toLowerCase().replace(/\s+/g, ' ');
  return {
    before: text.slice(0, match.index),
    detector: writings[written],
    after: text.slice(match.index + match[0].length),
  };
}

export const shortDetector: Readonly<Record<Detector, string>> = {
  rms: 'rms',
  peak: 'peak',
  'peak-to-peak': 'pp',
  'derived-peak': 'derived peak',
  average: 'average',
};
