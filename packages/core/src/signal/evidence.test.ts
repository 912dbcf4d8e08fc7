import { expect, test } from 'vitest';
import { showClause } from '../source/source.ts';
import { compared } from '../working/printed.ts';
import { signalEvidence } from './evidence.ts';

for (const evidence of signalEvidence) {
  const given = Object.values(evidence.given).join(', ');
  const wanted = Object.values(evidence.printed).join(', ');
  test(`printed: ${evidence.working.name} of ${given} is ${wanted} — ${showClause(evidence.source)}`, () => {
    for (const each of compared(evidence)) {
      expect(each.within, `${each.output}: printed ${each.printed}, ours ${each.ours} ± ${each.tolerance}`).toBe(true);
    }
  });
}
