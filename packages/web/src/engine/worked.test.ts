import { calculate, type Field, type Fields, fieldOf, workings } from '@soundpost/core';
import { expect, test } from 'vitest';
import { worked } from './worked.ts';
import { workingPlot } from './working-plot.ts';
import { workingSheet } from './working-sheet.ts';

const ownFiles = workings.filter((each) =>
  Object.values(each.inputs as Fields).some((entry) => (fieldOf(entry) as Field<unknown>).type === 'file'),
);
const typedIn = workings.filter((each) => !ownFiles.includes(each));
const exampleOf = (name: string) => {
  const sheet = workingSheet(name);
  return { name, typed: Object.fromEntries(sheet.inputs.map((each) => [each.name, each.initial])), files: {} };
};

test.each(typedIn.map((each) => each.name))('law: the page shows of %s what the calculation gives', (name) => {
  const shown = worked(exampleOf(name), {});
  const working = workings.find((each) => each.name === name)!;
  expect(shown.refused).toEqual({});
  expect(shown.results.map((each) => [each.name, each.shown])).toEqual(
    calculate(working, working.example).results.map((each) => [each.name, each.shown]),
  );
});

test('a field that cannot be read says so at its own place, and an empty one what it takes', () => {
  const asked = exampleOf('iepe-cable-drive');
  const needed = workingSheet('iepe-cable-drive').inputs.filter((each) => !each.optional);
  const [first, second] = needed.map((each) => each.name) as [string, string];
  const { refused, results } = worked({ ...asked, typed: { ...asked.typed, [first]: '5', [second]: '' } }, {});
  expect(Object.keys(refused)).toEqual([first, second]);
  expect(refused[first]).toMatch(/^Read '5', expected /);
  expect(refused[second]).toMatch(/^Needed: /);
  expect(results).toEqual([]);
});

test('the command quotes what a shell would take for its own', () => {
  const asked = exampleOf('mounted-response');
  const hostile = `27 kHz"; rm -rf $HOME '#`;
  const { command } = worked({ ...asked, typed: { ...asked.typed, resonance: hostile } }, {});
  expect(command).toContain(`resonance='27 kHz"; rm -rf $HOME '\\''#'`);
  expect(worked(asked, {}).command).toBe('soundpost work mounted-response resonance="27 kHz" tolerance="10 %"');
});

test('law: the row of the value in the form holds the result in the form, wherever a result is a number', () => {
  for (const { name } of typedIn) {
    const sheet = workingSheet(name);
    const asked = exampleOf(name);
    const results = new Map(worked(asked, {}).results.map((each) => [each.name, each.shown]));
    for (const input of sheet.inputs.filter((each) => each.varies && each.initial !== '')) {
      for (const output of sheet.outputs.filter((each) => each.drawn && results.has(each.name))) {
        const plot = workingPlot({ ...asked, input: input.name, output: output.name, from: '', to: '' }, {});
        if ('refused' in plot) continue;
        const stated = plot.rows.find((each) => each.stated);
        expect(stated?.output, `${name}: ${output.name} against ${input.name}`).toBe(results.get(output.name));
      }
    }
  }
});

test('hand calculation: capacitance of 100 pF/m of cable over its length, from end to end as typed', () => {
  const asked = exampleOf('iepe-cable-drive');
  const sheet = workingSheet('iepe-cable-drive');
  const length = sheet.inputs.find((each) => each.symbol === 'L')!.name;
  const capacitance = sheet.outputs.find((each) => each.symbol === 'C')!.name;
  const plot = workingPlot({ ...asked, input: length, output: capacitance, from: '10 m', to: '110 m' }, {});
  if ('refused' in plot) throw new Error(plot.refused);
  expect(plot.rows[0]).toMatchObject({ input: '10 m', output: '1 nF' });
  expect(plot.rows.at(-1)).toMatchObject({ input: '110 m', output: '11 nF' });
});

test('an end that is no such quantity is refused at its place', () => {
  const asked = { ...exampleOf('iepe-cable-drive'), output: 'total-capacitance', from: '', to: '3 kg' };
  const input = workingSheet('iepe-cable-drive').inputs.find((each) => each.symbol === 'L')!.name;
  expect(workingPlot({ ...asked, input }, {})).toMatchObject({ at: 'to' });
});
