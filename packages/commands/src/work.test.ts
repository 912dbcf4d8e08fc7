import { workings as allWorkings, type Fields, fieldOf, isOptional, kebab, workingCalled } from '@soundpost/core';
import { expect, test } from 'vitest';
import { done, flowing, text, world } from './testing/house.ts';
import { work } from './work.ts';
import { workings } from './workings.ts';

const typed = (example: Readonly<Record<string, string>>) =>
  Object.entries(example).map(([name, value]) => `${name}=${value}`);

test.each(allWorkings.map((each) => [each.name, each] as const))('the example of %s works', async (name, working) => {
  const outcome = await done(work, { name, inputs: typed(working.example) });
  expect(outcome.exit, flowing(outcome)).not.toBe(2);
  const { outputs, formula, sources } = outcome.json as {
    outputs: Record<string, { value: unknown; unit: unknown }>;
    formula: string;
    sources: unknown[];
  };
  expect(Object.keys(outputs).length).toBeGreaterThan(0);
  expect(formula).not.toBe('');
  expect(sources.length).toBeGreaterThan(0);
  expect(Math.max(...outcome.lines.map((line) => [...line.text].length))).toBeLessThanOrEqual(80);
});

/** Names, inputs and outputs that scripts lean on; `?` may be left out. */
const promised: Readonly<Record<string, readonly [inputs: string, outputs: string]>> = {
  'rolling-bearing-frequencies': [
    'elements element-diameter pitch-diameter contact-angle shaft-speed outer-speed?',
    'cage outer-ring inner-ring element-spin',
  ],
  'gear-mesh': ['pinion-teeth wheel-teeth pinion-speed', 'mesh wheel-speed hunting-tooth assembly-phase phases'],
  'induction-motor': [
    'line-frequency poles speed rotor-bars?',
    'synchronous-speed slip slip-frequency pole-pass twice-line rotor-bar-pass',
  ],
  belt: ['pulley-diameter pulley-speed belt-length slip?', 'belt-pass'],
  'vibration-conversion': ['from frequency to', 'result'],
  'mounted-response': ['resonance quality? tolerance', 'usable-frequency'],
  'iepe-cable-drive': [
    'capacitance? capacitance-per-length? length? supply-current sensor-current peak-voltage',
    'slew-limit',
  ],
  'iepe-headroom': [
    'compliance source-drop bias saturation series-resistance? supply-current? sensitivity range',
    'top-swing bottom-swing overload',
  ],
  'discharge-corner': ['time-constant tolerance', 'frequency'],
  'loop-scaling': ['range-low range-high value? current?', 'value current state'],
  'loop-load': ['supply device-minimum drops? fault-current?', 'maximum-resistance'],
  'window-properties': ['window length definition sampling-rate?', 'coherent-gain enbw-bins enbw scalloping'],
  'spectrum-settings': ['highest-frequency lines', 'sampling-rate samples record-length resolution'],
  'uncertainty-budget': [
    'file',
    'estimate standard-uncertainty degrees-of-freedom coverage-factor expanded-uncertainty interval-low interval-high',
  ],
  'charge-converter': [
    'sensitivity feedback-capacitance feedback-resistance source-capacitance? source-resistance?',
    'voltage-sensitivity corner noise-gain',
  ],
  'moving-coil-response': ['suspension damping frequency', 'magnitude phase'],
  'proximity-gap': ['scale-factor gap? voltage?', 'gap voltage'],
  's-max': ['x y', 'method-a method-b method-c'],
  'leak-rate': ['from gas? temperature? to', 'result'],
};

test.each(Object.entries(promised))('%s keeps its name, inputs and outputs', (name, [inputs, outputs]) => {
  const working = workingCalled(name);
  const fields = working.inputs as Fields;
  for (const each of inputs.split(' ')) {
    const key = Object.keys(fields).find((entry) => kebab(entry) === each.replace('?', ''));
    expect(key, each).toBeDefined();
    if (each.endsWith('?')) expect(isOptional(fields[key!]!), each).toBe(true);
  }
  const required = Object.entries(fields).filter(([, entry]) => !isOptional(entry));
  expect(required.map(([entry]) => kebab(entry)).filter((each) => !inputs.split(' ').includes(each))).toEqual([]);
  expect(Object.keys(working.outputs).map(kebab)).toEqual(expect.arrayContaining(outputs.split(' ')));
  for (const entry of Object.values(fields)) expect(fieldOf(entry).meaning).not.toBe('');
});

test('printed: the JSON form, on a published bearing (CWRU drive end: 3.5848 for the outer ring, second-hand)', async () => {
  const inputs = [
    'elements=9',
    'element-diameter=0.3126 in',
    'pitch-diameter=1.537 in',
    'contact-angle=0 deg',
    'shaft-speed=60 r/min',
  ];
  const { json } = await done(work, { name: 'rolling-bearing-frequencies', inputs });
  expect(json).toMatchObject({
    working: 'rolling-bearing-frequencies',
    inputs: { elements: { written: '9' } },
    outputs: { 'outer-ring': { value: expect.closeTo(3.5848, 4), unit: 'Hz', shown: '3.585 Hz' } },
    formula: expect.stringContaining('='),
    sources: [expect.any(String), expect.any(String)],
    findings: [],
  });
});

