import type { Design, DesignedMachine, DesignedPoint } from '../../design/design.ts';
import type { CheckedRecord } from '../check/check-kind.ts';
import type { BesideRecords } from '../comparison.ts';
import type { MeasuredRecord } from '../measured-record.ts';
import { amperesPerNumber } from '../measured-record.ts';
import type { OccasionName } from '../occasion/kinds.ts';
import { coursePicture } from './course-picture.ts';
import { floorPicture } from './floor-picture.ts';
import { linesPicture } from './lines-picture.ts';
import type { Picture } from './picture.ts';
import { readingPictures } from './reading-pictures.ts';
import { ringingPicture } from './ringing-picture.ts';
import { tonePicture } from './tone-picture.ts';
import { wavePicture } from './wave-picture.ts';

/** What is drawn of a record, by the occasion it was made on. */
const drawnOf: Readonly<Record<OccasionName, (looked: CheckedRecord) => readonly Picture[]>> = {
  'at-rest': coursePicture,
  'power-on': coursePicture,
  stopped: floorPicture,
  taps: ringingPicture,
  calibrator: tonePicture,
  'beside-reference': wavePicture,
  'slow-roll': wavePicture,
  running: (looked) => (amperesPerNumber(looked.record).known ? coursePicture(looked) : linesPicture(looked)),
};

/** The pictures of every record that was made at a point of the design; a record without scale or rate has none. */
export function pictures(
  design: Design,
  records: readonly MeasuredRecord[],
  { serving = [], readings = [] }: BesideRecords = {},
): readonly Picture[] {
  const places = new Map<string, { readonly machine: DesignedMachine; readonly designed: DesignedPoint }>(
    design.machines.flatMap((machine) =>
      machine.points.map((designed) => [designed.point.of, { machine, designed }] as const),
    ),
  );
  const points = new Map([...places].map(([of, { designed }]) => [of, designed]));
  const ofRecords = records.flatMap((record) => {
    const place = places.get(record.at);
    if (place === undefined) return [];
    const others = records.filter((each) => each !== record);
    const beside = serving.filter((each) => each.recording === record.recording);
    return drawnOf[record.occasion.kind]({ ...place, record, others, serving: beside, points });
  });
  const ofTables = readings.flatMap((table) => {
    const designed = points.get(table.point);
    return designed === undefined ? [] : readingPictures(table, designed);
  });
  return [...ofRecords, ...ofTables].filter(canBeDrawn);
}

/** A picture whose axes have two ends, and some point between them. */
function canBeDrawn({ x, y, curves }: Picture): boolean {
  const ends = [x, y].every(
    ({ low, high, scale }) =>
      Number.isFinite(low) && Number.isFinite(high) && high > low && (scale === 'linear' || low > 0),
  );
  return ends && curves.some(({ points }) => points.some(([, value]) => Number.isFinite(value)));
}
