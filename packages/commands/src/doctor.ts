import { evidenceList, evidenceSubjects, lackingEvidence } from '@soundpost/core';
import { always, command, switchFlag } from './command.ts';
import { type Check, checks } from './doctor/check.ts';
import { blank, grave, heading, type Line, paragraph, plainLines } from './layout/line.ts';
import { table } from './layout/table.ts';
import type { Manner } from './manner.ts';
import type { Outcome } from './outcome.ts';
import { capital } from './text/values-text.ts';

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

/** Subjects by the list they stand in, each with every piece of evidence the core names. */
function evidenceOutcome({ width }: Manner): Outcome {
  const groups = [...new Set(evidenceSubjects.map(listOf))];
  return {
    exit: 0,
    lines: [
      ...groups.flatMap((group, index) => [...(index === 0 ? [] : [blank]), ...groupLines(group, width)]),
      blank,
      ...paragraph(
        lackingEvidence.length === 0
          ? '✓ Nothing of these lists lacks evidence.'
          : `? Without evidence: ${lackingEvidence.join(', ')}`,
        width,
        '  ',
      ),
    ],
    json: { evidence: evidenceList, subjects: evidenceSubjects, lacking: lackingEvidence },
  };
}

/** `working mounted-response` stands in the list of workings; a name is the last word of its subject. */
function listOf(subject: string): string {
  return subject.slice(0, subject.lastIndexOf(' '));
}

function groupLines(group: string, width: number): readonly Line[] {
  const subjects = evidenceSubjects.filter((each) => listOf(each) === group);
  const rows = subjects.map((subject) => {
    const held = evidenceList.filter((each) => each.subject === subject);
    const sorts = [...new Set(held.map((each) => each.sort))].join(', ');
    const sources = [...new Set(held.map((each) => each.source))].join('; ');
    return [subject.slice(group.length + 1), sorts === '' ? 'lacking' : sorts, sources];
  });
  const held = subjects.filter((subject) => !lackingEvidence.includes(subject)).length;
  return [
    ...heading(`${capital(group)}: ${held} of ${subjects.length} held against something`, width),
    ...plainLines(table([{ head: group }, { head: 'by' }, { head: 'what or whose' }], rows, width, '  ')),
  ];
}
