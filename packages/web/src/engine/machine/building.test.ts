import { readdirSync, readFileSync } from 'node:fs';
import { machineElementKinds } from '@soundpost/core';
import { expect, test } from 'vitest';
import { Engine } from '../engine.ts';
import type { BuildingAsked, Built } from './building-views.ts';

const root = new URL('../../../../../', import.meta.url);
const text = (path: string) => readFileSync(new URL(path, root), 'utf8');
const catalogues = { generic: { path: 'generic.yaml', text: text('packages/files/catalogues/generic.yaml') } };
const empty = [
  '# A plant of nothing yet',
  'soundpost: plant',
  'version: 1',
  'plant: { name: Lindow Works }',
  'catalogues: [generic]',
  'machines: {} # to come',
  '',
].join('\n');

class Hands {
  readonly engine = new Engine();
  text: string;
  readonly #undo: (() => void)[] = [];

  constructor(before: string) {
    this.text = before;
    this.engine.open({ path: 'plant.yaml', text: before, catalogues });
  }

  build(asked: BuildingAsked): Built & { readonly label: string } {
    const built = this.engine.built(asked);
    if ('refused' in built) throw new Error(built.refused);
    const made = this.engine.edited(this.text, built.edits);
    this.take(made.text);
    this.#undo.push(() => this.take(this.engine.edited(this.text, made.undo).text));
    return built;
  }

  take(next: string): void {
    const opened = this.engine.read(next);
    if ('refused' in opened) throw new Error(opened.refused.message);
    this.text = next;
  }

