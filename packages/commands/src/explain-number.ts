import { design, designedMachine, Refusal, showClause } from '@soundpost/core';
import { type Explained, explainedMachine, explainedPointSheet, pointSheetNames } from '@soundpost/documents';
import { clauseJson } from './json/finding-json.ts';
import { blank, heading, type Line, labelled } from './layout/line.ts';
import type { Manner } from './manner.ts';
import type { Outcome } from './outcome.ts';
import { pointCalled } from './plant/point-called.ts';
import { readPlant } from './plant/read-plant.ts';
import type { Surroundings } from './surroundings.ts';

/** Repeats the trials of a budget, as the screen does. */
const seed = 1;

/** The sheets whose numbers can be asked for by name, besides the targets of a point. */
export const sheetNames = [
  'demand',
  'chain',
  'noise',
  'bias',
  'probes',
  'area',
  'limits',
  'loop',
  'alarms',
  'window',
  'acquisition',
  'uncertainty',
] as const;

/** Every number of a sheet of a point in three depths, or those whose title holds some words. */
export async function explainSheet(
  surroundings: Surroundings,
  path: string,
  { point: name, sheet, words }: { readonly point: string; readonly sheet: string; readonly words: string | undefined },
  manner: Manner,
): Promise<Outcome> {
  const { plant } = await readPlant(surroundings, path);
  const { machine, of } = pointCalled(plant, name);
  surroundings.step(`working out ${of}`);
  const designed = designedMachine(plant, machine, seed).points.find((each) => each.point.of === of)!;
  const all = explainedPointSheet(designed, plant, sheet, manner.showing);
  if (all === undefined) {
    throw new Refusal({
      read: sheet,
      expected: `a target of ${of}, or one of its sheets: ${pointSheetNames(designed, plant).join(', ')}`,
    });
  }
  return told(`${of}: ${sheet}`, { point: of, sheet }, all, words, manner);
}

/** Every number of a machine by itself, or those whose title holds some words. */
export async function explainMachine(
  surroundings: Surroundings,
  path: string,
  { machine: name, words }: { readonly machine: string; readonly words: string | undefined },
  manner: Manner,
): Promise<Outcome> {
  const { plant } = await readPlant(surroundings, path);
  surroundings.step(`working out ${name}`);
  const only = { ...plant, machines: plant.machines.filter((each) => each.name === name) };
  const all = explainedMachine(design(only, seed).machines[0]!, manner.showing);
  return told(`machine ${name}`, { machine: name }, all, words, manner);
}

function told(
  what: string,
  place: Readonly<Record<string, string>>,
  all: readonly Explained[],
  words: string | undefined,
  { width }: Manner,
): Outcome {
  const kept = words === undefined ? all : all.filter((each) => each.title.toLowerCase().includes(words.toLowerCase()));
  if (kept.length === 0) {
    const titles = [...new Set(all.map((each) => each.title))].slice(0, 12);
    throw new Refusal({
      read: words ?? '',
      expected:
        titles.length === 0
          ? `numbers in ${what}; it holds none`
          : `words of a number of ${what}: ${titles.join('; ')}`,
    });
  }
  return {
    exit: 0,
    lines: [...heading(`Why: ${what}`, width), ...kept.flatMap((each) => [blank, ...depthLines(each, width)])],
    json: { ...place, numbers: kept.map(explainedJson) },
  };
}

/** A number in its three depths, as the verdicts of a point are told. */
function depthLines({ title, sentence, numbers, steps, sources, typed }: Explained, width: number): readonly Line[] {
  const source =
    typed === undefined
      ? sources.map(showClause).join('; ') || 'none: our own invariant'
      : [`typed at ${typed.at}`, typed.written, typed.status, typed.source]
          .filter((each) => each !== undefined)
          .join('; ');
  return [
    ...heading(title, width),
    ...labelled('Sentence', sentence, width, '  ', 10),
    ...labelled('Numbers', `${numbers.map(({ name, shown }) => `${name} ${shown}`).join('; ')}.`, width, '  ', 10),
    ...steps.flatMap(({ formula, substituted, notes = [] }, index) => [
      ...labelled(index === 0 ? 'Formula' : '', formula, width, '  ', 10),
      ...(substituted === undefined ? [] : labelled('', substituted, width, '  ', 10)),
      ...notes.flatMap((note) => labelled('', `· ${note}`, width, '  ', 10)),
    ]),
    ...labelled('Source', source, width, '  ', 10),
  ];
}

function explainedJson({ title, sentence, numbers, steps, sources, typed }: Explained): unknown {
  return {
    title,
    sentence,
    numbers,
    steps: steps.map(({ formula, substituted, notes, worked }) => ({
      formula,
      ...(substituted === undefined ? {} : { substituted }),
      ...(notes === undefined ? {} : { notes }),
      ...(worked === undefined ? {} : { working: worked.working }),
    })),
    ...(typed === undefined ? {} : { typed }),
    sources: sources.map(clauseJson),
  };
}
