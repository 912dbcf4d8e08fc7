import fc from 'fast-check';
import { expect, test } from 'vitest';
import { wording } from '../../finding/index.ts';
import { showMeasure } from '../../finding/measure.ts';
import {
  answer,
  type Field,
  type Fields,
  fieldOf,
  isOptional,
  level,
  notStated,
  Refusal,
  type Sheet,
  stated,
  unanswered,
} from '../../quantity/index.ts';
import { calculate } from '../../working/index.ts';
import { compared } from '../../working/printed.ts';
import { proximityEvidence } from './evidence.ts';
import {
  type ArrangementKind,
  arrangementKinds,
  proximityWorkings,
  rmsSum,
  slowRollAccepted,
  thrustVoltages,
  vectorDifference,
  vectorSum,
} from './index.ts';

// Longer than most files: what arrangements of probes are held against stands together, and the list of evidence names this one file.

test('printed: every number of reference plant 3 about its probes agrees to its last digit', () => {
  for (const evidence of proximityEvidence) {
    for (const each of compared(evidence)) expect(each, evidence.working.name).toMatchObject({ within: true });
  }
  for (const working of proximityWorkings) {
    expect(
      proximityEvidence.some((each) => each.working === working),
      working.name,
    ).toBe(true);
    for (const result of calculate(working, working.example).results) expect(result.substituted).not.toBe('');
  }
});

const mils = (value: number) => level('displacement', value, 'peak-to-peak');
const size = fc.double({ min: 1e-7, max: 1e-3, noNaN: true });
const angle = fc.double({ min: 0, max: 2 * Math.PI, noNaN: true });

test('law: what is taken away and put back is what there was; no phase makes more than the sum of both', () => {
  fc.assert(
    fc.property(size, angle, size, angle, (a, alpha, b, beta) => {
      const running = { amplitude: mils(a), phase: alpha };
      const slow = { amplitude: mils(b), phase: beta };
      const left = vectorDifference(running, slow);
      const back = vectorSum(left, slow);
      expect(back.amplitude.value).toBeCloseTo(a, 9);
      expect(Math.cos(back.phase - alpha)).toBeGreaterThan(1 - 1e-6);
      expect(left.amplitude.value).toBeLessThanOrEqual((a + b) * (1 + 1e-12));
      expect(left.amplitude.value).toBeGreaterThanOrEqual(Math.abs(a - b) * (1 - 1e-9) - 1e-18);
      expect(left.phase).toBeGreaterThanOrEqual(0);
      expect(left.phase).toBeLessThan(2 * Math.PI);
      const rms = rmsSum(running.amplitude, slow.amplitude).value;
      const most = a + b;
      expect(rms).toBeGreaterThanOrEqual((most / Math.SQRT2) * (1 - 1e-12));
      expect(rms).toBeLessThanOrEqual(most);
    }),
  );
});

test('negative: magnitudes subtracted give 25.9 µm, which is wrong; unlike detectors are refused', () => {
  const [running, slow] = [mils(31e-6), mils(5.1e-6)];
  const left = vectorDifference(
    { amplitude: running, phase: (112 / 180) * Math.PI },
    { amplitude: slow, phase: (40 / 180) * Math.PI },
  );
  expect(left.amplitude.value * 1e6).toBeCloseTo(29.82, 2);
  expect(left.amplitude.value - (running.value - slow.value)).toBeGreaterThan(3e-6);
  const peak = { amplitude: level('displacement', 5e-6, 'peak'), phase: 0 };
  expect(() => vectorDifference({ amplitude: running, phase: 0 }, peak)).toThrow(Refusal);
});

test('law: a collar that comes nearer raises the voltage toward zero, and both ways lie evenly about the middle', () => {
  fc.assert(
    fc.property(size, (position) => {
      const { toward, away } = thrustVoltages(-10, position, 7870);
      expect(toward).toBeGreaterThan(-10);
      expect(away).toBeLessThan(-10);
      expect(toward + away).toBeCloseTo(-20, 9);
    }),
  );
});

