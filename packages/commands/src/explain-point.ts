import {
  appraisal as appraisalOf,
  type ChainParts,
  demand as demandOf,
  flipPoints,
  frequencyTable,
  lineLookup,
  Refusal,
  showClause,
} from '@soundpost/core';
import { type Explanation, explanation } from '@soundpost/documents';
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
import { outcomeText } from './text/judgement-text.ts';

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
  const explained = judgements.map((each) => explanation(each, judged, point, plant.policy, manner.showing));
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

/** The same verdict in three depths. */
function depthLines(
  { judgement, title, prose, sentence, numbers, sources, derivations }: Explanation,
  { width }: Manner,
): readonly Line[] {
  const head = `${outcomeMark[judgement.outcome]} ${judgement.target ?? 'the chain as a whole'}: ${title}`;
  return [
    ...(judgement.outcome === 'fails' ? grave(head, width) : heading(head, width)),
    ...labelled('Sentence', `${sentence} ${prose}`, width, '  ', 10),
    ...labelled('Numbers', numbersText(numbers), width, '  ', 10),
    ...derivations.flatMap(({ formula, substituted, notes = [] }, index) => [
      ...labelled(index === 0 ? 'Formula' : '', formula, width, '  ', 10),
      ...(substituted === undefined ? [] : labelled('', substituted, width, '  ', 10)),
      ...notes.flatMap((note) => labelled('', `· ${note}`, width, '  ', 10)),
    ]),
    ...labelled('Source', sources.map(showClause).join('; ') || 'none: our own invariant', width, '  ', 10),
    ...labelled('Rule', judgement.rule, width, '  ', 10),
  ];
}

function numbersText(numbers: Explanation['numbers']): string {
  const parts = numbers.map(
    ({ name, shown }) => `${name}${name === 'to pass' || name === 'unknown' ? ':' : ''} ${shown}`,
  );
  return `${parts.join('; ')}.`;
}

function explainedJson({ judgement, title, prose, sources, derivations }: Explanation): unknown {
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
