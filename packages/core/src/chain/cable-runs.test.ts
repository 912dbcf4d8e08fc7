import { expect, test } from 'vitest';
import { answer } from '../quantity/index.ts';
import { cableRuns } from './cable-runs.ts';
import { type ChainParts, measuringChain } from './chain.ts';

const notStated = new Proxy({}, { get: () => ({ known: false }) });
const sheet = (of: string) => ({ of, values: notStated });
const part = (kind: string, name: string) => ({ kind, name, sheet: sheet(name) });

/** A loop sensor through a box and a supply; nothing is stated on its sheets. */
function parts(onward: readonly number[]): ChainParts {
  return {
    transducer: part('loop-sensor', 'S'),
    mount: part('stud', 'stud'),
    cable: part('signal-cable', 'TSP'),
    cableLength: answer(5),
    inLine: [part('junction-box', 'JB'), part('loop-supply', 'PS')],
    onward: onward.map((behind) => ({ behind, cable: part('signal-cable', 'TSP'), length: answer(80) })),
    input: part('current-card', 'AI'),
  } as unknown as ChainParts;
}

const ends = (onward: readonly number[]) =>
  cableRuns(measuringChain(parts(onward))).map((run) => `${run.from} to ${run.to}`);

test('each length of cable joins what it leads from with what it leads to', () => {
  expect(ends([0, 1])).toEqual(['S to JB', 'JB to PS', 'PS to AI']);
  expect(ends([])).toEqual(['S to JB']);
  expect(ends([1])).toEqual(['S to JB', 'PS to AI']);
});

test('a cable that leads on from a place the line does not have is kept, with one end', () => {
  expect(ends([0, 5])).toEqual(['S to JB', 'JB to PS', 'place 6 of the line to undefined']);
});
