import {
  type AcceptedRecording,
  type RecordedChannelFacts,
  showNumber,
  showQuantity,
  type ToldFact,
} from '@soundpost/core';
import { type Html, html, named } from '../typesetting/html.ts';
import type { Section } from '../typesetting/section.ts';
import { type Setting, unknown } from '../typesetting/setting.ts';
import { table } from '../typesetting/table.ts';

/** Every recording with what identifies it, and every channel with its facts and who stated them. */
export function recordingsSection(recordings: readonly AcceptedRecording[], setting: Setting): Section {
  return {
    title: 'Records',
    newSheet: true,
    body: html`${fileTable(recordings)}
<p class="note">SHA-256 is that of the whole file; any program that computes it tells whether a file is the one that was accepted.</p>
${channelTable(recordings, setting)}`,
  };
}

function fileTable(recordings: readonly AcceptedRecording[]): Html {
  return table({
    caption: 'Files',
    columns: [
      { head: 'Recording', cell: ({ name }: AcceptedRecording) => named(name) },
      { head: 'File', cell: ({ file }) => named(file) },
      { head: 'Bytes', kind: 'number', cell: ({ sha256, bytes }) => (sha256 === '' ? '—' : String(bytes)) },
      { head: 'Form', cell: ({ form, refused }) => form ?? html`could not be read: ${refused ?? ''}` },
      { head: 'Start', cell: ({ start }) => start ?? unknown() },
      { head: 'SHA-256', cell: ({ sha256 }) => (sha256 === '' ? '—' : html`<span class="hash">${sha256}</span>`) },
    ],
    rows: recordings,
    folds: true,
    empty: 'The records file names no recording.',
  });
}

interface Row {
  readonly recording: string;
  readonly channel: RecordedChannelFacts;
}

function channelTable(recordings: readonly AcceptedRecording[], { showing }: Setting): Html {
  const rows = recordings.flatMap(({ name, channels }) =>
    channels.map((channel): Row => ({ recording: name, channel })),
  );
  return table({
    caption: 'Channels, with each fact and who states it',
    columns: [
      { head: 'Channel', cell: ({ recording, channel }: Row) => html`${named(recording)} / ${named(channel.name)}` },
      { head: 'Is', cell: ({ channel }) => named(channel.is) },
      {
        head: 'Rate',
        kind: 'line',
        cell: ({ channel: { rate } }) => (rate.known ? showQuantity('frequency', rate.value, showing) : unknown()),
      },
      {
        head: 'Length',
        kind: 'line',
        cell: ({ channel: { rate, samples } }) =>
          rate.known ? `${showNumber(samples / rate.value, 4, showing.decimal)} s` : `${samples} samples`,
      },
      { head: 'Facts', cell: ({ channel }) => html`<ul class="told">${channel.told.map(toldLine)}</ul>` },
    ],
    rows,
    folds: true,
    empty: 'No channel was read.',
  });
}

function toldLine({ fact, written, by }: ToldFact): Html {
  if (by === 'nobody') return html`<li>${fact}: ${unknown()}, nobody states it</li>`;
  return html`<li>${fact}: ${named(written)} <span class="quiet">(${by})</span></li>`;
}
