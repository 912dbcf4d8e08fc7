import { type DesignedPoint, type SpectrumSet, showBand, showMeasure, showNumber, showQuantity } from '@soundpost/core';
import { opened } from '../derivation/opened.ts';
import { type Html, html } from '../typesetting/html.ts';
import type { Setting } from '../typesetting/setting.ts';
import { type Column, table } from '../typesetting/table.ts';
import { explainedSetting, type SettingName } from './explained-settings.ts';

/** Settings of every record, side by side, and the reasons for each. */
export function settingsSection({ settings, appraisal }: DesignedPoint, setting: Setting): Html {
  const { showing } = setting;
  if (settings.sets.length === 0 && settings.unknown.length === 0) {
    const why =
      appraisal?.prediction.chain.transducer.signal === 'overall'
        ? 'The sensor sends one number; there is no record to set.'
        : 'No record is asked for by the targets of this point.';
    return html`<p>${why}</p>`;
  }
  const lines: readonly { readonly name: SettingName | 'window'; value(set: SpectrumSet): string }[] = [
    { name: 'highest frequency', value: (set) => showQuantity('frequency', set.highestFrequency, showing) },
    { name: 'lines', value: (set) => showNumber(set.lines, 7, showing.decimal) },
    { name: 'line spacing', value: (set) => showQuantity('frequency', set.resolution, { ...showing, digits: 6 }) },
    { name: 'record', value: (set) => showQuantity('duration', set.recordLength, showing) },
    { name: 'sampling rate', value: (set) => showQuantity('frequency', set.samplingRate, { ...showing, digits: 6 }) },
    { name: 'samples', value: (set) => showNumber(set.samples, 7, showing.decimal) },
    { name: 'window', value: (set) => set.window },
    { name: 'averages', value: (set) => String(set.averages) },
    {
      name: 'band before demodulation',
      value: (set) => (set.envelopeBand === undefined ? '—' : showBand(set.envelopeBand, showing)),
    },
    {
      name: 'raw sampling rate',
      value: (set) =>
        set.rawSamplingRate === undefined
          ? '—'
          : showQuantity('frequency', set.rawSamplingRate, { ...showing, digits: 6 }),
    },
  ];
  const sheet = table({
    caption: 'Settings of the records',
    columns: [
      { head: 'Setting', kind: 'line', cell: (line: (typeof lines)[number]) => line.name },
      ...settings.sets.map(
        (set): Column<(typeof lines)[number]> => ({
          head: set.name,
          kind: 'line',
          cell: (line) => line.value(set),
          opened: ({ name, value }, shown) =>
            name === 'window' ? shown : opened(shown, explainedSetting(set, name, value(set), showing), setting),
        }),
      ),
    ],
    rows: lines,
  });
  const reasons = settings.sets.map(
    (set) =>
      html`<h4>${set.name}: ${set.purpose}</h4><ul>${set.reasons.map((reason) => html`<li>${showMeasure(reason, showing)}</li>`)}</ul>`,
  );
  const open = settings.unknown.map((each) => html`<li>${each}</li>`);
  return html`${settings.sets.length === 0 ? undefined : sheet}${reasons}
${open.length === 0 ? undefined : html`<p>Not asked of any record, because it is not known:</p><ul>${open}</ul>`}`;
}
