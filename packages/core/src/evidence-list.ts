import { setKinds } from './acquisition/sets.ts';
import { alarmPolicies } from './alarm/policies/policies.ts';
import { alarmRules } from './alarm/rules/rules.ts';
import { cableKinds, inputKinds, mountKinds, supplyKinds, transducerKinds } from './chain/index.ts';
import { arrangementKinds } from './chain/proximity/index.ts';
import { chainRules } from './chain/rules/rules.ts';
import { observables } from './demand/observables/kinds.ts';
import { demandRules } from './demand/rules/rules.ts';
import { zoneTables } from './demand/zones/tables/tables.ts';
import { evidenceOfKinds, evidenceOfRules } from './evidence-claims.ts';
import { areaRules } from './hazardous-area/index.ts';
import { machineElementKinds } from './machine/kinds.ts';
import { machineRules } from './machine/rules/rules.ts';
import { printedNumbers } from './printed-numbers.ts';
import { windowNames } from './signal/index.ts';
import { showClause } from './source/source.ts';
import { distributions } from './uncertainty/distribution/distributions.ts';
import { wiringRules } from './wiring/index.ts';
import { workings } from './workings.ts';

/**
 * How something is held against the world: a number somebody printed, the output of another tool or another author's
 * answer, a law it must keep, or a pair of cases of which a rule passes one and not the other.
 */
export const evidenceSorts = ['printed', 'independent', 'law', 'cases'] as const;
export type EvidenceSort = (typeof evidenceSorts)[number];

/** One piece of evidence. */
export interface Evidence {
  /** What it is about: `working mounted-response`, `rule chain/overload`, `transducer moving-coil`. */
  readonly subject: string;
  readonly sort: EvidenceSort;
  /** Whose number, which tool, which law. */
  readonly source: string;
  /** The test that holds it, from the root of the project, and words that stand in it or in the data beside it. */
  readonly test: string;
  readonly words: string;
}

/** Everything that asks for evidence, by the list it stands in. */
const lists: readonly (readonly [string, readonly string[]])[] = [
  ['working', workings.map(({ name }) => name)],
  ['transducer', transducerKinds.map(({ kind }) => kind)],
  ['mount', mountKinds.map(({ kind }) => kind)],
  ['cable', cableKinds.map(({ kind }) => kind)],
  ['supply', supplyKinds.map(({ kind }) => kind)],
  ['input', inputKinds.map(({ kind }) => kind)],
  ['probe arrangement', arrangementKinds.map(({ kind }) => kind)],
  ['machine element', machineElementKinds.map(({ kind }) => kind)],
  ['observable', observables.map(({ kind }) => kind)],
  ['spectrum set', setKinds.map(({ kind }) => kind)],
  ['window', windowNames],
  ['distribution', distributions.map(({ kind }) => kind)],
  ['zone table', zoneTables.map(({ name }) => name)],
  ['alarm policy', alarmPolicies.map(({ name }) => name)],
  ['rule', machineRules.map(({ id }) => id)],
  ['rule', demandRules.map(({ id }) => id)],
  ['rule', chainRules.map(({ id }) => id)],
  ['rule', areaRules.map(({ id }) => id)],
  ['rule', wiringRules.map(({ id }) => id)],
  ['rule', alarmRules.map(({ rule }) => rule)],
];

export const evidenceSubjects: readonly string[] = lists.flatMap(([is, names]) => names.map((name) => `${is} ${name}`));

/** Where the printed numbers of the workings are compared. */
const printedTest = { test: 'evidence/completeness.test.ts', words: 'compared(' } as const;

const ofWorkings: readonly Evidence[] = printedNumbers.map(({ working, source }) => ({
  subject: `working ${working.name}`,
  sort: 'printed',
  source: showClause(source),
  ...printedTest,
}));

/** All evidence there is, each source of a subject once. */
export const evidenceList: readonly Evidence[] = [
  ...new Map(
    [...ofWorkings, ...evidenceOfKinds, ...evidenceOfRules].map((each) => [
      `${each.subject}|${each.sort}|${each.source}|${each.words}`,
      each,
    ]),
  ).values(),
];

/** What asks for evidence and has none. */
export const lackingEvidence: readonly string[] = evidenceSubjects.filter(
  (subject) => !evidenceList.some((each) => each.subject === subject),
);