/** A sheet of a kind from what somebody typed; what is left out is not stated. */
function typed(kind: string, values: Readonly<Record<string, string | boolean>>) {
  const found = arrangementKinds.find((each) => each.kind === kind) as unknown as ArrangementKind;
  const sheet: Sheet = {
    of: kind,
    values: Object.fromEntries(
      Object.entries(found.dataSheet as Fields).map(([name, entry]) => {
        const raw = values[name];
        const field = fieldOf(entry) as Field<unknown>;
        if (raw === undefined) return [name, isOptional(entry) ? undefined : notStated];
        return [name, stated(field.read(raw, { decimal: 'point' }), String(raw))];
      }),
    ),
  };
  return { found, sheet };
}

const around = {
  at: 'K-11/bearing-1',
  system: answer({ scaleFactor: 7870, linearRange: { low: 0.25e-3, high: 2.25e-3 } as never, corner: 10_000 }),
  shaftDiameter: answer(0.11),
  clearance: answer(165e-6),
  slowest: answer(8000 / 60),
  fastest: answer(190),
  firstCritical: unanswered([{ of: 'K-11', what: 'critical speed' }]),
};

const sound = {
  'xy-pair': {
    angleX: '45 deg',
    angleY: '-45 deg',
    seenFrom: 'driver',
    rotation: 'clockwise',
    gapVoltage: '-10 V',
    gapSet: 'at rest',
    okVoltages: '-17.7..-3 V',
  },
  'thrust-pair': {
    float: '0.35 mm',
    alarmBeyond: '0.25 mm',
    tripBeyond: '0.4 mm',
    gapVoltage: '-10 V',
    toward: 'thrust on the active side',
  },
  'once-per-turn': { mark: 'notch', width: '12 mm', depth: '1.5 mm', gapVoltage: '-6 V', tipDiameter: '8 mm' },
  'slow-roll': {
    amplitude: '5.1 um pp',
    phase: '40 deg',
    speed: '500 r/min',
    firstCritical: '4600 r/min',
    warm: true,
    running: '31.0 um pp',
    runningPhase: '112 deg',
  },
  'casing-beside': { casingPoint: 'bearing-1-casing', sum: 'vector' },
} as const satisfies Readonly<Record<string, Readonly<Record<string, string | boolean>>>>;
type KindName = keyof typeof sound;

const doubted = (kind: KindName, changes: Readonly<Record<string, string | boolean>> = {}, other = {}) => {
  const { found, sheet } = typed(kind, { ...sound[kind], ...changes });
  return found.doubts(sheet, { ...around, ...other }).map(({ rule, weight }) => `${rule} ${weight}`);
};

test('law: every kind passes a sound statement, asks for each of its fields, and says what against what', () => {
  for (const kind of arrangementKinds.map((each) => each.kind)) {
    expect(doubted(kind), kind).toEqual([]);
    const { found, sheet } = typed(kind, {});
    const asked = found.doubts(sheet, around);
    const required = Object.values(found.dataSheet as Fields).filter((entry) => !isOptional(entry));
    expect(asked.length, kind).toBe(required.length + (kind === 'slow-roll' ? 1 : 0));
    for (const each of asked) {
      expect(each.weight).toBe('question');
      expect(each.asks, each.rule).toBeDefined();
      expect(wording(each)).toMatch(/^K-11\/bearing-1: /);
    }
    // Nothing stated: every number that needs it is unknown and names what is missing, none is a zero.
    const system = unanswered([{ of: 'chain', what: 'proximity system' }]);
    for (const row of found.rows(sheet, { ...around, system, clearance: system, fastest: system })) {
      expect(row.value.known, `${kind} ${row.name}`).toBe(false);
    }
    expect(found.sources.length).toBeGreaterThan(0);
  }
});

const rowsOf = (kind: KindName, changes: Readonly<Record<string, string | boolean>> = {}) => {
  const { found, sheet } = typed(kind, { ...sound[kind], ...changes });
  return Object.fromEntries(
    found.rows(sheet, around).flatMap(({ name, value }) => {
      if (!value.known) return [];
      const measure = value.value;
      if (measure.is === 'quantity') return [[name, measure.value]];
      return measure.is === 'level' ? [[name, measure.level.value]] : [];
    }),
  );
};

