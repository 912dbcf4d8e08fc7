import '../style/why.css';
import { Popover } from 'radix-ui';
import { useState } from 'react';
import { useAnswer } from '../app/plant-context.tsx';
import type { TrialAsked } from '../engine/views.ts';
import type { WhyView } from '../engine/why-views.ts';
import { Cited } from './cited.tsx';
import { Formula } from './formula.tsx';
import { OutcomeWord } from './verdict-word.tsx';

/** How a judgement begins that compares and computes nothing. */
const yesOrNo = 'none: ';

interface Asked {
  readonly of: string;
  readonly rule: string;
  readonly target: string | undefined;
  /** Which of several judgements of the rule, by what it judges; all of them where it is left out. */
  readonly what?: string | undefined;
  /** The point as a hand holds it; as the file states it where it is left out. */
  readonly trial?: TrialAsked | undefined;
}

/** Where a number comes from: a sentence, the numbers, the formulas with the numbers put in and whose they are. */
export function Why(asked: Asked) {
  const [open, setOpen] = useState(false);
  const named = [asked.what ?? asked.rule, asked.target].filter(Boolean).join(', ');
  return (
    <Popover.Root open={open} onOpenChange={setOpen}>
      <Popover.Trigger asChild>
        <button type="button" className="why" aria-label={`Why: ${named}`}>
          why
        </button>
      </Popover.Trigger>
      <Popover.Portal>
        <Popover.Content
          className="why-sheet"
          side="bottom"
          align="start"
          sideOffset={8}
          collisionPadding={12}
          aria-label={`Why: ${named}`}
        >
          {open ? <Depths {...asked} /> : undefined}
          <Popover.Close className="why-close" aria-label="Close">
            ×
          </Popover.Close>
        </Popover.Content>
      </Popover.Portal>
    </Popover.Root>
  );
}

function Depths({ of, rule, target, what, trial }: Asked) {
  const answers = useAnswer(
    (store) => store.engine.why(of, rule, target, trial),
    `why ${JSON.stringify([of, rule, target, trial])}`,
  );
  if (answers === undefined) return <p className="quiet">Looking it up…</p>;
  const chosen = answers.filter((each) => what === undefined || each.what === what);
  const told = chosen.length > 0 ? chosen : answers;
  if (told.length === 0) return <p>This is not judged here any more.</p>;
  return told.map((each) => <Told key={each.what} why={each} />);
}

function Told({ why }: { readonly why: WhyView }) {
  return (
    <section className="told">
      <h3>{why.title}</h3>
      <p>
        <OutcomeWord outcome={why.outcome} /> {why.sentence}
      </p>
      <p className="quiet">{why.prose}</p>
      <h4>The numbers</h4>
      <dl>
        {why.numbers.map(({ name, shown }) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{shown}</dd>
          </div>
        ))}
      </dl>
      <h4>How it comes about</h4>
      {why.steps.length === 0 ? (
        <p className="quiet">Nothing is computed while something is unknown.</p>
      ) : (
        <ol className="steps">
          {why.steps.map(({ formula, substituted, notes }) => (
            <li key={`${formula} ${substituted ?? ''}`}>
              {formula.startsWith(yesOrNo) ? capital(formula.slice(yesOrNo.length)) : <Formula text={formula} block />}
              {substituted === undefined ? undefined : <Formula text={substituted} block />}
              {notes.length === 0 ? undefined : (
                <ul>
                  {notes.map((note) => (
                    <li key={note}>{note}</li>
                  ))}
                </ul>
              )}
            </li>
          ))}
        </ol>
      )}
      <h4>Whose it is</h4>
      <Cited sources={why.sources} />
    </section>
  );
}

function capital(text: string): string {
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}.`;
}
