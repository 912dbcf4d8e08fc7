import { useState } from 'react';
import { Link } from 'wouter';
import { partAddress, pointAddress } from '../app/address.ts';
import { usePlantState } from '../app/plant-context.tsx';
import type { QuestionView } from '../engine/views.ts';
import { usePrinting } from '../parts/use-printing.ts';

const first = 12;
const more = 500;

/** What is not known, the answer that would change most at the top; each leads to where it can be answered. */
export function QuestionList() {
  const { plant } = usePlantState();
  const [shown, setShown] = useState(first);
  const printing = usePrinting();
  const { questions = [], verdict } = plant ?? {};
  return (
    <section className="questions" aria-labelledby="questions">
      <h2 id="questions">
        Open questions <span className="quiet">{verdict === undefined ? '' : questions.length}</span>
      </h2>
      {verdict === undefined ? (
        <p className="quiet">They are gathered once every machine is worked out.</p>
      ) : plant?.points.length === 0 ? (
        <p>There is no point yet that could ask for anything.</p>
      ) : questions.length === 0 ? (
        <p>Every value that the judgements, budgets and set points of this plant look at is stated.</p>
      ) : (
        <>
          <p className="quiet">The answer that would change most stands first.</p>
          <ol>
            {(printing ? questions : questions.slice(0, shown)).map((each) => (
              <Question key={`${each.of}/${each.what}`} question={each} />
            ))}
          </ol>
          {questions.length > shown ? (
            <button type="button" className="more" onClick={() => setShown(shown + more)}>
              {questions.length - shown > more
                ? `Show ${more} more of ${questions.length - shown}`
                : `Show all ${questions.length}`}
            </button>
          ) : undefined}
        </>
      )}
    </section>
  );
}

function Question({ question }: { readonly question: QuestionView }) {
  const { of, what, ask, why, points, part } = question;
  const place = points[0];
  return (
    <li>
      <p className="what">
        <bdi>{what}</bdi> <span className="quiet">of</span>{' '}
        {part !== undefined ? (
          <Link href={partAddress(part)}>
            <bdi>{of}</bdi>
          </Link>
        ) : place === undefined ? (
          <bdi>{of}</bdi>
        ) : (
          <Link href={pointAddress(place)}>
            <bdi>{of}</bdi>
          </Link>
        )}
      </p>
      <p className="quiet">
        {why}
        {ask === undefined ? undefined : (
          <>
            {' '}
            Ask <bdi>{ask}</bdi>.
          </>
        )}
        {part === undefined || place === undefined ? undefined : (
          <>
            {' '}
            <Link className="onward" href={pointAddress(place)}>
              {points.length === 1 ? 'The point' : 'The first point'}
            </Link>
          </>
        )}
      </p>
    </li>
  );
}
