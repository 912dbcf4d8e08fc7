import { readdirSync, readFileSync } from 'node:fs';
import { applyEdits } from '@soundpost/files';
import { expect, test } from 'vitest';
import { designJson } from '../../../../commands/src/json/design-json.ts';
import { PlantSession } from '../plant-session.ts';
import { built } from './building.ts';
import type { BuildingAsked } from './building-views.ts';

const root = new URL('../../../../../', import.meta.url);
const text = (path: string) => readFileSync(new URL(path, root), 'utf8');
const catalogues = { generic: { path: 'generic.yaml', text: text('packages/files/catalogues/generic.yaml') } };
const plants = readdirSync(new URL('examples/', root)).filter((name) =>
  readdirSync(new URL(`examples/${name}/`, root)).includes('plant.yaml'),
);

type Renaming = Extract<BuildingAsked, { readonly act: 'rename' }>;

function opened(file: string): PlantSession {
  const session = new PlantSession('plant.yaml', catalogues);
  session.read(file);
  return session;
}

function after(session: PlantSession, asked: Renaming) {
  const made = built(asked, session);
  if ('refused' in made) throw new Error(`${asked.what} ${asked.name}: ${made.refused}`);
  return { ...session.edited(session.text, made.edits), made };
}

/** Every name of the first machine that can be another. */
function names(session: PlantSession): readonly Omit<Renaming, 'act' | 'to'>[] {
  const [stated] = session.plant!.machines;
  const machine = stated!.name;
  return [
    { what: 'machine', machine, name: '' },
    ...stated!.train.shafts.map((name) => ({ what: 'shaft', machine, name }) as const),
    ...stated!.train.elements.map(({ name }) => ({ what: 'element', machine, name }) as const),
    ...stated!.points.map(({ statement: { name } }) => ({ what: 'point', machine, name }) as const),
    ...stated!.train.operation.states.map(({ name }) => ({ what: 'state', machine, name }) as const),
  ];
}

const to = 'Q-renamed';

test.each(plants)('law: in %s a name and back is the same bytes, and so is what undoes it', (name) => {
  const before = text(`examples/${name}/plant.yaml`);
  const session = opened(before);
  for (const each of names(session)) {
    const { text: there, undo } = after(session, { act: 'rename', ...each, to });
    expect(there).not.toBe(before);
    expect(applyEdits(there, undo).text).toBe(before);
    const renamed = opened(there);
    const own = each.what === 'machine' ? each.machine : each.name;
    const back = {
      act: 'rename',
      what: each.what,
      machine: each.what === 'machine' ? to : each.machine,
      name: each.what === 'machine' ? '' : to,
      to: own,
    } as const;
    if (!sharesName(session, each)) expect(after(renamed, back).text, `${each.what} ${own}`).toBe(before);
  }
});

/** A shaft and an element may have one name: what hears that hears both, and afterwards names both. */
function sharesName(session: PlantSession, { what, name }: Omit<Renaming, 'act' | 'to'>): boolean {
  const { train } = session.plant!.machines[0]!;
  return (
    (what === 'shaft' && train.elements.some((each) => each.name === name)) ||
    (what === 'element' && train.shafts.includes(name))
  );
}

/** Where two long texts part, with what stands there in each. */
function firstDifference(now: string, before: string): readonly string[] | undefined {
  if (now === before) return undefined;
  const at = [...now].findIndex((sign, index) => sign !== before[index]);
  return [now, before].map((each) => each.slice(Math.max(0, at - 120), at + 120));
}

/** The whole design as it is written for other programs; findings of one weight stand in the order of names. */
function design(session: PlantSession, called: (text: string) => string = (text) => text): string {
  while (session.advance());
  const { findings, ...rest } = JSON.parse(called(JSON.stringify(designJson(session.design!, 1))));
  expect(findings.length).toBeGreaterThan(0);
  return JSON.stringify([rest, findings.map((each: unknown) => JSON.stringify(each)).sort()]);
}

test.each(['raw-water-pump', 'turbo-compressor', 'kiln-support-roller', 'hydrogen-compressor'])(
  'law: what is designed for %s changes in the name alone',
  (name) => {
    const session = opened(text(`examples/${name}/plant.yaml`));
    const before = design(session);
    for (const each of names(session)) {
      if (sharesName(session, each)) continue;
      const own = each.what === 'machine' ? each.machine : each.name;
      const renamed = opened(after(session, { act: 'rename', ...each, to }).text);
      const now = design(renamed, (text) => text.replaceAll(to, own));
      expect(firstDifference(now, before), `${each.what} ${own}`).toBeUndefined();
    }
  },
);

const pump = () => opened(text('examples/raw-water-pump/plant.yaml'));

test('an element is followed by what measures its lines; words that name it are told and stay', () => {
  const { text: file, made } = after(pump(), {
    act: 'rename',
    what: 'element',
    machine: 'P-301',
    name: 'pump-drive-end',
    to: 'bearing-2',
  });
  expect(file).toContain('frequency: 3 x bearing-2/inner-ring at highest');
  expect(file).toContain('\n      bearing-2:\n        kind: rolling-bearing\n');
  expect(file).not.toContain('pump-drive-end:');
  expect(made.takesAlong).toEqual([
    'pump-drive-end-horizontal, targets, bearing lines, frequency: 3 x bearing-2/inner-ring at highest',
  ]);
  expect(made.unsettles.join('\n')).toContain('pump-drive-end-horizontal is drawn at no element');
});

