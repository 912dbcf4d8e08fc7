import {
  type Appraisal,
  appraisal as appraisalOf,
  type ChainParts,
  type Clause,
  chainRules,
  demand as demandOf,
  frequencyTable,
  type Judgement,
  lineLookup,
  type MeasuringPoint,
  type Policy,
  Refusal,
  reason,
  showClause,
  showMeasure,
  showQuantity,
} from '@soundpost/core';
import { always, command, manyArguments } from './command.ts';
import type { Derivation, Judged } from './derivation/derivation.ts';
import { derivationOf } from './derivation/derivations.ts';
import { clauseJson } from './json/finding-json.ts';
import { judgementJson } from './json/judgement-json.ts';
import { blank, grave, heading, type Line, labelled, paragraph } from './layout/line.ts';
import { outcomeMark } from './layout/mark.ts';
import type { Manner } from './manner.ts';
import type { Outcome } from './outcome.ts';
import { pointCalled, targetCalled } from './plant/point-called.ts';
import { readPlant } from './plant/read-plant.ts';
import type { Surroundings } from './surroundings.ts';
import { marginText, outcomeText } from './text/judgement-text.ts';
import { capital, missingText, sentence } from './text/values-text.ts';
import type { Topic } from './topics/topic.ts';
import { topics, topicsCalled } from './topics/topics.ts';

export const explain = command({
  name: 'explain',
  summary: 'Why: a rule, a kind, a source, a formula; or every verdict of a point',
  description:
    'Explains a topic by its name: a rule (chain/overload), a working, a kind of part or machine element, a source, a ' +
    'quantity, a table of limits; without a name it lists them. With a plant file and a point it explains every verdict ' +
    'about the chosen chain in three depths: a sentence, the numbers, the formula with the numbers put in and its source.',
  arguments: {
    words: manyArguments('TOPIC or PLANT POINT [TARGET]', 'A topic; or a plant file, a point and perhaps a target'),
  },
  flags: {},
  examples: [
    'soundpost explain chain/overload',
    'soundpost explain rolling-bearing',
    'soundpost explain examples/raw-water-pump/plant.yaml pump-drive-end-horizontal "bearing bursts"',
  ],
  whenAllowed: always,
  async perform(surroundings, { words }, manner) {
    const [first, point, target, ...rest] = words;
    if (first === undefined) return topicList(manner);
    if (point === undefined)
      return isFile(first) ? askForPoint(surroundings, first) : explainTopics(topicsCalled(first), manner);
    if (rest.length > 0) {
      throw new Refusal({
        read: words.join(' '),
        expected: 'a plant file, a point and at most one target',
        suggestion: 'A name of several words stands in quotes.',
      });
    }
    return explainPoint(surroundings, first, point, target, manner);
  },
});

function isFile(word: string): boolean {
  return /\.ya?ml$/i.test(word);
}

async function askForPoint(surroundings: Surroundings, path: string): Promise<never> {
  const { plant } = await readPlant(surroundings, path);
  const points = plant.machines.flatMap((machine) =>
    machine.points.map((each) => `${machine.name}/${each.statement.name}`),
  );
  throw new Refusal({
    read: path,
    expected: `a point of the plant after it: ${points.map((each) => `'${each}'`).join(', ')}`,
  });
}

function topicList({ width }: Manner): Outcome {
  const groups = new Map<string, Topic[]>();
  for (const each of topics) groups.set(each.is, [...(groups.get(each.is) ?? []), each]);
  return {
    exit: 0,
    lines: [
      ...paragraph("What can be explained: 'soundpost explain NAME', or a plant file and a point.", width),
      ...[...groups].flatMap(([is, each]) => [
        blank,
        ...heading(capital(is), width),
        ...paragraph(`  ${each.map((topic) => topic.name).join(', ')}`, width),
      ]),
    ],
    json: { topics: topics.map(({ is, name, title }) => ({ is, name, title })) },
  };
}

function explainTopics(found: readonly Topic[], manner: Manner): Outcome {
  return {
    exit: 0,
    lines: found.flatMap((topic, index) => [
      ...(index === 0 ? [] : [blank]),
      ...heading(`${topic.name} (${topic.is})${topic.title === topic.name ? '' : `: ${topic.title}`}`, manner.width),
      ...topic.lines(manner),
    ]),
    json: { topics: found.map((topic) => topic.json) },
  };
}

