import '../style/point.css';
import '../style/rehearsal.css';
import { type DragEvent, useState } from 'react';
import { Link } from 'wouter';
import { pointAddress } from '../app/address.ts';
import type { RecordingTyped } from '../engine/acceptance/acceptance-views.ts';
import { Accepted } from './accepted.tsx';
import { begun, RecordingForm } from './recording-form.tsx';
import { useAcceptance } from './use-acceptance.ts';

/** Installed chains held against the design from recordings: of one point, or of the plant. */
export function AcceptanceView({ of }: { readonly of: string | undefined }) {
  const hand = useAcceptance();
  const [typed, setTyped] = useState<Readonly<Record<string, RecordingTyped>>>({});
  const [date, setDate] = useState('');
  const { choices, files } = hand;
  if (choices === undefined) return <p className="waiting">Getting ready to read recordings…</p>;
  const recordings = files.filter((each) => each.is === 'recording');
  const records = files.find((each) => each.is === 'records file');
  const said = recordings.map((each) => typed[each.name] ?? begun(each, of ?? ''));
  const open = said.filter((each) => each.occasion === '' || each.channels.every(({ point }) => point === ''));
  const ready = records !== undefined || (recordings.length > 0 && open.length === 0);
  const running = hand.doing !== undefined;
  const dropped = (event: DragEvent) => {
    event.preventDefault();
    void hand.add([...event.dataTransfer.files]);
  };
  const start = () =>
    hand.accept(
      records === undefined
        ? said.map((each) => ({ ...each, channels: each.channels.filter(({ point }) => point !== '') }))
        : undefined,
      date,
    );
  return (
    <article className="rehearsal acceptance">
      <header className="point-head">
        <p className="crumbs">
          <Link href="/">Points</Link>
          {of === undefined ? undefined : (
            <>
              {' '}
              / <Link href={pointAddress(of)}>{of}</Link>
            </>
          )}
        </p>
        <h1>
          Accept from recordings{of === undefined ? '' : ': '}
          <bdi>{of}</bdi>
        </h1>
        <p className="place">
          Recordings are read where they lie; nothing of them leaves this machine. What neither a recording nor you say
          is asked, never guessed.
        </p>
      </header>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: files may be dropped here, and chosen by the field in it */}
      <div className="drop" onDragOver={(event) => event.preventDefault()} onDrop={dropped}>
        <label>
          Recordings, the facts beside them, and a records file where there is one (WAV, UFF 58, MAT, text; YAML)
          <input
            type="file"
            multiple
            onChange={(event) => {
              void hand.add([...(event.target.files ?? [])]);
              event.target.value = '';
            }}
          />
        </label>
        <p className="quiet">Or drop them here.</p>
      </div>
      {files.length === 0 ? undefined : (
        <ul className="chosen">
          {files.map((each) => (
            <li key={each.name} className={each.is === 'refused' ? 'refused' : undefined}>
              <bdi>{each.name}</bdi>: {each.is === 'refused' ? '✗ ' : ''}
              {each.words}
            </li>
          ))}
        </ul>
      )}
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void start();
        }}
      >
        {records === undefined
          ? recordings.map((file, index) => (
              <RecordingForm
                key={file.name}
                file={file}
                choices={choices}
                typed={said[index]!}
                change={(next) => setTyped({ ...typed, [file.name]: next })}
              />
            ))
          : undefined}
        {records === undefined || recordings.length === 0 ? undefined : (
          <p>
            The records file <bdi>{records.name}</bdi> says which recording was made on which occasion.
          </p>
        )}
        <p className="start">
          <label>
            Day of acceptance <input type="date" value={date} onChange={(event) => setDate(event.target.value)} />
          </label>
          <button type="submit" className="main" disabled={running || !ready}>
            Measure and compare
          </button>
          {running ? (
            <button type="button" onClick={hand.cancel}>
              Cancel
            </button>
          ) : undefined}
          {files.length > 0 && !running ? (
            <button type="button" onClick={() => void hand.forget()}>
              Put the files away
            </button>
          ) : undefined}
          <span role="status">
            {running
              ? `Now: ${hand.doing}…`
              : (hand.ended ??
                (recordings.length > 0 && !ready
                  ? `Say of ${open.map((each) => each.file).join(', ')} on which occasion it was made and which channel is which point.`
                  : ''))}
          </span>
        </p>
      </form>
      {hand.accepted === undefined ? undefined : <Accepted accepted={hand.accepted} />}
    </article>
  );
}
