import {
  type Appraisal,
  cells,
  type DesignedPoint,
  type Judgement,
  type PointAlarms,
  type PointSettings,
  type Prediction,
  reason,
  type Showing,
  type SpectrumSet,
  showBand,
  showLevel,
  showMeasure,
  showNumber,
  showQuantity,
  showTolerance,
  type TargetBudget,
  valueIfStated,
  visibility,
} from '@soundpost/core';
import { blank, type Line, labelled, paragraph, plainLines } from '../layout/line.ts';
import { outcomeMark } from '../layout/mark.ts';
import { type Column, table } from '../layout/table.ts';
import type { Manner } from '../manner.ts';
import { marginText, outcomeText, shortRule } from './judgement-text.ts';
import { placeLines, pointHeading } from './point-text.ts';
import { answerText, cellText, counted, missingText } from './values-text.ts';

/** A point as designed: its chain, verdicts with margins, noise, bias, alarms, settings, uncertainty. */
export function designedPointLines(designed: DesignedPoint, manner: Manner): readonly Line[] {
  const { point, appraisal } = designed;
  return [
    ...pointHeading(point, manner),
    ...placeLines(point, manner),
    ...(appraisal === undefined
      ? labelled('Chain', 'none chosen: nothing is proven here', manner.width)
      : [
          ...labelled('Chain', appraisal.prediction.chain.of, manner.width),
          ...labelled('Verdict', verdictText(appraisal, manner.showing), manner.width),
          blank,
          ...verdictTable(appraisal, manner),
          ...chainLines(appraisal, manner),
          blank,
          ...noiseTable(appraisal, manner),
        ]),
    ...(designed.alarms === undefined ? [] : [blank, ...alarmLines(designed.alarms, manner)]),
    ...settingsLines(designed.settings, manner),
    ...budgetLines(designed.budgets, manner),
  ];
}

function verdictText(appraisal: Appraisal, showing: Showing): string {
  const { point, outcome, nearest } = appraisal;
  const targets = counted(point.targets.length, 'stated target');
  const first =
    nearest === undefined
      ? ''
      : `; would fail first: ${reason(nearest, showing)}, ${marginText(nearest.margin ?? 0, showing)} from the limit`;
  if (outcome === 'meets' || outcome === 'warns') return `${outcomeText(outcome)}: its ${targets}${first}`;
  return `${outcomeText(outcome)}, against its ${targets}${outcome === 'fails' ? '' : first}`;
}

function verdictTable(appraisal: Appraisal, { showing, width }: Manner): readonly Line[] {
  const columns: Column[] = [
    { head: 'target' },
    { head: 'verdict' },
    { head: 'margin', align: 'right' },
    { head: 'decided by' },
  ];
  const rows = cells(appraisal).map((cell) => [
    cell.target,
    cell.decides === undefined ? '– not judged' : outcomeText(cell.outcome),
    cell.decides?.margin === undefined ? '' : marginText(cell.decides.margin, showing),
    cell.decides === undefined ? '' : decidedText(cell.decides, showing),
  ]);
  return plainLines(table(columns, rows, width, '  '));
}

function decidedText(judgement: Judgement, showing: Showing): string {
  return reason({ ...judgement, what: `${shortRule(judgement.rule)}: ${judgement.what}` }, showing).replace(
    `${judgement.target}: `,
    '',
  );
}

/** Of what speaks of the chain and of no target, everything; bias, headroom and loop are part of a proof. */
function chainLines(appraisal: Appraisal, { showing, width }: Manner): readonly Line[] {
  const whole = appraisal.judgements.filter((each) => each.target === undefined);
  return [
    blank,
    ...paragraph('  The chain as a whole', width),
    ...whole.flatMap((each) => {
      const margin = each.margin === undefined ? '' : `; margin ${marginText(each.margin, showing)}`;
      return paragraph(`  ${outcomeMark[each.outcome]} ${reason(each, showing)}${margin}`, width, '  ');
    }),
    ...biasLines(appraisal.prediction, showing, width),
    ...appraisal.prediction.chain.transducer.assumptions.flatMap((each) =>
      paragraph(`  · Taken for granted: ${each}`, width, '  '),
    ),
  ];
}

function biasLines({ bias, chain }: Prediction, showing: Showing, width: number): readonly Line[] {
  const { mountedResonance, settling } = chain.transducer;
  const facts = [
    ...(bias === undefined
      ? []
      : [
          `bias at the input ${answerText(bias, ({ low, high }) => `${showQuantity('voltage', low, showing)} to ${showQuantity('voltage', high, showing)}`)}`,
        ]),
    ...(mountedResonance === undefined
      ? []
      : [`mounted resonance ${answerText(mountedResonance, (f) => showQuantity('frequency', f, showing))}`]),
    ...(settling === undefined ? [] : [`settles in ${answerText(settling, (t) => showQuantity('time', t, showing))}`]),
  ];
  return facts.length === 0 ? [] : paragraph(`  · Expected: ${facts.join('; ')}`, width, '  ');
}

