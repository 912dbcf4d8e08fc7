import { expect, test } from 'vitest';
import { showClause } from '../source/source.ts';
import { compared } from '../working/printed.ts';
import { uncertaintyEvidence } from './evidence.ts';

for (const evidence of uncertaintyEvidence) {
  const { model } = JSON.parse(evidence.given.file!) as { model: string };
  const wanted = Object.entries(evidence.printed).map(([name, value]) => `${name} ${value}`);
  test(`printed: budget of ${model}: ${wanted.join(', ')} — ${showClause(evidence.source)}`, () => {
    for (const each of compared(evidence)) {
      expect(each.within, `${each.output}: printed ${each.printed}, ours ${each.ours} ± ${each.tolerance}`).toBe(true);
    }
  });
}
