import { measuredLevel, said } from '../../finding/measure.ts';
import { asSineDetector, type Detector } from '../../quantity/index.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { examplePoint } from './example.ts';
import { demandRule, type StatedPoint } from './rule.ts';

/** These two differ by a constant whatever the waveform. */
const ofRms: readonly Detector[] = ['rms', 'derived-peak'];

export const oneDetector = demandRule<StatedPoint>({
  id: 'demand/one-detector',
  title: 'Both levels of a target are of one detector',
  prose:
    'A largest level in peak beside a smallest one in rms is a range of a factor 1.41 less than it looks for a sine, and of an unknown one for anything else.',
  sources: [clause(tradePractice, 'rms set point, peak sensor')],
  finds: ({ statement, point }) =>
    statement.targets.flatMap(({ name, smallest, largest }) => {
      if (!smallest.known || !largest.known) return [];
      const [low, high] = [smallest.value, largest.value];
      const fixed = ofRms.includes(low.detector) && ofRms.includes(high.detector);
      if (low.quantity !== high.quantity || low.detector === high.detector || fixed) return [];
      return [
        {
          weight: 'question',
          at: `${point.of}/${name}`,
          found: said`a smallest level of ${measuredLevel(low)} beside a largest of ${measuredLevel(high)}`,
          limit: `both as ${low.detector}`,
          because: said`For a sine the largest is ${measuredLevel(asSineDetector(high, low.detector))}; for bursts and noise nobody can tell.`,
          remedy: [`state the largest level as ${low.detector}`, `state the smallest level as ${high.detector}`],
          asks: said`Which detector was meant: is the largest level ${largest.written}, or ${measuredLevel({ ...high, detector: low.detector })}?`,
        },
      ];
    }),
  valid: examplePoint(),
  invalid: examplePoint({ largest: '10 mm/s peak' }),
});
