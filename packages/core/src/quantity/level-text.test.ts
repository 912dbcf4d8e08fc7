import fc from 'fast-check';
import { expect, test } from 'vitest';
import { detectors, shortDetector, splitAtDetector } from './detector.ts';
import { showLevel } from './format.ts';
import { comparable, level } from './level.ts';
import { levelIn, parseLevel, parseLevelWriting, showLevelIn } from './level-text.ts';
import { motions } from './quantities.ts';
import { Refusal } from './refusal.ts';

const amplitude = fc.double({ min: 1e-4, max: 1e4, noNaN: true });
const motion = fc.constantFrom(...motions);
const detector = fc.constantFrom(...detectors);
const band = fc.option(
  fc
    .tuple(fc.integer({ min: 0, max: 9000 }), fc.integer({ min: 1, max: 900 }))
    .map(([low, width]) => ({ low, high: low + width })),
  { nil: undefined },
);

test('law: the amplitudes engineers type are read with unit, detector and band', () => {
  const typed = [
    ['4.5 mm/s rms', level('velocity', 0.0045, 'rms')],
    ['0.3 in/s pk', level('velocity', 0.00762, 'peak')],
    ['0.3 ips 0-pk', level('velocity', 0.00762, 'peak')],
    ['80 um pp', level('displacement', 80e-6, 'peak-to-peak')],
    ['80 µm p-p', level('displacement', 80e-6, 'peak-to-peak')],
    ['80 μm pk-pk', level('displacement', 80e-6, 'peak-to-peak')],
    ['2 mil pp', level('displacement', 50.8e-6, 'peak-to-peak')],
    ['1.5 g true peak', level('acceleration', 14.709975, 'peak')],
    ['10 mm/s derived peak', level('velocity', 0.01, 'derived-peak')],
    ['10 m/s² r.m.s.', level('acceleration', 10, 'rms')],
    ['4.5 mm/s RMS', level('velocity', 0.0045, 'rms')],
    ['3 mm/s avg', level('velocity', 0.003, 'average')],
    ['4.5 mm/s rms 10-1000 Hz', level('velocity', 0.0045, 'rms', { low: 10, high: 1000 })],
    ['4.5 mm/s rms (10..1000 Hz)', level('velocity', 0.0045, 'rms', { low: 10, high: 1000 })],
    ['4.5 mm/s rms in 10 Hz to 1 kHz', level('velocity', 0.0045, 'rms', { low: 10, high: 1000 })],
    ['4.5 mm/s rms, 0.5–10 kHz', level('velocity', 0.0045, 'rms', { low: 500, high: 10_000 })],
    ['120 dB re 1 um/s2 rms', level('acceleration', 1, 'rms')],
    ['120 dB re 1e-6 m/s2 rms', level('acceleration', 1, 'rms')],
    ['120 dB re 1 nm/s rms', level('velocity', 1e-3, 'rms')],
    ['120 dB re. 1 pm pk', level('displacement', 1e-6, 'peak')],
  ] as const;
  for (const [text, expected] of typed) {
    const read = parseLevel(text, motions);
    expect({ ...read, value: 0 }, text).toEqual({ ...expected, value: 0 });
    expect(read.value / expected.value, text).toBeCloseTo(1, 12);
  }
  expect(parseLevel('3,5 mm/s rms', motions, { decimal: 'comma' }).value).toBeCloseTo(0.0035, 15);
  expect(() => parseLevel('3,5 mm/s rms', motions)).toThrow(/decimals: comma/);
});

test('printed: levels in decibels, ISO 1683 references (from memory), values computed by others', () => {
  const printed = [
    ['1 g rms', '139.8304 dB re 1 um/s2 rms'],
    ['1 m/s2 rms', '120.0000 dB re 1 um/s2 rms'],
    ['1 mm/s rms', '120.0000 dB re 1 nm/s rms'],
    ['4.5 mm/s rms', '133.0643 dB re 1 nm/s rms'],
    ['1 in/s rms', '148.0967 dB re 1 nm/s rms'],
    ['1 um rms', '120.0000 dB re 1 pm rms'],
  ] as const;
  for (const [plain, decibels] of printed) {
    const written = parseLevelWriting(decibels.replace(/^\S+ /, ''), motions);
    expect(Math.abs(levelIn(parseLevel(plain, motions), written) - Number.parseFloat(decibels)), plain).toBeLessThan(
      5.1e-5,
    );
    expect(parseLevel(decibels, motions).value / parseLevel(plain, motions).value, plain).toBeCloseTo(1, 4);
  }
});

test('law: a level as shown reads back with its detector and band, in either system and decimal', () => {
  fc.assert(
    fc.property(
      amplitude,
      motion,
      detector,
      band,
      fc.constantFrom('metric' as const, 'us' as const),
      fc.constantFrom('point' as const, 'comma' as const),
      (value, quantity, reading, over, units, decimal) => {
        const shown = showLevel(level(quantity, value, reading, over), { units, decimal });
        const read = parseLevel(shown, motions, { decimal });
        expect(read.quantity).toBe(quantity);
        expect(read.detector).toBe(reading);
        expect(read.value / value).toBeGreaterThan(0.9994);
        expect(read.value / value).toBeLessThan(1.0006);
        expect(read.band).toEqual(over);
      },
    ),
  );
});

