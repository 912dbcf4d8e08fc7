import {
  type DesignedPoint,
  type Disturbance,
  type Sheet,
  type Stated,
  showBand,
  showClause,
  showLevel,
  showQuantity,
  showReference,
  showTolerance,
  surroundingsSheet,
  type Target,
} from '@soundpost/core';
import { lifeFacts } from '../chain/life-facts.ts';
import { opened } from '../derivation/opened.ts';
import { answered, levelAnswered, sheetFacts } from '../typesetting/answers.ts';
import { type Html, html, joined, named, type Piece } from '../typesetting/html.ts';
import { type Setting, unknown } from '../typesetting/setting.ts';
import { table } from '../typesetting/table.ts';
import { explainedPlace, explainedStated, explainedTarget } from './explained-target.ts';

interface Row {
  readonly number: number;
  readonly target: Target;
  /** How the place of the target was named in the file. */
  readonly named: string | undefined;
}

/** What the point must capture, and what it must survive beside: the contract everything else is held against. */
export function targetTable(designed: DesignedPoint, setting: Setting): Html {
  const { point, stated } = designed;
  const { showing } = setting;
  const openedAs =
    (key: 'smallest' | 'largest', shown: (target: Target) => string) =>
    ({ target }: Row, set: Piece) =>
      target[key].known ? opened(set, explainedTarget(designed, target, key, shown(target)), setting) : set;
  const level = (each: Target['smallest']) => (each.known ? showLevel(each.value, showing) : '');
  const rows = point.targets.map((target, index): Row => {
    const statement = stated.statement.targets[index];
    const reference = statement?.frequency;
    return { number: index + 1, target, named: reference?.known === true ? showReference(reference.value) : undefined };
  });
  const targets = table({
    caption: 'Targets',
    columns: [
      {
        head: 'Target',
        cell: ({ number, target }: Row) =>
          html`${number}\u00a0${named(target.name)}${target.weight === 'desirable' ? ' (desirable)' : undefined}`,
      },
      { head: 'Cause', cell: ({ target }) => target.cause },
      { head: 'Looked for as', cell: ({ target }) => html`${target.observable.meaning}, of the ${target.reference}` },
      { head: 'Where', cell: (row) => where(designed, row, setting) },
      {
        head: 'Must see',
        kind: 'measure',
        cell: ({ target }) => levelAnswered(target.smallest, setting),
        opened: openedAs('smallest', ({ smallest }) => level(smallest)),
      },
      {
        head: 'Must survive',
        kind: 'measure',
        cell: (row) => survive(row, setting),
        opened: openedAs('largest', ({ largest }) => level(largest)),
      },
      {
        head: 'Tolerance',
        kind: 'line',
        cell: ({ target }) => answered(target.tolerance, (each) => showTolerance(each, showing)),
        opened: ({ target }, set) =>
          target.tolerance.known
            ? opened(
                set,
                explainedTarget(designed, target, 'tolerance', showTolerance(target.tolerance.value, showing)),
                setting,
              )
            : set,
      },
      { head: 'Origin', cell: ({ target }) => origin(target) },
    ],
    rows,
    folds: true,
    empty: 'No target is stated: nothing can be proven here.',
  });
  return html`${targets}${within(point.targets)}${disturbances(designed, setting)}`;
}

function where(designed: DesignedPoint, { target, named: name }: Row, setting: Setting): Piece {
  if (target.observable.atRest) return 'at rest';
  const { showing } = setting;
  const words = answered(target.band, (band) => {
    const shown = band.low === band.high ? showQuantity('frequency', band.low, showing) : showBand(band, showing);
    return opened(shown, explainedPlace(designed, target, shown, showing), setting);
  });
  const spacing = target.resolution.known
    ? `, in lines of ${showQuantity('frequency', target.resolution.value, showing)}`
    : '';
  const components =
    target.observable.isOneNumber && target.frequencies.known
      ? html`, judged at ${target.frequencies.value.map((each) => showQuantity('frequency', each, showing)).join(', ')}`
      : undefined;
  return html`${words}${name === undefined ? undefined : html` (${name})`}${spacing}${components}`;
}

function survive({ target }: Row, setting: Setting): Piece {
  return levelAnswered(target.largest, setting);
}

function origin({ origin: { by, from, sources } }: Target): Piece {
  const cited = sources.length === 0 ? '' : `; ${sources.map(showClause).join('; ')}`;
  return `${by}, ${from}${cited}`;
}

/** Peaks that are not added twice. */
function within(targets: readonly Target[]): Html | undefined {
  const contained = targets.flatMap((target, index) =>
    target.within === undefined ? [] : [html`${index + 1} lies within ${named(target.within)}`],
  );
  if (contained.length === 0) return undefined;
  return html`<p class="note">The largest level of target ${joined(contained)}: its peak is not added a second time.</p>`;
}

function disturbances({ point, stated }: DesignedPoint, setting: Setting): Html | undefined {
  const all = point.disturbances;
  if (all.length === 0) return undefined;
  const statementOf = ({ name }: Disturbance) => stated.statement.disturbances.find((each) => each.name === name);
  const at = ({ name }: Disturbance) => `disturbance ${name} of ${point.of}`;
  return table({
    caption: 'Motion that need not be measured but must not overload the chain',
    columns: [
      { head: 'Disturbance', cell: (each: Disturbance) => named(each.name) },
      {
        head: 'Level',
        kind: 'measure',
        cell: (each) => levelAnswered(each.level, setting),
        opened: (each, set) =>
          each.level.known
            ? opened(
                set,
                explainedStated(
                  statementOf(each)?.level,
                  'level',
                  at(each),
                  showLevel(each.level.value, setting.showing),
                  'the most it may be',
                ),
                setting,
              )
            : set,
      },
      {
        head: 'Band',
        cell: (each) =>
          each.band === undefined
            ? 'not stated: taken at its level, without the gain of a resonance'
            : opened(
                showBand(each.band, setting.showing),
                explainedStated(
                  statementOf(each)?.band,
                  'band',
                  at(each),
                  showBand(each.band, setting.showing),
                  'where its energy lies',
                ),
                setting,
              ),
      },
    ],
    rows: all,
    folds: true,
  });
}

/** Where the point is, in which direction it looks, on what it stands and what is around it. */
export function pointFacts(designed: DesignedPoint, setting: Setting): Html {
  const { point } = designed;
  const { surfaceTemperature } = point;
  const temperature: Stated<number> = surfaceTemperature;
  const known = temperature.known
    ? opened(
        showQuantity('temperature', temperature.value, setting.showing),
        explainedStated(
          temperature,
          'surface temperature',
          point.of,
          showQuantity('temperature', temperature.value, setting.showing),
          'the surface at its hottest',
        ),
        setting,
      )
    : unknown();
  const around = sheetFacts(point.surroundings as Sheet, surroundingsSheet, setting);
  return html`<dl class="facts"><dt>location</dt><dd>${point.location}</dd><dt>direction</dt><dd>${answered(point.direction, (each) => each)}</dd><dt>installation</dt><dd>${point.installation}</dd><dt>surface, at its hottest</dt><dd>${known}</dd>${around}</dl>${lifeFacts(designed)}`;
}
