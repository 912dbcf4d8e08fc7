import { Link } from 'wouter';
import type { WhyView } from '../engine/why-views.ts';
import { Cited } from './cited.tsx';
import { Formula, Letter } from './formula.tsx';
import { OutcomeWord } from './verdict-word.tsx';

/** How a judgement begins that compares and computes nothing. */
const yesOrNo = 'none: ';

/** A number, or each judgement behind it, in its depths; or that it is gone. */
export function Depths({ answers }: { readonly answers: readonly WhyView[] | undefined }) {
  if (answers === undefined) return <p className="quiet">Looking it up…</p>;
  if (answers.length === 0) return <p>This number is no longer here: what it came of was changed.</p>;
  return answers.map((each, index) => <Told key={each.what ?? `${index} ${each.title}`} why={each} />);
}

/** The three depths: a sentence, the numbers, the formulas with the numbers put in and whose they are. */
export function Told({ why }: { readonly why: WhyView }) {
  const { title, outcome, sentence, prose, numbers, typed } = why;
  return (
    <section className="told">
      <h3>{title}</h3>
      <p>
        {outcome === undefined ? undefined : (
          <>
            <OutcomeWord outcome={outcome} />{' '}
          </>
        )}
        {sentence}
      </p>
      {prose === '' ? undefined : <p className="quiet">{prose}</p>}
      <h4>The numbers</h4>
      <dl>
        {numbers.map(({ name, shown }) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{shown}</dd>
          </div>
        ))}
      </dl>
      <h4>How it comes about</h4>
      {typed === undefined ? <Steps why={why} /> : <p>It was typed: nothing is computed.</p>}
      <h4>Whose it is</h4>
      {typed === undefined ? undefined : <TypedAt typed={typed} />}
      {typed !== undefined && why.sources.length === 0 ? undefined : <Cited sources={why.sources} />}
    </section>
  );
}

function Steps({ why: { steps, numbers } }: { readonly why: WhyView }) {
  if (steps.length === 0) {
    const open = numbers.some(({ name }) => name === 'unknown');
    return (
      <p className="quiet">
        {open ? 'Nothing is computed while something is unknown.' : 'It was published or stated, not computed.'}
      </p>
    );
  }
  const working = steps.find((each) => each.working !== undefined)?.working;
  return (
    <>
      <ol className="steps">
        {steps.map(({ formula, substituted, notes }) => (
          <li key={`${formula} ${substituted ?? ''}`}>
            {formula.startsWith(yesOrNo) ? capital(formula.slice(yesOrNo.length)) : <Formula text={formula} block />}
            {substituted === undefined ? undefined : <Formula text={substituted} block />}
            {notes.length === 0 ? undefined : (
              <ul>
                {notes.map((note) => (
                  <li key={note}>
                    <Note text={note} />
                  </li>
                ))}
              </ul>
            )}
          </li>
        ))}
      </ol>
      {working === undefined ? undefined : (
        <p className="quiet">
          <Link href={`/workings/${working}`}>Work it with other numbers</Link>
        </p>
      )}
    </>
  );
}

function TypedAt({ typed: { written, at, status, source } }: { readonly typed: NonNullable<WhyView['typed']> }) {
  return (
    <dl>
      <div>
        <dt>stands at</dt>
        <dd>
          <bdi>{at}</bdi>
        </dd>
      </div>
      {written === undefined ? undefined : (
        <div>
          <dt>as typed</dt>
          <dd>
            <bdi>{written}</bdi>
          </dd>
        </div>
      )}
      <div>
        <dt>known by</dt>
        <dd>
          {status === undefined && source === undefined ? (
            'not said'
          ) : (
            <bdi>{[status, source].filter(Boolean).join(', ')}</bdi>
          )}
        </dd>
      </div>
    </dl>
  );
}

function capital(text: string): string {
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}.`;
}

/** What a letter stands for: the letters set as they are in the formula, the rest as words. */
function Note({ text }: { readonly text: string }) {
  const parts = text.split(/((?<![\p{L}\d-])\p{L}+_[\p{L}\d]+|(?<![\p{L}\d-])\p{L}(?=:))/u);
  return parts.map((part, index) =>
    // biome-ignore lint/suspicious/noArrayIndexKey: pieces of one text in their order
    index % 2 === 1 ? <Letter key={index} text={part} /> : part,
  );
}
