import { evaluated, type Showing, workingCalled } from '@soundpost/core';
import type { Explained, Openings } from '@soundpost/documents';
import { expect, test } from 'vitest';
import { formulaPiece, isSentence, withoutAside } from '../parts/formula-parser.ts';
import { exampleDisk, exampleNames } from './example-disk.ts';
import { heldOpenings, heldSpeed } from './machine/held-speed.ts';
import { machineOpenings } from './machine/machine-bench.ts';
import { PlantSession } from './plant-session.ts';
import { pointOpenings } from './point-sheet.ts';
import { overlap, shownValue, substitutedValue } from './testing/substituted-value.ts';

interface Sheet {
  readonly at: string;
  readonly markup: string;
  readonly openings: Openings;
}

const sheetNames = [
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
  'response',
];

function* sheetsOf(name: string, showing: Showing): Generator<Sheet> {
  const disk = exampleDisk(name);
  const session = new PlantSession(disk.path, disk.catalogues);
  session.read(disk.text);
  while (session.advance());
  for (const machine of session.design!.machines) {
    const at = machine.stated.name;
    const { sheets, openings } = machineOpenings(machine, showing);
    yield { at, markup: sheets.map((each) => each.markup).join('\n'), openings };
    for (const speed of speedsOf(machine)) {
      const asked = { at: speed };
      const held = heldSpeed(machine, asked, showing);
      if ('refused' in held) continue;
      const all = [held.lines, held.close, held.meetings].join('\n');
      yield { at: `${at} at ${speed} Hz`, markup: all, openings: heldOpenings(machine, asked, showing)! };
    }
    for (const point of machine.points) {
      for (const sheet of sheetNames) {
        const opened = pointOpenings(point, session.plant!, sheet, showing);
        if (opened !== undefined)
          yield { at: `${point.point.of}, ${sheet}`, markup: opened.view.markup, openings: opened.openings };
      }
    }
  }
}

type Machine = Parameters<typeof machineOpenings>[0];

function speedsOf({ stated }: Machine): readonly number[] {
  const { range } = stated.train.operation;
  return range.known ? [range.value.low, (range.value.low + range.value.high) / 2] : [];
}

/** Cells and terms whose text begins with a number and is in no button. */
function unopened(markup: string): readonly string[] {
  const drawn = markup.replace(/<svg[\s\S]*?<\/svg>/g, '');
  const cells = [...drawn.matchAll(/<(td|dd)([^>]*)>([\s\S]*?)<\/\1>/g)].map((each) => ({
    head: /data-head="([^"]*)"/.exec(each[2]!)?.[1],
    cell: each[3]!,
  }));
  return (
    cells
      .filter(({ cell, head }) => !cell.includes('<button') && head !== 'Because')
      // A name of the plant may begin with a digit; the number of a target before its name is no measure.
      .filter(({ cell }) => !/^(?:<span>)?(?:\d+[\u00a0 ](?:×\s)?)?<bdi>/.test(cell))
      .map(({ cell }) => cell.replace(/<[^>]*>/g, '').trim())
      .filter((text) => /^[±+\u2212≤≥<>]?\s?\d/.test(text))
  );
}

function explanations({ markup, openings }: Sheet): readonly { readonly shown: string; readonly told: Explained }[] {
  return [...markup.matchAll(/data-opens="(\d+)">([\s\S]*?)<\/button>/g)].map((each) => ({
    shown: each[2]!
      .replace(/<[^>]*>/g, '')
      .replace(/[\u2007\u2008]/g, '')
      .trim(),
    told: openings.at(Number(each[1]))!,
  }));
}

/** Whether the number that was opened stands among those it opens to, with the digits of either. */
function saysIt(shown: string, { numbers, steps }: Explained): boolean {
  const results = steps.flatMap(({ substituted }) => substituted?.slice(substituted.lastIndexOf(' = ') + 3) ?? []);
  const all = [...numbers.map((each) => each.shown), ...results];
  const digits = (text: string) => text.match(/\d+(?:\.\d+)?(?:e-?\d+)?/g) ?? [];
  const own = digits(shown);
  const told = all.flatMap(digits).map(Number);
  return own.every((each) => told.some((one) => Math.abs(one - Number(each)) <= 0.006 * Math.abs(one)));
}

const showings: readonly Showing[] = [{}, { units: 'us' }];

test.each(exampleNames)('law: every number of the sheets of %s opens in three depths', (name) => {
  for (const showing of showings) {
    for (const sheet of sheetsOf(name, showing)) {
      expect(unopened(sheet.markup), sheet.at).toEqual([]);
      for (const { shown, told } of explanations(sheet)) {
        const where = `${sheet.at}: ${shown}: ${told.title}`;
        expect(told.title, where).not.toBe('');
        expect(told.sentence, where).toMatch(/^.{12,}[.!?…]$/s);
        expect(
          JSON.stringify(told, (_, value) => (typeof value === 'bigint' ? String(value) : value)),
          where,
        ).not.toMatch(/NaN|undefined|Infinity|\[object/);
        expect(told.numbers.length, where).toBeGreaterThan(0);
        expect(saysIt(shown, told), `${where}: ${JSON.stringify(told.numbers)}`).toBe(true);
        expect(told.typed !== undefined || told.steps.length > 0 || told.sources.length > 0, where).toBe(true);
        for (const { formula, substituted } of told.steps) {
          for (const text of [formula, substituted ?? formula]) {
            const { formula: own } = withoutAside(text);
            if (!/["'<>]|none:/.test(own) && !isSentence(own))
              expect(formulaPiece(own), `${where}: ${text}`).toBeDefined();
          }
        }
      }
    }
  }
});

/** Formulas that are no arithmetic of shown numbers: sums over a spectrum, words of a table, a search. */
const notArithmetic =
  /∫|arg\(|as the|names|Σ all|range of the sensor|half of|≤|\bto\b|halving|solved|f = .* at |highest|what the driver/;

test.each(exampleNames)(
  'law: every formula of %s, worked out from the numbers put in, gives the number it says',
  (name) => {
    const left = new Map<string, string>();
    let worked = 0;
    for (const showing of showings) {
      for (const sheet of sheetsOf(name, showing)) {
        for (const { shown, told } of explanations(sheet)) {
          for (const { formula, substituted, worked: by } of told.steps) {
            const where = `${sheet.at}: ${shown}: ${told.title}: ${substituted}`;
            if (by !== undefined) {
              const results = evaluated(workingCalled(by.working), by.values, { ...showing, digits: 4 });
              const again = results.find((each) => each.name === by.output)!;
              const said = substituted!.slice(substituted!.lastIndexOf(' = ') + 3);
              const [one, other] = [shownValue(again.shown), shownValue(said)];
              if (one !== undefined && other !== undefined)
                expect(overlap(one, other), `${where}: ${again.shown}`).toBe(true);
              else expect(said, where).toBe(again.shown);
            }
            if (substituted === undefined) continue;
            const found = substitutedValue(substituted);
            if (found === undefined) left.set(formula, substituted);
            else {
              worked += 1;
              expect(overlap(found.worked, found.said), `${where} gives ${JSON.stringify(found.worked)}`).toBe(true);
            }
          }
        }
      }
    }
    expect([...left].filter(([formula, text]) => !notArithmetic.test(formula) && !notArithmetic.test(text))).toEqual(
      [],
    );
    expect(worked).toBeGreaterThan(50);
  },
);
