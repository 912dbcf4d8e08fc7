import { always, command, switchFlag } from './command.ts';
import { type Check, checks } from './doctor/check.ts';
import { type Evidence, evidence, lacking } from './doctor/evidence.ts';
import { blank, grave, heading, type Line, paragraph, plainLines } from './layout/line.ts';
import { table } from './layout/table.ts';
import type { Manner } from './manner.ts';
import type { Outcome } from './outcome.ts';
import { capital, counted } from './text/values-text.ts';

export const doctor = command({
  name: 'doctor',
  summary: 'Whether everything Soundpost needs is here, and what its numbers rest on',
  description:
    'Looks at the version of Node.js, whether this folder may be written, whether catalogue and demo plant can be read, and ' +
    'whether the programs are here by which the stored evidence is made again. Ends with 1 where something is wrong. With ' +
    '--evidence it lists every working, rule and kind with what it is held against, and names those that lack it.',
  arguments: {},
  flags: { evidence: switchFlag('What each working, rule and kind is held against') },
  examples: ['soundpost doctor', 'soundpost doctor --evidence'],
  whenAllowed: always,
  async perform(surroundings, given, manner) {
    if (given.evidence) return evidenceOutcome(manner);
    surroundings.step('looking around');
    const found = await checks(surroundings);
    return {
      exit: found.some((each) => each.is === 'wrong') ? 1 : 0,
      lines: [...heading('What is here', manner.width), ...found.flatMap((each) => checkLines(each, manner))],
      json: { checks: found },
    };
  },
});

const mark = { well: '✓', missing: '·', wrong: '✗' } as const;

function checkLines(check: Check, { width }: Manner): readonly Line[] {
  const remedy = check.remedy === undefined ? '' : `: ${check.remedy}`;
  const text = `${mark[check.is]} ${check.what}: ${check.found}${remedy}`;
  return check.is === 'wrong' ? grave(text, width) : paragraph(text, width, '  ');
}

function evidenceOutcome(manner: Manner): Outcome {
  const all = evidence();
  return {
    exit: 0,
    lines: (['working', 'rule', 'kind'] as const).flatMap((is, index) => [
      ...(index === 0 ? [] : [blank]),
      ...groupLines(
        is,
        all.filter((each) => each.is === is),
        manner,
      ),
    ]),
    json: { evidence: all.map((each) => ({ ...each, lacking: lacking(each) })) },
  };
}

function groupLines(is: Evidence['is'], all: readonly Evidence[], { width }: Manner): readonly Line[] {
  const held = all.filter((each) => !lacking(each));
  const without = all.filter(lacking);
  const rows = held
    .filter((each) => each.printed > 0)
    .map((each) => [each.name, counted(each.printed, 'number'), each.sources.join(', ')]);
  const paired = held.filter((each) => each.printed === 0);
  return [
    ...heading(`${capital(is)}s: ${held.length} of ${all.length} in the lists of evidence`, width),
    ...(rows.length === 0
      ? []
      : plainLines(table([{ head: is }, { head: 'printed by others' }, { head: 'where' }], rows, width, '  '))),
    ...namesLines('✓ With an example that passes and one that fails', paired, width),
    ...namesLines('? In no list of evidence', without, width),
  ];
}

function namesLines(what: string, list: readonly Evidence[], width: number): readonly Line[] {
  return list.length === 0 ? [] : paragraph(`  ${what}: ${list.map((each) => each.name).join(', ')}`, width, '    ');
}
