import { type DesignedPoint, type Showing, type SpectrumSet, showBand, showMeasure } from '@soundpost/core';
import { heading, list, note } from '../blocks.ts';
import { count, none, numberIn, words } from '../cells.ts';
import { everyPoint } from '../every-point.ts';
import { issuedKind } from '../issued-kind.ts';
import type { Block } from '../record.ts';
import { numberColumn, setTable, textColumn } from '../set-table.ts';

interface PlacedSet {
  readonly designed: DesignedPoint;
  readonly set: SpectrumSet;
}

/** How every record is to be taken, and why: to be typed into the acquisition as it stands. */
export const acquisitionSettings = issuedKind({
  kind: 'acquisition-settings',
  title: 'Acquisition configuration list',
  readers: 'whoever sets up the collector or the online system',
  orientation: 'landscape',
  sheets: (design, showing) => {
    const points = everyPoint(design).map((each) => each.designed);
    const sets = points.flatMap((designed) => designed.settings.sets.map((set): PlacedSet => ({ designed, set })));
    return [
      { title: 'Records', blocks: [recordTable(sets, showing), ...openBlocks(points)] },
      ...(sets.length === 0 ? [] : [{ title: 'Why each record is set so', blocks: reasonBlocks(sets, showing) }]),
    ];
  },
});

function recordTable(sets: readonly PlacedSet[], showing: Showing): Block {
  const fine = { ...showing, digits: 6 };
  return setTable<PlacedSet>(
    'records',
    'Records of every point, their settings',
    [
      textColumn('Tag', ({ designed }) => words(designed.point.of), 2.6),
      textColumn('Record', ({ set }) => words(set.name), 1.6),
      numberColumn('Highest', 'Hz', ({ set }) => numberIn('Hz', 'frequency', set.highestFrequency, fine)),
      numberColumn('Lines', '', ({ set }) => count(set.lines), 0.8),
      numberColumn('Spacing', 'Hz', ({ set }) => numberIn('Hz', 'frequency', set.resolution, fine)),
      numberColumn('Record', 's', ({ set }) => numberIn('s', 'duration', set.recordLength, fine), 0.9),
      numberColumn('Sampling', 'Hz', ({ set }) => numberIn('Hz', 'frequency', set.samplingRate, fine)),
      numberColumn('Samples', '', ({ set }) => count(set.samples), 0.9),
      textColumn('Window', ({ set }) => words(set.window), 0.8),
      numberColumn('Averages', '', ({ set }) => count(set.averages), 0.8),
      textColumn(
        'Band before demodulation',
        ({ set }) => words(set.envelopeBand && showBand(set.envelopeBand, showing)),
        1.5,
      ),
      numberColumn(
        'Raw sampling',
        'Hz',
        ({ set }) =>
          set.rawSamplingRate === undefined ? none : numberIn('Hz', 'frequency', set.rawSamplingRate, fine),
        1.1,
      ),
      numberColumn(
        'Samples per turn',
        '',
        ({ set }) => (set.orders === undefined ? none : count(set.orders.samplesPerTurn)),
        1,
      ),
      numberColumn('Turns', '', ({ set }) => (set.orders === undefined ? none : count(set.orders.turns)), 0.7),
    ],
    sets,
    'No record is asked for by any target: the sensors send one number, or nothing needs a spectrum.',
  );
}

function openBlocks(points: readonly DesignedPoint[]): readonly Block[] {
  const open = points.flatMap(({ point, settings }) => settings.unknown.map((each) => `${point.of}: ${each}`));
  const single = points.flatMap(({ point, appraisal }) =>
    appraisal?.prediction.chain.transducer.signal === 'overall' ? [point.of] : [],
  );
  return [
    note(
      'A dash stands where a record has no such setting: a band and raw sampling belong to demodulation, samples per turn and turns to records by the turn of the shaft.',
    ),
    ...(open.length === 0 ? [] : [heading('Not asked of any record, because it is not known'), ...list(open)]),
    ...(single.length === 0
      ? []
      : [note('These points send one number, so there is no record to set:'), ...list(single)]),
  ];
}

function reasonBlocks(sets: readonly PlacedSet[], showing: Showing): readonly Block[] {
  return sets.flatMap(({ designed, set }) => [
    heading(`${designed.point.of}, ${set.name}: ${set.purpose}`),
    ...list(set.reasons.map((reason) => showMeasure(reason, showing))),
  ]);
}