async function explainPoint(
  surroundings: Surroundings,
  path: string,
  name: string,
  target: string | undefined,
  manner: Manner,
): Promise<Outcome> {
  const { plant } = await readPlant(surroundings, path);
  const { machine, point: stated, of } = pointCalled(plant, name);
  if (stated.way === undefined || stated.chosen === undefined) {
    throw new Refusal({
      read: of,
      expected: "a point whose 'chain' names transducer, mount, cable and input",
      suggestion: `'soundpost shortlist ${path} ${name}' judges candidates.`,
    });
  }
  const point = demandOf(stated.statement, machine.name, lineLookup(frequencyTable(machine.train)));
  const only = target === undefined ? undefined : targetCalled(point.targets, target);
  surroundings.step(`judging ${of}`);
  const judged = appraisalOf(point, { ...stated.way, ...stated.chosen } as ChainParts, plant.policy);
  const judgements = judged.judgements.filter((each) => only === undefined || each.target === only.name);
  const explained = judgements.map((each) => explanation(each, judged, point, plant.policy, manner));
  return {
    exit: judged.outcome === 'fails' ? 1 : 0,
    lines: [
      ...heading(`Why: ${of}`, manner.width),
      ...labelled('Chain', judged.prediction.chain.of, manner.width, '', 9),
      ...labelled('Verdict', `${outcomeText(judged.outcome)}, against its stated targets`, manner.width, '', 9),
      ...explained.flatMap((each) => [blank, ...depthLines(each, manner)]),
    ],
    json: {
      point: of,
      chain: judged.prediction.chain.of,
      outcome: judged.outcome,
      judgements: explained.map(explainedJson),
    },
  };
}

interface Explained {
  readonly judgement: Judgement;
  readonly title: string;
  readonly prose: string;
  readonly sources: readonly Clause[];
  readonly derivations: readonly Derivation[];
}

function explanation(
  judgement: Judgement,
  { prediction }: Appraisal,
  point: MeasuringPoint,
  policy: Policy,
  { showing }: Manner,
): Explained {
  const rule = chainRules.find((each) => each.id === judgement.rule);
  const target = point.targets.find((each) => each.name === judgement.target);
  const judged: Judged = { point, prediction, policy, judgement, target, showing };
  return {
    judgement,
    title: rule?.title ?? judgement.rule,
    prose: rule?.prose ?? '',
    sources: rule?.sources ?? [],
    derivations: judgement.missing === undefined ? derivationOf(judged) : [],
  };
}

/** The same verdict in three depths. */
function depthLines(
  { judgement, title, prose, sources, derivations }: Explained,
  { showing, width }: Manner,
): readonly Line[] {
  const head = `${outcomeMark[judgement.outcome]} ${judgement.target ?? 'the chain as a whole'}: ${title}`;
  return [
    ...(judgement.outcome === 'fails' ? grave(head, width) : heading(head, width)),
    ...labelled('Sentence', `${sentence(capital(reason(judgement, showing)))} ${prose}`, width, '  ', 10),
    ...labelled('Numbers', numbersText(judgement, showing), width, '  ', 10),
    ...derivations.flatMap(({ formula, substituted, notes = [] }, index) => [
      ...labelled(index === 0 ? 'Formula' : '', formula, width, '  ', 10),
      ...(substituted === undefined ? [] : labelled('', substituted, width, '  ', 10)),
      ...notes.flatMap((note) => labelled('', `· ${note}`, width, '  ', 10)),
    ]),
    ...labelled('Source', sources.map(showClause).join('; ') || 'none: our own invariant', width, '  ', 10),
    ...labelled('Rule', judgement.rule, width, '  ', 10),
  ];
}

function numbersText(judgement: Judgement, showing: Manner['showing']): string {
  const parts = [
    `found ${showMeasure(judgement.found, showing)}`,
    `limit ${showMeasure(judgement.limit, showing)}`,
    ...(judgement.frequency === undefined ? [] : [`at ${showQuantity('frequency', judgement.frequency, showing)}`]),
    ...(judgement.margin === undefined ? [] : [`margin ${marginText(judgement.margin, showing)}`]),
    ...(judgement.needs === undefined || judgement.outcome === 'meets' ? [] : [`to pass: ${judgement.needs}`]),
    ...(judgement.missing === undefined ? [] : [missingText(judgement.missing)]),
  ];
  return `${parts.join('; ')}.`;
}

function explainedJson({ judgement, title, prose, sources, derivations }: Explained): unknown {
  return {
    ...(judgementJson(judgement) as object),
    title,
    prose,
    derivations: derivations.map(({ formula, substituted, notes }) => ({
      formula,
      ...(substituted === undefined ? {} : { substituted }),
      ...(notes === undefined ? {} : { notes }),
    })),
    sources: sources.map(clauseJson),
  };
}
