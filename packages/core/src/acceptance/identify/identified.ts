import type { Design } from '../../design/design.ts';
import type { BesideRecords } from '../comparison.ts';
import { type MeasuredRecord, recordName } from '../measured-record.ts';
import type { FoundOfChain } from './identify-kind.ts';
import { identifyKinds } from './kinds.ts';

/** `off` where the whole interval lies outside the limits, `as designed` where the whole of it lies inside. */
export type Standing = 'as designed' | 'off' | 'cannot tell';

/** A property of an installed chain, where it was found, and how it stands to the design. */
export interface Identified extends FoundOfChain {
  readonly kind: string;
  readonly title: string;
  readonly at: string;
  readonly record: string;
  readonly standing: Standing;
}

/** Every property of every recorded chain that the records tell, in the order of the kinds. */
export function identifiedChains(
  design: Design,
  records: readonly MeasuredRecord[],
  { serving = [] }: BesideRecords = {},
): readonly Identified[] {
  const places = new Map(
    design.machines.flatMap((machine) =>
      machine.points.map((designed) => [designed.point.of, { machine, designed }] as const),
    ),
  );
  const points = new Map([...places].map(([of, { designed }]) => [of, designed]));
  return records.flatMap((record) => {
    const place = places.get(record.at);
    if (place?.designed.appraisal === undefined) return [];
    const others = records.filter((each) => each !== record);
    const beside = serving.filter((each) => each.recording === record.recording);
    return identifyKinds
      .filter((kind) => kind.on.includes(record.occasion.kind) && kind.applies(place.designed))
      .flatMap((kind) =>
        kind.identify({ ...place, record, others, serving: beside, points }).map((found) => ({
          ...found,
          kind: kind.kind,
          title: kind.title,
          at: record.at,
          record: recordName(record),
          standing: standingOf(found),
        })),
      );
  });
}

function standingOf({ interval, allowed }: FoundOfChain): Standing {
  if (interval.high < allowed.low || interval.low > allowed.high) return 'off';
  return interval.low >= allowed.low && interval.high <= allowed.high ? 'as designed' : 'cannot tell';
}
