import { showClause, showLevel, zoneTables } from '@soundpost/core';
import { clauseJson } from '../json/finding-json.ts';
import { levelJson } from '../json/values-json.ts';
import { labelled } from '../layout/line.ts';
import type { Topic } from './topic.ts';

/** Every table of limits that ships, with its scope and how its numbers are known. */
export const zoneTableTopics: readonly Topic[] = zoneTables.map((each) => ({
  is: 'table of limits',
  name: each.name,
  title: each.title,
  lines: ({ showing, width }) => [
    ...labelled('A/B', showLevel(each.boundaries.ab, showing), width, '', 11),
    ...labelled('B/C', showLevel(each.boundaries.bc, showing), width, '', 11),
    ...labelled('C/D', showLevel(each.boundaries.cd, showing), width, '', 11),
    ...labelled('Motion', each.reference, width, '', 11),
    ...labelled('Machines', each.scope.machines, width, '', 11),
    ...(each.scope.excluded === undefined ? [] : labelled('Not for', each.scope.excluded, width, '', 11)),
    ...(each.doubt === undefined ? [] : labelled('Doubt', each.doubt, width, '', 11)),
    ...labelled('Source', showClause(each.cited), width, '', 11),
  ],
  json: {
    is: 'table of limits',
    name: each.name,
    title: each.title,
    boundaries: {
      ab: levelJson(each.boundaries.ab),
      bc: levelJson(each.boundaries.bc),
      cd: levelJson(each.boundaries.cd),
    },
    motion: each.reference,
    scope: each.scope,
    ...(each.doubt === undefined ? {} : { doubt: each.doubt }),
    source: clauseJson(each.cited),
  },
}));
