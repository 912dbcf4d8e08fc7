import { showClause } from '@soundpost/core';
import { derivations, type RuleText, ruleTexts } from '@soundpost/documents';
import { recordingRules } from '@soundpost/files';
import { clauseJson } from '../json/finding-json.ts';
import { bullet, type Line, labelled, paragraph } from '../layout/line.ts';
import type { Topic } from './topic.ts';

function ruleTopic({ id, title, prose, remedy, sources }: Omit<RuleText, 'examples'>): Topic {
  return {
    is: 'rule',
    name: id,
    title,
    lines: ({ width }): readonly Line[] => [
      ...paragraph(prose, width),
      ...(remedy.length === 0 ? [] : paragraph('What mends it, most effective first:', width)),
      ...remedy.flatMap((each) => bullet(each, width)),
      ...sources.flatMap((each) => labelled('Source', showClause(each), width, '', 8)),
      ...(derivations[id] === undefined
        ? []
        : paragraph("With numbers put in: 'soundpost explain PLANT POINT'.", width)),
    ],
    json: { is: 'rule', id, title, prose, remedy, sources: sources.map(clauseJson) },
  };
}

/** Every rule that can speak, whatever it looks at. */
export const ruleTopics: readonly Topic[] = [
  ...ruleTexts,
  ...recordingRules.map((each) => ({ ...each, remedy: [], sources: [] })),
].map(ruleTopic);
