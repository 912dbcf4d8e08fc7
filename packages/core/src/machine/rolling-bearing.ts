import { fromAll, valueIfStated } from '../quantity/index.ts';
import { rollingBearingKinematics } from '../source/rolling-bearing-kinematics.ts';
import { clause } from '../source/source.ts';
import { type BearingOrders, bearingOrders } from './bearing-frequencies.ts';
import {
  bearingRow,
  type RollingBearingSheet,
  rollingBearingSheet,
  slipOfOrder,
  usualSlip,
} from './bearing-geometry.ts';
import { couplesNothing, type ElementLine, type ElementPlace, machineElementKind, noSlip } from './element.ts';
import { type FrequencySource, fixed, measuredTimes, relativeTurning, sharedTurning } from './form.ts';
import { bearingGeometryEstimated } from './rules/bearing-geometry-estimated.ts';
import { contactAnglePlausible } from './rules/contact-angle-plausible.ts';
import { elementAgainstPitch } from './rules/element-against-pitch.ts';
import { elementsFitPitchCircle } from './rules/elements-fit-pitch-circle.ts';
import { pitchBetweenBoreAndOutside } from './rules/pitch-between-bore-and-outside.ts';
import { rowsCountedTwice } from './rules/rows-counted-twice.ts';

const sources = [clause(rollingBearingKinematics)];
const slipSource = clause(rollingBearingKinematics, 'slip of 1 to 2 %', 'second-hand');

/** Ball or roller bearing; either ring may stand still, turn with a shaft, or both may turn. */
export const rollingBearing = machineElementKind({
  kind: 'rolling-bearing',
  name: 'Rolling bearing',
  sheet: rollingBearingSheet,
  places: ['inner', 'outer'],
  mayBeFixed: ['inner', 'outer'],
  onOneShaft: (shaft) => ({ inner: shaft, outer: fixed }),
  relations: () => couplesNothing,
  lines: (sheet, place) => {
    const rings = relativeTurning(place.shafts.inner, place.shafts.outer);
    return [
      cageLine(sheet, place),
      ringLine(
        sheet,
        rings,
        'outer-ring',
        'Elements passing a spot on the outer ring',
        5,
        (orders) => orders.outerRing,
      ),
      ringLine(
        sheet,
        rings,
        'inner-ring',
        'Elements passing a spot on the inner ring',
        5,
        (orders) => orders.innerRing,
      ),
      ringLine(
        sheet,
        rings,
        'element-spin',
        'One turn of an element about its own axis, once: not the defect line',
        1,
        (orders) => orders.elementSpin,
      ),
      ringLine(
        sheet,
        rings,
        'element-spin-twice',
        'Twice element spin: a spot on an element strikes both rings in each of its turns',
        3,
        (orders) => 2 * orders.elementSpin,
      ),
    ];
  },
  doubts: (sheet, speeds) =>
    [
      elementAgainstPitch,
      elementsFitPitchCircle,
      rowsCountedTwice,
      pitchBetweenBoreAndOutside,
      contactAnglePlausible,
      bearingGeometryEstimated,
    ].flatMap((rule) => rule.check(sheet, speeds)),
  sources,
});

function ringLine(
  sheet: RollingBearingSheet,
  rings: FrequencySource,
  name: string,
  meaning: string,
  harmonics: number,
  order: (orders: BearingOrders) => number,
): ElementLine {
  const known = bearingRow(sheet);
  return {
    name,
    meaning,
    form: fromAll({ known }, (drawn) => [measuredTimes(order(bearingOrders(drawn.known.row)), rings)]),
    harmonics,
    ...bands(sheet, order),
  };
}

/** The cage turns with a share of each ring, so its line is not counted in the speed between them. */
function cageLine(sheet: RollingBearingSheet, place: ElementPlace<'inner' | 'outer'>): ElementLine {
  return {
    name: 'cage',
    meaning: 'One turn of the cage: a broken cage, elements of unlike size; side lines of the other lines',
    form: fromAll({ known: bearingRow(sheet) }, ({ known }) => {
      const orders = bearingOrders(known.row);
      return [
        measuredTimes(
          1,
          sharedTurning([
            { shaft: place.shafts.inner, times: orders.cageOfInner },
            { shaft: place.shafts.outer, times: orders.cageOfOuter },
          ]),
        ),
      ];
    }),
    harmonics: 2,
    ...bands(sheet, (orders) => (place.shafts.inner === fixed ? orders.cageOfOuter : orders.cageOfInner)),
  };
}

function bands(sheet: RollingBearingSheet, order: (orders: BearingOrders) => number) {
  const known = bearingRow(sheet);
  const largest = valueIfStated(sheet.values.slip) ?? usualSlip;
  return {
    slip: known.known ? slipOfOrder(known.value, largest, order) : noSlip,
    assumed: known.known ? known.value.assumed : [],
    sources: [...sources, slipSource],
  };
}
