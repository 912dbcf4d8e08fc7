import { expect, test } from 'vitest';
import { showClause } from '../source/source.ts';
import { compared } from '../working/printed.ts';
import { calculate } from '../working/working.ts';
import { machineEvidence } from './evidence.ts';
import { machineWorkings } from './workings/index.ts';

for (const evidence of machineEvidence) {
  const given = Object.values(evidence.given).join(', ');
  const wanted = Object.entries(evidence.printed).map(([name, text]) => `${name} ${text}`);
  test(`printed: ${evidence.working.name} of ${given} is ${wanted.join(', ')} — ${showClause(evidence.source)}`, () => {
    for (const each of compared(evidence)) {
      expect(each.within, `${each.output}: printed ${each.printed}, ours ${each.ours} ± ${each.tolerance}`).toBe(true);
    }
  });
}

test('every working of the room has printed evidence, and its example runs', () => {
  for (const working of machineWorkings) {
    expect(
      machineEvidence.some((each) => each.working === working),
      working.name,
    ).toBe(true);
    const calculation = calculate(working, working.example);
    expect(calculation.results.length, working.name).toBeGreaterThan(0);
    expect(calculation.findings, working.name).toEqual([]);
  }
});
