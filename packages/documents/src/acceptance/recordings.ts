import {
  type AcceptedRecording,
  type RecordedChannelFacts,
  showNumber,
  showQuantity,
  type ToldFact,
  tellers,
} from '@soundpost/core';
import { type Html, html, joined, named } from '../typesetting/html.ts';
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
    caption: 'Channels, with their facts and who states them',
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
      { head: 'Facts', cell: ({ channel }) => html`<ul class="told">${toldLines(channel.told)}</ul>` },
    ],
    rows,
    folds: true,
    empty: 'No channel was read.',
  });
}

/** Facts of one teller in one line. */
function toldLines(told: readonly ToldFact[]): Html {
  return html`${tellers.map((teller) => {
    const own = told.filter(({ by }) => by === teller);
    if (own.length === 0) return undefined;
    const words = joined(
      own.map(({ fact, written }) => (written === '' ? fact : html`${fact} ${named(shortened(written))}`)),
    );
    return html`<li><span class="quiet">${tellerWords[teller]}:</span> ${words}</li>`;
  })}`;
}

const tellerWords: Readonly<Record<ToldFact['by'], string>> = {
  'the recording': 'by the recording',
  'the records file': 'by the records file',
  both: 'by both',
  'the command line': 'on the command line',
  'they differ': 'they differ, so that it is unknown',
  nobody: 'by nobody, so that it is unknown',
};

/** A number with more digits than anybody measured is cut to six; the data of the file keep all. */
function shortened(written: string): string {
  return written.replace(/\d+\.\d{7,}/g, (number) => String(Number(Number(number).toPrecision(6))));
}
