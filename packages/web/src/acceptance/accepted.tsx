import type { AcceptanceView, CheckView } from '../engine/acceptance/acceptance-views.ts';
import { OutcomeWord } from '../parts/verdict-word.tsx';

/** What the recordings say of each chain: expected against found, causes with the next test, and what stayed open. */
export function Accepted({ accepted }: { readonly accepted: AcceptanceView }) {
  return (
    <>
      <p className="downloads">
        <button type="button" className="main" onClick={() => download('acceptance.html', accepted.page, 'text/html')}>
          Take the acceptance file away
        </button>
        <button type="button" onClick={() => download('records.yaml', accepted.records, 'text/plain')}>
          Take the records file away
        </button>
      </p>
      <h2>Recordings</h2>
      <ul>
        {accepted.recordings.map((each) => (
          <li key={each.name} className={each.refused ? 'refused' : undefined}>
            <bdi>{each.name}</bdi>: {each.refused ? '✗ ' : ''}
            {each.words}
          </li>
        ))}
      </ul>
      {accepted.questions.length === 0 ? undefined : (
        <>
          <h2>Asked, since nobody says it</h2>
          <ul>
            {accepted.questions.map((each) => (
              <li key={each}>? {each}</li>
            ))}
          </ul>
        </>
      )}
      {accepted.findings.length === 0 ? undefined : (
        <>
          <h2>What the recordings contradict</h2>
          <ul>
            {accepted.findings.map((each) => (
              <li key={each.key}>
                <strong>{each.at}</strong>: {each.found}; {each.limit}. {each.because} {each.asks}
              </li>
            ))}
          </ul>
        </>
      )}
      {accepted.strangers.map((each) => (
        <p key={each} className="refused">
          ? {each} is no measuring point of this plant: its records were held against nothing.
        </p>
      ))}
      {accepted.points.map(({ at, verdict, counts, checks }) => (
        <section key={at} aria-label={at}>
          <h2>
            <bdi>{at}</bdi> <OutcomeWord outcome={verdict} />
          </h2>
          <p className="quiet">{counts}</p>
          {checks.map((each) => (
            <Check key={`${each.title} ${each.record}`} check={each} />
          ))}
        </section>
      ))}
      <Identified accepted={accepted} />
      {accepted.unproven.length === 0 ? undefined : (
        <>
          <h2>What could not be proven</h2>
          <ul>
            {accepted.unproven.map((each) => (
              <li key={`${each.at} ${each.needs}`}>
                <bdi>{each.at}</bdi>: {each.checks}. <strong>Needs:</strong> {each.needs}.
              </li>
            ))}
          </ul>
          <h3>How these records are made</h3>
          <ul>
            {accepted.ways.map(({ name, how }) => (
              <li key={name}>
                <strong>{name}</strong>: {how}
              </li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}

function Check({ check }: { readonly check: CheckView }) {
  return (
    <details className="check" open={check.verdict === 'fails'}>
      <summary>
        <OutcomeWord outcome={check.verdict} /> {check.title} <span className="quiet">{check.record}</span>
      </summary>
      <dl>
        <dt>Expected</dt>
        <dd>{check.expected}</dd>
        <dt>Found</dt>
        <dd>{check.found}</dd>
        <dt>Tolerance</dt>
        <dd>{check.tolerance}</dd>
        <dt>Because</dt>
        <dd>{check.because}</dd>
      </dl>
      {check.causes.length === 0 ? undefined : (
        <ol>
          {check.causes.map(({ cause, evidence, next }) => (
            <li key={cause}>
              Perhaps: {cause}. Evidence: {evidence}. <strong>Next test:</strong> {next}.
            </li>
          ))}
        </ol>
      )}
      {check.needs.map((each) => (
        <p key={each}>Needs: {each}</p>
      ))}
    </details>
  );
}

function Identified({ accepted }: { readonly accepted: AcceptanceView }) {
  const { identified, handedBack } = accepted;
  if (identified.length === 0) return undefined;
  return (
    <>
      <h2>The chains as identified</h2>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than the screen is scrolled by key */}
      <section className="pushed" tabIndex={0} aria-label="The chains as identified">
        <table className="seen-table">
          <thead>
            <tr>
              {['point', 'property', 'found', '95 %', 'designed', 'standing'].map((head) => (
                <th key={head} scope="col">
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {identified.map((each) => (
              <tr key={`${each.at} ${each.title} ${each.found}`}>
                <th scope="row">
                  <bdi>{each.at}</bdi>
                </th>
                <td>{each.title}</td>
                <td>{each.found}</td>
                <td>{each.interval}</td>
                <td>{each.designed}</td>
                <td>{each.standing}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <h3>Handed back to the design</h3>
      <p className="quiet">
        What was measured takes the place of what was predicted, and the chain is judged again by the same rules. The
        plant file is not changed.
      </p>
      <ul>
        {handedBack.map((each) => (
          <li key={each.at}>
            <bdi>{each.at}</bdi>: {each.before} before, <strong>{each.after} after</strong>; least margin {each.margins}
            .{each.turned.length === 0 ? '' : ` Turned: ${each.turned.join('; ')}.`}
          </li>
        ))}
      </ul>
    </>
  );
}

function download(name: string, content: string, type: string): void {
  const address = URL.createObjectURL(new Blob([content], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
