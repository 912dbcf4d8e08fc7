import {
  cells,
  type DesignedPoint,
  pointLife,
  reason,
  type Showing,
  showMeasure,
  valueIfStated,
} from '@soundpost/core';
import { blank, type Line, labelled } from '../layout/line.ts';
import type { Manner } from '../manner.ts';
import { alarmLines } from './alarm-text.ts';
import { areaLines } from './area-text.ts';
import { budgetLines } from './budget-text.ts';
import { appraisedLines } from './chain-text.ts';
import { lifeLines } from './life-text.ts';
import { limitsLines } from './limits-text.ts';
import { placeLines, pointHeading } from './point-text.ts';
import { probeLines } from './probe-text.ts';
import { settingsLines } from './settings-text.ts';
import { terminalLines } from './terminal-text.ts';
import { missingText } from './values-text.ts';
import { windowLines } from './window-text.ts';

/** A point as designed: its chain, verdicts with margins, noise, bias, alarms, settings, uncertainty. */
export function designedPointLines(designed: DesignedPoint, manner: Manner): readonly Line[] {
  const { point, appraisal } = designed;
  return [
    ...pointHeading(point, manner),
    ...placeLines(point, manner),
    ...limitsLines(designed.limits, manner).slice(1),
    ...(appraisal === undefined
      ? labelled('Chain', 'none chosen: nothing is proven here', manner.width)
      : [
          ...appraisedLines(appraisal, manner, designed.area?.judgements),
          blank,
          ...terminalLines(appraisal.prediction.chain, manner),
        ]),
    ...lifeLines(pointLife(point, appraisal?.prediction.chain), manner),
    ...(designed.area === undefined ? [] : [blank, ...areaLines(designed.area, manner)]),
    ...(designed.probes === undefined ? [] : [blank, ...probeLines(designed.probes, manner)]),
    ...(designed.alarms === undefined ? [] : [blank, ...alarmLines(designed.alarms, point.of, manner)]),
    ...(designed.window === undefined ? [] : [blank, ...windowLines(designed.window, manner)]),
    ...settingsLines(designed.settings, manner),
    ...budgetLines(designed.budgets, manner),
  ];
}

/** What a chosen chain leaves open, for the page that says what could not be proven. */
export function unprovenOf(designed: DesignedPoint, showing: Showing = {}): readonly string[] {
  const { point, appraisal } = designed;
  if (appraisal === undefined) return [`${point.of}: no chain is chosen`];
  const open = appraisal.judgements
    .filter((each) => each.outcome === 'cannot tell')
    .map(
      (each) =>
        `${point.of}: ${reason(each, showing)}${each.needs === undefined ? '' : `; needs ${showMeasure(each.needs, showing)}`}`,
    );
  const unjudged = cells(appraisal)
    .filter((cell) => cell.decides === undefined)
    .map((cell) => `${point.of}/${cell.target}: no rule judges it with this chain`);
  const accuracy = designed.budgets
    .filter((each) => each.entered === 'individual' && !(each.promise.known && each.promise.value === 'kept'))
    .map((each) => {
      const width = each.budget.known
        ? `, expanded uncertainty ${showMeasure({ is: 'quantity', quantity: 'fraction', value: each.budget.value.expandedUncertainty }, showing)}`
        : '';
      const unknown = each.budget.known ? '' : `; ${missingText(each.budget.missing)}`;
      return `${point.of}/${each.target}: that the reading keeps its tolerance${width}${unknown}`;
    });
  const surface = valueIfStated(point.surfaceTemperature);
  return [
    ...open,
    ...unjudged,
    ...accuracy,
    ...(surface === undefined ? [`${point.of}: the temperature of the surface is not known`] : []),
    ...designed.settings.unknown.map((each) => `${point.of}: ${each}`),
  ];
}
