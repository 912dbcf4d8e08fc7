import {
  blocks,
  type Design,
  design as designOf,
  type Finding,
  questions,
  valueIfStated,
  type Weight,
} from '@soundpost/core';
import { always, argument, command, textFlag } from './command.ts';
import { designJson } from './json/design-json.ts';
import { blank, heading, type Line, paragraph } from './layout/line.ts';
import type { Manner } from './manner.ts';
import type { Outcome } from './outcome.ts';
import { readPlant } from './plant/read-plant.ts';
import { writeReport } from './report.ts';
import { seed } from './seed.ts';
import type { Surroundings } from './surroundings.ts';
import { designedPointLines, unprovenOf } from './text/designed-point-text.ts';
import { findingsLines, noFindings } from './text/finding-text.ts';
import { limitsLines } from './text/limits-text.ts';
import { loopLines } from './text/loops-text.ts';
import { questionLines } from './text/questions-text.ts';
import { counted } from './text/values-text.ts';

export const prove = command({
  name: 'prove',
  summary: 'The chosen chains against everything their points must capture',
  description:
    'Designs the whole plant as its file states it: each chosen chain against the targets of its point, with margins, ' +
    'bias and headroom, noise, alarm set points in engineering unit, milliampere and counts, settings of the records with ' +
    'their reasons, and the uncertainty of each reading; then what could not be proven, then all findings. Ends with 1 ' +
    'where a finding blocks the issue.',
  arguments: { plant: argument('PLANT', 'A plant file') },
  flags: { out: textFlag('REPORT.HTML', 'Also write the proof as a report that any browser opens') },
  examples: [
    'soundpost prove examples/raw-water-pump/plant.yaml',
    'soundpost prove examples/raw-water-pump/plant.yaml --out out/report.html',
    'soundpost prove examples/raw-water-pump/plant.yaml --json',
  ],
  whenAllowed: always,
  perform: (surroundings, { plant, out }, manner) => proof(surroundings, plant, out, manner),
});

/** The proof of a plant, on the screen and where asked for as a report. */
export async function proof(
  surroundings: Surroundings,
  path: string,
  out: string | undefined,
  manner: Manner,
): Promise<Outcome> {
  const { plant } = await readPlant(surroundings, path);
  const points = plant.machines.reduce((sum, machine) => sum + machine.points.length, 0);
  surroundings.step(`designing ${counted(points, 'point')}`);
  const design = designOf(plant, seed);
  const report = out === undefined ? undefined : await writeReport(surroundings, design, out, manner);
  return {
    exit: blocks(design.findings) ? 1 : 0,
    lines: [
      ...titleLines(design, manner),
      ...design.machines.flatMap((machine) => [
        blank,
        ...heading(`${machine.stated.name}: ${machine.stated.title}`, manner.width),
        ...limitsLines(machine.limits, manner).slice(1),
        ...machine.points.flatMap((point) => [blank, ...designedPointLines(point, manner)]),
      ]),
      blank,
      ...loopLines(design, manner),
      blank,
      ...unprovenLines(design, manner),
      ...questionLines(questions(design), manner),
      blank,
      ...heading('Findings', manner.width),
      ...(design.findings.length === 0 ? noFindings('none', manner) : findingsLines(design.findings, manner)),
      ...(report === undefined ? [] : [blank, ...report.lines]),
      blank,
      ...verdictLine(design),
    ],
    json: {
      ...(designJson(design, seed) as object),
      questions: questions(design),
      ...(report === undefined ? {} : { report: report.path }),
    },
  };
}

function titleLines({ plant }: Design, { width }: Manner): readonly Line[] {
  const { name, revision, date, owner } = plant.title.values;
  const facts = [
    ['Owner', valueIfStated(owner)],
    ['Revision', valueIfStated(revision)],
    ['Date', valueIfStated(date)],
  ].flatMap(([label, value]) => (value === undefined ? [] : [`${label} ${value}`]));
  return [
    ...heading(`Proof: ${valueIfStated(name) ?? 'a plant without a name'}`, width),
    ...(facts.length === 0 ? [] : paragraph(`${facts.join('; ')}.`, width)),
  ];
}

function unprovenLines(design: Design, { showing, width }: Manner): readonly Line[] {
  const unproven = design.machines.flatMap((machine) => machine.points.flatMap((each) => unprovenOf(each, showing)));
  return [
    ...heading('What could not be proven', width),
    ...(unproven.length === 0
      ? paragraph('  Nothing that was asked for; what no target asks for was not looked at.', width, '  ')
      : unproven.flatMap((each) => paragraph(`  ? ${each}`, width, '  '))),
  ];
}

function numberOf(findings: readonly Finding[], weight: Weight): number {
  return findings.filter((each) => each.weight === weight).length;
}

/** One line, with what it was held against. */
export function verdictLine({ machines, findings, verdict }: Design): readonly Line[] {
  const points = machines.flatMap((machine) => machine.points);
  const targets = points.reduce((sum, each) => sum + each.point.targets.length, 0);
  const against = `against ${counted(targets, 'stated target')} of ${counted(points.length, 'point')}`;
  const said = [
    [numberOf(findings, 'blocks-issue'), 'block'],
    [numberOf(findings, 'question'), 'ask'],
    [numberOf(findings, 'warns'), 'warn'],
  ] as const;
  const spoken = said
    .filter(([count]) => count > 0)
    .map(([count, does]) => `${count} ${count === 1 ? `${does}s` : does}`);
  const rest = spoken.length === 0 ? 'no finding' : `of the findings ${spoken.join(', ')}`;
  if (verdict === 'not proven') return [{ text: `✗ NOT PROVEN ${against}: ${rest}`, tone: 'grave' }];
  return [{ text: verdict === 'proven' ? `✓ PROVEN ${against}: ${rest}` : `? OPEN ${against}: ${rest}` }];
}
