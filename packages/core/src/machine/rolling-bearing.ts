import { fromAll, valueIfStated } from '../quantity/index.ts';
import { rollingBearingKinematics } from '../source/rolling-bearing-kinematics.ts';
import { clause } from '../source/source.ts';
import { type BearingOrders, bearingOrders } from './bearing-frequencies.ts';
import {
  bearingRow,
  type Load,
  type RollingBearingSheet,
  rollingBearingSheet,
  slipOfOrder,
  usualSlip,
} from './bearing-geometry.ts';
import { couplesNothing, type ElementLine, type ElementPlace, machineElementKind, noSlip } from './element.ts';
import {
  counted,
  type FrequencySource,
  fixed,
  measuredTimes,
  relativeTurning,
  sharedTurning,
  turningBetween,
} from './form.ts';
import { bearingGeometryEstimated } from './rules/bearing-geometry-estimated.ts';
import { contactAnglePlausible } from './rules/contact-angle-plausible.ts';
import { elementAgainstPitch } from './rules/element-against-pitch.ts';
import { elementsFitPitchCircle } from './rules/elements-fit-pitch-circle.ts';
import { pitchBetweenBoreAndOutside } from './rules/pitch-between-bore-and-outside.ts';
import { rowsCountedTwice } from './rules/rows-counted-twice.ts';

const sources = [clause(rollingBearingKinematics)];
const slipSource = clause(rollingBearingKinematics, 'slip of 1 to 2 %', 'second-hand');

/**
 * Ball or roller bearing; either ring may stand still, turn with a shaft, or both may turn. Where it is stated what the
 * load does, the lines of a ring that turns under the load have side lines, and those of a ring that does not have none.
 */
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
      ...cageFromRings(sheet, place),
      ringLine(
        sheet,
        rings,
        'outer-ring',
        `Elements passing a spot on the outer ring${underLoad(sheet, place, 'outer')}`,
        5,
        (orders) => orders.outerRing,
      ),
      ...sideLines(sheet, place, 'outer', (orders) => orders.outerRing),
      ringLine(
        sheet,
        rings,
        'inner-ring',
        `Elements passing a spot on the inner ring${underLoad(sheet, place, 'inner')}`,
        5,
        (orders) => orders.innerRing,
      ),
      ...sideLines(sheet, place, 'inner', (orders) => orders.innerRing),
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

/** Where both rings turn, the cage against the housing is not the cage against either ring, and a fault sits on a ring. */
function cageFromRings(sheet: RollingBearingSheet, place: ElementPlace<'inner' | 'outer'>): readonly ElementLine[] {
  if (place.shafts.inner === fixed || place.shafts.outer === fixed) return [];
  const rings = relativeTurning(place.shafts.inner, place.shafts.outer);
  return [
    ringLine(
      sheet,
      rings,
      'cage-from-outer',
      'One turn of the cage as the outer ring sees it: passages of the outer ring over the number of elements',
      2,
      (orders) => orders.cageOfInner,
    ),
    ringLine(
      sheet,
      rings,
      'cage-from-inner',
      'One turn of the cage as the inner ring sees it: passages of the inner ring over the number of elements',
      2,
      (orders) => orders.cageOfOuter,
    ),
  ];
}

/** What turns under the load: nothing where it is not stated what the load does. */
function loadTurns(
  sheet: RollingBearingSheet,
  { shafts }: ElementPlace<'inner' | 'outer'>,
  ring: 'inner' | 'outer',
): FrequencySource | 'with it' | undefined {
  const load = valueIfStated(sheet.values.load);
  if (load === undefined) return undefined;
  const withLoad: Readonly<Record<Load, string>> = {
    'stands still': fixed,
    'turns with the inner ring': shafts.inner,
    'turns with the outer ring': shafts.outer,
  };
  return shafts[ring] === withLoad[load] ? 'with it' : turningBetween(shafts[ring], withLoad[load]);
}

function underLoad(
  sheet: RollingBearingSheet,
  place: ElementPlace<'inner' | 'outer'>,
  ring: 'inner' | 'outer',
): string {
  const turns = loadTurns(sheet, place, ring);
  if (turns === undefined) return '';
  const load = sheet.values.load?.known === true ? sheet.values.load.value : '';
  return turns === 'with it'
    ? `; the load ${load}, so the spot is always loaded alike: no side lines`
    : `; the load ${load}, so the spot passes it: side lines at each turn under the load`;
}

/** A spot that passes the load is struck harder there: its line has side lines at its turns under the load. */
function sideLines(
  sheet: RollingBearingSheet,
  place: ElementPlace<'inner' | 'outer'>,
  ring: 'inner' | 'outer',
  order: (orders: BearingOrders) => number,
): readonly ElementLine[] {
  const turns = loadTurns(sheet, place, ring);
  if (turns === undefined || turns === 'with it') return [];
  const rings = relativeTurning(place.shafts.inner, place.shafts.outer);
  const known = bearingRow(sheet);
  return ([-1, 1] as const).map((sign) => ({
    name: `${ring}-ring-${sign < 0 ? 'lower' : 'upper'}`,
    meaning: `Passages of the ${ring} ring ${sign < 0 ? 'less' : 'plus'} one of its turns under the load`,
    form: fromAll({ known }, (drawn) => [
      measuredTimes(order(bearingOrders(drawn.known.row)), rings),
      counted(sign, turns),
    ]),
    harmonics: 1,
    ...bands(sheet, order),
  }));
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
