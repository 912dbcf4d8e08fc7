import {
  allowanceSheet,
  type Design,
  type DesignedMachine,
  type Finding,
  machineFactsSheet,
  type Question,
  questions,
  type Sheet,
  type Showing,
  showClause,
  showDecibels,
  showLevel,
  showMeasure,
  showPercent,
  showTolerance,
  theMissing,
} from '@soundpost/core';
import { ofEveryModel } from '../../design/not-proven.ts';
import { allStatedValues, type StatedValue } from '../../design/stated-values.ts';
import { counted } from '../../design/verdict.ts';
import { ruleTextOf } from '../../finding/rule-texts.ts';
import { type CitedSource, sourcesCited } from '../../source/sources-cited.ts';
import { bandColumns } from '../band-columns.ts';
import { caution, facts, heading, list, paragraph, preparedCheckedApproved } from '../blocks.ts';
import { answered, count, levelCell, words } from '../cells.ts';
import { everyPoint, type PlacedPoint } from '../every-point.ts';
import { issuedKind } from '../issued-kind.ts';
import type { Block } from '../record.ts';
import { measureColumn, numberColumn, setTable, textColumn } from '../set-table.ts';
import { statedFacts, statedText } from '../stated-facts.ts';

/** What the design stands on: what was asked, by which rules and editions it was judged, and what stayed open. */
export const designBasis = issuedKind({
  kind: 'design-basis',
  title: 'Design basis',
  readers: 'whoever owns the plant and signs that these are the right targets, and whoever audits the design',
  orientation: 'landscape',
  sheets: (design, showing) => [
    { title: 'What was designed, and how it stands', blocks: standing(design, showing) },
    { title: 'Targets', blocks: [targetTable(design, showing)] },
    { title: 'Rules and sources', blocks: [ruleTable(design), sourceTable(design)] },
    { title: 'Open questions and findings', blocks: [questionTable(design), findingTable(design, showing)] },
    { title: 'Assumed, and not proven', blocks: assumed(design, showing) },
  ],
});

const verdictWords: Readonly<Record<Design['verdict'], string>> = {
  proven: 'Proven against the stated targets, under the assumptions of this document and for the values as stated.',
  'open questions':
    'Open: nothing found so far forbids the design, but questions are open; until they are answered it proves nothing.',
  'not proven': 'Not proven: findings stop the design from being issued.',
};

function standing(design: Design, showing: Showing): readonly Block[] {
  const { plant, findings, machines, verdict } = design;
  const points = everyPoint(design);
  const targets = points.reduce((sum, { designed }) => sum + designed.point.targets.length, 0);
  const number = (weight: Finding['weight']) => findings.filter((each) => each.weight === weight).length;
  const { detection, headroom, response, sources } = plant.policy;
  return [
    paragraph(verdictWords[verdict]),
    facts([
      [
        'scope',
        `${counted(machines.length, 'machine')}, ${counted(points.length, 'measuring point')}, ${counted(targets, 'stated target')}`,
      ],
      [
        'findings',
        `${number('blocks-issue')} that block, ${counted(number('question'), 'question')}, ${counted(number('warns'), 'warning')}, ${counted(number('notes'), 'note')}`,
      ],
    ]),
    heading('Policy of the plant: margins asked for'),
    facts([
      ['over the noise, to detect', showDecibels(detection, 1, showing.decimal)],
      ['under the ceiling, before a warning', showDecibels(headroom, 1, showing.decimal)],
      ['of the tolerance left, before a warning', showPercent(response, 3, showing.decimal).replace('+', '')],
      ['where these come from', sources.map(showClause).join('; ')],
      ...statedFacts(plant.allowances as Sheet, allowanceSheet, showing),
    ]),
    setTable<DesignedMachine>(
      'machines',
      'Machines and their limits',
      [
        textColumn('Machine', ({ stated }) => words(stated.name), 1),
        textColumn('Title', ({ stated }) => words(stated.title), 2.4),
        textColumn(
          'Stated',
          ({ stated }) =>
            words(
              statedFacts(stated.facts as Sheet, machineFactsSheet, showing)
                .map(([term, value]) => `${term} ${value}`)
                .join('; '),
            ),
          3.4,
        ),
        textColumn(
          'Boundaries A/B, B/C, C/D',
          ({ limits }) =>
            limits === undefined
              ? words('none stated')
              : answered(limits.boundaries, (known) =>
                  words([known.ab, known.bc, known.cd].map((each) => showLevel(each, showing)).join('; ')),
                ),
          3,
        ),
        textColumn('From', ({ limits }) => words(limits?.title), 2),
      ],
      machines,
      'No machine is stated.',
    ),
    caution(
      'Work on rotating machines, in hazardous areas and on protection trips follows the codes of the place and the practice of those licensed for it. These documents are calculations about measuring chains; they replace no permit, no certificate, no inspection and no signature.',
    ),
    preparedCheckedApproved,
  ];
}

interface PlacedTarget extends PlacedPoint {
  readonly target: PlacedPoint['designed']['point']['targets'][number];
}

