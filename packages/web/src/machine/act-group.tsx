import type { ReactNode } from 'react';
import { useNarrow } from '../point/use-narrow.ts';

/** What can be done to one thing: beside it where there is room, and on a telephone behind one button. */
export function ActGroup({ of, children }: { readonly of: string; readonly children: ReactNode }) {
  const narrow = useNarrow();
  if (!narrow) return <span className="acts">{children}</span>;
  return (
    <details className="acts fold">
      <summary aria-label={`Change ${of}`}>Change…</summary>
      <div>{children}</div>
    </details>
  );
}
