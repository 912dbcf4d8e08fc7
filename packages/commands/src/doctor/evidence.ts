import {
  alarmRules,
  cableKinds,
  chainRules,
  inputKinds,
  machineElementKinds,
  machineRules,
  mountKinds,
  type Printed,
  printedNumbers,
  supplyKinds,
  transducerKinds,
  workings,
} from '@soundpost/core';
import { findingRules } from '../topics/finding-rules.ts';

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
  const rule = (name: string, examples: boolean): Evidence => ({ is: 'rule', name, ...bare, examples });
  return [
    ...chainRules.map((each) => rule(each.id, 'passes' in each || 'valid' in each)),
    ...machineRules.map((each) => rule(each.id, true)),
    ...alarmRules.map((each) => rule(each.rule, true)),
    ...findingRules.map((each) => rule(each.id, false)),
  ];
}

function ofKinds(): readonly Evidence[] {
  const kinds: readonly { readonly kind: string }[] = [
    ...transducerKinds,
    ...mountKinds,
    ...cableKinds,
    ...supplyKinds,
    ...inputKinds,
    ...machineElementKinds,
  ];
  return kinds.map(({ kind }) => ({ is: 'kind', name: kind, ...bare, examples: false }));
}
