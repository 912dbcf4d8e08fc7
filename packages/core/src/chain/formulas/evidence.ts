import { iepePractice } from '../../source/iepe-practice.ts';
import { loopPractice } from '../../source/loop-practice.ts';
import { namurNe43 } from '../../source/namur-ne-43.ts';
import { screeningRules } from '../../source/screening-rules.ts';
import { singleDegreeOfFreedom } from '../../source/single-degree-of-freedom.ts';
import { clause } from '../../source/source.ts';
import { type Printed, printed } from '../../working/printed.ts';
import { countsScaling } from './counts-scaling.ts';
import { dischargeCornerWorking } from './discharge-corner.ts';
import { iepeCableDrive } from './iepe-cable-drive.ts';
import { iepeHeadroom } from './iepe-headroom.ts';
import { loopLoad } from './loop-load.ts';
import { loopScaling } from './loop-scaling.ts';
import { mountedResonanceWorking } from './mounted-resonance.ts';
import { mountedResponse } from './mounted-response.ts';
import { mountingEvidence } from './mounting-evidence.ts';
import { noiseInBand } from './noise.ts';
import { tiltGravity } from './tilt-gravity.ts';
import { transducerEvidence } from './transducer-evidence.ts';

/** Ratio f/f_n at which the undamped response exceeds each error: the table of check values, computed by others. */
const undampedRatios: readonly (readonly [tolerance: string, ratio: string])[] = [
  ['±1 %', '0.0995'],
  ['±2 %', '0.1400'],
  ['±5 %', '0.21822'],
  ['10 %', '0.30151'],
  ['12 %', '0.32733'],
  ['3 dB', '0.54120'],
];

/** Reference plant 1: resonance on each mount, and where the undamped response exceeds 10 % and 3 dB. */
const usableOnMounts: readonly (readonly [resonance: string, tenPercent: string, threeDecibels: string])[] = [
  ['27000 Hz', '8141 Hz', '14590 Hz'],
  ['14980 Hz', '4517 Hz', '8096 Hz'],
  ['10550 Hz', '3181 Hz', '5701 Hz'],
  ['7863 Hz', '2371 Hz', '4249 Hz'],
  ['3076 Hz', '927.4 Hz', '1662 Hz'],
  ['850.3 Hz', '256.4 Hz', '459.5 Hz'],
  ['16940 Hz', '5108 Hz', '9156 Hz'],
];

const responses: readonly Printed[] = [
  ...undampedRatios.map(([tolerance, ratio]) =>
    printed({
      working: mountedResponse,
      given: { resonance: '1 Hz', tolerance },
      printed: { 'usable-frequency': `${ratio} Hz` },
      source: clause(singleDegreeOfFreedom, 'usable-frequency ratios', 'computed here'),
    }),
  ),
  // ζ = 0.7, so Q = 1/1.4: the peak stays inside the tolerance and the lower side ends the band.
  ...(
    [
      ['5 %', '0.591 Hz'],
      ['1 %', '0.405 Hz'],
    ] as const
  ).map(([tolerance, frequency]) =>
    printed({
      working: mountedResponse,
      given: { resonance: '1 Hz', quality: '0.7142857142857143', tolerance },
      printed: { 'usable-frequency': frequency },
      source: clause(singleDegreeOfFreedom, 'damping ratio 0.7', 'computed here'),
    }),
  ),
  ...usableOnMounts.flatMap(([resonance, tenPercent, threeDecibels]) => [
    printed({
      working: mountedResponse,
      given: { resonance, tolerance: '10 %' },
      printed: { 'usable-frequency': tenPercent },
      source: clause(screeningRules, 'plant 1, usable frequency on the mounts'),
      looser: { relative: 3e-4, because: 'the resonance that enters is itself printed to four digits' },
    }),
    printed({
      working: mountedResponse,
      given: { resonance, tolerance: '3 dB' },
      printed: { 'usable-frequency': threeDecibels },
      source: clause(screeningRules, 'plant 1, usable frequency on the mounts'),
      looser: { relative: 2e-3, because: 'the reference plant takes 3 dB as 10^(3/20), here it is the factor √2' },
    }),
  ]),
];