  undoAll(): void {
    while (this.#undo.length > 0) this.#undo.pop()!();
  }

  refused(asked: BuildingAsked): string {
    const built = this.engine.built(asked);
    return 'refused' in built ? built.refused : '';
  }
}

const machine = 'P-1';

test('law: from an empty plant every kind of element is added, stands where it was put, and all is undone to the byte', () => {
  const hands = new Hands(empty);
  hands.build({ act: 'add machine', name: machine, title: 'Pump: "the big one"', shaft: 'one' });
  for (const name of ['two', 'three']) hands.build({ act: 'add shaft', machine, name });
  for (const { kind, roles } of hands.engine.machineBench(machine)!.kinds) {
    const shafts = Object.fromEntries(roles.map(({ role }, index) => [role, ['one', 'two', 'three', ''][index]!]));
    hands.build({ act: 'add element', machine, kind, name: `a-${kind}`, shafts });
  }
  const { forms } = hands.engine.machineBench(machine)!;
  for (const { kind, name, sheet } of machineElementKinds) {
    const form = forms.find((each) => each.key === `element/a-${kind}`)!;
    expect(form.kind).toBe(name);
    const typed = Object.values(sheet).length;
    expect(form.fields.length).toBeLessThanOrEqual(typed);
  }
  expect(hands.text.startsWith('# A plant of nothing yet\n')).toBe(true);
  hands.undoAll();
  expect(hands.text).toBe(empty);
});

const plants = readdirSync(new URL('examples/', root)).filter((name) =>
  readdirSync(new URL(`examples/${name}/`, root)).includes('plant.yaml'),
);

test.each(plants)(
  'law: in %s all that can be taken away leaves a file that is read, and is undone to the byte',
  (name) => {
    const before = text(`examples/${name}/plant.yaml`);
    const hands = new Hands(before);
    const { machines, points } = hands.engine.plant();
    const first = machines[0]!.name;
    const bench = hands.engine.machineBench(first)!;
    const asked: BuildingAsked[] = [
      ...bench.shafts.map((each) => ({ act: 'remove', what: 'shaft', machine: first, name: each.name }) as const),
      ...bench.forms.flatMap(({ element }) =>
        element === undefined ? [] : [{ act: 'remove', what: 'element', machine: first, name: element.name } as const],
      ),
      ...points
        .filter((each) => each.machine === first)
        .map((each) => ({ act: 'remove', what: 'point', machine: first, name: each.name }) as const),
      { act: 'remove', what: 'machine', machine: first, name: '' },
    ];
    let made = 0;
    for (const each of asked) {
      const built = hands.engine.built(each);
      if ('refused' in built) {
        expect(built.refused).toMatch(/\. /);
        continue;
      }
      expect(built.takesAlong.length).toBeGreaterThan(0);
      hands.build(each);
      hands.undoAll();
      expect(hands.text).toBe(before);
      made++;
    }
    expect(made).toBeGreaterThan(0);
  },
);

test('a shaft is taken away with what stands on it, and what then asks is named before', () => {
  const hands = new Hands(text('examples/raw-water-pump/plant.yaml'));
  const removal = hands.engine.built({ act: 'remove', what: 'shaft', machine: 'P-301', name: 'pump' });
  expect(removal).toMatchObject({
    label: 'Shaft pump taken away',
    takesAlong: [
      'the shaft pump',
      'the element coupling, which stands on it',
      'the element pump-drive-end, which stands on it',
      'the element impeller, which stands on it',
    ],
  });
  expect('refused' in removal ? [] : removal.unsettles).toContain(
    '‘3 x pump-drive-end/inner-ring at highest’, pump-drive-end-horizontal, targets, bearing lines, frequency',
  );
  expect(hands.refused({ act: 'remove', what: 'shaft', machine: 'P-301', name: 'motor' })).toMatch(
    /line frequency of motor\. Say under/,
  );
  expect(hands.refused({ act: 'remove', what: 'element', machine: 'P-301', name: 'motor' })).toMatch(/‘How it is run’/);
});

test('how a machine is run is stated another way, and named states keep it from being read otherwise', () => {
  const hands = new Hands(text('examples/raw-water-pump/plant.yaml'));
  const before = hands.text;
  const asked = { act: 'run by', machine: 'P-301', by: 'shaft', of: 'pump' } as const;
  hands.build(asked);
  expect(hands.engine.machineBench('P-301')!.operation).toMatchObject({ by: 'shaft', of: 'pump' });
  hands.undoAll();
  expect(hands.text).toBe(before);
  hands.build({ act: 'add state', machine: 'P-301', name: 'duty', at: '48 Hz' });
  expect(hands.refused(asked)).toMatch(/duty .*Take them away first/);
  hands.build({ act: 'remove', what: 'state', machine: 'P-301', name: 'duty' });
  expect(hands.text).toBe(before);
});

test('an element moves one place, stands on another shaft, and says why it cannot', () => {
  const hands = new Hands(text('examples/raw-water-pump/plant.yaml'));
  const before = hands.text;
  const names = () => hands.engine.machineBench('P-301')!.forms.flatMap(({ element }) => element?.name ?? []);
  const first = names();
  hands.build({ act: 'move', what: 'element', machine: 'P-301', name: 'coupling', by: -1 });
  expect(names()).toEqual([first[0], first[2], first[1], first[3], first[4]]);
  hands.build({ act: 'move', what: 'shaft', machine: 'P-301', name: 'motor', by: 1 });
  expect(hands.engine.machineBench('P-301')!.shafts.map((each) => each.name)).toEqual(['pump', 'motor']);
  hands.build({ act: 'stand on', machine: 'P-301', element: 'motor-drive-end', role: 'outer', shaft: 'pump' });
  const { roles } = hands.engine.machineBench('P-301')!.forms.find((each) => each.title === 'motor-drive-end')!
    .element!;
  expect(roles.map((each) => each.shaft)).toEqual(['motor', 'pump']);
  hands.undoAll();
  expect(hands.text).toBe(before);
  expect(hands.refused({ act: 'move', what: 'element', machine: 'P-301', name: 'motor', by: -1 })).toMatch(/first/);
  const again = { act: 'add element', machine: 'P-301', kind: 'impeller', shafts: { on: 'pump' } } as const;
  expect(hands.refused({ ...again, name: 'impeller' })).toMatch(/already/);
  expect(hands.refused({ ...again, name: 'two words' })).toMatch(/pump-drive-end/);
  expect(hands.refused({ ...again, name: 'wheel', shafts: {} })).toMatch(/On which shaft/);
});

test('a point and a machine are added among others and refused where the name is taken', () => {
  const hands = new Hands(text('examples/raw-water-pump/plant.yaml'));
  const before = hands.text;
  const point = { act: 'add point', machine: 'P-301', location: 'motor: drive end', direction: '' } as const;
  hands.build({ ...point, name: 'motor-vertical', installation: 'portable' });
  expect(hands.engine.plant().points.map((each) => each.name)).toContain('motor-vertical');
  hands.build({ act: 'add machine', name: 'P-300', title: 'Another', shaft: 'motor', before: 'P-301' });
  expect(hands.engine.plant().machines.map((each) => each.name)).toEqual(['P-300', 'P-301']);
  expect(hands.refused({ ...point, name: 'motor-vertical', installation: 'portable' })).toMatch(/already/);
  expect(hands.refused({ ...point, name: 'another', installation: '' })).toMatch(/online or portable/);
  expect(hands.refused({ act: 'add machine', name: 'P-301', title: 'x', shaft: 'motor' })).toMatch(/already/);
  hands.undoAll();
  expect(hands.text).toBe(before);
});
