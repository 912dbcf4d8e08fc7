import '../style/why.css';
import { Popover } from 'radix-ui';
import { type ReactNode, useState } from 'react';
import { useAnswer } from '../app/plant-context.tsx';
import type { TrialAsked } from '../engine/views.ts';
import type { NumberAsked, WhyView } from '../engine/why-views.ts';
import { Depths, Told } from './told.tsx';

interface JudgementAsked {
  readonly of: string;
  readonly rule: string;
  readonly target: string | undefined;
  /** Which of several judgements of the rule, by what it judges; all of them where it is left out. */
  readonly what?: string | undefined;
  /** The point as a hand holds it; as the file states it where it is left out. */
  readonly trial?: TrialAsked | (() => TrialAsked) | undefined;
}

/** Where a judgement comes from: a sentence, the numbers, the formulas with the numbers put in and whose they are. */
export function Why({ trial, ...asked }: JudgementAsked) {
  const named = [asked.what ?? asked.rule, asked.target].filter(Boolean).join(', ');
  return (
    <Opening label={`Why: ${named}`} className="why" shown="why">
      <Asked asked={() => ({ is: 'judgement', ...asked, trial: typeof trial === 'function' ? trial() : trial })} />
    </Opening>
  );
}

/**
 * A number that opens in the same three depths; where it is asked of nothing it stands as it is. What is asked may be
 * told when it is opened, so that a hand that moves meanwhile need not draw it again.
 */
export function OpeningNumber({
  asked,
  what,
  aside = false,
  children,
}: {
  readonly asked: NumberAsked | (() => NumberAsked) | undefined;
  /** Another stop of the Tab key beside it opens the same. */
  readonly aside?: boolean;
  /** What the number is, for who hears the page: `Least margin`. */
  readonly what: string;
  readonly children: ReactNode;
}) {
  if (asked === undefined) return children;
  return (
    <Opening what={what} className="opens" shown={children} aside={aside}>
      <Asked asked={asked} />
    </Opening>
  );
}

/** A number whose depths came with it. */
export function ToldNumber({
  why,
  what,
  children,
}: {
  readonly why: WhyView;
  readonly what: string;
  readonly children: ReactNode;
}) {
  return (
    <Opening what={what} className="opens" shown={children}>
      <Told why={why} />
    </Opening>
  );
}

function Opening({
  label,
  what,
  className,
  shown,
  aside = false,
  children,
}: {
  readonly aside?: boolean;
  readonly label?: string;
  readonly what?: string;
  readonly className: string;
  readonly shown: ReactNode;
  readonly children: ReactNode;
}) {
  const [open, setOpen] = useState(false);
  return (
    <Popover.Root open={open} onOpenChange={setOpen}>
      <Popover.Trigger asChild>
        <button type="button" className={className} aria-label={label} tabIndex={aside ? -1 : undefined}>
          {what === undefined ? undefined : <span className="unseen">{what}: </span>}
          {shown}
        </button>
      </Popover.Trigger>
      <WhySheet label={label ?? `Why: ${what}`}>{open ? children : undefined}</WhySheet>
    </Popover.Root>
  );
}

/** The sheet on which the depths stand, beside what it was opened from. */
export function WhySheet({
  label,
  onCloseAutoFocus,
  children,
}: {
  readonly label: string;
  readonly onCloseAutoFocus?: (event: Event) => void;
  readonly children: ReactNode;
}) {
  return (
    <Popover.Portal>
      <Popover.Content
        className="why-sheet"
        side="bottom"
        align="start"
        sideOffset={8}
        collisionPadding={12}
        aria-label={label}
        {...(onCloseAutoFocus === undefined ? {} : { onCloseAutoFocus })}
      >
        {children}
        <Popover.Close className="why-close" aria-label="Close">
          ×
        </Popover.Close>
      </Popover.Content>
    </Popover.Portal>
  );
}

/** What the engine tells of a number, asked while its sheet is open. */
export function Asked({ asked: given }: { readonly asked: NumberAsked | (() => NumberAsked) }) {
  const asked = typeof given === 'function' ? given() : given;
  const answers = useAnswer((store) => store.engine.told(asked), `why ${JSON.stringify(asked)}`);
  return <Depths answers={answers} />;
}
