import { type KeyboardEventHandler, type ReactNode, useId } from 'react';
import { Link } from 'wouter';
import { machineAddress, pointAddress } from '../app/address.ts';
import type { FindingView } from '../engine/views.ts';
import { WeightWord } from './weight-word.tsx';
import { OpeningNumber } from './why.tsx';
import '../style/finding-block.css';

interface FindingBlockOptions {
  readonly finding: FindingView;
  /** Whether its first step is a machine of this plant. */
  readonly ofMachine: boolean;
  readonly showsWeight?: boolean;
  readonly onKeyDown?: KeyboardEventHandler;
}

/** A finding in full: where, what was found against which limit, why it matters, what to do. */
export function FindingBlock({ finding, ofMachine, showsWeight = false, onKeyDown }: FindingBlockOptions) {
  const head = useId();
  const { at, rule, found, limit, because, remedy, asks, sources, weight } = finding;
  return (
    <article className="finding-block" aria-labelledby={head}>
      <h3 id={head} title={at}>
        <Link className="place" href={addressOf(finding, ofMachine)} data-place="" onKeyDown={onKeyDown}>
          <bdi>{at}</bdi>
        </Link>{' '}
        <span className="rule-id">{rule}</span>
      </h3>
      {showsWeight ? <WeightWord weight={weight} /> : undefined}
      <dl>
        <Line term="Found">
          <Compared finding={finding} what="Found" words={found} />
        </Line>
        <Line term="Limit">{limit === '' ? '' : <Compared finding={finding} what="Limit" words={limit} aside />}</Line>
        <Line term="Why it matters">{because}</Line>
        <Line term="What to do">{remedies(remedy)}</Line>
        <Line term="Question">{asks}</Line>
        <Line term="Sources" quiet>
          {sources}
        </Line>
      </dl>
    </article>
  );
}

/** What was found or allowed; where a number is in it, it opens to where that comes from. */
export function Compared({
  finding: { rule, at, key },
  what,
  words,
  aside = false,
}: {
  readonly finding: FindingView;
  readonly what: string;
  readonly words: string;
  readonly aside?: boolean;
}) {
  if (!/\d/.test(words)) return words;
  return (
    <OpeningNumber asked={{ is: 'finding', rule, at, key }} what={what} aside={aside}>
      {words}
    </OpeningNumber>
  );
}

/** The point it speaks of; or the machine, with the data sheet of the element; what is of the whole plant, its table. */
function addressOf({ at, point, machine }: FindingView, ofMachine: boolean): string {
  if (point !== undefined) return pointAddress(point);
  if (machine === undefined || !ofMachine) return '/';
  const [, element] = at.split('/');
  return `${machineAddress(machine)}${element === undefined ? '' : `?sheet=${encodeURIComponent(element)}`}`;
}

function Line({ term, quiet, children }: { term: string; quiet?: boolean; children: ReactNode }) {
  if (children === undefined || children === '') return undefined;
  return (
    <>
      <dt>{term}</dt>
      <dd className={quiet === true ? 'quiet' : undefined}>{children}</dd>
    </>
  );
}

function remedies(remedy: readonly string[]): ReactNode {
  if (remedy.length <= 1) return remedy[0];
  return (
    <ul>
      {[...new Set(remedy)].map((each) => (
        <li key={each}>{each}</li>
      ))}
    </ul>
  );
}
