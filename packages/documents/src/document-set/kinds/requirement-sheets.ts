import {
  type DesignedPoint,
  type Judgement,
  type Showing,
  showDecibels,
  showMeasure,
  showQuantity,
} from '@soundpost/core';
import { partsInUse, type StatedValue, valuesOf } from '../../design/stated-values.ts';
import { ruleTextOf } from '../../finding/rule-texts.ts';
import { bandColumns } from '../band-columns.ts';
import { note, preparedCheckedApproved } from '../blocks.ts';
import { answered, levelCell, statedCell, words } from '../cells.ts';
import { everyPoint } from '../every-point.ts';
import { gatheredPlaces } from '../gathered-places.ts';
import { issuedKind } from '../issued-kind.ts';
import type { Block, SetTable } from '../record.ts';
import { blankColumn, measureColumn, setTable, textColumn } from '../set-table.ts';
import { howKnown, statedText } from '../stated-facts.ts';

/** What each type of transducer must do at all its places, what its sheet offers, and where the two part. */
export const requirementSheets = issuedKind({
  kind: 'requirement-sheets',
  title: 'Requirement data sheets of the transducers',
  readers: 'whoever offers a transducer, and whoever compares the offer with what was asked',
  orientation: 'landscape',
  sheets: (design, showing) =>
    partsInUse(design)
      .filter(({ part }) => part.role === 'transducer')
      .map(({ part }) => ({
        title: `${part.name}: ${part.kind.name}`,
        blocks: typeBlocks(
          part.name,
          valuesOf(part.sheet, part.kind.dataSheet),
          everyPoint(design).flatMap(({ designed }) =>
            designed.stated.chosen?.transducer.name === part.name && designed.appraisal !== undefined ? [designed] : [],
          ),
          showing,
        ),
      })),
});

interface PlacedJudgement {
  readonly designed: DesignedPoint;
  readonly judgement: Judgement;
}

function typeBlocks(
  name: string,
  offered: readonly StatedValue[],
  points: readonly DesignedPoint[],
  showing: Showing,
): readonly Block[] {
  const judgements = points.flatMap((designed) =>
    designed.appraisal!.judgements.map((judgement): PlacedJudgement => ({ designed, judgement })),
  );
  return [
    ...gatheredPlaces(name, [placeTable(name, points, showing), deviationTable(name, judgements, showing)]),
    setTable<StatedValue>(
      `${name} data`,
      'Data sheet the proof was made with; another offer fills the last column',
      [
        textColumn('Value', ({ what }) => words(what), 1.6),
        textColumn('What it is', ({ field }) => words(field.meaning), 3),
        textColumn('Offered', ({ entry, field }) => words(statedText(entry, field, showing)), 1.8),
        textColumn('How known', ({ entry }) => words(howKnown(entry)), 1.4),
        blankColumn('Other offer', 1.4),
      ],
      offered,
      'Nothing is stated of this type.',
    ),
    note('A dash under how known: the catalogue says in its head where its numbers come from.'),
    preparedCheckedApproved,
  ];
}

function deviationTable(name: string, judgements: readonly PlacedJudgement[], showing: Showing): SetTable {
  return setTable<PlacedJudgement>(
    `${name} deviations`,
    'Requirement, offered, deviation: every rule at every place, places that are told the same together',
    [
      textColumn('At', ({ designed }) => words(designed.point.of), 2),
      textColumn('Requirement', ({ judgement }) => words(ruleTextOf(judgement.rule)?.title ?? judgement.rule), 2.4),
      textColumn('Of', ({ judgement }) => words(judgement.target ?? showMeasure(judgement.what, showing)), 1.6),
      textColumn('Limit', ({ judgement }) => words(showMeasure(judgement.limit, showing)), 1.5),
      textColumn('Found with what is offered', ({ judgement }) => words(showMeasure(judgement.found, showing)), 1.6),
      textColumn('Deviation', ({ judgement }) => words(deviationOf(judgement, showing)), 1.6),
    ],
    judgements,
    'No rule speaks of this type.',
  );
}

function deviationOf({ outcome, margin, needs }: Judgement, showing: Showing): string {
  const by = margin === undefined || margin >= 60 ? '' : `, ${showDecibels(margin, 1, showing.decimal)} to the limit`;
  if (outcome === 'meets') return `none${by}`;
  return `${outcome}${by}${needs === undefined ? '' : `; needs ${showMeasure(needs, showing)}`}`;
}

interface PlacedTarget {
  readonly designed: DesignedPoint;
  readonly target: DesignedPoint['point']['targets'][number];
}

function placeTable(name: string, points: readonly DesignedPoint[], showing: Showing): SetTable {
  const rows = points.flatMap((designed) =>
    designed.point.targets.map((target): PlacedTarget => ({ designed, target })),
  );
  return setTable<PlacedTarget>(
    `${name} places`,
    'What its places ask',
    [
      textColumn('At', ({ designed }) => words(designed.point.of), 2.2),
      textColumn(
        'Surface',
        ({ designed: { point } }) =>
          statedCell(point.surfaceTemperature, point.of, 'surface temperature', (value) =>
            words(showQuantity('temperature', value, showing)),
          ),
        0.9,
      ),
      textColumn(
        'Exposure',
        ({ designed: { point } }) => statedCell(point.surroundings.values.exposure, point.of, 'exposure', words),
        1,
      ),
      textColumn('Area', ({ designed: { area } }) => words(area?.name ?? 'none stated'), 1.2),
      textColumn('Target', ({ target }) => words(target.name), 1.6),
      ...bandColumns<PlacedTarget>(showing),
      measureColumn('Must be seen', ({ target }) => answered(target.smallest, (level) => levelCell(level, showing))),
      measureColumn('Must be survived', ({ target }) => answered(target.largest, (level) => levelCell(level, showing))),
    ],
    rows,
    'No target is stated at its places.',
  );
}
