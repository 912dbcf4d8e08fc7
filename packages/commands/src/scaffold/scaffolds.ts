import { chainRuleScaffold } from './chain-rule.ts';
import { machineElementScaffold } from './machine-element.ts';
import { mountKindScaffold } from './mount-kind.ts';
import type { Scaffold } from './scaffold.ts';
import { sourceScaffold } from './source.ts';
import { transducerKindScaffold } from './transducer-kind.ts';
import { workingScaffold } from './working.ts';

/** Everything that can be begun. */
export const scaffolds: readonly Scaffold[] = [
  transducerKindScaffold,
  mountKindScaffold,
  chainRuleScaffold,
  machineElementScaffold,
  sourceScaffold,
  workingScaffold,
];
