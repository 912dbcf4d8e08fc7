import type { Clause } from '@soundpost/core';
import * as core from '@soundpost/core';
import { findingRules } from './finding-rules.ts';

/** What every rule says of itself, whatever it looks at. */
export interface RuleText {
  readonly id: string;
  readonly title: string;
  readonly prose: string;
  readonly remedy: readonly string[];
  readonly sources: readonly Clause[];
  /** Whether it carries a case that passes and one that does not. */
  readonly examples: boolean;
}

/**
 * Every rule of every list the core exports, so that the rules of a new room are explained the day they are listed;
 * then the findings that have no list of their own.
 */
export const ruleTexts: readonly RuleText[] = once([
  ...Object.values(core).flatMap((exported) => (Array.isArray(exported) ? exported.flatMap(ruleText) : [])),
  ...findingRules.map((each) => ({ ...each, remedy: [], examples: false })),
]);

export function ruleTextOf(id: string): RuleText | undefined {
  return ruleTexts.find((each) => each.id === id);
}

function ruleText(entry: unknown): readonly RuleText[] {
  if (typeof entry !== 'object' || entry === null) return [];
  const { id, rule, title, prose, remedy, sources } = entry as Readonly<Record<string, unknown>>;
  const name = id ?? rule;
  if (typeof name !== 'string' || typeof title !== 'string' || typeof prose !== 'string') return [];
  return [
    {
      id: name,
      title,
      prose,
      remedy: (remedy ?? []) as readonly string[],
      sources: (sources ?? []) as readonly Clause[],
      examples: 'valid' in entry || 'passes' in entry || 'cases' in entry,
    },
  ];
}

function once(rules: readonly RuleText[]): readonly RuleText[] {
  const byId = new Map<string, RuleText>();
  for (const each of rules) if (!byId.has(each.id)) byId.set(each.id, each);
  return [...byId.values()];
}
