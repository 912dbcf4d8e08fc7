import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { type Design, design, Refusal } from '../../packages/core/src/index.ts';
import { plantOf, root } from '../reading.ts';

/** The demo plant, its portable point made an online one with a case that is its ground, and a wiring stated there. */
const demo = readFileSync(resolve(root, 'examples/raw-water-pump/plant.yaml'), 'utf8');
const chain = `          transducer: ACC-100
          mount: stud
          cable: TSP
          cable-length: 2 m
          input: PORT-24
`;
const point = 'P-301/pump-drive-end-horizontal';

function stated(online: boolean, transducer: string, wiring: string, plantWide = ''): Design {
  const text = demo
    .replace('installation: portable', `installation: ${online ? 'online' : 'portable'}`)
    .replace(chain, chain.replace('ACC-100', transducer).replace('PORT-24', online ? 'ONL-24' : 'PORT-24') + wiring)
    .replace('\nmachines:', `${plantWide}\nmachines:`);
  return design(plantOf(text), 1);
}

const rulesAt = ({ findings }: Design) =>
  findings.filter((each) => each.at === point && /wiring|case-grounding/.test(each.rule)).map((each) => each.rule);

test('a plant file that states nothing of screens is asked nothing, and has no loop through its portable point', () => {
  const plain = stated(false, 'ACC-100', '');
  expect(plain.loops.filter((loop) => loop.points.includes(point))).toEqual([]);
  expect(plain.findings.filter((each) => each.rule.startsWith('wiring/'))).toEqual([]);
});

test('trap: a case-grounded sensor on an online system is refused, once, and its loop named; on a collector accepted', () => {
  const online = stated(true, 'ACC-50M', '');
  const loop = online.loops.find((each) => each.points.includes(point));
  expect(loop?.through).toBe('signal');
  expect(loop?.members.map(({ use }) => use)).toContain('earthing');
  expect(rulesAt(online)).toEqual(['chain/case-grounding']);
  const portable = stated(false, 'ACC-50M', '');
  expect(portable.loops.filter((each) => each.points.includes(point))).toEqual([]);
  expect(rulesAt(portable)).toEqual([]);
});

test('screens, a bond and distances of the owner are read from the plant file', () => {
  const screen = (entries: string) => `        wiring: { ${entries} }\n`;
  expect(rulesAt(stated(true, 'ACC-100', screen('screen-earthed: both')))).toEqual(['wiring/screen-ends']);
  expect(rulesAt(stated(true, 'ACC-100', screen('screen-earthed: both, equipotential-bond: yes')))).toEqual([]);
  const beside = screen('power-cable: converter drive, power-distance: 600 mm');
  expect(rulesAt(stated(true, 'ACC-100', beside))).toEqual([]);
  expect(rulesAt(stated(true, 'ACC-100', beside, '\nseparation: { converter-drive: 800 mm }'))).toEqual([
    'wiring/separation',
  ]);
});

test('negative: a screen end that is none is refused where it stands', () => {
  expect(() => stated(true, 'ACC-100', '        wiring: { screen-earthed: cabnet }\n')).toThrow(Refusal);
});