/** Reference plant 1: the accelerometer of 95 g and 27 kHz on each mount, moved mass being sensor and mount. */
const mounts: readonly (readonly [stiffness: string, mass: string, resonance: string])[] = [
  ['1.6e9 N/m', '125 g', '14.98 kHz'],
  ['7.0e8 N/m', '135 g', '10.55 kHz'],
  ['4.0e8 N/m', '150 g', '7.863 kHz'],
  ['7.0e7 N/m', '185 g', '3.076 kHz'],
  ['5.0e6 N/m', '175 g', '0.8503 kHz'],
  ['2.0e9 N/m', '107 g', '16.94 kHz'],
];

const resonances = mounts.map(([stiffness, mass, resonance]) =>
  printed({
    working: mountedResonanceWorking,
    given: { resonance: '27 kHz', 'mount-stiffness': stiffness, 'moved-mass': mass },
    printed: { resonance },
    source: clause(screeningRules, 'plant 1, mounted resonances'),
  }),
);

const slew = clause(iepePractice, 'slew limit', 'computed here');
const drive = (capacitance: Readonly<Record<string, string>>, supply: string, peak: string, limit: string) =>
  printed({
    working: iepeCableDrive,
    given: { ...capacitance, 'supply-current': supply, 'sensor-current': '1 mA', 'peak-voltage': peak },
    printed: { 'slew-limit': limit },
    source: slew,
  });

const cables: readonly Printed[] = [
  drive({ capacitance: '3 nF' }, '4 mA', '5 V', '31.83 kHz'),
  drive({ capacitance: '30 nF' }, '4 mA', '5 V peak', '3183.1 Hz'),
  drive({ capacitance: '30 nF' }, '10 mA', '5 V', '9549.3 Hz'),
  drive({ 'capacitance-per-length': '98.4 pF/m', length: '100 m' }, '4 mA', '5 V', '9704.6 Hz'),
  { ...drive({ capacitance: '8.5 nF' }, '4 mA', '8 V', '7021.5 Hz'), source: clause(screeningRules, 'plant 1, 85 m') },
];

const headroom = (
  given: Readonly<Record<string, string>>,
  results: Readonly<Record<string, string>>,
  source = clause(iepePractice, 'clip', 'computed here'),
) => printed({ working: iepeHeadroom, given: { sensitivity: '100 mV/g', ...given }, printed: results, source });

const plants = (place: string) => clause(screeningRules, place);
const ownElectronics = { 'source-drop': '1 V', saturation: '2 V', bias: '10..14 V', range: '80 g peak' } as const;

const headrooms: readonly Printed[] = [
  headroom(
    { compliance: '24 V', 'source-drop': '1 V', bias: '12 V', saturation: '1 V', range: '500 g peak' },
    { 'top-swing': '11 V', 'bottom-swing': '11 V', overload: '110 g peak' },
  ),
  headroom(
    { compliance: '24 V', 'source-drop': '1 V', bias: '8 V', saturation: '1 V', range: '500 g peak' },
    { 'bottom-swing': '7 V', overload: '70 g peak' },
  ),
  headroom(
    { ...ownElectronics, compliance: '18 V' },
    { 'top-swing': '3 V', 'bottom-swing': '8 V', overload: '30 g peak' },
    plants('plant 1, collector of 18 V'),
  ),
  headroom(
    { ...ownElectronics, compliance: '24 V' },
    { 'top-swing': '9 V', 'bottom-swing': '8 V', overload: '80 g peak' },
    plants('plant 1, supply of 24 V'),
  ),
  headroom(
    { ...ownElectronics, compliance: '24 V', 'series-resistance': '340 ohm', 'supply-current': '4 mA' },
    { 'series-drop': '1.36 V', 'top-swing': '7.64 V', 'bottom-swing': '8 V', overload: '76.4 g peak' },
    plants('plant 5, shunt-diode barrier'),
  ),
];

/** f·τ of each attenuation; a time constant of 1 s makes it the frequency. */
const corners = (
  [
    ['3 dB', '0.159155 Hz'],
    ['10 %', '0.328614 Hz'],
    ['5 %', '0.484219 Hz'],
    ['2 %', '0.78379 Hz'],
    ['1 %', '1.11694 Hz'],
  ] as const
).map(([tolerance, frequency]) =>
  printed({
    working: dischargeCornerWorking,
    given: { 'time-constant': '1 s', tolerance },
    printed: { frequency },
    source: clause(iepePractice, 'discharge time constant', 'computed here'),
  }),
);

