import type { Outcome } from '../engine/views.ts';

const verdicts: Readonly<Record<string, readonly [string, string]>> = {
  proven: ['✓', 'Proven against its stated targets'],
  'open questions': ['?', 'Open questions'],
  'not proven': ['✗', 'Not proven'],
};

/** The verdict on the plant: shape, then word. */
export function VerdictWord({ verdict }: { readonly verdict: string | undefined }) {
  if (verdict === undefined) return undefined;
  const [sign, words] = verdicts[verdict] ?? ['', verdict];
  return (
    <strong className={`outcome ${verdict.replaceAll(' ', '-')}`}>
      <span aria-hidden="true">{sign}</span> {words}
    </strong>
  );
}

const outcomes: Readonly<Record<Outcome | 'no chain', readonly [string, string]>> = {
  meets: ['✓', 'meets'],
  warns: ['!', 'warns'],
  'cannot tell': ['?', 'cannot tell'],
  fails: ['✗', 'fails'],
  'no chain': ['○', 'no chain'],
};

/** An outcome: shape and word first, colour last. */
export function OutcomeWord({ outcome }: { readonly outcome: Outcome | 'no chain' | undefined }) {
  if (outcome === undefined) return <span className="quiet">being worked out</span>;
  const [sign, words] = outcomes[outcome];
  return (
    <span className={`outcome ${outcome.replaceAll(' ', '-')}`}>
      <span aria-hidden="true">{sign}</span> {words}
    </span>
  );
}
