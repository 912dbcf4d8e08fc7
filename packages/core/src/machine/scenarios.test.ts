import { existsSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { coincidences } from './coincidences.ts';
import { waterPump } from './example-pump.ts';
import { exactRatio } from './frequency-line.ts';
import { type FrequencyTable, frequencyTable } from './frequency-table.ts';
import { readTrain, type TypedTrain } from './reading.ts';

/**
 * Printed: invented plants whose answers their author computed with his own program and re-derived a second way. The
 * folder stands beside the repository and may be absent.
 */
const folder = new URL('../../../../../shared/scenarios/', import.meta.url);
const present = existsSync(folder);
if (!present)
  test.skip('the scenario folder ../shared/scenarios is absent: its frequencies were not compared', () => {});

interface Expected {
  readonly id: string;
  readonly value: number;
  readonly tol: number;
  readonly tol_kind: 'rel_pct' | 'abs' | 'exact';
}

function expected(scenario: string): ReadonlyMap<string, Expected> {
  const read = JSON.parse(readFileSync(new URL(`${scenario}.expected.json`, folder), 'utf8'));
  return new Map((read.expected as Expected[]).map((each) => [each.id, each]));
}

function hertz(table: FrequencyTable, line: string, state: string): number {
  const cell = table.rows.find((row) => row.line.name === line)?.cells.find((each) => each.state === state);
  if (cell?.frequency.known !== true) throw new Error(`${line} at ${state}: ${JSON.stringify(cell)}`);
  return cell.frequency.value;
}

function meets(ours: number, wanted: Expected | undefined, id: string): void {
  if (wanted === undefined) throw new Error(`no expected answer '${id}'`);
  const tolerance = wanted.tol_kind === 'rel_pct' ? (wanted.tol / 100) * Math.abs(wanted.value) : wanted.tol;
  expect(Math.abs(ours - wanted.value), `${id}: ${ours}, wanted ${wanted.value}`).toBeLessThanOrEqual(
    tolerance + 1e-12,
  );
}

const pumpLines: Readonly<Record<string, readonly [string, number]>> = {
  rpm: ['motor/1x', 60],
  fr: ['pump/1x', 1],
  half: ['pump/half-order', 1],
  twoLF: ['motor/twice-line', 1],
  pole_pass: ['motor/pole-pass', 1],
  VPF: ['impeller/vane-pass', 1],
  RBPF: ['motor/rotor-bar-pass', 1],
  RB_up: ['motor/rotor-bar-pass-upper', 1],
  pBPFO: ['pump-drive-end/outer-ring', 1],
  pBPFI: ['pump-drive-end/inner-ring', 1],
  pBSF: ['pump-drive-end/element-spin', 1],
  pFTF: ['pump-drive-end/cage', 1],
  mBPFO: ['motor-drive-end/outer-ring', 1],
  mBPFI: ['motor-drive-end/inner-ring', 1],
  mBSF: ['motor-drive-end/element-spin', 1],
  mFTF: ['motor-drive-end/cage', 1],
};

test.skipIf(!present)('printed: every frequency of the variable-speed pump, S01', () => {
  const wanted = expected('S01');
  const table = frequencyTable(readTrain(waterPump));
  const ids = [...wanted.keys()].filter((id) => id.startsWith('S01.freq.'));
  expect(ids).toHaveLength(2 * Object.keys(pumpLines).length);
  for (const [supply, state] of [
    ['25Hz', 'lowest'],
    ['50Hz', 'highest'],
  ] as const) {
    for (const [key, [line, factor]] of Object.entries(pumpLines)) {
      const id = `S01.freq.${supply}.${key}`;
      meets(factor * hertz(table, line, state), wanted.get(id), id);
    }
  }
  const range = (line: string) => {
    const found = table.rows.find((row) => row.line.name === line)!.range;
    return found.known ? found.value : { low: Number.NaN, high: Number.NaN };
  };
  meets(range('pump/half-order').low, wanted.get('S01.band.low'), 'S01.band.low');
  meets(range('motor/rotor-bar-pass-upper').high, wanted.get('S01.band.high_velocity'), 'S01.band.high_velocity');
});

const compressor: TypedTrain = {
  of: 'K-11',
  shafts: ['rotor'],
  elements: {
    journal: { kind: 'fluid-film-bearing', on: 'rotor', whirl: '0.42..0.48' },
    wheel: { kind: 'impeller', on: 'rotor', vanes: 17, 'diffuser-vanes': 13 },
  },
  operation: { shaft: 'rotor', speed: '8000..11400 r/min' },
};

test.skipIf(!present)('printed: the high-speed compressor, S04, with its whirl band and blade lines', () => {
  const wanted = expected('S04');
  const table = frequencyTable(readTrain(compressor));
  const lines: Readonly<Record<string, number>> = {
    one_x: hertz(table, 'rotor/1x', 'highest'),
    two_x: hertz(table, 'rotor/2x', 'highest'),
    min_1x: hertz(table, 'rotor/1x', 'lowest'),
    BPF: hertz(table, 'wheel/vane-pass', 'highest'),
    BPF2: 2 * hertz(table, 'wheel/vane-pass', 'highest'),
    vane_pass: hertz(table, 'wheel/diffuser-vane-pass', 'highest'),
    blade_vane_lcm_order: hertz(table, 'wheel/vane-diffuser', 'highest') / 190,
  };
  for (const [key, ours] of Object.entries(lines)) meets(ours, wanted.get(`S04.freq.${key}`), key);
  const whirl = table.rows.find((row) => row.line.name === 'journal/whirl')!.cells[1]!.between!;
  meets(whirl.low, wanted.get('S04.freq.whirl_low'), 'whirl_low');
  meets(whirl.high, wanted.get('S04.freq.whirl_high'), 'whirl_high');
});

test.skipIf(!present)('printed: the exciter bearing of the screen, S05', () => {
  const wanted = expected('S05');
  const table = frequencyTable(
    readTrain({
      of: 'S-1',
      shafts: ['exciter'],
      elements: {
        bearing: {
          kind: 'rolling-bearing',
          on: 'exciter',
          elements: 16,
          'element-diameter': '24.5 mm',
          'pitch-diameter': '170 mm',
          'contact-angle': '12.5 deg',
        },
      },
      operation: { shaft: 'exciter', speed: '920 r/min' },
    }),
  );
  for (const [key, line] of [
    ['1x', 'exciter/1x'],
    ['2x', 'exciter/2x'],
    ['FTF', 'bearing/cage'],
    ['BSF', 'bearing/element-spin'],
    ['BPFO', 'bearing/outer-ring'],
    ['BPFI', 'bearing/inner-ring'],
  ] as const) {
    meets(hertz(table, line, 'highest'), wanted.get(`S05.freq.${key}`), key);
  }
});

const synchronousCompressor: TypedTrain = {
  of: 'C-201B',
  shafts: ['crankshaft'],
  elements: {
    motor: { kind: 'synchronous-motor', on: 'crankshaft', poles: 12, supply: 'mains', 'line-frequency': '50 Hz' },
  },
  operation: { shaft: 'crankshaft', speed: '500 r/min' },
};

test.skipIf(!present)(
  'printed: order 12 of the synchronous compressor, S07, is twice line frequency and never apart',
  () => {
    const wanted = expected('S07');
    const train = readTrain(synchronousCompressor);
    const table = frequencyTable(train);
    meets(hertz(table, 'crankshaft/1x', 'highest'), wanted.get('S07.freq.1x'), '1x');
    meets(12 * hertz(table, 'crankshaft/1x', 'highest'), wanted.get('S07.freq.12x'), '12x');
    const [found, ...more] = coincidences(train);
    expect(more).toEqual([]);
    expect(found).toMatchObject({ a: { harmonic: 12 }, b: { harmonic: 1 }, separable: 'never' });
    expect(found!.b.line.name).toBe('motor/twice-line');
    expect(found!.instead).toContain('motor current');
    meets(found!.nearest.difference, wanted.get('S07.freq.coincidence_12x_2line'), 'coincidence');
    expect(found!.nearest.resolution).toBeUndefined();
  },
);

const bearing = (shaft: string, n: number, d: string, D: string, angle = '0 deg') => ({
  kind: 'rolling-bearing',
  on: shaft,
  elements: n,
  'element-diameter': d,
  'pitch-diameter': D,
  'contact-angle': angle,
});

test.skipIf(!present)(
  'printed: the parallel stages and bearings of the turbine, S10, behind its planetary stage',
  () => {
    const wanted = expected('S10');
    for (const [speed, rpm] of [
      ['8.5rpm', 8.5],
      ['15.5rpm', 15.5],
    ] as const) {
      // The ring stands, so the sun turns 1 + 99/21 = 40/7 times as fast as the rotor.
      const sun = `${(rpm * 40) / 7} r/min`;
      const table = frequencyTable(
        readTrain({
          of: 'T-14',
          shafts: ['sun', 'intermediate', 'fast'],
          elements: {
            second: { kind: 'gear-pair', from: 'sun', to: 'intermediate', 'driving-teeth': 98, 'driven-teeth': 24 },
            third: { kind: 'gear-pair', from: 'intermediate', to: 'fast', 'driving-teeth': 104, 'driven-teeth': 25 },
            'fast-bearing': bearing('fast', 15, '30 mm', '180 mm'),
            'generator-bearing': bearing('fast', 9, '47.6 mm', '230 mm'),
          },
          operation: { shaft: 'sun', speed: sun },
        }),
      );
      for (const [key, line] of [
        ['sun_LSS', 'sun/1x'],
        ['IMS', 'intermediate/1x'],
        ['HSS', 'fast/1x'],
        ['GMF2', 'second/mesh'],
        ['GMF3', 'third/mesh'],
        ['HSS_BPFO', 'fast-bearing/outer-ring'],
        ['HSS_BPFI', 'fast-bearing/inner-ring'],
        ['gen_BPFO', 'generator-bearing/outer-ring'],
        ['gen_BPFI', 'generator-bearing/inner-ring'],
      ] as const) {
        const id = `S10.freq.${speed}.${key}`;
        meets(hertz(table, line, 'highest'), wanted.get(id), id);
      }
      // 40/7 · 98/24 · 104/25 = 1456/15 overall.
      const fast = table.rows.find((row) => row.line.name === 'fast/1x')!;
      const ratio = exactRatio(fast.line)!.ratio;
      expect(40n * ratio.numerator * 15n).toBe(7n * ratio.denominator * 1456n);
    }
  },
);

test.skipIf(!present)('printed: the support roller and girth gear of the kiln, S02', () => {
  const wanted = expected('S02');
  for (const [key, rpm] of [
    ['kiln1.5', 1.5],
    ['kiln3.0', 3],
  ] as const) {
    const gears = frequencyTable(
      readTrain({
        of: 'K-2',
        shafts: ['pinion', 'kiln'],
        elements: {
          girth: { kind: 'gear-pair', from: 'pinion', to: 'kiln', 'driving-teeth': 23, 'driven-teeth': 220 },
        },
        operation: { shaft: 'kiln', speed: `${rpm} r/min` },
      }),
    );
    const roller = frequencyTable(
      readTrain({
        of: 'K-2',
        shafts: ['roller'],
        elements: { bearing: bearing('roller', 19, '62 mm', '460 mm', '9.5 deg') },
        operation: { shaft: 'roller', speed: `${4 * rpm} r/min` },
      }),
    );
    for (const [answer, ours] of [
      ['kiln', hertz(gears, 'kiln/1x', 'lowest')],
      ['pinion', hertz(gears, 'pinion/1x', 'lowest')],
      ['GMF', hertz(gears, 'girth/mesh', 'lowest')],
      ['HTF', hertz(gears, 'girth/hunting-tooth', 'lowest')],
      ['FTF', hertz(roller, 'bearing/cage', 'lowest')],
      ['BSF', hertz(roller, 'bearing/element-spin', 'lowest')],
      ['BPFO', hertz(roller, 'bearing/outer-ring', 'lowest')],
      ['BPFI', hertz(roller, 'bearing/inner-ring', 'lowest')],
    ] as const) {
      const id = `S02.freq.${key}.${answer}`;
      meets(ours, wanted.get(id), id);
    }
  }
});
