import {
  type DesignedPoint,
  type Showing,
  showQuantity,
  showSpan,
  type TerminalVoltage,
  terminalVoltages,
} from '@soundpost/core';
import { opened } from '../derivation/opened.ts';
import { answered } from '../typesetting/answers.ts';
import { type Html, html, named } from '../typesetting/html.ts';
import type { Setting } from '../typesetting/setting.ts';
import { table } from '../typesetting/table.ts';
import { type BiasStretch, biasStretches, explainedStretch, explainedTerminal } from './explained-bias.ts';

/** The drawing of the bias as a table, and what a hand meter should show at each terminal. */
export function biasTables({ appraisal }: DesignedPoint, setting: Setting): Html | undefined {
  if (appraisal === undefined) return undefined;
  const { showing } = setting;
  const { prediction } = appraisal;
  const stretches = biasStretches(prediction);
  const terminals = terminalVoltages(prediction.chain);
  if (stretches.length + terminals.length === 0) return undefined;
  const explained = (each: BiasStretch) => explainedStretch(prediction, each, showing);
  const bias =
    stretches.length === 0
      ? undefined
      : table({
          caption: 'The same as a table',
          columns: [
            { head: 'Stretch', kind: 'line', cell: (each: BiasStretch) => each.of },
            {
              head: 'From',
              kind: 'measure',
              cell: ({ low }) => showQuantity('voltage', low, showing),
              opened: (each, set) => opened(set, explained(each), setting),
            },
            {
              head: 'To',
              kind: 'measure',
              cell: ({ high }) => showQuantity('voltage', high, showing),
              opened: (each, set) => opened(set, explained(each), setting),
            },
          ],
          rows: stretches,
          folds: true,
        });
  const meter =
    terminals.length === 0
      ? undefined
      : table({
          caption: 'What a hand meter should show across the pair',
          columns: [
            { head: 'Terminal', cell: ({ terminal }: TerminalVoltage) => named(terminal) },
            { head: 'State', kind: 'line', cell: ({ state }) => state },
            {
              head: 'Direct voltage',
              cell: ({ voltage }) => answered(voltage, (span) => spanShown(span, showing)),
              opened: (each, set) =>
                each.voltage.known
                  ? opened(set, explainedTerminal(each, spanShown(each.voltage.value, showing), showing), setting)
                  : set,
            },
          ],
          rows: terminals,
          folds: true,
        });
  return html`${bias}${meter}`;
}

function spanShown(span: { readonly low: number; readonly high: number }, showing: Showing): string {
  return span.low === span.high
    ? showQuantity('voltage', span.low, showing)
    : showSpan('voltage', span as never, showing);
}
