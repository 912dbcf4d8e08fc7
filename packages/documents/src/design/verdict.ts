import { type Design, type Outcome, outcomes } from '@soundpost/core';
import { type Html, html, joined, named } from '../typesetting/html.ts';
import { table } from '../typesetting/table.ts';
import { outcomeSign, sign } from '../typesetting/verdict-shape.ts';

/** The verdict in words, never without what it is against. */
export function verdict(design: Design): Html {
  const { machines, findings } = design;
  const points = machines.flatMap((machine) => machine.points);
  const targets = points.reduce((sum, { point }) => sum + point.targets.length, 0);
  const against = `${counted(targets, 'stated target')} of ${counted(points.length, 'measuring point')}`;
  if (targets === 0) {
    return html`<p class="verdict">${sign('not proven')}: no target is stated, so there is nothing a chain could be proven against.</p>`;
  }
  const judged = points.reduce((sum, { appraisal }) => sum + (appraisal?.judgements.length ?? 0), 0);
  const number = (weight: string) => findings.filter((each) => each.weight === weight).length;
  const [blocking, questions, warnings] = [number('blocks-issue'), number('question'), number('warns')];
  const because = {
    proven: `against the ${against}, under the assumptions listed below and for the values as stated. ${counted(judged, 'judgement')} of the rules ${judged === 1 ? 'was' : 'were'} made; none fails and none is left open${warnings === 0 ? '' : `, ${warnings === 1 ? 'one warning stands' : `${warnings} warnings stand`} beside them`}.`,
    'open questions': `against the ${against}: nothing found so far forbids the design, but ${counted(questions, 'question')} ${questions === 1 ? 'is' : 'are'} open. Until ${questions === 1 ? 'it is' : 'they are'} answered this proves nothing.`,
    'not proven': `against the ${against}: ${counted(blocking, 'finding')} ${blocking === 1 ? 'stops' : 'stop'} the design from being issued${questions === 0 ? '' : `, and ${counted(questions, 'question')} ${questions === 1 ? 'is' : 'are'} open`}.`,
  }[design.verdict];
  return html`<p class="verdict">${sign(design.verdict)} ${because}</p>
<p>It speaks of the stated targets and of no others, and of the parts as their sheets describe them. What could not be proven, what was assumed, and what was not looked at stand in a section of their own.</p>
${promises(design)}${pointVerdicts(design)}`;
}

/** A reading whose uncertainty is not known, or does not fit its tolerance, is no part of what is proven. */
function promises({ machines }: Design): Html | undefined {
  const individual = machines.flatMap((machine) =>
    machine.points.flatMap(({ budgets }) => budgets.filter((each) => each.entered === 'individual')),
  );
  const untold = individual.filter((each) => !each.promise.known).length;
  const broken = individual.filter((each) => each.promise.known && each.promise.value === 'not proven').length;
  if (untold + broken === 0) return undefined;
  const parts = [
    ...(untold === 0 ? [] : [`could not be worked out for ${counted(untold, 'target')}`]),
    ...(broken === 0
      ? []
      : [`is wider than promised for ${counted(broken, 'target')} even with the individual calibration`]),
  ];
  return html`<p>${sign('not proven')}: the tolerance of a reading. Its uncertainty ${joined(parts, ' and ')}; the points say which, and what is missing.</p>`;
}

export function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}

/** Each point with its chain and the worst of its judgements. */
function pointVerdicts({ machines }: Design): Html {
  const rows = machines.flatMap((machine) => machine.points.map((point) => ({ machine, point })));
  return table({
    caption: 'The points, each by the worst of its judgements',
    columns: [
      { head: 'Point', cell: ({ machine, point }) => html`${named(machine.stated.name)} / ${named(point.point.name)}` },
      {
        head: 'Chain',
        cell: ({ point }) =>
          point.appraisal === undefined ? 'none chosen' : named(point.appraisal.prediction.chain.of, 200),
      },
      { head: 'Targets', kind: 'number', cell: ({ point }) => String(point.point.targets.length) },
      { head: 'Outcome', kind: 'line', cell: ({ point }) => outcomeSign(outcomeOfPoint(point.appraisal?.outcome)) },
      { head: 'Judgements', cell: ({ point }) => tally(point.appraisal?.judgements.map((each) => each.outcome) ?? []) },
    ],
    rows,
    folds: true,
    empty: 'No measuring point is stated.',
  });
}

/** Without a chain nothing can be told. */
function outcomeOfPoint(outcome: Outcome | undefined): Outcome {
  return outcome ?? 'cannot tell';
}

function tally(all: readonly Outcome[]): Html | string {
  if (all.length === 0) return 'none made';
  const present = outcomes.filter((outcome) => all.includes(outcome));
  return joined(present.map((outcome) => `${all.filter((each) => each === outcome).length} ${inPlural[outcome]}`));
}

const inPlural: Readonly<Record<Outcome, string>> = {
  fails: 'fail',
  'cannot tell': 'cannot tell',
  warns: 'warn',
  meets: 'met',
};
