import { defaultRangeExtractor, useVirtualizer } from '@tanstack/react-virtual';
import { type ClipboardEvent, type KeyboardEvent, useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { useLocation } from 'wouter';
import { machineAddress, pointAddress } from '../app/address.ts';
import { useAnswer, usePlantStore } from '../app/plant-context.tsx';
import type { PasteAt } from '../engine/paste/views.ts';
import { columns, pasteFieldOf } from './columns.ts';
import { type Place, placeAfter } from './grid-keys.ts';
import { type GridActs, GridLine } from './grid-line.tsx';
import { askedOf, GridWhy, type OpenedCell } from './grid-why.tsx';
import type { Line } from './lines.ts';
import { tableText } from './table-text.ts';
import { useRowHeight } from './use-row-height.ts';
import type { Selection } from './use-selection.ts';
import type { TypedCells } from './use-typed-cells.ts';

/** Where the hand was when the table was last left: coming back from a point, one is where one was. */
let left: { readonly key: string; readonly column: number } | undefined;

/** The table of measuring points: only the lines in sight are in the page, and every cell is reached by the keyboard. */
export function PointGrid(props: {
  readonly lines: readonly Line[];
  readonly selection: Selection;
  readonly typed: TypedCells;
  /** What was pasted with the hand at a cell of a point. */
  readonly paste: (text: string, at: PasteAt | undefined) => void;
}) {
  const { lines, selection, typed, paste } = props;
  const store = usePlantStore();
  const [, navigate] = useLocation();
  const box = useRef<HTMLDivElement>(null);
  const pinned = useRef(0);
  const rowHeight = useRowHeight();
  const parts = useAnswer((store) => store.engine.placeChoices(), 'place choices');
  const [held, setHeld] = useState(left ?? { key: lines[1]?.key ?? '', column: 1 });
  const [editing, setEditing] = useState<{ readonly first: string | undefined }>();
  const indexOf = useMemo(() => new Map(lines.map((line, index) => [line.key, index])), [lines]);
  const active: Place = { line: indexOf.get(held.key) ?? 0, column: held.column };
  const line = lines[active.line];
  const column = columns[active.column - 1];
  // The same function while the lines are the same: with another one every line of the plant is measured anew.
  const keyOf = useCallback((index: number) => lines[index]!.key, [lines]);
  const virtualizer = useVirtualizer({
    count: lines.length,
    getScrollElement: () => box.current,
    estimateSize: () => rowHeight,
    overscan: 6,
    // The heads are as high as a line, and the machine of the first line in sight stays below them.
    scrollMargin: rowHeight,
    scrollPaddingStart: 2 * rowHeight,
    useFlushSync: false,
    getItemKey: keyOf,
    initialOffset: () => Math.max(0, (active.line - 4) * rowHeight),
    rangeExtractor: (range) => {
      pinned.current = machineAt(lines, range.startIndex + 1);
      const shown = new Set([...defaultRangeExtractor(range), active.line, pinned.current]);
      return [...shown].sort((a, b) => a - b);
    },
  });
  const inSight = JSON.stringify([
    ...new Set(virtualizer.getVirtualItems().map(({ index }) => machineOf(lines[index]!))),
  ]);
  useEffect(() => store.inSight(JSON.parse(inSight) as string[]), [store, inSight]);
  const go = (to: Place) => {
    left = { key: lines[to.line]?.key ?? '', column: to.column };
    setHeld(left);
    virtualizer.scrollToIndex(to.line, { align: 'auto' });
    box.current?.querySelector(`[data-head="${to.column}"]`)?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  };
  const edit = (first?: string) => setEditing({ first });
  const [opened, setOpened] = useState<OpenedCell>();
  const asked = line?.kind === 'point' && column !== undefined ? askedOf(line.row, column.key) : undefined;
  const openWhy = () => {
    const from = document.getElementById(`cell-${active.line}-${active.column}`);
    if (asked !== undefined && from !== null) setOpened({ asked, from });
  };
  const editable = line?.kind === 'point' && column?.editing !== undefined;
  const open = () => {
    if (line === undefined) return;
    navigate(line.kind === 'point' ? pointAddress(line.row.of) : machineAddress(line.name));
  };
  const pressed = (event: KeyboardEvent) => {
    if (event.target !== event.currentTarget || line === undefined) return;
    const control = event.ctrlKey || event.metaKey;
    const to = placeAfter(event.key, control, active, {
      lines: lines.length,
      columns: columns.length + 1,
      page: Math.max(1, Math.floor((box.current?.clientHeight ?? 400) / rowHeight) - 3),
    });
    if (event.key === '?' && asked !== undefined) openWhy();
    else if (to !== undefined) {
      go(to);
      if (event.shiftKey && to.line !== active.line) selection.reach(lines[to.line]!, line);
    } else if (event.key === 'Enter' && control) open();
    else if (event.key === 'Enter' || event.key === 'F2') {
      if (editable) edit();
      else if (active.column === 0) selection.toggle(line);
      else if (event.key === 'Enter' && asked !== undefined) openWhy();
      else if (event.key === 'Enter') open();
    } else if (event.key === ' ') {
      if (event.shiftKey) selection.reach(line, line);
      else selection.toggle(line);
    } else if (event.key === 'a' && control) selection.all();
    else if (event.key === 'Escape') {
      if (line.kind === 'point' && column !== undefined && typed.row(line.key)?.has(column.key)) {
        typed.giveUp(line.key, column.key);
      } else selection.clear();
    } else if (editable && !control && !event.altKey && [...event.key].length === 1) edit(event.key);
    else return;
    event.preventDefault();
  };
  const copied = (event: ClipboardEvent) => {
    if (event.target instanceof HTMLInputElement) return;
    const rows = lines.flatMap((each) =>
      each.kind === 'point' && (selection.points.size === 0 ? each.key === line?.key : selection.has(each.key))
        ? [each.row]
        : [],
    );
    if (rows.length === 0) return;
    event.preventDefault();
    event.clipboardData.setData('text/plain', tableText(rows));
  };
  const pasted = (event: ClipboardEvent) => {
    if (event.target instanceof HTMLInputElement) return;
    const text = event.clipboardData.getData('text/plain');
    if (text.trim() === '') return;
    event.preventDefault();
    paste(text, line?.kind === 'point' ? pasteAt(lines, active) : undefined);
  };
  const now: GridActs = {
    point: (to, again) => {
      const column = columns[to.column - 1];
      if (again && editing === undefined && lines[to.line]?.kind === 'point' && column?.editing !== undefined) edit();
      else {
        go(to);
        if (editing === undefined) box.current?.focus({ preventScroll: true });
      }
    },
    why: (row, key, from) => {
      const number = askedOf(row, key);
      if (number !== undefined) setOpened({ asked: number, from });
    },
    toggle: (index) => selection.toggle(lines[index]!),
    reach: (index) => selection.reach(lines[index]!, line),
    take: (row, key, text) => void typed.type(row, key, text),
    stop: (move) => {
      setEditing(undefined);
      box.current?.focus({ preventScroll: true });
      const key = move < 0 ? 'ArrowLeft' : 'ArrowRight';
      const extent = { lines: lines.length, columns: columns.length + 1, page: 1 };
      const next = move === 0 ? undefined : placeAfter(key, false, active, extent);
      if (next !== undefined) go(next);
    },
  };
  const latest = useRef(now);
  latest.current = now;
  const acts = useMemo(() => actsOf(latest), []);
  return (
    // biome-ignore lint/a11y/useSemanticElements: a table of which only a window is in the page is a grid by its roles
    <div
      ref={box}
      className={rowHeight > 40 ? 'point-grid tall' : 'point-grid'}
      role="grid"
      aria-label="Measuring points"
      aria-rowcount={lines.length + 1}
      aria-colcount={columns.length + 1}
      aria-multiselectable="true"
      aria-activedescendant={line === undefined ? undefined : `cell-${active.line}-${active.column}`}
      aria-describedby="grid-keys"
      tabIndex={0}
      // What is worked out waits for the hand, so that scrolling has the machine to itself.
      onScroll={() => store.touched()}
      onKeyDown={pressed}
      onCopy={copied}
      onPaste={pasted}
    >
      {/* biome-ignore-start lint/a11y/useSemanticElements: as above */}
      {/* biome-ignore-start lint/a11y/useFocusableInteractive: the grid keeps the focus and points at its cell */}
      <div role="rowgroup" className="grid-head">
        <div role="row" aria-rowindex={1} className="grid-row">
          <div role="columnheader" aria-colindex={1} data-head={0}>
            <span className="unseen">Selected</span>
          </div>
          {columns.map((each, index) => (
            <div
              key={each.key}
              role="columnheader"
              aria-colindex={index + 2}
              data-head={index + 1}
              className={each.align}
              title={each.title}
            >
              {each.head === undefined ? (
                each.title
              ) : (
                <>
                  <span aria-hidden="true">{each.head}</span>
                  <span className="unseen">{each.title}</span>
                </>
              )}
            </div>
          ))}
        </div>
      </div>
      {/* biome-ignore-end lint/a11y/useSemanticElements: as above */}
      {/* biome-ignore-end lint/a11y/useFocusableInteractive: as above */}
      {/* biome-ignore lint/a11y/useSemanticElements: as above */}
      <div role="rowgroup" className="grid-body" style={{ height: virtualizer.getTotalSize() }}>
        {virtualizer.getVirtualItems().map((item) => (
          <GridLine
            key={item.key}
            line={lines[item.index]!}
            index={item.index}
            top={item.index === pinned.current ? undefined : item.start - rowHeight}
            height={rowHeight}
            active={item.index === active.line ? active.column : undefined}
            chosen={selection.of(lines[item.index]!)}
            typed={typed.row(lines[item.index]!.key)}
            parts={parts}
            editing={item.index === active.line ? editing : undefined}
            acts={acts}
          />
        ))}
      </div>
      <GridWhy
        opened={opened}
        close={() => setOpened(undefined)}
        back={() => box.current?.focus({ preventScroll: true })}
      />
    </div>
  );
}

/** The points from a cell down, past the lines of machines, and what the columns from it to the right hold. */
function pasteAt(lines: readonly Line[], { line, column }: Place): PasteAt {
  return {
    points: lines.slice(line).flatMap((each) => (each.kind === 'point' ? [each.key] : [])),
    fields: columns.slice(Math.max(0, column - 1)).map((each) => pasteFieldOf(each)),
  };
}

/** The line of the machine that a line stands under. */
function machineAt(lines: readonly Line[], index: number): number {
  let line = Math.min(index, lines.length - 1);
  while (line > 0 && lines[line]?.kind !== 'machine') line--;
  return line;
}

/** The same acts for every line as long as the table stands, so that a line is drawn again only when it changed. */
function actsOf(latest: { readonly current: GridActs }): GridActs {
  return {
    point: (...all) => latest.current.point(...all),
    why: (...all) => latest.current.why(...all),
    toggle: (...all) => latest.current.toggle(...all),
    reach: (...all) => latest.current.reach(...all),
    take: (...all) => latest.current.take(...all),
    stop: (...all) => latest.current.stop(...all),
  };
}

function machineOf(line: Line): string {
  return line.kind === 'machine' ? line.name : line.row.machine;
}
