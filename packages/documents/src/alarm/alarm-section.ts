import {
  alarmLogicSheet,
  type DesignedPoint,
  type Level,
  type PointAlarms,
  type RegisterRow,
  responseTimeSheet,
  type Sheet,
  type Stated,
  showLevel,
  showMeasure,
  showNumber,
  showPercent,
  showQuantity,
  statedResponseTime,
  type WindowSetPoints,
} from '@soundpost/core';
import { answered, levelAnswered, quantityAnswered, sheetFacts } from '../typesetting/answers.ts';
import { type Html, html, type Piece } from '../typesetting/html.ts';
import { type Setting, unknown } from '../typesetting/setting.ts';
import { type Column, table } from '../typesetting/table.ts';

/** Set points with their reasons, and the baseline they follow from. */
export function alarmSection({ stated, setPoints, register }: PointAlarms, at: string, setting: Setting): Html {
  const names = {
    alert: 'alert',
    alertCap: 'most the alert may be',
    trip: 'trip',
    tripCap: 'most the trip may be',
  } as const;
  const points = table({
    caption: 'Set points',
    columns: [
      { head: 'Set point', kind: 'line', cell: (name: keyof typeof names) => names[name] },
      { head: 'Level', kind: 'measure', cell: (name) => levelAnswered(setPoints[name], setting) },
      { head: 'Because', cell: (name) => showMeasure(setPoints.reasons[name], setting.showing) },
      { head: 'Delay', kind: 'measure', cell: (name) => delayOf(register, name, setting) },
    ],
    rows: Object.keys(names) as (keyof typeof names)[],
    folds: true,
  });
  return html`<dl class="facts"><dt>baseline</dt><dd>${levelStated(stated.baseline, setting)}</dd></dl>${points}${logicFacts(stated, setting)}${responseFacts(stated, at, setting)}`;
}

/** How the trip is decided, where its owner began to say so. */
function logicFacts({ logic }: PointAlarms['stated'], setting: Setting): Html | undefined {
  if (logic === undefined) return undefined;
  return html`<h4>Logic of the trip</h4><dl class="facts">${sheetFacts(logic as Sheet, alarmLogicSheet, setting)}</dl>`;
}

/** Each wait from the level to the machine that stops, and all of them together against what is allowed. */
function responseFacts(
  { response, delay, tripDelay }: PointAlarms['stated'],
  at: string,
  setting: Setting,
): Html | undefined {
  if (response === undefined) return undefined;
  const { total } = statedResponseTime(response, tripDelay ?? delay, at);
  return html`<h4>Time from the level to the stop</h4><dl class="facts">${sheetFacts(response as Sheet, responseTimeSheet, setting)}<dt>all together, with the delay</dt><dd>${quantityAnswered('duration', total, setting)}</dd></dl>`;
}

/** Set points about a motion the machine works by: too little is as wrong as too much. */
export function windowTable({ window, accelerations }: WindowSetPoints, setting: Setting): Html {
  const names = { alertLow: 'alert below', alertHigh: 'alert above', trip: 'trip above' } as const;
  return table({
    caption: 'Window about the motion the machine works by',
    columns: [
      { head: 'Set point', kind: 'line', cell: (name: keyof typeof names) => names[name] },
      {
        head: 'As motion',
        kind: 'measure',
        cell: (name) => answered(window, (known) => showLevel(known[name], setting.showing)),
      },
      {
        head: 'As acceleration of that sine',
        kind: 'measure',
        cell: (name) => answered(accelerations, (known) => showLevel(known[name], setting.showing)),
      },
    ],
    rows: Object.keys(names) as (keyof typeof names)[],
    folds: true,
  });
}

function levelStated(entry: Stated<Level>, { showing }: Setting): Piece {
  if (!entry.known) return unknown();
  const how = [entry.status, entry.source].filter((each) => each !== undefined).join(', ');
  return html`${showLevel(entry.value, showing)}${how === '' ? undefined : html` <span class="quiet">(${how})</span>`}`;
}

function delayOf(register: readonly RegisterRow[], name: string, { showing }: Setting): Piece {
  const delay = register.find((row) => row.name === name)?.delay;
  if (delay === undefined) return '—';
  return delay.known ? showQuantity('duration', delay.value, showing) : unknown();
}

/** The register of a point: each level in its unit, on the loop and on the card. */
export function registerTable({ register }: PointAlarms, setting: Setting): Html {
  const { showing } = setting;
  const onLoop: readonly Column<RegisterRow>[] = [
    {
      head: 'Current, mA',
      kind: 'number',
      cell: (row) => answered(row.current, (value) => showNumber(value * 1000, 5, showing.decimal)),
    },
    {
      head: 'Of the range',
      kind: 'number',
      cell: (row) => answered(row.share, (value) => showPercent(value, 4, showing.decimal).replace('+', '')),
    },
    {
      head: 'Counts',
      kind: 'number',
      cell: (row) => answered(row.counts, (value) => showNumber(value, 6, showing.decimal)),
    },
  ];
  const atOutput: readonly Column<RegisterRow>[] = [
    { head: 'At the output', kind: 'measure', cell: (row) => levelAnswered(row.voltage, setting) },
  ];
  return table({
    caption: 'Register: what is read where',
    columns: [
      { head: 'Level', kind: 'line', cell: (row: RegisterRow) => row.name },
      { head: 'In its unit', kind: 'measure', cell: (row) => levelAnswered(row.level, setting) },
      ...(register.some((row) => row.current !== undefined) ? onLoop : []),
      ...(register.some((row) => row.voltage !== undefined) ? atOutput : []),
      { head: 'Because', cell: (row) => showMeasure(row.because, setting.showing) },
    ],
    rows: register,
    folds: true,
  });
}

export function hasLoop({ appraisal }: DesignedPoint): boolean {
  return appraisal?.prediction.loop !== undefined;
}
