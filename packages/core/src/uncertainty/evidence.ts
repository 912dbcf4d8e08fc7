import { jcgm100 } from '../source/jcgm-100.ts';
import { clause } from '../source/source.ts';
import { type Printed, printed } from '../working/printed.ts';
import { uncertaintyBudget } from './workings/uncertainty-budget.ts';

/** The trials stand in the tests of their own; here they only have to be there. */
const quick = { trials: 20_000, seed: 1 };

function budgetOf(content: Readonly<Record<string, unknown>>) {
  return { working: uncertaintyBudget, given: { file: JSON.stringify({ ...quick, ...content }) } };
}

/** JCGM 100, H.1: end gauge by comparison, lengths in nanometres. */
const endGauge = budgetOf({
  model: 'l = ls + d_mean + d_random + d_systematic - ls * (delta_alpha * theta + alpha_s * delta_theta)',
  unit: 'nm',
  coverage: 0.99,
  inputs: {
    ls: { value: 50000623, expanded: 75, k: 3, 'degrees-of-freedom': 18 },
    d_mean: { value: 215, 'standard-uncertainty': 5.8, 'degrees-of-freedom': 24 },
    d_random: { value: 0, expanded: 10, confidence: 0.95, 'degrees-of-freedom': 5 },
    d_systematic: { value: 0, expanded: 20, k: 3, reliability: 0.25 },
    alpha_s: { value: 11.5e-6, 'half-width': 2e-6, distribution: 'rectangular' },
    theta: { value: -0.1, 'standard-uncertainty': 0.41 },
    delta_alpha: { value: 0, 'half-width': 1e-6, distribution: 'rectangular', reliability: 0.1 },
    delta_theta: { value: 0, 'half-width': 0.05, distribution: 'rectangular', reliability: 0.5 },
  },
});

/** JCGM 100, H.2: five readings of voltage, current and phase at the same moments. */
const circuit = (model: string) =>
  budgetOf({
    model,
    coverage: 0.95,
    readings: {
      V: [5.007, 4.994, 5.005, 4.99, 4.999],
      I: [0.019663, 0.019639, 0.01964, 0.019685, 0.019678],
      phi: [1.0456, 1.0438, 1.0468, 1.0428, 1.0433],
    },
  });

const gaugeExample = clause(jcgm100, 'H.1');
const circuitExample = clause(jcgm100, 'H.2');

export const uncertaintyEvidence: readonly Printed[] = [
  printed({
    ...endGauge,
    printed: {
      estimate: '50000838 nm',
      'standard-uncertainty': '32 nm',
      'degrees-of-freedom': '16.7',
      'coverage-factor': '2.92',
    },
    source: gaugeExample,
  }),
  printed({
    ...endGauge,
    printed: { 'expanded-uncertainty': '93 nm' },
    source: gaugeExample,
    looser: { relative: 0.006, because: 'printed as 2.92 × 32 nm, the standard uncertainty rounded first' },
  }),
  printed({
    ...circuit('R = V / I * cos(phi)'),
    printed: { estimate: '127.732', 'standard-uncertainty': '0.071' },
    source: circuitExample,
  }),
  printed({
    ...circuit('X = V / I * sin(phi)'),
    printed: { estimate: '219.847' },
    source: circuitExample,
  }),
  printed({
    ...circuit('X = V / I * sin(phi)'),
    printed: { 'standard-uncertainty': '0.295' },
    source: circuitExample,
    looser: { relative: 0.003, because: 'the two approaches of the example print 0.295 and 0.296' },
  }),
  printed({
    ...circuit('Z = V / I + 0 * phi'),
    printed: { estimate: '254.260', 'standard-uncertainty': '0.236' },
    source: circuitExample,
  }),
  printed({
    ...budgetOf({
      model: 't = x',
      coverage: 0.95,
      inputs: {
        x: {
          readings: [
            96.9, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07, 100.33, 100.42, 100.68, 100.95,
            101.11, 101.2, 101.57, 101.84, 102.36, 102.72,
          ],
        },
      },
    }),
    printed: { estimate: '100.145', 'standard-uncertainty': '0.333', 'degrees-of-freedom': '19' },
    source: clause(jcgm100, '4.4.3'),
  }),
];
