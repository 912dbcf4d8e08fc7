import type { FileView, RehearsedChainView, SeenView } from '../engine/rehearsal/rehearsal-views.ts';
import { Curve } from './curve.tsx';

/** What an analyst sees through one chain, and the same as numbers. */
export function RehearsedChain({
  chain,
  files,
}: {
  readonly chain: RehearsedChainView;
  files(ending: string): Promise<readonly FileView[]>;
}) {
  if (chain.unknown !== undefined) {
    return (
      <section className="rehearsed">
        <h3>
          <bdi>{chain.name}</bdi>
        </h3>
        <p>This chain cannot be rehearsed. Not known: {chain.unknown}.</p>
      </section>
    );
  }
  return (
    <section className="rehearsed" aria-label={chain.name}>
      <h3>
        <bdi>{chain.name}</bdi>
      </h3>
      {chain.defects.map((each) => (
        <p key={each} className="wrong">
          ✗ With a defect: {each}
        </p>
      ))}
      {chain.curves.map((curve) => (
        <Curve key={curve.title} curve={curve} chain={chain.name} />
      ))}
      <SeenTable title="Targets" head="target" rows={chain.targets} chain={chain.name} />
      <p className="quiet">{chain.envelope}</p>
      {chain.lines.length === 0 ? undefined : (
        <SeenTable title="Bearings in the envelope" head="line" rows={chain.lines} chain={chain.name} />
      )}
      <table className="overall">
        <caption>The whole record</caption>
        <tbody>
          {chain.overall.map(({ what, shown }) => (
            <tr key={what}>
              <th scope="row">{what}</th>
              <td className="number">{shown}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {chain.notes.map((note) => (
        <p key={note} className="quiet">
          {note}
        </p>
      ))}
      <p className="downloads">
        Take this record away:{' '}
        {endings.map(([ending, what]) => (
          <button key={ending} type="button" onClick={() => void files(ending).then(download)}>
            {what}
            <span className="unseen"> of {chain.name}</span>
          </button>
        ))}
      </p>
    </section>
  );
}

const endings = [
  ['wav', 'WAV and its facts'],
  ['csv', 'CSV'],
  ['uff', 'Universal File 58'],
] as const;

function download(files: readonly FileView[]): void {
  for (const { name, content } of files) {
    const address = URL.createObjectURL(new Blob([content as BlobPart]));
    const link = document.createElement('a');
    link.href = address;
    link.download = name;
    link.click();
    setTimeout(() => URL.revokeObjectURL(address), 60_000);
  }
}

function SeenTable({
  title,
  head,
  rows,
  chain,
}: {
  readonly title: string;
  readonly head: string;
  readonly rows: readonly SeenView[];
  readonly chain: string;
}) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than the screen is scrolled by key
    <section className="pushed" tabIndex={0} aria-label={`${title}, ${chain}`}>
      <table className="seen-table">
        <caption>{title}</caption>
        <thead>
          <tr>
            <th scope="col">{head}</th>
            <th scope="col">where</th>
            <th scope="col" className="number">
              shown
            </th>
            <th scope="col" className="number">
              against
            </th>
            <th scope="col" className="number">
              dB
            </th>
            <th scope="col">verdict</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.name} className={row.seen === undefined ? 'untold' : row.seen ? 'seen' : 'hidden'}>
              <th scope="row">
                <bdi>{row.name}</bdi>
              </th>
              <td>{row.where}</td>
              <td className="number">{row.shown}</td>
              <td className="number">{row.against}</td>
              <td className="number">{row.decibels}</td>
              <td>
                <span aria-hidden="true">{row.seen === undefined ? '·' : row.seen ? '▼' : '▽'} </span>
                {row.verdict}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
