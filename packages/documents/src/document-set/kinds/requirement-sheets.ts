import {
  type DesignedPoint,
  type Judgement,
  measuredSpan,
  type Showing,
  showDecibels,
  showMeasure,
  showQuantity,
} from '@soundpost/core';
import { partsInUse, type StatedValue, valuesOf } from '../../design/stated-values.ts';
import { ruleTextOf } from '../../finding/rule-texts.ts';
import { type AskedAlike, askedAlike } from '../asked-alike.ts';
import { note, preparedCheckedApproved } from '../blocks.ts';
import { answered, levelCell, none, numberIn, statedCell, words } from '../cells.ts';
import { everyPoint } from '../every-point.ts';
import { gatheredPlaces } from '../gathered-places.ts';
import { issuedKind } from '../issued-kind.ts';
import { type JudgedAlike, judgedAlike, type PlacedJudgement } from '../judged-alike.ts';
import type { Block, Cell, SetTable } from '../record.ts';
import { blankColumn, measureColumn, numberColumn, setTable, textColumn } from '../set-table.ts';
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

function typeBlocks(
  name: string,
  offered: readonly StatedValue[],
  points: readonly DesignedPoint[],
  showing: Showing,
): readonly Block[] {
  const judgements = points.flatMap(({ point, appraisal }) =>
    appraisal!.judgements.map((judgement): PlacedJudgement => ({ place: point.of, judgement })),
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
    note(
      'A row stands for all places of which the same is asked; a range reaches from the lowest to the highest of them. What is asked and found at one place stands on the sheet of its point and in its chain calculation.',
    ),
    note('A dash under how known: the catalogue says in its head where its numbers come from.'),
    preparedCheckedApproved,
  ];
}

interface PlaceOf<Row> {
  readonly place: string;
  readonly alike: Row;
}

/** The row of each group once for every place in it: gathered places make one row of them again, and name them all. */
function atEach<Row extends { readonly places: readonly string[] }>(groups: readonly Row[]): readonly PlaceOf<Row>[] {
  return groups.flatMap((alike) => alike.places.map((place) => ({ place, alike })));
}

function deviationTable(name: string, judgements: readonly PlacedJudgement[], showing: Showing): SetTable {
  const judged = (tell: (judgement: Judgement, alike: JudgedAlike) => string | undefined) => {
    return ({ alike }: PlaceOf<JudgedAlike>) => words(tell(alike.worst.judgement, alike));
  };
  return setTable<PlaceOf<JudgedAlike>>(
    `${name} deviations`,
    'Requirement, offered, deviation: every rule at every place, places of which the same is asked together',
    [
      textColumn('At', ({ place }) => words(place), 1.7),
      textColumn(
        'Requirement',
        judged(({ rule }) => ruleTextOf(rule)?.title ?? rule),
        2.4,
      ),
      textColumn(
        'Of',
        judged(({ target, what }) => target ?? showMeasure(what, showing).replace(/[:,]$/, '')),
        1.6,
      ),
      textColumn(
        'Limit',
        judged(({ limit }) => showMeasure(limit, showing)),
        1.5,
      ),
      textColumn(
        'Found with what is offered',
        judged((_, { found }) => found),
        1.7,
      ),
      textColumn(
        'Worst, and where',
        judged(({ found }, { differs, worst }) =>
          differs ? `${showMeasure(found, showing)} at ${worst.place}` : undefined,
        ),
        1.7,
      ),
      textColumn(
        'Deviation at worst',
        judged((judgement) => deviationOf(judgement, showing)),
        1.6,
      ),
    ],
    atEach(judgedAlike(judgements, showing)),
    'No rule speaks of this type.',
  );
}

function deviationOf({ outcome, margin, needs }: Judgement, showing: Showing): string {
  const by = margin === undefined || margin >= 60 ? '' : `, ${showDecibels(margin, 1, showing.decimal)} to the limit`;
  if (outcome === 'meets') return `none${by}`;
  return `${outcome}${by}${needs === undefined ? '' : `; needs ${showMeasure(needs, showing)}`}`;
}

function placeTable(name: string, points: readonly DesignedPoint[], showing: Showing): SetTable {
  const groups = askedAlike(points);
  return setTable<PlaceOf<AskedAlike>>(
    `${name} places`,
    'What its places ask: the hottest and coolest surface, the whole band, the least to be seen, the most to be survived',
    [
      textColumn('At', ({ place }) => words(place), 2),
      textColumn('Surface', ({ alike }) => surfaceCell(alike, showing), 1.2),
      textColumn('Exposure', ({ alike: { first } }) => exposureCell(first.designed), 1),
      textColumn('Area', ({ alike: { first } }) => words(first.designed.area?.name ?? 'none stated'), 1.2),
      textColumn('Target', ({ alike: { first } }) => words(first.target.name), 1.6),
      numberColumn('From', 'Hz', ({ alike }) => answered(alike.low, hertz(showing)), 0.8),
      numberColumn('To', 'Hz', ({ alike }) => answered(alike.high, hertz(showing)), 0.8),
      measureColumn('Must be seen', ({ alike }) => answered(alike.smallest, (level) => levelCell(level, showing))),
      measureColumn('Must be survived', ({ alike }) => answered(alike.largest, (level) => levelCell(level, showing))),
    ],
    atEach(groups),
    'No target is stated at its places.',
  );
}

function hertz(showing: Showing): (value: number) => Cell {
  return (value) => numberIn('Hz', 'frequency', value, showing);
}

function exposureCell({ point }: DesignedPoint): Cell {
  return statedCell(point.surroundings.values.exposure, point.of, 'exposure', words);
}

/** A range of temperatures; unknown where it is unknown at any of the places, which are together for that. */
function surfaceCell({ coolest, hottest, first: { designed } }: AskedAlike, showing: Showing): Cell {
  const { surfaceTemperature, of } = designed.point;
  if (coolest === undefined || hottest === undefined) {
    return statedCell(surfaceTemperature, of, 'surface temperature', () => none);
  }
  return words(
    coolest === hottest
      ? showQuantity('temperature', hottest, showing)
      : showMeasure(measuredSpan('temperature', { low: coolest, high: hottest }), showing),
  );
}
