import {
  type Catalogue,
  demand as demandOf,
  type FrequencyTable,
  failures,
  frequencyTable,
  lineLookup,
  type MeasuringPoint,
  type PlantPoint,
  partCalled,
  Refusal,
  type Shelf,
  type ShortlistRow,
  shortlist as shortlistOf,
} from '@soundpost/core';
import { always, argument, command, namesFlag, switchFlag } from './command.ts';
import { shortlistRowJson } from './json/judgement-json.ts';
import { blank, grave, heading, type Line, paragraph } from './layout/line.ts';
import { outcomeMark } from './layout/mark.ts';
import type { Manner } from './manner.ts';
import { pointCalled, unknownName } from './plant/point-called.ts';
import { readPlant } from './plant/read-plant.ts';
import { judgementLines } from './text/judgement-text.ts';
import { matrixLines } from './text/matrix-text.ts';
import { targetTable } from './text/point-text.ts';
import { counted } from './text/values-text.ts';

/** More candidates than this are a list nobody reads; the rest is said to be there. */
const shownAtOnce = 12;

const orderRule =
  'Order, without weights: outcome first (meets, warns, cannot tell, fails); of those that fail, fewest failures; then ' +
  'the larger least margin; then the cheaper; then the name.';

export const shortlist = command({
  name: 'shortlist',
  summary: 'Every candidate on every mount against every target of a point',
  description:
    'Judges each transducer on each mount, with the cable, supply and input of the point, against all its targets. Prints ' +
    'the matrix with margins in decibels; for each candidate that fails all reasons, each with value, limit, frequency and ' +
    'what would have to change; for each that passes the requirement that would fail first. Ends with 1 where every ' +
    'candidate fails.',
  arguments: {
    plant: argument('PLANT', 'A plant file'),
    point: argument('POINT', 'The point: its name, or MACHINE/POINT'),
  },
  flags: {
    transducers: namesFlag('A,B', 'Only these transducers of the catalogue'),
    mounts: namesFlag('A,B', 'Only these mounts of the catalogue'),
    all: switchFlag(`Every candidate in the text, not only the best ${shownAtOnce} (JSON has them all)`),
  },
  examples: [
    'soundpost shortlist examples/raw-water-pump/plant.yaml pump-drive-end-horizontal',
    'soundpost shortlist examples/raw-water-pump/plant.yaml pump-drive-end-horizontal --transducers ACC-100,PVT-4 --mounts stud,magnet-flat',
  ],
  whenAllowed: always,
  async perform(surroundings, { plant: path, point: name, transducers, mounts, all }, manner) {
    const { plant } = await readPlant(surroundings, path);
    const { machine, point: stated, of } = pointCalled(plant, name);
    if (stated.way === undefined) throw noWay(of);
    const table: FrequencyTable = frequencyTable(machine.train);
    const point = demandOf(stated.statement, machine.name, lineLookup(table));
    const candidates = candidatesOf(stated, plant.catalogue, transducers, mounts);
    surroundings.step(`judging ${counted(candidates.transducers.length * candidates.mounts.length, 'candidate')}`);
    const rows = shortlistOf(point, candidates.transducers, candidates.mounts, stated.way, plant.policy);
    const shown = all ? rows : rows.slice(0, shownAtOnce);
    return {
      exit: rows.every((row) => row.appraisal.outcome === 'fails') ? 1 : 0,
      lines: [
        ...heading(`Shortlist for ${of}`, manner.width),
        ...targetTable(point, manner),
        blank,
        ...matrixLines(shown, manner),
        ...paragraph(orderRule, manner.width),
        ...restLines(rows.length - shown.length, manner),
        ...shown.flatMap((row, index) => [blank, ...candidateLines(row, index + 1, manner)]),
        blank,
        ...verdictLines(point, rows, manner),
      ],
      json: { point: of, order: orderRule, candidates: rows.map(shortlistRowJson) },
    };
  },
});

function noWay(of: string): Refusal {
  return new Refusal({
    read: of,
    expected: "a point with a 'chain' that names at least cable and input",
    suggestion: 'A transducer is judged with the line and the input it will work with.',
  });
}

function candidatesOf(
  stated: PlantPoint,
  catalogue: Catalogue,
  transducers: readonly string[] | undefined,
  mounts: readonly string[] | undefined,
) {
  return {
    transducers:
      transducers === undefined ? stated.compared.transducers : partsCalled(catalogue, 'transducers', transducers),
    mounts: mounts === undefined ? stated.compared.mounts : partsCalled(catalogue, 'mounts', mounts),
  };
}

function partsCalled<S extends Shelf>(
  catalogue: Catalogue,
  shelf: S,
  names: readonly string[],
): readonly Catalogue[S][number][] {
  return names.map((name) => {
    const looked = partCalled(catalogue, shelf, name);
    if (!('nearest' in looked)) return looked.found;
    throw unknownName(
      name,
      `one of the ${shelf} of ${catalogue.title}`,
      catalogue[shelf].map((part) => part.name),
    );
  });
}

function restLines(more: number, { width }: Manner): readonly Line[] {
  if (more <= 0) return [];
  return paragraph(`${counted(more, 'further candidate')} not shown; --all shows them.`, width);
}

function candidateLines(row: ShortlistRow, rank: number, manner: Manner): readonly Line[] {
  const { appraisal } = row;
  const mark = outcomeMark[appraisal.outcome];
  const name = `${rank}. ${mark} ${row.transducer.name} on ${row.mount.name}`;
  const rest = appraisal.judgements.filter((each) => each.outcome === 'cannot tell' || each.outcome === 'warns');
  const failing = failures(appraisal);
  if (appraisal.outcome === 'fails') {
    return [
      ...paragraph(`${name}: fails, for ${counted(failing.length, 'reason')}`, manner.width),
      ...failing.flatMap((each) => judgementLines(each, manner)),
      ...rest.flatMap((each) => judgementLines(each, manner)),
    ];
  }
  const words = {
    meets: 'meets every target',
    warns: 'meets, with warnings',
    'cannot tell': 'cannot be told',
  } as const;
  const { nearest } = appraisal;
  return [
    ...paragraph(`${name}: ${words[appraisal.outcome]}`, manner.width),
    ...[...failing, ...rest].flatMap((each) => judgementLines(each, manner)),
    ...(nearest === undefined || rest.includes(nearest)
      ? []
      : [...paragraph('    Would fail first:', manner.width), ...judgementLines(nearest, manner)]),
  ];
}

function verdictLines(point: MeasuringPoint, rows: readonly ShortlistRow[], { width }: Manner): readonly Line[] {
  const count = (outcome: string) => rows.filter((row) => row.appraisal.outcome === outcome).length;
  const parts = (
    [
      ['meets', 'passes', 'pass'],
      ['warns', 'passes with a warning', 'pass with warnings'],
      ['cannot tell', 'cannot be told', 'cannot be told'],
      ['fails', 'fails', 'fail'],
    ] as const
  ).flatMap(([outcome, one, many]) =>
    count(outcome) === 0 ? [] : [`${count(outcome)} ${count(outcome) === 1 ? one : many}`],
  );
  const text = `Of ${counted(rows.length, 'candidate')}, against the ${counted(point.targets.length, 'target')} of ${point.of}: ${parts.join(', ')}.`;
  return count('fails') === rows.length ? grave(text, width) : paragraph(text, width);
}
