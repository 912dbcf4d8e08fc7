import type { ReactNode } from 'react';
import type { KindChoice } from '../engine/rehearsal/rehearsal-views.ts';

/** One thing put in by hand: which kind, what else is chosen of it, how large, and a way to take it out again. */
export function TypedRow<Kind extends KindChoice>({
  called,
  kinds,
  kind,
  size,
  usual,
  choose,
  resize,
  takeOut,
  children,
}: {
  readonly called: string;
  readonly kinds: readonly Kind[];
  readonly kind: Kind;
  readonly size: string;
  /** What holds where no size is typed. */
  readonly usual?: string;
  readonly children?: ReactNode;
  choose(kind: Kind): void;
  resize(size: string): void;
  takeOut(): void;
}) {
  return (
    <div className="typed-row">
      <label>
        {called}
        <select value={kind.kind} onChange={(event) => choose(kinds.find((each) => each.kind === event.target.value)!)}>
          {kinds.map((each) => (
            <option key={each.kind} value={each.kind}>
              {each.name}
            </option>
          ))}
        </select>
      </label>
      {children}
      <label>
        {kind.sized}
        <input value={size} placeholder={usual} onChange={(event) => resize(event.target.value)} />
      </label>
      <button type="button" onClick={takeOut}>
        Take out<span className="unseen"> {kind.name}</span>
      </button>
    </div>
  );
}
