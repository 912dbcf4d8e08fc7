import {
  type Answer,
  answer,
  ask,
  choiceField,
  countField,
  type Fields,
  optional,
  quantityField,
  type Sheet,
  thenAnswer,
  unanswered,
  valueIfStated,
} from '../quantity/index.ts';
import { type BearingOrders, type BearingRow, bearingOrders } from './bearing-frequencies.ts';
import type { Slip } from './element.ts';

/** Whether the load stands, or turns with one of the rings. */
export const loads = ['stands still', 'turns with the inner ring', 'turns with the outer ring'] as const;
export type Load = (typeof loads)[number];

/** What a drawing of a rolling bearing tells, one row, and what loads it. */
export const rollingBearingSheet = {
  elements: countField('Rolling elements in one row', { symbol: 'n', example: '9' }),
  elementDiameter: quantityField('length', 'Diameter of a rolling element, of a roller at its middle', {
    symbol: 'd',
    example: '7.94 mm',
  }),
  pitchDiameter: quantityField('length', 'Pitch diameter: of the circle on which the element centres lie', {
    symbol: 'D',
    example: '39.04 mm',
  }),
  contactAngle: quantityField('angle', 'Contact angle from the radial plane', { symbol: 'φ', example: '0 deg' }),
  rows: optional(countField('Rows', { example: '1' })),
  slip: optional(
    quantityField('fraction', 'Largest deviation of the lines from pure rolling, either way', { example: '2 %' }),
  ),
  load: optional(
    choiceField(
      loads,
      'What the load does: it stands still in a pump or fan, turns with the ring that carries unbalance',
    ),
  ),
  bore: optional(quantityField('length', 'Bore', { example: '25 mm' })),
  outside: optional(quantityField('length', 'Outside diameter', { example: '52 mm' })),
} as const satisfies Fields;
export type RollingBearingSheet = Sheet<typeof rollingBearingSheet>;

/** A row of a bearing, with what had to be assumed, and the rows at both ends of each assumption. */
export interface KnownRow {
  readonly row: BearingRow;
  readonly assumed: readonly string[];
  readonly excursions: readonly { readonly low: BearingRow; readonly high: BearingRow }[];
}

/** How far the geometry of a bearing may lie from what is estimated out of bore and outside diameter. */
export const estimate = {
  /** Pitch diameter over the mean of bore and outside diameter. */
  pitch: { low: 0.97, middle: 1, high: 1.03 },
  /** Element diameter over the difference of outside diameter and bore. */
  element: { low: 0.22, middle: 0.29, high: 0.34 },
  /** Share of the pitch circle that the elements fill, side by side. */
  filling: { low: 0.45, middle: 0.7, high: 1 },
  /** Contact angle, where nobody stated it; the middle value is that of a radial bearing. */
  angle: { low: 0, middle: 0, high: (40 * Math.PI) / 180 },
} as const;

/**
 * The row as drawn; where something of it is not stated but bore and outside diameter are, the rest is estimated:
 * D ≈ (outside + bore)/2, d ≈ 0.29·(outside − bore), n ≈ 0.7·πD/d, each with its band. Common practice, no source.
 */
export function bearingRow(sheet: RollingBearingSheet): Answer<KnownRow> {
  return thenAnswer(statedOrEstimated(sheet), (known) =>
    [known.row, ...known.excursions.flatMap(({ low, high }) => [low, high])].every(rolls)
      ? answer(known)
      : unanswered([{ of: sheet.of, what: 'an element diameter above zero and below the pitch diameter' }]),
  );
}

function statedOrEstimated(sheet: RollingBearingSheet): Answer<KnownRow> {
  const drawn = ask(
    sheet,
    ['elements', 'elementDiameter', 'pitchDiameter', 'contactAngle'],
    (row): KnownRow => ({ row, assumed: [], excursions: [] }),
  );
  if (drawn.known) return drawn;
  const bore = valueIfStated(sheet.values.bore);
  const outside = valueIfStated(sheet.values.outside);
  if (bore === undefined || outside === undefined || !(outside > bore) || !(bore > 0)) return drawn;
  return answer(estimatedRow(sheet, bore, outside));
}

/** A row that can roll: 0 < d < D. */
function rolls(row: BearingRow): boolean {
  return row.elementDiameter > 0 && row.elementDiameter < row.pitchDiameter;
}

type End = 'low' | 'middle' | 'high';
type Estimated = keyof typeof estimate;

function estimatedRow(sheet: RollingBearingSheet, bore: number, outside: number): KnownRow {
  const { values } = sheet;
  const stated = {
    filling: valueIfStated(values.elements),
    element: valueIfStated(values.elementDiameter),
    pitch: valueIfStated(values.pitchDiameter),
    angle: valueIfStated(values.contactAngle),
  };
  const rowAt = (moved?: Estimated, end: End = 'middle'): BearingRow => {
    const of = (name: Estimated) => estimate[name][name === moved ? end : 'middle'];
    const D = stated.pitch ?? (of('pitch') * (bore + outside)) / 2;
    const d = stated.element ?? of('element') * (outside - bore);
    const n = stated.filling ?? Math.max(2, Math.round((of('filling') * Math.PI * D) / d));
    return { elements: n, elementDiameter: d, pitchDiameter: D, contactAngle: stated.angle ?? of('angle') };
  };
  const open = estimatedNames.filter(([name]) => stated[name] === undefined);
  return {
    row: rowAt(),
    assumed: open.map(([, words]) => words),
    excursions: open.map(([name]) => ({ low: rowAt(name, 'low'), high: rowAt(name, 'high') })),
  };
}

const estimatedNames: readonly (readonly [Estimated, string])[] = [
  ['filling', 'number of elements'],
  ['element', 'element diameter'],
  ['pitch', 'pitch diameter'],
  ['angle', 'contact angle'],
];

/** Deviation from pure rolling that is counted with where none is stated. Source: Randall and Antoni 2011, 1 to 3 %, commonly 1 to 2 %. */
export const usualSlip = 0.02;

/**
 * The slip band of one line of a bearing: cage slip and contact angle under load, widened by what had to be estimated.
 * The estimates are independent of each other, so their excursions add as squares.
 */
export function slipOfOrder(known: KnownRow, largest: number, order: (orders: BearingOrders) => number): Slip {
  const nominal = order(bearingOrders(known.row));
  let [below, above] = [0, 0];
  for (const ends of known.excursions) {
    const moves = [ends.low, ends.high].map((row) => order(bearingOrders(row)) / nominal - 1);
    below += Math.min(0, ...moves) ** 2;
    above += Math.max(0, ...moves) ** 2;
  }
  return { low: (1 - Math.sqrt(below)) * (1 - largest) - 1, high: (1 + Math.sqrt(above)) * (1 + largest) - 1 };
}