function noiseTable(appraisal: Appraisal, { showing, width }: Manner): readonly Line[] {
  const { point, prediction } = appraisal;
  if (prediction.chain.transducer.signal === 'overall') {
    return paragraph('  Noise: the sensor sends one number; its zero error stands for the noise.', width, '  ');
  }
  const columns: Column[] = [
    { head: 'noise under' },
    { head: 'smallest, as indicated' },
    { head: 'noise' },
    { head: 'over noise', align: 'right' },
  ];
  const rows = point.targets
    .filter((target) => !target.observable.atRest)
    .map((target) => {
      const seen = visibility(target, prediction);
      if (!seen.known) return [target.name, missingText(seen.missing), '?', '?'];
      const { signal, noise, bandwidth, decibels } = seen.value;
      const where =
        'line' in bandwidth
          ? ` in a line of ${showQuantity('frequency', bandwidth.spacing, showing)} at ${showQuantity('frequency', bandwidth.line, showing)}`
          : '';
      return [
        target.name,
        showLevel(signal, showing),
        `${showLevel(noise, showing)}${where}`,
        marginText(Math.min(decibels, 1000), showing),
      ];
    });
  return plainLines(table(columns, rows, width, '  '));
}

/** The register of alarms as they are set and read: engineering unit, loop, card. */
export function alarmLines(alarms: PointAlarms, { showing, width }: Manner): readonly Line[] {
  const onLoop = alarms.register.some((row) => row.current !== undefined);
  const onCard = alarms.register.some((row) => row.counts !== undefined);
  const columns: Column[] = [
    { head: 'alarm' },
    { head: 'level' },
    ...(onLoop ? [{ head: 'loop, mA', align: 'decimal' } as const] : []),
    ...(onCard ? [{ head: 'counts', align: 'right' } as const] : []),
    { head: 'lasting' },
    { head: 'because' },
  ];
  const rows = alarms.register.map((row) => [
    row.name,
    cellText(row.level, (level) => showLevel(level, showing)),
    ...(onLoop
      ? [
          row.current === undefined
            ? ''
            : cellText(row.current, (amperes) => showNumber(amperes * 1000, 4, showing.decimal)),
        ]
      : []),
    ...(onCard ? [row.counts === undefined ? '' : cellText(row.counts, String)] : []),
    row.delay === undefined ? '' : row.delay.known ? showQuantity('time', row.delay.value, showing) : '?',
    row.because,
  ]);
  const missing = alarms.register.flatMap((row) =>
    [row.level, row.current, row.counts].flatMap((each) => (each === undefined || each.known ? [] : each.missing)),
  );
  return [
    ...plainLines(table(columns, rows, width, '  ')),
    ...(missing.length === 0 ? [] : paragraph(`  ? ${missingText(distinct(missing))}`, width, '  ')),
  ];
}

function distinct<M extends { readonly of: string; readonly what: string }>(missing: readonly M[]): readonly M[] {
  return [...new Map(missing.map((each) => [`${each.of}/${each.what}`, each])).values()];
}

/** How records are to be taken, and why each setting is what it is. */
export function settingsLines(settings: PointSettings, { showing, width }: Manner): readonly Line[] {
  const { sets, unknown } = settings;
  if (sets.length === 0 && unknown.length === 0) return [];
  const columns: Column[] = [
    { head: 'record' },
    { head: 'up to, Hz', align: 'right' },
    { head: 'lines', align: 'right' },
    { head: 'spacing, Hz', align: 'decimal' },
    { head: 'lasts, s', align: 'decimal' },
    { head: 'sampled, Hz', align: 'right' },
    { head: 'window, averages' },
  ];
  const number = (value: number) => showNumber(value, 4, showing.decimal);
  const rows = sets.map((set) => [
    set.name.replaceAll('-', ' '),
    number(set.highestFrequency),
    String(set.lines),
    number(set.resolution),
    number(set.recordLength),
    number(set.samplingRate),
    `${set.window}, ${set.averages}`,
  ]);
  return [
    blank,
    ...(sets.length === 0 ? [] : plainLines(table(columns, rows, width, '  '))),
    ...sets.flatMap((set) => setReasons(set, showing, width)),
    ...unknown.flatMap((each) => paragraph(`  ? not required, since not known: ${each}`, width, '  ')),
  ];
}

