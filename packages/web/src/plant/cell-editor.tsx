import { useEffect, useId, useRef, useState } from 'react';
import { usePlantStore } from '../app/plant-context.tsx';
import { originWords } from '../engine/origin.ts';
import type { PartChoices } from '../engine/part-choices.ts';
import type { PointRow } from '../engine/views.ts';
import { CellNote } from './cell-note.tsx';
import type { Column } from './columns.ts';

export interface CellEditorProps {
  readonly row: PointRow;
  readonly column: Column;
  /** What stands in the field first; undefined for what the file has. */
  readonly first: string | undefined;
  readonly parts: PartChoices | undefined;
  readonly refused: string | undefined;
  /** Takes what was typed; `move` is where the hand goes next. */
  readonly take: (text: string, move: -1 | 0 | 1) => void;
  readonly leave: (move: -1 | 0 | 1) => void;
}

/** The field in a cell: parts are chosen from the catalogue as their names are typed, everything else is written. */
export function CellEditor({ row, column, first, parts, refused, take, leave }: CellEditorProps) {
  const [cell, setCell] = useState<HTMLInputElement | null>(null);
  const [text, setText] = useState(first ?? column.text(row));
  const [picked, setPicked] = useState(-1);
  const said = column.stated === undefined ? undefined : row.said[column.stated];
  const store = usePlantStore();
  const touched = useRef(first !== undefined);
  const done = useRef(false);
  const list = useId();
  const editing = column.editing!;
  useEffect(() => {
    if (cell === null) return;
    cell.focus();
    if (touched.current) cell.setSelectionRange(cell.value.length, cell.value.length);
    else cell.select();
  }, [cell]);
  useEffect(() => {
    if (editing.by !== 'length') return;
    void store.engine.length(row.machine, row.name).then((written) => {
      if (written === undefined) return;
      if (!touched.current) setText(written.text);
    });
  }, [editing, store, row.machine, row.name]);
  const choices = editing.by === 'part' ? (parts?.[editing.place] ?? []) : [];
  const word = touched.current ? text.trim().toLowerCase() : '';
  const fitting = choices.filter(({ name, remark }) => `${name} ${remark}`.toLowerCase().includes(word));
  const finish = (move: -1 | 0 | 1, name = fitting[picked]?.name) => {
    if (done.current) return;
    done.current = true;
    if (name !== undefined) take(name, move);
    else if (touched.current) take(text.trim(), move);
    else leave(move);
  };
  return (
    <>
      <input
        ref={setCell}
        type="text"
        className="cell-field"
        value={text}
        aria-label={`${column.title} of ${row.name}`}
        aria-invalid={refused !== undefined}
        {...(editing.by === 'part'
          ? {
              role: 'combobox',
              'aria-expanded': true,
              'aria-controls': list,
              'aria-autocomplete': 'list' as const,
              'aria-activedescendant': picked < 0 ? undefined : `${list}-${picked}`,
            }
          : { 'aria-describedby': list })}
        autoComplete="off"
        spellCheck={false}
        onChange={(event) => {
          touched.current = true;
          setText(event.target.value);
          setPicked(-1);
        }}
        onBlur={() => finish(0)}
        onKeyDown={(event) => {
          event.stopPropagation();
          if (event.key === 'Escape') {
            done.current = true;
            leave(0);
          } else if (event.key === 'Enter') finish(0);
          else if (event.key === 'Tab') {
            event.preventDefault();
            finish(event.shiftKey ? -1 : 1);
          } else if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
            if (fitting.length === 0) return;
            event.preventDefault();
            const step = event.key === 'ArrowDown' ? 1 : -1;
            setPicked((before) => (before + step + fitting.length + (before < 0 && step < 0 ? 1 : 0)) % fitting.length);
          }
        }}
      />
      <CellNote id={editing.by === 'part' ? `${list}-note` : list} cell={cell} className="editor">
        {refused === undefined ? undefined : <p className="refused">✗ {refused}</p>}
        {editing.by === 'part' ? (
          <div id={list} role="listbox" className="choices" aria-label={`${column.title}s of the catalogue`}>
            {fitting.map((each, index) => (
              // biome-ignore lint/a11y/useKeyWithClickEvents: the keyboard picks from the field that owns the list
              // biome-ignore lint/a11y/useFocusableInteractive: the field keeps the focus and points at the option
              <div
                key={each.name}
                id={`${list}-${index}`}
                role="option"
                aria-selected={index === picked}
                ref={index === picked ? (option) => option?.scrollIntoView({ block: 'nearest' }) : undefined}
                onPointerDown={(event) => event.preventDefault()}
                onClick={() => finish(0, each.name)}
              >
                <bdi>{each.name}</bdi> <span className="quiet">{each.remark}</span>
              </div>
            ))}
          </div>
        ) : undefined}
        {editing.by === 'part' && fitting.length === 0 ? (
          <p>The catalogue has no {column.title.toLowerCase()} of this name.</p>
        ) : undefined}
        {editing.by === 'length' ? <p>A length with its unit, such as 85 m; or unknown.</p> : undefined}
        {said === undefined ? undefined : (
          <p>
            Of what is in the file is said: <bdi>{originWords(said)}</bdi>. That goes when another is written.
          </p>
        )}
        {editing.by === 'words' ? <p>In words; or unknown.</p> : undefined}
      </CellNote>
    </>
  );
}