test('of a shaft and an element with one name only what is meant follows', () => {
  const heard = text('examples/raw-water-pump/plant.yaml')
    .replace('frequency: impeller/vane-pass at highest', 'frequency: motor/twice-line at highest')
    .replace('frequency: pump/1x at lowest', 'frequency: motor/1x at lowest')
    .replace('installation: online', 'installation: online\n        hears: [motor, impeller]');
  const rename = { act: 'rename', machine: 'P-301', name: 'motor', to: 'rotor' } as const;
  const shaft = after(opened(heard), { ...rename, what: 'shaft' }).text;
  expect(shaft).toContain('shafts: [rotor, pump]');
  expect(shaft).toContain('kind: induction-motor\n        on: rotor');
  expect(shaft).toContain('frequency: rotor/1x at lowest');
  expect(shaft).toContain('frequency: motor/twice-line at highest');
  expect(shaft).toContain('hears: [rotor, motor, impeller]');
  expect(shaft).toContain('operation:\n      motor: motor');
  const element = after(opened(heard), { ...rename, what: 'element' }).text;
  expect(element).toContain('shafts: [motor, pump]');
  expect(element).toContain('operation:\n      motor: rotor');
  expect(element).toContain('frequency: motor/1x at lowest');
  expect(element).toContain('frequency: rotor/twice-line at highest');
});

test('a point is followed by the probes that stand beside it; a plate by its shaft', () => {
  const file = text('examples/turbo-compressor/plant.yaml');
  const session = opened(file);
  const beside = session.plant!.machines[0]!.points.find((each) =>
    each.probes?.some(({ kind }) => kind === 'casing-beside'),
  );
  if (beside !== undefined) {
    const { sheet } = beside.probes!.find(({ kind }) => kind === 'casing-beside')!;
    const named = (sheet.values as unknown as { casingPoint: { value: string } }).casingPoint.value;
    const machine = session.plant!.machines[0]!.name;
    const made = after(session, { act: 'rename', what: 'point', machine, name: named, to });
    expect(made.text).toContain(`casing-point: ${to}`);
  }
  const plated = text('examples/raw-water-pump/plant.yaml').replace(
    '    operation:\n',
    '    plates: { "pump": 1486 r/min }\n    operation:\n',
  );
  const shaft = after(opened(plated), { act: 'rename', what: 'shaft', machine: 'P-301', name: 'pump', to: 'wheel' });
  expect(shaft.text).toContain('plates: { "wheel": 1486 r/min }');
  expect(applyEdits(shaft.text, shaft.undo).text).toBe(plated);
});

test('a name that is taken, empty or cannot be spoken of is refused', () => {
  const refused = (more: Omit<Renaming, 'act' | 'machine'>) => {
    const made = built({ act: 'rename', machine: 'P-301', ...more }, pump());
    return 'refused' in made ? made.refused : '';
  };
  expect(refused({ what: 'element', name: 'impeller', to: 'coupling' })).toContain('already');
  expect(refused({ what: 'element', name: 'impeller', to: 'two words' })).toContain('begins with a letter');
  expect(refused({ what: 'element', name: 'wheel', to: 'x' })).toContain("no element 'wheel'");
  expect(refused({ what: 'shaft', name: 'pump', to: 'motor' })).toContain('already');
  expect(refused({ what: 'shaft', name: 'pump', to: 'fixed' })).not.toBe('');
  expect(refused({ what: 'point', name: 'pump-drive-end-loop', to: 'a/b' })).toContain("without '/'");
  expect(refused({ what: 'point', name: 'pump-drive-end-loop', to: 'pump-drive-end-horizontal' })).toContain('already');
  expect(refused({ what: 'machine', name: '', to: ' ' })).toContain('needs a name');
  expect(refused({ what: 'point', name: 'pump-drive-end-loop', to: ' pump-drive-end-loop ' })).toContain('already');
});

test('what a point listens to is stated in the order of the train, and taken back whole', () => {
  const session = pump();
  const hear = (hears: readonly string[]) =>
    built({ act: 'hear', machine: 'P-301', point: 'pump-drive-end-loop', hears }, session);
  const made = hear(['impeller', 'pump']);
  if ('refused' in made) throw new Error(made.refused);
  const { text: file, undo } = session.edited(session.text, made.edits);
  expect(opened(file).plant!.machines[0]!.points[1]!.statement.hears).toEqual(['pump', 'impeller']);
  expect(applyEdits(file, undo).text).toBe(session.text);
  const again = opened(file);
  const all = built({ act: 'hear', machine: 'P-301', point: 'pump-drive-end-loop', hears: [] }, again);
  expect('refused' in all ? '' : again.edited(file, all.edits).text).toBe(session.text);
  expect(hear(['wheel'])).toMatchObject({ refused: expect.stringContaining('wheel') });
});