test('independent: the arrangements give the numbers of the author of reference plant 3', () => {
  expect(rowsOf('xy-pair')['centred-x']).toBeCloseTo(-9.541, 3);
  expect(rowsOf('xy-pair')['gap']! * 1000).toBeCloseTo(1.271, 3);
  expect(rowsOf('xy-pair', { gapSet: 'centred' })['centred-x']).toBe(-10);
  const thrust = rowsOf('thrust-pair');
  expect([thrust['trip-toward'], thrust['trip-away']].map((each) => each!.toFixed(3))).toEqual(['-5.475', '-14.525']);
  expect(rowsOf('once-per-turn')['pulse']! * 1e6).toBeCloseTo(182.76, 2);
  expect(rowsOf('slow-roll')['compensated']! * 1e6).toBeCloseTo(29.82, 2);
  expect(rowsOf('slow-roll')['allowed-runout']! * 1e6).toBeCloseTo(6.35, 9);
});

test('negative: probe angle unknown, X and Y exchanged or seen from the other end, not a quarter turn apart', () => {
  const { found, sheet } = typed('xy-pair', { ...sound['xy-pair'] });
  const unknown = { ...sheet, values: { ...sheet.values, angleX: notStated } };
  expect(found.doubts(unknown, around).map(({ rule }) => rule)).toEqual(['proximity/not-stated']);
  expect(found.rows(unknown, around).find((row) => row.name === 'centred-x')!.value.known).toBe(false);
  expect(found.rows(unknown, around).find((row) => row.name === 'centred-y')!.value.known).toBe(true);
  expect(doubted('xy-pair', { angleX: '-45 deg', angleY: '45 deg' })).toEqual(['proximity/pair-exchanged question']);
  expect(doubted('xy-pair', { seenFrom: 'driven' })).toEqual(['proximity/pair-exchanged question']);
  expect(doubted('xy-pair', { seenFrom: 'driven', angleX: '-45 deg', angleY: '45 deg' })).toEqual([]);
  expect(doubted('xy-pair', { angleY: '-30 deg' })).toEqual([
    'proximity/pair-apart blocks-issue',
    'proximity/pair-unusual notes',
  ]);
  expect(doubted('xy-pair', { angleX: '90 deg', angleY: '0 deg' })).toEqual(['proximity/pair-unusual notes']);
  expect(doubted('xy-pair', { gapVoltage: '-18 V' })).toContain('proximity/gap-outside-range blocks-issue');
  expect(doubted('xy-pair', { okVoltages: '-9.8..-3 V' })).toContain('proximity/gap-outside-ok blocks-issue');
});

test('negative: a thrust float of 0.35 inch, an alarm behind its trip, a trip outside the range', () => {
  const inch = doubted('thrust-pair', { float: '0.35 in' });
  expect(inch).toContain('proximity/float-unusual question');
  expect(inch).toContain('proximity/thrust-outside-range blocks-issue');
  expect(doubted('thrust-pair', { alarmBeyond: '0.4 mm', tripBeyond: '0.25 mm' })).toEqual([
    'proximity/thrust-order blocks-issue',
  ]);
  expect(doubted('thrust-pair', { gapVoltage: '-4 V' })).toEqual(['proximity/thrust-outside-range blocks-issue']);
});

test('negative: slow roll above a third of the critical, above a tenth of the speed, too large, cold', () => {
  expect(doubted('slow-roll', { speed: '2500 r/min' })).toEqual([
    'proximity/slow-roll-too-fast blocks-issue',
    'proximity/slow-roll-too-fast blocks-issue',
  ]);
  expect(doubted('slow-roll', { speed: '1200 r/min' })).toEqual(['proximity/slow-roll-too-fast blocks-issue']);
  expect(doubted('slow-roll', { amplitude: '6.35 um pp' })).toEqual([]);
  expect(doubted('slow-roll', { amplitude: '6.4 um pp' })).toEqual(['proximity/runout-too-large blocks-issue']);
  expect(doubted('slow-roll', { acceptance: '60 um pp', amplitude: '14 um pp' })).toEqual([]);
  expect(doubted('slow-roll', { warm: false })).toEqual(['proximity/slow-roll-cold warns']);
  expect(doubted('slow-roll', { amplitude: '1.8 um rms' })).toEqual(['proximity/slow-roll-detector blocks-issue']);
  const accepted = (changes: Readonly<Record<string, string | boolean>>) =>
    slowRollAccepted(typed('slow-roll', { ...sound['slow-roll'], ...changes }).sheet as never, around);
  expect(accepted({})).toEqual({ known: true, value: true });
  expect(accepted({ speed: '2500 r/min' })).toEqual({ known: true, value: false });
  const open = typed('slow-roll', sound['slow-roll']).sheet;
  for (const firstCritical of [undefined, notStated]) {
    const noCritical = { ...open, values: { ...open.values, firstCritical } };
    expect(slowRollAccepted(noCritical as never, around).known).toBe(false);
  }
  const ofTrain = { ...open, values: { ...open.values, firstCritical: undefined } };
  const critical = { ...around, firstCritical: answer(4600 / 60) };
  expect(slowRollAccepted(ofTrain as never, critical)).toEqual({ known: true, value: true });
});