function targetTable(design: Design, showing: Showing): Block {
  return setTable<PlacedTarget>(
    'targets',
    'Everything that was asked for; what no target asks for was not looked at',
    [
      textColumn('Point', ({ designed }) => words(designed.point.of), 2.2),
      textColumn('Target', ({ target }) => words(target.name), 1.5),
      textColumn('Cause', ({ target }) => words(target.cause), 2.2),
      ...bandColumns<PlacedTarget>(showing),
      measureColumn(
        'Must be seen',
        ({ target }) => answered(target.smallest, (level) => levelCell(level, showing)),
        1.3,
      ),
      measureColumn(
        'Must be survived',
        ({ target }) => answered(target.largest, (level) => levelCell(level, showing)),
        1.3,
      ),
      textColumn(
        'Tolerance',
        ({ target }) => answered(target.tolerance, (value) => words(showTolerance(value, showing))),
        1,
      ),
      textColumn('Weight', ({ target }) => words(target.weight), 0.8),
      textColumn('From whom', ({ target }) => words(`${target.origin.by}: ${target.origin.from}`), 1.5),
    ],
    everyPoint(design).flatMap((placed) => placed.designed.point.targets.map((target) => ({ ...placed, target }))),
    'No target is stated.',
  );
}

function ruleTable(design: Design): Block {
  const judged = everyPoint(design).flatMap(
    ({ designed }) => designed.appraisal?.judgements.map((each) => each.rule) ?? [],
  );
  const rules = [...new Set([...judged, ...design.findings.map((each) => each.rule)])].sort();
  return setTable<string>(
    'rules',
    'Rules that spoke',
    [
      textColumn('Rule', (rule) => words(rule), 1.4),
      textColumn('What it asks', (rule) => words(ruleTextOf(rule)?.title), 2.6),
      textColumn('Why', (rule) => words(ruleTextOf(rule)?.prose), 6),
    ],
    rules,
    'No rule spoke.',
  );
}

function sourceTable(design: Design): Block {
  return setTable<CitedSource>(
    'sources',
    'Sources and editions, and how each is known here',
    [
      textColumn('Source', ({ source }) => words(source.title), 3),
      textColumn('How known, at worst', ({ how }) => words(how), 1.3),
      textColumn('What of it is used, and any doubt', ({ source }) => words(source.note), 4),
    ],
    sourcesCited(design),
    'No source is cited.',
  );
}

function questionTable(design: Design): Block {
  return setTable<Question>(
    'questions',
    'Questions, the answer that would change most first',
    [
      textColumn('Not known', ({ what, of }) => words(`${what} of ${of}`), 3),
      textColumn('Ask', ({ ask }) => words(ask), 1.4),
      textColumn('Believed between', ({ between }) => words(between && `${between.low} and ${between.high}`), 1.5),
      numberColumn('Judgements that wait', '', ({ judgements }) => count(judgements), 1),
      textColumn(
        'The answer could turn',
        ({ turns }) => words(turns === 'not bounded' ? 'not bounded: anything' : turns),
        1.3,
      ),
      textColumn('At', ({ points }) => words(points.join(', ')), 3),
    ],
    questions(design),
    'No question is open.',
  );
}

function findingTable({ findings }: Design, showing: Showing): Block {
  return setTable<Finding>(
    'findings',
    'Findings, gravest first',
    [
      textColumn('Weight', ({ weight }) => words(weight.replace('-', ' ')), 0.9),
      textColumn('At', ({ at }) => words(at), 2),
      textColumn('Found', ({ found }) => words(showMeasure(found, showing)), 2),
      textColumn('Limit', ({ limit }) => words(showMeasure(limit, showing)), 1.6),
      textColumn('Because', ({ because }) => words(showMeasure(because, showing)), 3),
      textColumn(
        'To mend it',
        ({ remedy }) => words(remedy.map((each) => showMeasure(each, showing)).join('; or ')),
        2.4,
      ),
    ],
    findings,
    'No rule found anything to say against the stated targets.',
  );
}

function assumed(design: Design, showing: Showing): readonly Block[] {
  const ofTransducers = everyPoint(design).flatMap(
    ({ designed }) => designed.appraisal?.prediction.chain.transducer.assumptions ?? [],
  );
  const untold = everyPoint(design).flatMap(({ designed: { point, appraisal } }) =>
    (appraisal?.judgements ?? []).flatMap(({ missing, what, target }) =>
      missing === undefined || missing.length === 0
        ? []
        : [
            `${point.of}: ${showMeasure(what, showing)} of ${target ?? 'the chain'}, for want of ${theMissing(missing)}`,
          ],
    ),
  );
  const notAsked = everyPoint(design).flatMap(({ designed: { point, proposals } }) =>
    proposals.map((each) => `${point.of}: ${each.name} (${each.cause})`),
  );
  const guessed = allStatedValues(design).filter(({ entry }) => entry.known && entry.status === 'assumed');
  return [
    heading('Taken for granted by the models'),
    ...list([...new Set([...ofEveryModel, ...ofTransducers])]),
    setTable<StatedValue>(
      'assumed values',
      'Values marked as assumed by whoever stated them',
      [
        textColumn('Assumed', ({ what, of }) => words(`${what} of ${of}`), 3),
        textColumn('Value', ({ entry, field }) => words(statedText(entry, field, showing)), 1.5),
        textColumn('Because', ({ entry }) => words(entry.known ? (entry.source ?? 'not said') : undefined), 3),
      ],
      guessed,
      'No value is marked as assumed.',
    ),
    heading('Could not be told'),
    ...(untold.length === 0 ? [paragraph('Every judgement of every rule could be made.')] : list(untold)),
    heading('Suggested by the machines and not asked for'),
    ...(notAsked.length === 0
      ? [paragraph('Everything the elements of the machines suggest is asked for.')]
      : list(notAsked)),
  ];
}