test('law: a level shown as it was asked for reads back, decibels included', () => {
  const writings = ['mm/s', 'in/s', 'ips', 'dB re 1 nm/s', 'dB re 5e-8 m/s', 'dB re 1e-6 in/s'];
  fc.assert(
    fc.property(amplitude, detector, fc.constantFrom(...writings), (value, reading, unit) => {
      const written = parseLevelWriting(`${unit} ${shortDetector[reading]}`, motions);
      const shown = showLevelIn(level('velocity', value, reading), written, { digits: 9 });
      const read = parseLevel(shown, motions);
      expect(read.detector).toBe(reading);
      expect(read.value / value).toBeCloseTo(1, 6);
    }),
  );
});

test('law: every writing of a detector is told from the unit before it and the band after it', () => {
  for (const [text, expected] of [
    ['rms', 'rms'],
    ['R.M.S.', 'rms'],
    ['true rms', 'rms'],
    ['pk', 'peak'],
    ['Peak', 'peak'],
    ['0-p', 'peak'],
    ['0-pk', 'peak'],
    ['true  peak', 'peak'],
    ['pp', 'peak-to-peak'],
    ['p-p', 'peak-to-peak'],
    ['peak to peak', 'peak-to-peak'],
    ['peak-to-peak', 'peak-to-peak'],
    ['derived peak', 'derived-peak'],
    ['derived pk', 'derived-peak'],
    ['avg', 'average'],
  ] as const) {
    expect(splitAtDetector(`mm/s ${text} 10-1000 Hz`)).toEqual({
      before: 'mm/s',
      detector: expected,
      after: ' 10-1000 Hz',
    });
  }
  for (const text of ['mm/s', 'mm/srms', 'ppm', 'peaks', 'mm/s rmss', 'app']) {
    expect(splitAtDetector(text).detector, text).toBeUndefined();
  }
});

test('negative: a level without detector, unit or reference is refused and says which', () => {
  const refused: readonly (readonly [string, RegExp])[] = [
    ['4.5 mm/s', /detector is missing/],
    ['4.5', /detector is missing/],
    ['4.5 rms', /unit is missing/],
    ['rms', /expected/],
    ['120 dB rms', /needs its reference/],
    ['120 dB re rms', /needs its reference/],
    ['120 VdB rms', /needs its reference/],
    ['120 dB re 0 m/s rms', /not above zero/],
    ['120 dB re -1 um/s2 rms', /not above zero/],
    ['120 dB re 1 V rms', /unit of voltage/],
    ['90000 dB re 1 um/s2 rms', /too large/],
    ['4.5 mm/s rms pk', /two detectors, rms and peak/],
    ['4.5 mm/s pk 10-1000 Hz rms', /two detectors/],
    ['-4.5 mm/s rms', /not negative/],
    ['4.5 mV rms', /unit of voltage/],
    ['4.5 mm/s rms 1000-10 Hz', /exchanged/],
    ['4.5 mm/s rms 10 Hz', /a band from low to high/],
    ['4.5 mm/s rms 10-1000', /no unit/],
    ['4.5 mm/s rms 10-1000 mm', /frequency is asked for/],
    ['4.5 mm/s rms loud', /expected a frequency/],
  ];
  for (const [text, why] of refused) {
    expect(() => parseLevel(text, motions), text).toThrow(Refusal);
    expect(() => parseLevel(text, motions), text).toThrow(why);
  }
});

test('law: levels of one quantity, detector and band compare; any difference is refused in a sentence that names both', () => {
  fc.assert(
    fc.property(motion, motion, detector, detector, band, band, (qa, qb, da, db, ba, bb) => {
      const act = () => comparable(level(qa, 1, da, ba), level(qb, 1, db, bb));
      const alike = qa === qb && da === db && ba?.low === bb?.low && ba?.high === bb?.high;
      if (alike) {
        expect(act).not.toThrow();
        return;
      }
      let message = '';
      try {
        act();
      } catch (error) {
        expect(error).toBeInstanceOf(Refusal);
        message = (error as Refusal).message;
      }
      expect(message).not.toBe('');
      if (qa !== qb) expect(message).toContain(`quantities (${qa} and ${qb})`);
      if (da !== db) expect(message).toContain(`detectors (${da} and ${db})`);
      if (ba === undefined && bb !== undefined) expect(message).toContain('no band stated and');
      if (ba !== undefined && bb !== undefined && ba.low !== bb.low) {
        expect(message).toContain(`(${ba.low}..${ba.high} Hz and ${bb.low}..${bb.high} Hz)`);
      }
    }),
  );
});
