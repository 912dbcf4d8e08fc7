import { nearest, Refusal } from '@soundpost/core';
import { kindTopics } from './kinds.ts';
import { quantityTopics } from './quantities.ts';
import { ruleTopics } from './rules.ts';
import { sourceTopics } from './sources.ts';
import type { Topic } from './topic.ts';
import { workingTopics } from './workings.ts';
import { zoneTableTopics } from './zone-tables.ts';

/** Everything that can be explained without a plant. */
export const topics: readonly Topic[] = [
  ...ruleTopics,
  ...workingTopics,
  ...kindTopics,
  ...sourceTopics,
  ...quantityTopics,
  ...zoneTableTopics,
];

/** The topics of a name: whole (`chain/overload`), or what stands after its room (`overload`). Throws Refusal. */
export function topicsCalled(name: string): readonly Topic[] {
  const wanted = name.trim().toLowerCase();
  const exact = topics.filter((each) => each.name.toLowerCase() === wanted);
  if (exact.length > 0) return exact;
  const short = topics.filter((each) => shortOf(each.name) === wanted || each.title.toLowerCase() === wanted);
  if (short.length > 0) return short;
  const near = nearest(wanted, [...topics.map((each) => each.name), ...topics.map((each) => shortOf(each.name))]);
  throw new Refusal({
    read: name,
    expected:
      'the name of a rule, working, kind, source, quantity or table of limits, or a plant file and a point; ' +
      "'soundpost explain' lists them",
    ...(near === undefined ? {} : { suggestion: `Did you mean '${near}'?` }),
  });
}

function shortOf(name: string): string {
  return name.slice(name.lastIndexOf('/') + 1).toLowerCase();
}
