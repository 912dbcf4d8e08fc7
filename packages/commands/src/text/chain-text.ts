import {
  type Appraisal,
  cells,
  type Judgement,
  type Prediction,
  reason,
  type Showing,
  type Span,
  said,
  showLevel,
  showQuantity,
  terminalVoltages,
  visibility,
} from '@soundpost/core';
import { blank, type Line, labelled, paragraph, plainLines } from '../layout/line.ts';
import { outcomeMark } from '../layout/mark.ts';
import { type Column, table } from '../layout/table.ts';
import type { Manner } from '../manner.ts';
import { marginText, outcomeText, shortRule } from './judgement-text.ts';
import { answerText, counted, missingText } from './values-text.ts';

/** The chosen chain: its verdict, what decides each target, everything judged of it as a whole, and its noise. */
export function appraisedLines(
  appraisal: Appraisal,
  manner: Manner,
  elsewhere: readonly Judgement[] = [],
): readonly Line[] {
  return [
    ...labelled('Chain', appraisal.prediction.chain.of, manner.width),
    ...labelled('Verdict', verdictText(appraisal), manner.width),
    ...firstToFail(appraisal, manner),
    blank,
    ...verdictTable(appraisal, manner),
    ...chainLines(appraisal, manner, elsewhere),
    ...noiseTable(appraisal, manner),
  ];
}

function verdictText({ point, outcome }: Appraisal): string {
  const targets = counted(point.targets.length, 'stated target');
  if (outcome === 'meets') return `${outcomeMark.meets} meets its ${targets}`;
  if (outcome === 'warns') return `${outcomeMark.warns} meets its ${targets}, with a warning`;
  return `${outcomeText(outcome)}, against its ${targets}`;
}

/** Of what is met, the requirement that would fail first; the tables below tell its numbers. */
function firstToFail({ outcome, nearest }: Appraisal, { showing, width }: Manner): readonly Line[] {
  if (nearest === undefined || outcome === 'fails') return [];
  const text = `${nearest.target ?? 'the whole chain'}, ${shortRule(nearest.rule)}, ${marginText(nearest.margin ?? 0, showing)} from the limit`;
  return labelled('First to fail', text, width);
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
  return reason({ ...judgement, what: said`${shortRule(judgement.rule)}: ${judgement.what}` }, showing).replace(
    `${judgement.target}: `,
    '',
  );
}

/** Of what speaks of the chain and of no target, everything that is not shown elsewhere; bias, headroom and loop are part of a proof. */
function chainLines(
  appraisal: Appraisal,
  { showing, width }: Manner,
  elsewhere: readonly Judgement[],
): readonly Line[] {
  const whole = appraisal.judgements.filter((each) => each.target === undefined && !elsewhere.includes(each));
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
  const atInput = terminalVoltages(chain).findLast((each) => each.state === 'at rest');
  const facts = [
    ...(atInput === undefined
      ? []
      : [
          `${bias === undefined ? 'gap voltage' : 'bias'} at the input ${answerText(atInput.voltage, (span) => voltsText(span, showing))}`,
        ]),
    ...(mountedResonance === undefined
      ? []
      : [`mounted resonance ${answerText(mountedResonance, (f) => showQuantity('frequency', f, showing))}`]),
    ...(settling === undefined ? [] : [`settles in ${answerText(settling, (t) => showQuantity('time', t, showing))}`]),
  ];
  return facts.length === 0 ? [] : paragraph(`  · Expected: ${facts.join('; ')}`, width, '  ');
}

function voltsText({ low, high }: Span<'voltage'>, showing: Showing): string {
  const [from, to] = [low, high].map((each) => showQuantity('voltage', each, showing));
  return from === to ? from! : `${from} to ${to}`;
}

function noiseTable(appraisal: Appraisal, { showing, width }: Manner): readonly Line[] {
  const { point, prediction } = appraisal;
  if (prediction.chain.transducer.signal === 'overall') {
    return [
      blank,
      ...paragraph('  Noise: the sensor sends one number; its zero error stands for the noise.', width, '  '),
    ];
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
  return rows.length === 0 ? [] : [blank, ...plainLines(table(columns, rows, width, '  '))];
}