function setReasons(set: SpectrumSet, showing: Showing, width: number): readonly Line[] {
  const envelope =
    set.envelopeBand === undefined
      ? ''
      : `; demodulated ${showBand(set.envelopeBand, showing)}${
          set.rawSamplingRate === undefined
            ? ''
            : `, sampled raw at ${showQuantity('frequency', set.rawSamplingRate, showing)}`
        }`;
  return [
    ...paragraph(`  ${set.name.replaceAll('-', ' ')}: ${set.purpose}${envelope}`, width, '  '),
    ...set.reasons.flatMap((each) => paragraph(`  - ${each}`, width, '  ')),
  ];
}

/** How truly each target is read: with the certificate of this piece, and with the nominal sensitivity. */
export function budgetLines(budgets: readonly TargetBudget[], { showing, width }: Manner): readonly Line[] {
  if (budgets.length === 0) return [];
  const targets = [...new Set(budgets.map((each) => each.target))];
  const of = (target: string, entered: TargetBudget['entered']) =>
    budgets.find((each) => each.target === target && each.entered === entered);
  const columns: Column[] = [
    { head: 'accuracy, k = 2' },
    { head: 'promised' },
    { head: 'with the certificate of this piece' },
    { head: 'with the nominal sensitivity' },
  ];
  const rows = targets.map((target) => {
    const [individual, nominal] = [of(target, 'individual'), of(target, 'nominal')];
    const any = individual ?? nominal;
    return [
      target,
      any === undefined ? '?' : cellText(any.tolerance, (tolerance) => showTolerance(tolerance, showing)),
      budgetText(individual, showing),
      budgetText(nominal, showing),
    ];
  });
  const first = budgets.find((each) => each.entered === 'individual' && each.budget.known);
  return [
    blank,
    ...plainLines(table(columns, rows, width, '  ')),
    ...(first === undefined ? [] : contributionLines(first, showing, width)),
    ...missingBudgets(budgets, width),
  ];
}

function budgetText(each: TargetBudget | undefined, showing: Showing): string {
  if (each === undefined || !each.budget.known) return '? unknown';
  const { upward, downward } = each.budget.value;
  const width = showTolerance({ low: -downward, high: upward }, showing);
  const words = each.promise.known ? (each.promise.value === 'kept' ? '✓ kept' : '✗ not proven') : '?';
  return `${width} ${words}`;
}

function contributionLines(each: TargetBudget, showing: Showing, width: number): readonly Line[] {
  if (!each.budget.known) return [];
  const largest = each.budget.value.lines
    .slice(0, 3)
    .map((line) => `${line.contribution.name} ${percent(line.share, showing)}`)
    .join(', ');
  const trials = each.trials.known
    ? ` By ${each.trials.value.count} trials (seed ${each.trials.value.seed}) half the 95 % interval is ${percent(each.trials.value.halfWidth, showing, 3)}.`
    : '';
  return paragraph(
    `  - ${each.target}, with the certificate: most of the variance from ${largest}.${trials}`,
    width,
    '  ',
  );
}

function percent(share: number, { decimal }: Showing, digits = 2): string {
  return `${showNumber(share * 100, digits, decimal)} %`;
}

function missingBudgets(budgets: readonly TargetBudget[], width: number): readonly Line[] {
  const missing = distinct(budgets.flatMap((each) => (each.budget.known ? [] : each.budget.missing)));
  return missing.length === 0 ? [] : paragraph(`  ? ${missingText(missing)}`, width, '  ');
}

/** What a chosen chain leaves open, for the page that says what could not be proven. */
export function unprovenOf(designed: DesignedPoint): readonly string[] {
  const { point, appraisal } = designed;
  if (appraisal === undefined) return [`${point.of}: no chain is chosen`];
  const open = appraisal.judgements
    .filter((each) => each.outcome === 'cannot tell')
    .map((each) => `${point.of}: ${reason(each)}${each.needs === undefined ? '' : `; needs ${each.needs}`}`);
  const unjudged = cells(appraisal)
    .filter((cell) => cell.decides === undefined)
    .map((cell) => `${point.of}/${cell.target}: no rule judges it with this chain`);
  const accuracy = designed.budgets
    .filter((each) => each.entered === 'individual' && !(each.promise.known && each.promise.value === 'kept'))
    .map((each) => {
      const width = each.budget.known
        ? `, expanded uncertainty ${showMeasure({ is: 'quantity', quantity: 'fraction', value: each.budget.value.expandedUncertainty })}`
        : '';
      const unknown = each.budget.known ? '' : `; ${missingText(each.budget.missing)}`;
      return `${point.of}/${each.target}: that the reading keeps its tolerance${width}${unknown}`;
    });
  const surface = valueIfStated(point.surfaceTemperature);
  return [
    ...open,
    ...unjudged,
    ...accuracy,
    ...(surface === undefined ? [`${point.of}: the temperature of the surface is not known`] : []),
    ...designed.settings.unknown.map((each) => `${point.of}: ${each}`),
  ];
}
