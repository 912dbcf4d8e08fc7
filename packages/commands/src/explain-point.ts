import {
  type Appraisal,
  appraisal as appraisalOf,
  type ChainParts,
  type Clause,
  demand as demandOf,
  flipPoints,
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
import type { Derivation, Judged } from './derivation/derivation.ts';
import { derivationOf } from './derivation/derivations.ts';
import { clauseJson } from './json/finding-json.ts';
import { judgementJson } from './json/judgement-json.ts';
import { blank, grave, heading, type Line, labelled } from './layout/line.ts';
import { outcomeMark } from './layout/mark.ts';
import type { Manner } from './manner.ts';
import type { Outcome } from './outcome.ts';
import { pointCalled, targetCalled } from './plant/point-called.ts';
import { readPlant } from './plant/read-plant.ts';
import type { Surroundings } from './surroundings.ts';
import { flipPointJson, flipPointLines } from './text/flip-points-text.ts';
import { marginText, outcomeText } from './text/judgement-text.ts';
import { capital, missingText, sentence } from './text/values-text.ts';
import { ruleTextOf } from './topics/rule-texts.ts';

/** Every verdict about the chosen chain of a point, or about one of its targets, in three depths. */
export async function explainPoint(
  surroundings: Surroundings,
  path: string,
  {
    point: name,
    target,
    flips,
  }: { readonly point: string; readonly target: string | undefined; readonly flips: boolean },
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
  const parts: ChainParts = { ...stated.way, ...stated.chosen };
  const judged = appraisalOf(point, parts, plant.policy);
  const judgements = judged.judgements.filter((each) => only === undefined || each.target === only.name);
  const explained = judgements.map((each) => explanation(each, judged, point, plant.policy, manner));
  if (flips) surroundings.step('moving each assumption until the verdict turns');
  const turned = flips ? flipPoints({ point, parts }, plant.policy) : undefined;
  return {
    exit: judged.outcome === 'fails' ? 1 : 0,
    lines: [
      ...heading(`Why: ${of}`, manner.width),
      ...labelled('Chain', judged.prediction.chain.of, manner.width, '', 9),
      ...labelled('Verdict', `${outcomeText(judged.outcome)}, against its stated targets`, manner.width, '', 9),
      ...explained.flatMap((each) => [blank, ...depthLines(each, manner)]),
      ...(turned === undefined ? [] : [blank, ...flipPointLines(turned, manner)]),
    ],
    json: {
      point: of,
      chain: judged.prediction.chain.of,
      outcome: judged.outcome,
      judgements: explained.map(explainedJson),
      ...(turned === undefined ? {} : { flipPoints: turned.map(flipPointJson) }),
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
  const rule = ruleTextOf(judgement.rule);
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
    ...(judgement.needs === undefined || judgement.outcome === 'meets'
      ? []
      : [`to pass: ${showMeasure(judgement.needs, showing)}`]),
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
