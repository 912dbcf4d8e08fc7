import { Popover } from 'radix-ui';
import { useRef } from 'react';
import type { PointRow } from '../engine/views.ts';
import type { NumberAsked } from '../engine/why-views.ts';
import { Asked, WhySheet } from '../parts/why.tsx';
import type { ColumnKey } from './columns.ts';

/** What the number of a cell is asked as; undefined where it is no number, or is not worked out yet. */
export function askedOf(row: PointRow, column: ColumnKey): NumberAsked | undefined {
  switch (column) {
    case 'covered':
      return row.covered === undefined || row.targets === 0 ? undefined : { is: 'covered', points: [row.of] };
    case 'margin':
      return row.margin === undefined ? undefined : { is: 'nearest', of: row.of };
    case 'findings':
      return row.findings === undefined || row.findings === 0 ? undefined : { is: 'count of findings', of: row.of };
    case 'cableLength':
      return /\d/.test(row.cableLength) ? { is: 'cable length', of: row.of } : undefined;
    default:
      return undefined;
  }
}

export interface OpenedCell {
  readonly asked: NumberAsked;
  readonly from: HTMLElement;
}

/** The sheet of a cell of the table; closed, the table has the focus again. */
export function GridWhy({
  opened,
  close,
  back,
}: {
  readonly opened: OpenedCell | undefined;
  readonly close: () => void;
  readonly back: () => void;
}) {
  const from = useRef<HTMLElement | null>(null);
  if (opened !== undefined) from.current = opened.from;
  return (
    <Popover.Root open={opened !== undefined} onOpenChange={(open) => (open ? undefined : close())}>
      <Popover.Anchor virtualRef={from as { current: HTMLElement }} />
      <WhySheet
        label="Why this number"
        onCloseAutoFocus={(event) => {
          event.preventDefault();
          back();
        }}
      >
        {opened === undefined ? undefined : <Asked asked={opened.asked} />}
      </WhySheet>
    </Popover.Root>
  );
}
