import { type AnyWorking, type Fields, kebab, type Output, showClause, workings } from '@soundpost/core';
import { clauseJson } from '../json/finding-json.ts';
import { blank, type Line, labelled, paragraph, plainLines } from '../layout/line.ts';
import { table } from '../layout/table.ts';
import { wrapped } from '../layout/wrap.ts';
import { fieldLines, fieldsJson } from './fields-text.ts';
import type { Topic } from './topic.ts';

/** The command that runs the example of a working. */
export function exampleCommand({ name, example }: AnyWorking): string {
  const inputs = Object.entries(example as Readonly<Record<string, string>>).map(([key, value]) => {
    const plain = /^[\w./+-]+$/.test(value);
    return `${key}=${plain ? value : `"${value}"`}`;
  });
  return ['soundpost work', name, ...inputs].join(' ');
}

export function workingLines(working: AnyWorking, width: number): readonly Line[] {
  const outputs = Object.entries(working.outputs as Readonly<Record<string, Output<unknown>>>);
  const rows = outputs.map(([name, each]) => [
    kebab(name),
    `${each.field.meaning}${each.optional === true ? ' (where the inputs give it)' : ''}`,
    each.formula,
  ]);
  return [
    ...fieldLines(working.inputs as Fields, width),
    blank,
    ...plainLines(table([{ head: 'result' }, { head: 'what it is' }, { head: 'formula' }], rows, width)),
    blank,
    ...labelled('Holds for', working.holds, width, '', 11),
    ...working.sources.flatMap((each) => labelled('Source', showClause(each), width, '', 11)),
    ...paragraph('Example', width),
    ...plainLines(wrapped(`  ${exampleCommand(working)}`, width, '  ')),
  ];
}

export function workingJson(working: AnyWorking): unknown {
  const outputs = Object.entries(working.outputs as Readonly<Record<string, Output<unknown>>>);
  return {
    is: 'working',
    name: working.name,
    title: working.title,
    inputs: fieldsJson(working.inputs as Fields),
    outputs: Object.fromEntries(
      outputs.map(([name, { field, formula, optional }]) => [
        kebab(name),
        { meaning: field.meaning, formula, ...(optional === true ? { optional: true } : {}) },
      ]),
    ),
    holds: working.holds,
    sources: working.sources.map(clauseJson),
    example: working.example,
  };
}

export const workingTopics: readonly Topic[] = workings.map((each) => ({
  is: 'working',
  name: each.name,
  title: each.title,
  lines: ({ width }) => workingLines(each, width),
  json: workingJson(each),
}));
