import { expect, test } from 'vitest';
import { changed, parts, point, transducer } from '../../../../../evidence/bench.ts';
import { usualPolicy } from '../../demand/policy.ts';
import { showMeasure } from '../../finding/measure.ts';
import { measuringChain } from '../chain.ts';
import { prediction } from '../prediction.ts';
import { reason } from './rule.ts';
import { signalToNoise } from './signal-to-noise.ts';

const looked = point({
  line: { see: 'line', at: '148.6 Hz', smallest: '0.1 mm/s rms', largest: '10 mm/s rms', spacing: '0.3125 Hz' },
  overall: {
    see: 'overall',
    at: '2..1000 Hz',
    components: ['24.77 Hz', '148.6 Hz'],
    largestAt: '24.77 Hz',
    smallest: '0.5 mm/s rms',
    largest: '12 mm/s rms',
  },
});

const judgedWith = (mountedResonance: string) =>
  signalToNoise.judge({
    point: looked,
    prediction: prediction(measuringChain(parts({ transducer: changed(transducer('ACC-100'), { mountedResonance }) }))),
    policy: usualPolicy,
  });

test.each(['1e-29 Hz', '1e-9 Hz', '1e-5 Hz'])(
  'a resonance of %s fails in plain words, and every number can be shown',
  (typed) => {
    const judgements = judgedWith(typed);
    expect(judgements).toHaveLength(2);
    for (const judgement of judgements) {
      expect(judgement.outcome).toBe('fails');
      expect(judgement.margin).toBeLessThan(0);
      expect(Number.isFinite(judgement.margin)).toBe(true);
      expect(() => reason(judgement)).not.toThrow();
    }
    if (typed === '1e-5 Hz') return;
    expect(judgements.map((each) => reason(each)).join()).toContain('nothing that can be told from zero');
    expect(showMeasure(judgements[0]!.needs!)).toMatch(/resonance and its corners in the unit that was meant/);
  },
);
