import { expect, test } from 'vitest';
import { changed, input, mount, point, transducer } from '../../../../../evidence/bench.ts';
import {
  burst,
  caseOf,
  connected,
  holding,
  jacket,
  line,
  loop,
  on,
  overall,
  position,
  probe,
  probed,
  type Row,
  rawWaterPump,
  roller,
  shaft,
  slowKiln,
  sound,
  sunk,
  throughBarrier,
  tilted,
} from '../../../../../evidence/rule-subjects.ts';
import type { Measure } from '../../finding/measure.ts';
import { outcomes } from './rule.ts';
import { chainRules } from './rules.ts';

// Longer than most files: one table with a row for each rule of a chain, read against their list as a whole.
const rows: Readonly<Record<string, Row>> = {
  'chain/ports-meet': {
    meets: { point: overall() },
    fails: { chain: { input: input('AI-16') }, point: overall() },
    'cannot tell': {
      chain: { transducer: transducer('MCV-20'), input: changed(input('PORT-24'), { currentCanBeOff: 'unknown' }) },
      point: overall(),
    },
  },
  'chain/reference': {
    silent: true,
    meets: { point: line('148.6 Hz') },
    fails: { chain: { transducer: transducer('PRX-8'), input: input('RACK-DC') }, point: line('148.6 Hz') },
  },
  'chain/one-number': {
    silent: true,
    meets: { point: line('148.6 Hz') },
    fails: { chain: loop('LPV-25'), point: line('148.6 Hz') },
  },
  'chain/detected-quantity': {
    meets: { chain: loop('LPV-25'), point: overall() },
    fails: { chain: loop('LPA-10P'), point: overall() },
  },
  'chain/temperature': {
    meets: { point: point({}, { surface: '65 °C' }) },
    fails: { point: point({}, { surface: '130 °C' }) },
    'cannot tell': { point: point({}, { surface: 'unknown' }) },
  },
  'chain/connector-temperature': {
    meets: { chain: connected('-40..90 °C'), point: point({}, { around: { connectorTemperature: '90 °C' } }) },
    fails: { chain: connected('-40..90 °C'), point: point({}, { around: { connectorTemperature: '91 °C' } }) },
    'cannot tell': { point: point({}, { around: { connectorTemperature: '60 °C' } }) },
  },
  'chain/water-jets': {
    meets: {
      chain: { transducer: changed(transducer('ACC-100W'), { sealing: 'IP66/IP68 moulded cable' }) },
      point: point({}, { around: { exposure: 'washed down' } }),
    },
    // IPx7 and IPx8 do not imply IPx6: IEC 60529, from memory.
    warns: {
      chain: { transducer: changed(transducer('ACC-100W'), { sealing: 'IP68 moulded cable' }) },
      point: point({}, { around: { exposure: 'washed down' } }),
    },
  },
  'chain/immersion-depth': {
    meets: {
      chain: { transducer: changed(transducer('ACC-100W'), { sealing: 'IP68 (10 m, continuous)' }) },
      point: sunk('10 m'),
    },
    fails: {
      chain: { transducer: changed(transducer('ACC-100W'), { sealing: 'IP68 (10 m, continuous)' }) },
      point: sunk('12 m'),
    },
    'cannot tell': {
      chain: { transducer: changed(transducer('ACC-100W'), { sealing: 'IP68 moulded cable' }) },
      point: sunk('2 m'),
    },
  },
  'chain/chemicals': {
    meets: { chain: jacket('mineral oil, UV, ammonia'), point: point({}, { around: { chemicals: 'UV, Ammonia' } }) },
    warns: { chain: jacket('mineral oil'), point: point({}, { around: { chemicals: 'mineral oil, ammonia' } }) },
    'cannot tell': { point: point({}, { around: { chemicals: 'mineral oil' } }) },
  },
  'chain/mount-preparation': {
    meets: {
      chain: on('stud', {
        torque: '4 N*m',
        flatness: '0.05 mm',
        roughness: '1.6 um',
        threadDepth: '12 mm',
        studReach: '8 mm',
      }),
      point: burst(),
    },
    fails: { chain: on('stud', { threadDepth: '8 mm', studReach: '8 mm' }), point: burst() },
    warns: { chain: on('stud', { torque: '9 N*m' }), point: burst() },
    'cannot tell': { chain: on('stud', { torque: 'unknown' }), point: burst() },
  },
  'chain/bracket': {
    meets: { chain: on('stud', { bracketFirstMode: '500 Hz' }), point: line('150 Hz') },
    fails: { chain: on('stud', { bracketFirstMode: '499 Hz' }), point: line('150 Hz') },
    'cannot tell': { chain: on('stud', { bracketFirstMode: 'unknown' }), point: line('150 Hz') },
  },
  'chain/magnet-holds': {
    // 95 g and 55 g, 100 N, friction 0.2: 100 · 0.2/0.15 − 9.80665 = 123.5 m/s², which is 12.6 g.
    meets: {
      chain: on('magnet-flat', { ...holding, pull: '100 N' }),
      point: line('100 Hz', { largest: '12.5 g peak' }),
    },
    fails: {
      chain: on('magnet-flat', { ...holding, pull: '100 N' }),
      point: line('100 Hz', { largest: '12.7 g peak' }),
    },
    'cannot tell': { chain: on('magnet-flat', { pull: 'unknown' }), point: line('100 Hz') },
  },
  'chain/cable-temperature': {
    meets: { point: point({}, { around: { cableTemperature: '70 °C' } }) },
    fails: { point: point({}, { around: { cableTemperature: '110 °C' } }) },
    'cannot tell': { point: point({}, { surface: '110 °C' }) },
  },
  'chain/converter-temperature': {
    meets: {
      chain: { transducer: transducer('CHG-25') },
      point: point({}, { around: { converterTemperature: '70 °C' } }),
    },
    fails: {
      chain: { transducer: transducer('CHG-25') },
      point: point({}, { around: { converterTemperature: '105 °C' } }),
    },
    warns: { chain: { transducer: transducer('CHG-25') }, point: point({}) },
    'cannot tell': {
      chain: probe('PRX-8'),
      point: point({}, { around: { converterTemperature: 'unknown' } }),
    },
  },
  'chain/sealing': {
    meets: {
      chain: { transducer: transducer('ACC-100W') },
      point: point({}, { around: { exposure: 'washed down' } }),
    },
    // IP67 as mated: the reference plant with the vibrating screen refuses it.
    fails: { point: point({}, { around: { exposure: 'washed down' } }) },
    'cannot tell': {
      chain: { transducer: changed(transducer('ACC-100W'), { sealing: 'moulded cable' }) },
      point: point({}, { around: { exposure: 'immersed' } }),
    },
  },
  'chain/stray-field': {
    meets: { chain: { transducer: transducer('MCV-20') }, point: point({}, { around: { strayField: 'no' } }) },
    fails: { chain: { transducer: transducer('LFV-75') }, point: point({}, { around: { strayField: 'yes' } }) },
    warns: { chain: { transducer: transducer('SRD-20') }, point: point({}) },
    'cannot tell': {
      chain: { transducer: transducer('MCV-20') },
      point: point({}, { around: { strayField: 'unknown' } }),
    },
  },
  'chain/case-grounding': {
    meets: { chain: { transducer: transducer('ACC-50M'), mount: mount('isolating-stud') }, point: burst() },
    fails: { chain: { transducer: transducer('ACC-50M') }, point: burst() },
    'cannot tell': {
      chain: { transducer: changed(transducer('ACC-50M'), { caseIsolated: 'unknown' }) },
      point: burst(),
    },
  },
  'chain/mass-loading': {
    meets: { point: point({}, { around: { localMass: '1 kg' } }) },
    fails: { point: point({}, { around: { localMass: '0.9 kg' } }) },
    'cannot tell': { point: point({}, { around: { localMass: 'unknown' } }) },
  },
  'chain/tilt': {
    meets: { chain: tilted, point: point({}, { around: { tilt: '-3 deg' } }) },
    fails: { chain: tilted, point: point({}, { around: { tilt: '12 deg' } }) },
    warns: { chain: tilted, point: point({}) },
  },
  'chain/surface-speed': {
    meets: { chain: { transducer: transducer('SRD-20') }, point: point({}, { around: { surfaceSpeed: '20 m/s' } }) },
    fails: { chain: { transducer: transducer('SRD-20') }, point: point({}, { around: { surfaceSpeed: '80 m/s' } }) },
    warns: { chain: { transducer: transducer('SRD-20') }, point: point({}) },
  },
  'chain/matched-set': {
    meets: { chain: probe('PRX-8'), point: point({}) },
    fails: { chain: probed({ extensionLength: '4 m' }), point: point({}) },
    'cannot tell': { chain: probed({ extensionLength: 'unknown' }), point: point({}) },
  },
  'chain/shaft-diameter': {
    meets: { chain: probe('PRX-8'), point: shaft({ shaftDiameter: '110 mm' }) },
    fails: { chain: probe('PRX-25'), point: shaft({ shaftDiameter: '110 mm' }) },
    warns: { chain: probe('PRX-8'), point: shaft() },
    'cannot tell': { chain: probe('PRX-8'), point: shaft({ shaftDiameter: 'unknown' }) },
  },
  'chain/probe-clearance': {
    meets: { chain: probe('PRX-8'), point: shaft({ sideClearance: '15 mm', tipSpacing: '90 mm' }) },
    fails: { chain: probe('PRX-8'), point: shaft({ sideClearance: '8 mm', tipSpacing: '90 mm' }) },
    'cannot tell': { chain: probe('PRX-8'), point: shaft({ tipSpacing: 'unknown' }) },
  },
  'chain/target-material': {
    meets: { chain: probe('PRX-8'), point: shaft({ shaftMaterial: 'forged 4140, certificate 12' }) },
    warns: { chain: probe('PRX-8'), point: shaft({ shaftMaterial: '316 stainless sleeve' }) },
    'cannot tell': { chain: probe('PRX-8'), point: shaft({ shaftMaterial: 'unknown' }) },
  },
  'chain/travel-and-position': {
    meets: {
      chain: probe('PRX-25'),
      point: roller({ restTravel: '2 mm' }),
      found: { value: 0.01, within: 1e-9, source: `${slowKiln}: 10 mm of 12.7 mm` },
    },
    fails: {
      chain: probe('PRX-8'),
      point: roller({ restTravel: '2 mm' }),
      found: { value: 0.01, within: 1e-9, source: `${slowKiln}: 10.00 mm of travel + position > 2.00 mm` },
    },
    'cannot tell': { chain: probe('PRX-25'), point: roller({ restTravel: 'unknown' }) },
  },
  'chain/usable-frequency': {
    meets: { chain: { transducer: transducer('MCV-20') }, point: line('523.2 Hz') },
    fails: { chain: { transducer: transducer('MCV-20') }, point: burst() },
  },
  'chain/response': {
    meets: { point: line('148.6 Hz') },
    // r = 7500/27000: 1/(1 − r²) is 8.4 % above 1, within 10 % but with less than 2 % to spare.
    warns: { point: line('7500 Hz') },
    fails: {
      chain: { transducer: transducer('MCV-20') },
      point: line('12.44 Hz'),
      found: { value: -0.13, within: 0.0005, source: `${rawWaterPump}: -13.0 % at 12.44 Hz` },
    },
  },
  'chain/passes-rest': {
    meets: { chain: { transducer: transducer('PRX-8'), input: input('RACK-DC') }, point: position },
    // The same probe before an input with a coupling corner, as every portable one has.
    fails: { chain: { transducer: transducer('PRX-8') }, point: position },
    'cannot tell': {
      chain: { transducer: transducer('PRX-8'), input: changed(input('PORT-24'), { couplingCorner: 'unknown' }) },
      point: position,
    },
  },
  'chain/signal-to-noise': {
    meets: { point: line('148.6 Hz') },
    // 0.0155 mm/s of noise add 9 % to 0.0357 mm/s: √(1 + 0.434²).
    warns: { point: overall({ smallest: '0.0357 mm/s rms' }) },
    fails: {
      chain: { transducer: transducer('PVT-4') },
      point: burst(),
    },
  },
  'chain/zero-error': {
    meets: { chain: loop('LPV-25'), point: overall() },
    fails: { chain: loop('LPV-25'), point: overall({ smallest: '0.2 mm/s rms' }) },
  },
  'chain/overload': {
    meets: { point: burst() },
    warns: { chain: { transducer: transducer('ACC-500') }, point: line('100 Hz', { largest: '8 g peak' }) },
    fails: { chain: { transducer: transducer('ACC-500') }, point: line('100 Hz', { largest: '12 g peak' }) },
    'cannot tell': { point: burst({ largest: 'unknown' }) },
  },
  'chain/range-as-peak': {
    silent: true,
    meets: { point: burst() },
    'cannot tell': {
      chain: { transducer: changed(transducer('ACC-100'), { range: '80 g rms' }) },
      point: burst(),
    },
  },
  'chain/bias-window': {
    meets: { point: burst() },
    fails: { chain: { input: changed(input('PORT-24'), { compliance: '15 V' }) }, point: burst() },
  },
  'chain/barrier-voltage': {
    meets: { chain: throughBarrier({ highestCompliance: '26 V' }), point: burst() },
    fails: {
      chain: throughBarrier({ highestCompliance: '26.4 V' }),
      point: burst(),
      found: { value: 26.4, within: 0.05, source: 'reference plant, hydrogen compressor: 24 V + 10 % = 26.4 V > 26 V' },
    },
    'cannot tell': { chain: throughBarrier({}), point: burst() },
  },
  'chain/barrier-earth': {
    meets: { chain: throughBarrier({}), point: burst() },
    fails: { chain: { ...throughBarrier({}), transducer: transducer('ACC-50M') }, point: burst() },
    'cannot tell': {
      chain: { ...throughBarrier({}), transducer: changed(transducer('ACC-100'), { caseIsolated: 'unknown' }) },
      point: burst(),
    },
  },
  'chain/cable-drive': {
    meets: { chain: { metres: 85 }, point: burst() },
    fails: {
      chain: { metres: 300, input: input('ONL-24') },
      point: point({ line: { see: 'line', at: '5 kHz', smallest: '1 g peak', largest: '50 g peak', spacing: '1 Hz' } }),
      found: { value: 3183.1, within: 0.05, source: 'trade note on cable drive: 30 nF, 5 V peak, 4 mA' },
    },
  },
  'chain/loop-range': {
    meets: { chain: loop('LPV-25'), point: overall({ largest: '25 mm/s rms' }) },
    fails: {
      chain: loop('LPV-12L'),
      point: overall({ largest: '25 mm/s rms' }),
      found: { value: 0.025, within: 1e-9, source: `${rawWaterPump}: 25 > range 12.5 mm/s rms` },
    },
  },
  'chain/loop-load': {
    meets: {
      chain: loop('LPV-25'),
      point: overall(),
      found: { value: 256.3, within: 0.05, source: `${rawWaterPump}: R = 250 + 6.29 = 256.3 ohm` },
    },
    fails: {
      chain: loop('LPV-25', ['IND-250', 'BAR-340']),
      point: overall(),
      found: { value: 846.3, within: 0.05, source: `${rawWaterPump}: 846.3 ohm, not OK` },
    },
    'cannot tell': { chain: { ...loop('LPV-25'), inLine: [] }, point: overall() },
  },
  'chain/sensitivity-tolerance': {
    meets: { chain: { transducer: transducer('ACC-500') }, point: line('148.6 Hz') },
    warns: { point: line('148.6 Hz', { tolerance: '±5 %' }) },
  },
};