test('negative: a notch too shallow, too narrow, too short at speed, or with the gap set as on a plain probe', () => {
  expect(doubted('once-per-turn', { depth: '1 mm' })).toEqual(['proximity/mark-shallow warns']);
  expect(doubted('once-per-turn', { width: '8 mm' })).toEqual(['proximity/mark-narrow warns']);
  expect(doubted('once-per-turn', {}, { fastest: answer(1000) })).toEqual(['proximity/pulse-short blocks-issue']);
  expect(doubted('once-per-turn', { gapVoltage: '-10 V' })).toEqual(['proximity/mark-out-of-reach warns']);
  const { found, sheet } = typed('once-per-turn', { ...sound['once-per-turn'], gapVoltage: '-10 V' });
  expect(
    found
      .doubts(sheet, around)[0]!
      .remedy.map((each) => showMeasure(each))
      .join(),
  ).toMatch(/near −6/);
});

test('negative: shaft in space without knowing how the two are added is asked, as vectors without phase too', () => {
  expect(doubted('casing-beside', { relative: '40 um pp', casing: '15 um pp' })).toEqual([
    'proximity/absolute-without-phase question',
  ]);
  expect(rowsOf('casing-beside', { relative: '40 um pp', casing: '15 um pp' })['absolute']).toBeUndefined();
  expect(rowsOf('casing-beside', { sum: 'rms', relative: '40 um pp', casing: '30 um pp' })['absolute']).toBeCloseTo(
    5e-5,
    12,
  );
  expect(() =>
    calculate(proximityWorkings.find((each) => each.name === 'shaft-absolute')!, {
      sum: 'vector',
      relative: '40 um pp',
      casing: '15 um pp',
    }),
  ).toThrow(Refusal);
});

test('negative: a shaft at rest has no pulse and no acceptance, and says so instead of a number without end', () => {
  const rest = { ...around, fastest: answer(0) };
  for (const kind of ['once-per-turn', 'slow-roll'] as const) {
    const { found, sheet } = typed(kind, sound[kind]);
    const rows = found.rows(sheet, rest);
    const open = rows.find((row) => row.name === (kind === 'slow-roll' ? 'allowed-runout' : 'pulse'))!;
    expect(open.value).toMatchObject({ known: false, missing: [{ what: expect.stringContaining('above zero') }] });
    for (const each of found.doubts(sheet, rest)) expect(wording(each)).toMatch(/^K-11/);
  }
  expect(() => typed('thrust-pair', { ...sound['thrust-pair'], float: '0 mm' })).toThrow(Refusal);
});

test('printed: the shaft in space by the triangle of 3, 4 and 5: as vectors a quarter turn apart, and as rms', () => {
  const parts = { relative: '30 um pp', casing: '40 um pp' };
  const quarter = { relativePhase: '0 deg', casingPhase: '90 deg' };
  expect(rowsOf('casing-beside', { ...parts, ...quarter })['absolute']).toBeCloseTo(50e-6, 12);
  expect(rowsOf('casing-beside', { ...parts, sum: 'rms' })['absolute']).toBeCloseTo(50e-6, 12);
  // In step the vectors make 70 µm, against each other 10 µm; the rms sum tells neither.
  expect(rowsOf('casing-beside', { ...parts, ...quarter, casingPhase: '0 deg' })['absolute']).toBeCloseTo(70e-6, 12);
  expect(rowsOf('casing-beside', { ...parts, ...quarter, casingPhase: '180 deg' })['absolute']).toBeCloseTo(10e-6, 12);
});
