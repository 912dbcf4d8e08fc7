import { shareOf } from '../../../packages/core/src/index.ts';
import type { DetectionRates } from './detection-rates.ts';
import { injectedFaults } from './detection-rates.ts';
import type { HealthyRates } from './healthy-rates.ts';
import type { RecoveryRates } from './recovery-rates.ts';

/** What a file of rates holds: of which code, and what was found. */
export interface Found<Rates> {
  readonly code: { readonly date: string; readonly commit: string };
  readonly rates: Rates;
}

const percent = (share: number) => `${(100 * share).toFixed(1)} %`;

/** `12 of 60 (20.0 %; 10.8 % to 32.3 %)`. */
function rate(happened: number, of: number): string {
  if (of === 0) return '—';
  const { share, low, high } = shareOf(happened, of);
  return `${happened} of ${of} (${percent(share)}; ${percent(low)} to ${percent(high)})`;
}

const row = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;

function table(heads: readonly string[], rows: readonly (readonly string[])[]): string {
  return [row(heads), row(heads.map(() => '---')), ...rows.map(row)].join('\n');
}

const madeOf = ({ code }: Found<unknown>) => `Code of ${code.date}, state ${code.commit}.`;

/** The page of the rates, from what the campaigns found. */
export function ratesPage(
  healthy: Found<HealthyRates>,
  detection: Found<DetectionRates>,
  recovery: Found<RecoveryRates>,
): string {
  return `${[
    '# How often acceptance is right',
    'Made by `node evidence/acceptance/campaign/run.mjs page` from the rates kept in `evidence/acceptance/rates`; what is ' +
      'changed here by hand is lost. Every rate is found by rehearsal: a synthetic machine through a modelled chain, with ' +
      'pieces drawn within the tolerances of their data sheets, a recorder and a calibrator within their uncertainty. It ' +
      'tells how the checks treat what the model can show, not how often real machines surprise. The intervals are those ' +
      'of Clopper and Pearson at 95 %. How many runs were made stands beside each rate; to make more: ' +
      '`node evidence/acceptance/campaign/run.mjs healthy 1000`, `detection 60`, `recovery 1000`. They go on where they stopped while the code is the same, and begin anew where it is not.',
    ...healthyPart(healthy),
    ...detectionPart(detection),
    ...recoveryPart(recovery),
  ].join('\n\n')}\n`;
}

function healthyPart(found: Found<HealthyRates>): readonly string[] {
  const { rehearsals, withFault, places, checks, faults } = found.rates;
  const { high } = shareOf(withFault, Math.max(1, rehearsals));
  return [
    '## False faults on healthy chains',
    `${madeOf(found)} ${rehearsals} healthy acceptances were rehearsed, each of all the records one chain holds: direct ` +
      'voltage, power coming on, machine stopped, calibrator, running; taps and a reference in one of four each; of ' +
      'probes gap, slow roll, both running and the curve; of loops the steps and the running current. ' +
      `A fault was called in ${withFault} of them: at most ${percent(high)} with 95 %. The aim is none in 1,000${
        rehearsals < 1000 ? '; that many have not been made yet' : ''
      }.`,
    table(
      ['chain', 'acceptances', 'with a false fault'],
      Object.entries(places).map(([name, each]) => [name, `${each.rehearsals}`, rate(each.withFault, each.rehearsals)]),
    ),
    table(
      ['check', 'meets', 'cannot tell', 'false faults'],
      Object.entries(checks).map(([check, counts]) => [
        check,
        `${counts.meets}`,
        `${counts['cannot tell']}`,
        `${counts.fails}`,
      ]),
    ),
    ...(faults.length === 0
      ? []
      : [
          table(
            ['chain', 'seed', 'check', 'what was said'],
            faults.map(({ place, seed, check, said }) => [place, `${seed}`, check, said]),
          ),
        ]),
  ];
}

function detectionPart(found: Found<DetectionRates>): readonly string[] {
  const rows = injectedFaults.flatMap(({ fault, check, sizes }) =>
    sizes.flatMap(({ said }) => {
      const own = found.rates.rows.find((each) => each.fault === fault && each.said === said);
      if (own === undefined) return [];
      const { runs } = own;
      return [
        [
          fault,
          check,
          said,
          rate(own.found, runs),
          `${own.first} of ${runs}`,
          `${own.named} of ${runs}`,
          `${own.cannotTell} of ${runs}`,
          `${own.beside} of ${runs}`,
        ],
      ];
    }),
  );
  return [
    '## Faults found',
    `${madeOf(found)} Each fault is put into the records of a healthy piece at up to three sizes, the smallest near the ` +
      'limit of its check. *Found*: the check fails. *First*: the cause it names first is the right one. *Named*: it is ' +
      'among its causes. *Cannot tell*: the check says so itself. *Beside*: another check of the point fails as well, as ' +
      'it should where one defect shows in two ways.',
    table(['fault', 'check', 'size', 'found', 'first', 'named', 'cannot tell', 'beside'], rows),
    'What the sizes mean:',
    injectedFaults.map(({ fault, sized }) => `- ${fault}: ${sized}.`).join('\n'),
  ];
}

function recoveryPart(found: Found<RecoveryRates>): readonly string[] {
  const rows = Object.entries(found.rates.kinds).map(([kind, { runs, told, inside }]) => {
    const { low, high } = shareOf(inside, Math.max(1, told));
    const stands = high < 0.93 || low > 0.97 ? 'no' : low >= 0.93 && high <= 0.97 ? 'yes' : 'not excluded';
    return [kind, `${told} of ${runs}`, rate(inside, told), stands];
  });
  return [
    '## Parameters recovered',
    `${madeOf(found)} A property is put into a chain, the chain recorded and identified. *Inside*: what was put in lies ` +
      'within the 95 % interval that is told, of the runs in which the property is told at all. The aim is 95 % ± 2 % of ' +
      '1,000 runs. The last column says whether the interval of the rate lies within that, outside of it, or so few runs ' +
      'were made that neither is shown.',
    table(['property', 'told', 'inside', '95 % ± 2 %'], rows),
  ];
}