const scale = { 'range-low': '0 mm/s rms', 'range-high': '25 mm/s rms' } as const;
const point = (value: string, current: string) =>
  printed({
    working: loopScaling,
    given: { ...scale, value: `${value} mm/s rms` },
    printed: { current: `${current} mA` },
    source: plants('plant 1, loop of the pump'),
  });

const loops: readonly Printed[] = [
  point('0', '4'),
  point('1.9', '5.216'),
  point('3.175', '6.032'),
  point('8.5', '9.440'),
  point('25', '20'),
  printed({
    working: loopScaling,
    given: { ...scale, current: '12 mA' },
    printed: { value: '12.5 mm/s rms' },
    source: plants('plant 1, acceptance of the loop at half range'),
  }),
];

const load = (
  supply: string,
  device: string,
  fault: string | undefined,
  resistance: string,
  source = clause(loopPractice, 'load line', 'computed here'),
) =>
  printed({
    working: loopLoad,
    given: { supply, 'device-minimum': device, ...(fault === undefined ? {} : { 'fault-current': fault }) },
    printed: { 'maximum-resistance': `${resistance} ohm` },
    source,
  });

const loads: readonly Printed[] = [
  load('24 V', '12 V', '20 mA', '600'),
  load('24 V', '12 V', '21 mA', '571.4'),
  load('24 V', '10 V', '20.5 mA', '682.9'),
  load('24 V', '10 V', '21 mA', '666.7'),
  load('21.6 V', '12 V', undefined, '446.5', plants('plant 1, load at 21.5 mA')),
  load('21.6 V', '12.5 V', undefined, '423', plants('plant 5, load at 21.5 mA')),
];

const wide = {
  'counts-at-low': '0',
  'counts-at-high': '32000',
  'current-low': '4 mA',
  'current-high': '20 mA',
} as const;
const fromZero = {
  'counts-at-low': '0',
  'counts-at-high': '4095',
  'current-low': '0 mA',
  'current-high': '20 mA',
} as const;
const counted = (current: string, sixteen: string, twelve: string): readonly Printed[] =>
  ([[wide, sixteen] as const, [fromZero, twelve] as const] as const).map(([card, counts]) =>
    printed({
      working: countsScaling,
      given: { ...card, current: `${current} mA` },
      printed: { counts },
      source: plants('plant 1, counts'),
    }),
  );

const counts: readonly Printed[] = [
  ...counted('4', '0', '819'),
  ...counted('5.216', '2432', '1068'),
  ...counted('6.032', '4064', '1235'),
  ...counted('9.44', '10880', '1933'),
  ...counted('20', '32000', '4095'),
];

/**
 * White noise in closed form, by hand: 1 m/s²/√Hz from 1 to 2 Hz is 1 m/s²; once integrated √(1/2)/(2π) = 0.112540 m/s;
 * twice √((7/8)/3)/(4π²) = 0.0136799 m.
 */
const noises = (
  [
    ['0', '1.0000 m/s2 rms'],
    ['1', '0.112540 m/s rms'],
    ['2', '0.0136799 m rms'],
  ] as const
).map(([integrations, noise]) =>
  printed({
    working: noiseInBand,
    given: { density: '1 (m/s2)/rtHz', band: '1..2 Hz', integrations },
    printed: { noise },
    source: clause(screeningRules, 'band noise, its integral for white noise by hand', 'computed here'),
  }),
);

/** Nacelle of the reference turbine: one degree of tilt, and a tower of 90 m that bends at 0.31 Hz. */
const tilts: readonly Printed[] = [
  printed({
    working: tiltGravity,
    given: { angle: '1 deg', frequency: '0.31 Hz', height: '90 m' },
    printed: { standing: '0.0175 g peak', contamination: '4.31 %' },
    source: clause(screeningRules, 'plant 6, nacelle', 'computed here'),
  }),
];

/** NE 43 limits as printed; the states themselves are tested beside `loop-state.ts`. */
export const ne43Printed = {
  source: clause(namurNe43, 'signal levels'),
  milliamperes: { faultLow: 3.6, measuringLow: 3.8, measuringHigh: 20.5, faultHigh: 21 },
} as const;

/** Printed numbers of the formulas of the chain, from other hands. */
export const chainEvidence: readonly Printed[] = [
  ...responses,
  ...resonances,
  ...cables,
  ...headrooms,
  ...corners,
  ...loops,
  ...loads,
  ...counts,
  ...mountingEvidence,
  ...noises,
  ...tilts,
  ...transducerEvidence,
];