test('a level keeps its detector in the JSON', async () => {
  const inputs = ['from=10 mm/s rms', 'frequency=100 Hz', 'to=g peak'];
  const outcome = await done(work, { name: 'vibration-conversion', inputs });
  // Hand calculation: 2π · 100 Hz · 10 mm/s · √2 = 8.886 m/s².
  expect(outcome.json, flowing(outcome)).toMatchObject({
    outputs: { result: { value: expect.closeTo(8.8858, 3), unit: 'm/s2', detector: 'peak' } },
  });
});

test('printed: a budget file is read and worked (JCGM 100 H.1: 50 000 838 nm, U = 93 nm, second-hand)', async () => {
  const outcome = await done(work, {
    name: 'uncertainty-budget',
    inputs: ['file=examples/uncertainty/end-gauge.yaml'],
  });
  const { outputs, inputs } = outcome.json as {
    outputs: Record<string, { value: number; unit: string }>;
    inputs: Record<string, { written: string }>;
  };
  expect(outputs.estimate).toMatchObject({ value: expect.closeTo(50_000_838, 0), unit: 'nm' });
  expect(Math.round(outputs['expanded-uncertainty']!.value)).toBeGreaterThanOrEqual(92);
  expect(Math.round(outputs['expanded-uncertainty']!.value)).toBeLessThanOrEqual(93);
  expect(inputs.file!.written).toBe('examples/uncertainty/end-gauge.yaml');
});

test('law: a row of samples is the same typed and in a file; its path is what was written', async () => {
  const [x, y] = [
    [0, 3, 5, 3, 0, -3, -5, -3],
    [5, 3, 0, -3, -5, -3, 0, 3],
  ];
  const rows = (samples: readonly number[]) => `${samples.join(', ')} um`;
  const column = (samples: readonly number[]) => `x (um)\n${samples.join('\n')}\n`;
  const files = world({ 'x.csv': column(x!), 'y.csv': column(y!) });
  const typedIn = await done(work, { name: 's-max', inputs: [`x=${rows(x!)}`, `y=${rows(y!)}`] });
  const fromFiles = await done(work, { name: 's-max', inputs: ['x=x.csv', 'y=y.csv'] }, files);
  const json = (outcome: typeof typedIn) => outcome.json as Record<string, Record<string, unknown>>;
  expect(json(fromFiles).outputs).toEqual(json(typedIn).outputs);
  expect(json(fromFiles).inputs).toMatchObject({ x: { written: 'x.csv' }, y: { written: 'y.csv' } });
});

test('the page shows formula, numbers put in, validity and source', async () => {
  const inputs = ['resonance=27 kHz', 'tolerance=10 %'];
  const shown = flowing(await done(work, { name: 'mounted-response', inputs }));
  expect(shown).toContain('usable-frequency 8141 Hz');
  expect(shown).toContain('27000 Hz · √');
  expect(shown).toContain('Holds for');
  expect(shown).toContain('Source');
});

test('units of the output follow the wish; the JSON does not', async () => {
  const given = { name: 'shaft-limits', inputs: typed(workingCalled('shaft-limits').example) };
  const metric = await done(work, given);
  const us = await done(work, given, world(), { units: 'us' });
  expect(text(us)).toContain('mil');
  expect(JSON.stringify(us.json)).toBe(JSON.stringify(metric.json));
});

test('what cannot be read is refused with what would be read', async () => {
  const refusal = async (name: string, ...inputs: string[]) => {
    const outcome = await done(work, { name, inputs });
    expect(outcome.exit).toBe(2);
    return flowing(outcome);
  };
  expect(await refusal('mounted-respons')).toContain("Did you mean 'mounted-response'?");
  expect(await refusal('mounted-response', 'resonanze=27 kHz')).toContain("Did you mean 'resonance'?");
  expect(await refusal('mounted-response', 'resonance=27')).toContain('none is ever assumed');
  expect(await refusal('mounted-response', 'resonance')).toContain('an input as NAME="value unit"');
  expect(await refusal('mounted-response', 'resonance=1 kHz', 'resonance=2 kHz')).toContain('stands twice');
  expect(await refusal('mounted-response', 'resonance=27 kHz')).toContain('tolerance="10 %"');
  expect(await refusal('mounted-response', 'resonance=27 kHz', 'tolerance=10 mm/s rms')).toContain(
    'a tolerance such as',
  );
  expect(await refusal('uncertainty-budget', 'file=nowhere.yaml')).toContain('a file that exists');
});

test('every working stands in the list, under its room', async () => {
  const outcome = await done(workings, {});
  const shown = flowing(outcome);
  for (const { name, title } of allWorkings) expect(shown).toContain(`${name} ${title}`);
  const { workings: listed } = outcome.json as { workings: { name: string; room: string }[] };
  expect(listed.map((each) => each.name).sort()).toEqual(allWorkings.map((each) => each.name).sort());
});
