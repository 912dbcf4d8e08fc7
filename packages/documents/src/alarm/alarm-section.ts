import {
  alarmLogicSheet,
  type DesignedPoint,
  type Level,
  type PointAlarms,
  type RegisterRow,
  responseTimeSheet,
  type SetPointName,
  type Sheet,
  type Showing,
  type Stated,
  setPointNames,
  showLevel,
  showMeasure,
  showNumber,
  showPercent,
  showQuantity,
  statedResponseTime,
  type WindowSetPoints,
} from '@soundpost/core';
import { type Explain, typedNumber } from '../derivation/explained.ts';
import { opened } from '../derivation/opened.ts';
import { answered, levelAnswered, quantityAnswered, sheetFacts } from '../typesetting/answers.ts';
import { type Html, html, type Piece } from '../typesetting/html.ts';
import { type Setting, unknown } from '../typesetting/setting.ts';
import { type Column, table } from '../typesetting/table.ts';
import {
  explainedReading,
  explainedRegisterLevel,
  explainedResponseTime,
  explainedSetPoint,
  explainedWindow,
  setPointWords,
} from './explained-alarm.ts';

/** Set points with their reasons, and the baseline they follow from. */
export function alarmSection(designed: DesignedPoint, alarms: PointAlarms, setting: Setting): Html {
  const { stated, setPoints, register } = alarms;
  const at = designed.point.of;
  const { showing } = setting;
  const points = table({
    caption: 'Set points',
    columns: [
      { head: 'Set point', kind: 'line', cell: (name: SetPointName) => setPointWords[name] },
      {
        head: 'Level',
        kind: 'measure',
        cell: (name) => levelAnswered(setPoints[name], setting),
        opened: (name, set) => opened(set, explainedSetPoint(designed, name, showing), setting),
      },
      { head: 'Because', cell: (name) => showMeasure(setPoints.reasons[name], showing) },
      {
        head: 'Delay',
        kind: 'measure',
        cell: (name) => delayOf(register, name, setting),
        opened: (name, set) => opened(set, explainedDelay(register, name, at, showing), setting),
      },
    ],
    rows: setPointNames,
    folds: true,
  });
  return html`<dl class="facts"><dt>baseline</dt><dd>${levelStated(stated.baseline, at, setting)}</dd></dl>${points}${logicFacts(stated, setting)}${responseFacts(stated, at, setting)}`;
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
  return html`<h4>Time from the level to the stop</h4><dl class="facts">${sheetFacts(response as Sheet, responseTimeSheet, setting)}<dt>all together, with the delay</dt><dd>${opened(quantityAnswered('duration', total, setting), explainedResponseTime(response, tripDelay ?? delay, at, setting.showing), setting)}</dd></dl>`;
}

/** Set points about a motion the machine works by: too little is as wrong as too much. */
export function windowTable(
  designed: DesignedPoint,
  { window, accelerations }: WindowSetPoints,
  setting: Setting,
): Html {
  const openedAs = (as: 'motion' | 'acceleration') => (name: keyof typeof names, set: Piece) =>
    opened(set, explainedWindow(designed, name, as, setting.showing), setting);
  const names = { alertLow: 'alert below', alertHigh: 'alert above', trip: 'trip above' } as const;
  return table({
    caption: 'Window about the motion the machine works by',
    columns: [
      { head: 'Set point', kind: 'line', cell: (name: keyof typeof names) => names[name] },
      {
        head: 'As motion',
        kind: 'measure',
        cell: (name) => answered(window, (known) => showLevel(known[name], setting.showing)),
        opened: openedAs('motion'),
      },
      {
        head: 'As acceleration of that sine',
        kind: 'measure',
        cell: (name) => answered(accelerations, (known) => showLevel(known[name], setting.showing)),
        opened: openedAs('acceleration'),
      },
    ],
    rows: Object.keys(names) as (keyof typeof names)[],
    folds: true,
  });
}

function levelStated(entry: Stated<Level>, at: string, setting: Setting): Piece {
  if (!entry.known) return unknown();
  const how = [entry.status, entry.source].filter((each) => each !== undefined).join(', ');
  const shown = showLevel(entry.value, setting.showing);
  const opens = opened(shown, () => typedNumber('baseline', `${at}, alarm`, entry, shown, baselineMeaning), setting);
  return html`${opens}${how === '' ? undefined : html` <span class="quiet">(${how})</span>`}`;
}

const baselineMeaning = 'level of this machine when it was known to be well';

/** How long a level must stand before it acts; the file says so. */
function explainedDelay(
  register: readonly RegisterRow[],
  name: string,
  at: string,
  showing: Showing,
): Explain | undefined {
  const delay = register.find((row) => row.name === name)?.delay;
  if (delay?.known !== true) return undefined;
  const shown = showQuantity('duration', delay.value, showing);
  return () => typedNumber(`delay of the ${name}`, `${at}, alarm`, delay, shown, 'how long the level must stand');
}

function delayOf(register: readonly RegisterRow[], name: string, { showing }: Setting): Piece {
  const delay = register.find((row) => row.name === name)?.delay;
  if (delay === undefined) return '—';
  return delay.known ? showQuantity('duration', delay.value, showing) : unknown();
}

/** The register of a point: each level in its unit, on the loop and on the card. */
export function registerTable(designed: DesignedPoint, { register }: PointAlarms, setting: Setting): Html {
  const { showing } = setting;
  const openedAs = (as: 'current' | 'share' | 'counts' | 'voltage') => (row: RegisterRow, set: Piece) =>
    opened(set, explainedReading(designed, row, as, showing), setting);
  const onLoop: readonly Column<RegisterRow>[] = [
    {
      head: 'Current, mA',
      kind: 'number',
      cell: (row) => answered(row.current, (value) => showNumber(value * 1000, 5, showing.decimal)),
      opened: openedAs('current'),
    },
    {
      head: 'Of the range',
      kind: 'number',
      cell: (row) => answered(row.share, (value) => showPercent(value, 4, showing.decimal).replace('+', '')),
      opened: openedAs('share'),
    },
    {
      head: 'Counts',
      kind: 'number',
      cell: (row) => answered(row.counts, (value) => showNumber(value, 6, showing.decimal)),
      opened: openedAs('counts'),
    },
  ];
  const atOutput: readonly Column<RegisterRow>[] = [
    {
      head: 'At the output',
      kind: 'measure',
      cell: (row) => levelAnswered(row.voltage, setting),
      opened: openedAs('voltage'),
    },
  ];
  return table({
    caption: 'Register: what is read where',
    columns: [
      { head: 'Level', kind: 'line', cell: (row: RegisterRow) => row.name },
      {
        head: 'In its unit',
        kind: 'measure',
        cell: (row) => levelAnswered(row.level, setting),
        opened: (row, set) => opened(set, explainedRegisterLevel(designed, row, showing), setting),
      },
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
