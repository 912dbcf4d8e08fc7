import {
  type AnyWorking,
  blocks,
  type Calculation,
  calculate,
  calculationJson,
  type Fields,
  fieldOf,
  kebab,
  Refusal,
  workingCalled,
} from '@soundpost/core';
import { placedYaml, plainOf, textFile } from '@soundpost/files';
import { always, argument, command, manyArguments } from './command.ts';
import { findingJson } from './json/finding-json.ts';
import { blank, heading, type Line, labelled, paragraph, plainLines } from './layout/line.ts';
import { wrapped } from './layout/wrap.ts';
import type { Manner } from './manner.ts';
import type { Surroundings } from './surroundings.ts';
import { findingsLines } from './text/finding-text.ts';
import { exampleCommand } from './topics/workings.ts';

export const work = command({
  name: 'work',
  summary: 'One formula, worked: numbers in, result with formula and source out',
  description:
    'Works one formula. Inputs are typed as NAME="value unit", in whatever unit they carry; none is ever assumed. Prints ' +
    'the result, the formula, the same with the numbers put in, where it holds and whose it is. An input that is a file is ' +
    'given by its path, and so may be one that is a row of samples.',
  arguments: {
    name: argument('NAME', "A working; 'soundpost workings' lists them"),
    inputs: manyArguments('INPUT="VALUE UNIT"', 'Its inputs'),
  },
  flags: {},
  examples: [
    'soundpost work mounted-response resonance="27 kHz" tolerance="10 %"',
    'soundpost work loop-scaling range-low="0 mm/s rms" range-high="25 mm/s rms" value="8.5 mm/s rms"',
    'soundpost work uncertainty-budget file=examples/uncertainty/end-gauge.yaml --json',
  ],
  whenAllowed: always,
  async perform(surroundings, { name, inputs }, manner) {
    const working = workingCalled(name);
    const typed = typedInputs(working, inputs);
    surroundings.step(`working ${name}`);
    const read = await filesRead(surroundings, working, typed);
    const calculation = calculate(working, read, { decimal: 'point' }, manner.showing);
    const named = { ...calculation, inputs: withPaths(calculation.inputs, typed, working) };
    return {
      exit: blocks(calculation.findings) ? 1 : 0,
      lines: calculationLines(named, manner),
      json: { ...(calculationJson(named) as object), findings: calculation.findings.map(findingJson) },
    };
  },
});

/** `name=value` of every input. Throws Refusal, with an example that works. */
function typedInputs(working: AnyWorking, inputs: readonly string[]): Readonly<Record<string, string>> {
  const typed: Record<string, string> = {};
  for (const input of inputs) {
    const equals = input.indexOf('=');
    const key = input.slice(0, equals).trim();
    if (equals <= 0) {
      throw new Refusal({
        read: input,
        expected: 'an input as NAME="value unit"; quotes keep value and unit together',
        suggestion: `For example: ${exampleCommand(working)}`,
      });
    }
    if (Object.hasOwn(typed, key))
      throw new Refusal({ read: input, expected: `each input once, and '${key}' stands twice` });
    typed[key] = input.slice(equals + 1).trim();
  }
  return typed;
}

type Typed = Readonly<Record<string, string>>;

function fileInputs(working: AnyWorking): readonly string[] {
  return Object.entries(working.inputs as Fields)
    .filter(([, entry]) => fieldOf(entry).type === 'file')
    .map(([name]) => kebab(name));
}

const tableFile = /\.(csv|tsv|txt)$/i;

/** Inputs that may be a table and were given as the name of a file. */
function tableInputs(working: AnyWorking, typed: Typed): readonly string[] {
  return Object.entries(working.inputs as Fields)
    .filter(([name, entry]) => fieldOf(entry).orTable === true && tableFile.test(typed[kebab(name)] ?? ''))
    .map(([name]) => kebab(name));
}

/** The content of a file in place of its path, as plain data; of a table as its text. */
async function filesRead(
  surroundings: Surroundings,
  working: AnyWorking,
  typed: Typed,
): Promise<Readonly<Record<string, unknown>>> {
  const read: Record<string, unknown> = { ...typed };
  for (const name of fileInputs(working)) {
    const path = typed[name];
    if (path === undefined) continue;
    const bytes = await surroundings.readBytes(path);
    read[name] = plainOf(placedYaml(textFile(bytes, path)));
  }
  for (const name of tableInputs(working, typed)) {
    const path = typed[name]!;
    read[name] = textFile(await surroundings.readBytes(path), path).text;
  }
  return read;
}

function withPaths(inputs: Calculation['inputs'], typed: Typed, working: AnyWorking): Calculation['inputs'] {
  const files = [...fileInputs(working), ...tableInputs(working, typed)];
  return Object.fromEntries(
    Object.entries(inputs).map(([name, input]) => [
      name,
      files.includes(name) ? { ...input, written: typed[name]! } : input,
    ]),
  );
}

function calculationLines(calculation: Calculation, manner: Manner): readonly Line[] {
  const { width } = manner;
  const names = [
    ...Object.keys(calculation.inputs),
    ...leftOut(calculation),
    ...calculation.results.map((each) => each.name),
  ];
  const column = Math.max(0, ...names.map((each) => each.length)) + 2;
  return [
    ...heading(`${calculation.title} (${calculation.working})`, width),
    ...Object.entries(calculation.inputs).flatMap(([name, input]) => labelled(name, input.shown, width, '  ', column)),
    ...leftOut(calculation).flatMap((name) => labelled(name, '(not given)', width, '  ', column)),
    blank,
    ...calculation.results.flatMap((each) => [
      ...labelled(each.name, each.shown, width, '  ', column),
      ...plainLines(wrapped(`      ${each.formula}`, width, '  ')),
      ...(each.substituted === each.formula ? [] : plainLines(wrapped(`      ${each.substituted}`, width, '  '))),
    ]),
    blank,
    ...labelled('Holds for', calculation.holds, width, '', 11),
    ...calculation.sources.flatMap((each) => labelled('Source', each, width, '', 11)),
    ...(calculation.findings.length === 0 ? [] : [blank, ...findingsLines(calculation.findings, manner)]),
    ...(calculation.results.length === 0 ? paragraph('No result follows from these inputs.', width) : []),
  ];
}

function leftOut({ working, inputs }: Calculation): readonly string[] {
  const names = Object.keys(workingCalled(working).inputs).map(kebab);
  return names.filter((name) => !Object.hasOwn(inputs, name));
}
