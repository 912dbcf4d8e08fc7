import {
  type Appraisal,
  type Clause,
  type DesignedPoint,
  type Judgement,
  type Policy,
  type Showing,
  showClause,
  showMeasure,
  showTolerance,
} from '@soundpost/core';
import { chainDrawing } from '../../chain/chain-drawing.ts';
import { type Explanation, explanation } from '../../derivation/explanation.ts';
import { derivationBlock, drawn, facts, heading, list, note, paragraph, preparedCheckedApproved } from '../blocks.ts';
import { answered, answerText, levelCell, numberIn, words } from '../cells.ts';
import { everyPoint } from '../every-point.ts';
import { issuedKind } from '../issued-kind.ts';
import { lineOfCable } from '../line-of-cable.ts';
import { madeSheet } from '../made-sheet.ts';
import type { Block } from '../record.ts';
import { measureColumn, numberColumn, setTable, textColumn } from '../set-table.ts';

/** Why the chosen chain does what is asked of it: every formula with the numbers put in, its result and its source. */
export const chainCalculations = issuedKind({
  kind: 'chain-calculations',
  title: 'Chain calculation sheets',
  readers: 'whoever checks and signs the design: the numbers of every rule, to be worked again by hand',
  orientation: 'portrait',
  sheets: (design, showing) =>
    everyPoint(design).flatMap(({ designed }) =>
      designed.appraisal === undefined
        ? []
        : [
            madeSheet(designed.point.of, [designed, designed.appraisal, design.plant.policy], (...from) =>
              calculation(...from, showing),
            ),
          ],
    ),
});

function calculation(
  designed: DesignedPoint,
  appraisal: Appraisal,
  policy: Policy,
  showing: Showing,
): readonly Block[] {
  const { point } = designed;
  return [
    facts([
      ['location', point.location],
      ['direction', answerText(point.direction, (direction) => direction)],
      ['chain', appraisal.prediction.chain.of],
      ['line', lineOfCable(appraisal.prediction.chain, showing)],
      ['worst of its judgements', appraisal.outcome],
    ]),
    ...drawn(
      `${point.of} chain`,
      chainDrawing(designed, showing, 'wide'),
      'The chain as chosen, from the surface to the number.',
    ),
    targetTable(designed, showing),
    ...judgementParts(designed, appraisal, policy, showing),
    preparedCheckedApproved,
  ];
}

function targetTable({ point }: DesignedPoint, showing: Showing): Block {
  return setTable<(typeof point.targets)[number]>(
    `${point.of} targets`,
    'What the point must capture',
    [
      textColumn('Target', ({ name }) => words(name), 1.8),
      textColumn('Cause', ({ cause }) => words(cause), 2.4),
      numberColumn(
        'From',
        'Hz',
        ({ band }) => answered(band, ({ low }) => numberIn('Hz', 'frequency', low, showing)),
        0.9,
      ),
      numberColumn(
        'To',
        'Hz',
        ({ band }) => answered(band, ({ high }) => numberIn('Hz', 'frequency', high, showing)),
        0.9,
      ),
      measureColumn('Must be seen', ({ smallest }) => answered(smallest, (level) => levelCell(level, showing)), 1.5),
      measureColumn('Must be survived', ({ largest }) => answered(largest, (level) => levelCell(level, showing)), 1.5),
      textColumn(
        'Tolerance',
        ({ tolerance }) => answered(tolerance, (value) => words(showTolerance(value, showing))),
        1.1,
      ),
    ],
    point.targets,
    'No target is stated.',
  );
}

function subjectOf({ target, what }: Judgement, showing: Showing): string {
  // In a sentence a number follows; a cell ends here.
  const told = showMeasure(what, showing).replace(/[:,]$/, '');
  return target === undefined ? told : `${target}: ${told}`;
}

/** Those with a formula each in full; those that only ask yes or no together in a table. */
function judgementParts(
  { point }: DesignedPoint,
  appraisal: Appraisal,
  policy: Policy,
  showing: Showing,
): readonly Block[] {
  const told = appraisal.judgements.map((judgement) => explanation(judgement, appraisal, point, policy, showing));
  const worked = told.filter((each) => each.derivations.some(({ substituted }) => substituted !== undefined));
  const compared = told.filter((each) => !worked.includes(each));
  const cited = [...new Set(told.flatMap((each) => each.sources.map(showClause)))];
  const numbers = (sources: readonly Clause[]) => sources.map((each) => cited.indexOf(showClause(each)) + 1).join(', ');
  return [
    setTable<Explanation>(
      `${point.of} compared`,
      'Judgements that hold two things against each other, yes or no',
      [
        textColumn('Asked', ({ title }) => words(title), 2.4),
        textColumn('Of', ({ judgement }) => words(subjectOf(judgement, showing)), 1.6),
        textColumn('Found', ({ judgement }) => words(showMeasure(judgement.found, showing)), 1.6),
        textColumn('Limit', ({ judgement }) => words(showMeasure(judgement.limit, showing)), 1.6),
        textColumn('Outcome', ({ judgement }) => words(judgement.outcome), 0.9),
        textColumn('Source', ({ sources }) => words(numbers(sources)), 0.7),
      ],
      compared,
      'Every judgement has a formula.',
    ),
    ...worked.flatMap((each) => workedJudgement(each, numbers(each.sources))),
    heading('Sources, as they are numbered above'),
    ...list(cited.map((each, index) => `${index + 1}: ${each}`)),
  ];
}

function workedJudgement(
  { title, judgement, sentence, numbers, derivations }: Explanation,
  cited: string,
): readonly Block[] {
  return [
    heading(`${title} (${judgement.target ?? 'the chain'}): ${judgement.outcome}`),
    paragraph(sentence),
    ...derivations.map(({ formula, substituted, notes }) =>
      derivationBlock({ formula, notes: notes ?? [], ...(substituted === undefined ? {} : { substituted }) }),
    ),
    facts(numbers.map(({ name, shown }) => [name, shown])),
    ...(cited === '' ? [] : [note(`Source: ${cited}`)]),
  ];
}
