import {
  cableKinds,
  inputKinds,
  machineElementKinds,
  mountKinds,
  type Printed,
  printedNumbers,
  supplyKinds,
  transducerKinds,
  workings,
} from '@soundpost/core';
import { ruleTexts } from '../topics/rule-texts.ts';

/** What stands behind one working, rule or kind, as the lists of the core tell it. */
export interface Evidence {
  readonly is: 'working' | 'rule' | 'kind';
  readonly name: string;
  /** How many numbers of other people it is held against, and whose. */
  readonly printed: number;
  readonly sources: readonly string[];
  /** A pair of examples: one that passes, one that fails. */
  readonly examples: boolean;
}

export function evidence(): readonly Evidence[] {
  return [...workings.map(({ name }) => ofWorking(name)), ...ofRules(), ...ofKinds()];
}

export function lacking({ printed, examples }: Evidence): boolean {
  return printed === 0 && !examples;
}

function ofWorking(name: string): Evidence {
  const printed = printedNumbers.filter((each) => each.working.name === name);
  return {
    is: 'working',
    name,
    printed: printed.reduce((sum, each: Printed) => sum + Object.keys(each.printed).length, 0),
    sources: [...new Set(printed.map((each) => each.source.source.id))],
    examples: false,
  };
}

const bare = { printed: 0, sources: [] } as const;

function ofRules(): readonly Evidence[] {
  return ruleTexts.map(({ id, examples }): Evidence => ({ is: 'rule', name: id, ...bare, examples }));
}

function ofKinds(): readonly Evidence[] {
  const lists: Readonly<Record<string, readonly { readonly kind: string }[]>> = {
    transducer: transducerKinds,
    mount: mountKinds,
    cable: cableKinds,
    supply: supplyKinds,
    input: inputKinds,
    'machine element': machineElementKinds,
  };
  return Object.entries(lists).flatMap(([among, kinds]) =>
    kinds.map(({ kind }): Evidence => ({ is: 'kind', name: `${among} ${kind}`, ...bare, examples: false })),
  );
}
