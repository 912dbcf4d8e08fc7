import '../style/plant.css';
import { useEffect, useMemo, useState } from 'react';
import { useSearchParams } from 'wouter';
import { usePlantState } from '../app/plant-context.tsx';
import type { PasteAt } from '../engine/paste/views.ts';
import type { PlantView as PlantRecord } from '../engine/views.ts';
import { usePrinting } from '../parts/use-printing.ts';
import { CoverageLine } from './coverage-line.tsx';
import { FilterBar } from './filter-bar.tsx';
import { coverageOf, type Filters, linesOf, rulesAt } from './lines.ts';
import { MachineAdding } from './machine-adding.tsx';
import { PasteDialog } from './paste-dialog.tsx';
import { PointGrid } from './point-grid.tsx';
import { PrintedPoints } from './printed-points.tsx';
import { QuestionList } from './question-list.tsx';
import { SelectionBar } from './selection-bar.tsx';
import { useSelection } from './use-selection.ts';
import { useTypedCells } from './use-typed-cells.ts';

/** The plant: every measuring point under its machine, as a table to be read, changed and pasted into. */
export function PlantView() {
  const { plant } = usePlantState();
  const [pasting, setPasting] = useState<{ readonly text: string; readonly at: PasteAt | undefined }>();
  const [adding, setAdding] = useState(false);
  useEffect(() => {
    const pasted = (event: ClipboardEvent) => {
      // The table takes what is pasted at one of its cells.
      if (event.defaultPrevented) return;
      if (event.target instanceof Element && event.target.closest('input, textarea, select, dialog') !== null) return;
      const text = event.clipboardData?.getData('text/plain') ?? '';
      if (text.trim() === '') return;
      event.preventDefault();
      setPasting({ text, at: undefined });
    };
    window.addEventListener('paste', pasted);
    return () => window.removeEventListener('paste', pasted);
  }, []);
  if (plant === undefined) return undefined;
  return (
    <div className="plant-view">
      <Points
        plant={plant}
        paste={(text = '', at = undefined) => setPasting({ text, at })}
        add={() => setAdding(true)}
      />
      <QuestionList />
      {adding ? <MachineAdding close={() => setAdding(false)} /> : undefined}
      {pasting === undefined ? undefined : (
        <PasteDialog first={pasting.text} at={pasting.at} close={() => setPasting(undefined)} />
      )}
    </div>
  );
}

interface PointsOptions {
  readonly plant: PlantRecord;
  readonly paste: (text?: string, at?: PasteAt) => void;
  readonly add: () => void;
}

function Points({ plant, paste, add }: PointsOptions) {
  const [search, setSearch] = useSearchParams();
  const word = (name: string) => search.get(name) ?? '';
  const [text, outcome, rule] = [word('words'), word('outcome'), word('rule')];
  const filters: Filters = { text, outcome, rule };
  const filtered = text !== '' || outcome !== '' || rule !== '';
  const change = (next: Filters) =>
    setSearch(
      Object.entries({ words: next.text, outcome: next.outcome, rule: next.rule }).filter(([, said]) => said !== ''),
      { replace: true },
    );
  const rules = useMemo(() => rulesAt(plant), [plant]);
  const counted = useMemo(() => pointsByRule(rules), [rules]);
  const lines = useMemo(() => linesOf(plant, { text, outcome, rule }, rules), [plant, text, outcome, rule, rules]);
  const coverage = useMemo(() => coverageOf(lines), [lines]);
  const selection = useSelection(lines);
  const typed = useTypedCells();
  const printing = usePrinting();
  const selected = plant.points.filter((row) => selection.has(row.of));
  return (
    <section aria-labelledby="points">
      <header className="points-head">
        <h1 id="points">Measuring points</h1>
        <CoverageLine coverage={coverage} filtered={filtered} refusals={typed.refusals} />
        {printing && filtered ? (
          <p className="quiet printed-filter">
            Only points that fit are listed: <bdi>{[text, outcome, rule].filter((said) => said !== '').join(', ')}</bdi>
            .
          </p>
        ) : undefined}
      </header>
      {plant.machines.length === 0 ? undefined : (
        <FilterBar filters={filters} change={change} rules={counted} paste={() => paste()} add={add} />
      )}
      {plant.machines.length === 0 ? (
        <Empty>
          The plant file has no machine yet, and a point stands at a machine.{' '}
          <button type="button" className="main" onClick={add}>
            Add a machine…
          </button>{' '}
          Or write the first one under <code>machines</code> in the file; this page follows as soon as the file is
          saved.
        </Empty>
      ) : lines.length === 0 ? (
        <Empty>
          No point fits these filters.{' '}
          <button type="button" onClick={() => change({ text: '', outcome: '', rule: '' })}>
            Show all points
          </button>
        </Empty>
      ) : (
        <>
          <PointGrid lines={lines} selection={selection} typed={typed} paste={paste} />
          {printing ? <PrintedPoints lines={lines} /> : undefined}
        </>
      )}
      {plant.machines.length > 0 && plant.points.length === 0 ? (
        <Empty>
          No measuring point yet.{' '}
          <button type="button" className="main" onClick={() => paste()}>
            Paste a table…
          </button>{' '}
          of points with their machines, or open a machine and add its points one by one.
        </Empty>
      ) : undefined}
      {plant.points.length === 0 ? undefined : <SelectionBar selection={selection} rows={selected} />}
      <p id="grid-keys" className="keys quiet">
        Arrows move, Enter or F2 edits a cell, Enter or ? opens a number, Escape leaves it, Space selects, Shift selects
        on, Ctrl+Enter opens the point, Ctrl+C copies, Ctrl+V pastes a table, or a block at the cell.
      </p>
    </section>
  );
}

function Empty({ children }: { readonly children: React.ReactNode }) {
  return <p className="empty-table">{children}</p>;
}

function pointsByRule(rules: ReadonlyMap<string, ReadonlySet<string>>): readonly (readonly [string, number])[] {
  const counts = new Map<string, number>();
  for (const own of rules.values()) for (const rule of own) counts.set(rule, (counts.get(rule) ?? 0) + 1);
  return [...counts].sort(([a], [b]) => (a < b ? -1 : 1));
}
