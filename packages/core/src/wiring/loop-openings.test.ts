import { expect, test } from 'vitest';
import { loopedWiring, type PumpWiring, wiredPump } from '../../../../evidence/wiring/wired-pump.ts';
import { wiredPoints } from '../design/design.ts';
import { groundLoops, loopOpenings, wiringGraph } from './index.ts';

const cases: readonly (readonly [string, PumpWiring])[] = [
  ['nothing stated', {}],
  ['a grounded case and a screen joined in three places', loopedWiring],
  ['screens of two points joined at both ends', { wiring: 'screen-earthed: both', loopWiring: 'screen-earthed: both' }],
  ['a bond beside one cable', { ...loopedWiring, wiring: `${loopedWiring.wiring}, equipotential-bond: yes` }],
];

test.each(cases)('law: with every opening made no loop is left but those closed by design: %s', (_, says) => {
  const points = wiredPump(says).machines.flatMap(wiredPoints);
  const graph = wiringGraph(points);
  const openings = loopOpenings(graph, points);
  const loops = groundLoops(graph, points).filter((each) => !each.byDesign);
  expect(openings.length).toBe(loops.length);
  const opened = { ...graph, conductors: graph.conductors.filter((each) => !openings.includes(each)) };
  expect(groundLoops(opened, points).filter((each) => !each.byDesign)).toEqual([]);
});

test.each(cases)('law: no opening is one too many: with any of them left out a loop is left: %s', (_, says) => {
  const points = wiredPump(says).machines.flatMap(wiredPoints);
  const graph = wiringGraph(points);
  const openings = loopOpenings(graph, points);
  for (const left of openings) {
    const conductors = graph.conductors.filter((each) => each === left || !openings.includes(each));
    expect(groundLoops({ ...graph, conductors }, points).filter((each) => !each.byDesign).length).toBe(1);
  }
});

test('law: what practice opens first is opened: the case before the box, and the box before the cabinet', () => {
  const points = wiredPump(loopedWiring).machines.flatMap(wiredPoints);
  const at = 'P-301/pump-drive-end-horizontal';
  expect(new Set(loopOpenings(wiringGraph(points), points).map((each) => each.name))).toEqual(
    new Set([
      `signal ground on the case of ${at}`,
      `screen of ${at} on the case`,
      `screen of ${at} on the junction box`,
    ]),
  );
});

test('law: nothing is opened that must stay whole', () => {
  for (const [, says] of cases) {
    const points = wiredPump(says).machines.flatMap(wiredPoints);
    for (const each of loopOpenings(wiringGraph(points), points)) {
      expect(each.use).not.toBe('earthing');
      expect(each.remedy).toBeDefined();
    }
  }
});