test.each(chainRules.map((rule) => [rule.id, rule] as const))(
  '%s: one chain that meets it, one that does not',
  (id, rule) => {
    const row = rows[id];
    expect(row, `${id} has no row in the table above`).toBeDefined();
    expect(row!.fails ?? row!.warns ?? row!['cannot tell'], `${id} has no case that it does not pass`).toBeDefined();
    for (const outcome of outcomes) {
      const subject = row![outcome];
      if (subject === undefined) continue;
      const judgements = rule.judge(caseOf(subject));
      for (const each of judgements) sound(id, each);
      if (outcome === 'meets') {
        expect(judgements.map((each) => each.outcome).filter((each) => each !== 'meets')).toEqual([]);
        expect(judgements.length === 0, `${id} says nothing of what meets it`).toBe(row!.silent === true);
      } else {
        const worst = outcomes.find((each) => judgements.some((judgement) => judgement.outcome === each));
        expect(worst).toBe(outcome);
      }
      if (subject.found !== undefined) {
        const { value, within, source } = subject.found;
        const numbers = judgements.filter((each) => each.outcome === outcome).map((each) => numberOf(each.found));
        expect(Math.min(...numbers.map((each) => Math.abs(each - value))), source).toBeLessThanOrEqual(
          within * 1.000001,
        );
      }
    }
  },
);

test('no row is left of a rule that is gone; every rule has its own id, sources and a remedy', () => {
  const ids = chainRules.map((rule) => rule.id);
  expect(new Set(ids).size).toBe(ids.length);
  expect(Object.keys(rows).filter((id) => !ids.includes(id))).toEqual([]);
  for (const rule of chainRules) {
    expect(rule.id).toMatch(/^chain\/[a-z]+(-[a-z]+)*$/);
    expect(rule.sources.length, rule.id).toBeGreaterThan(0);
    expect(rule.remedy.length, rule.id).toBeGreaterThan(0);
    expect(rule.prose.length, rule.id).toBeGreaterThan(rule.title.length);
  }
});

function numberOf(measure: Measure): number {
  if (measure.is === 'level') return measure.level.value;
  return 'value' in measure ? measure.value : Number.NaN;
}
