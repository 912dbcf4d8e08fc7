import type { FindingView } from '../engine/views.ts';
import { Compared } from '../parts/finding-block.tsx';

const signs: Readonly<Record<string, string>> = {
  'blocks-issue': '✗ blocks the issue',
  question: '? asks',
  warns: '! warns',
  notes: 'notes',
};

/** What the rules have to say of this point as the file states it. */
export function PointFindings({ findings }: { readonly findings: readonly FindingView[] }) {
  return (
    <section className="point-findings">
      <h2>Findings</h2>
      {findings.length === 0 ? (
        <p>No rule found anything to say against the stated targets of this point.</p>
      ) : (
        <ul>
          {findings.map((each) => (
            <li key={each.key}>
              <details>
                <summary>
                  <strong>{signs[each.weight] ?? each.weight}</strong> {each.found}
                  {each.limit === '' ? '' : `; limit ${each.limit}`} <span className="quiet">{each.rule}</span>
                </summary>
                <p>{each.because}</p>
                <p>
                  Found <Compared finding={each} what="Found" words={each.found} />
                </p>
                {each.remedy.length === 0 ? undefined : <p>What to do: {each.remedy.join('; ')}.</p>}
                {each.asks === undefined ? undefined : <p>Question: {each.asks}</p>}
                {each.sources === '' ? undefined : <p className="quiet">{each.sources}</p>}
              </details>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
