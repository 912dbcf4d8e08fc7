import { type KeyboardEvent, useEffect, useId, useRef, useState } from 'react';
import { usePlantStore } from '../app/plant-context.tsx';
import { boundsWait, isUnknown, statementEdits } from '../engine/machine/statement-edits.ts';
import type { FieldForm, StatementForm } from '../engine/machine/views.ts';
import { Help } from '../parts/help.tsx';
import { refusalWords } from './refusal-words.ts';

interface FieldRowOptions {
  /** Whose sheet it is of, for the name of the act. */
  readonly of: string;
  readonly field: FieldForm;
  readonly statuses: readonly string[];
}

/** A field typed in place: value, how it is known, where from. What is refused says why, and stays to be mended. */
export function FieldRow({ of, field, statuses }: FieldRowOptions) {
  const store = usePlantStore();
  const { statement } = field;
  const [typed, setTyped] = useState(statement);
  const [refused, setRefused] = useState<string>();
  const [waits, setWaits] = useState<string>();
  const why = useId();
  const under = useRef<string>(undefined);
  const stands = JSON.stringify(statement);
  useEffect(() => {
    setTyped(JSON.parse(stands));
    setRefused(undefined);
    under.current = undefined;
  }, [stands]);

  const take = async (next: StatementForm) => {
    setWaits(boundsWait(next));
    const edits = statementEdits(field, next);
    // Enter takes what is typed, and so does leaving the field after it: once is enough.
    const same = JSON.stringify(edits);
    if (under.current === same) return;
    under.current = same;
    const refusal = edits.length === 0 ? undefined : await store.act(`${of}: ${field.words}`, edits);
    if (refusal !== undefined) under.current = undefined;
    setRefused(refusal && refusalWords(refusal));
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'Enter') void take(typed);
    if (event.key !== 'Escape') return;
    setTyped(statement);
    setRefused(undefined);
  };
  const shared = { onKeyDown, onBlur: () => void take(typed) };
  const name = `${field.words} of ${of}`;
  const nothing = field.mayBeLeftOut ? 'left out' : 'unknown';
  return (
    <tr className="field-row">
      <th scope="row">
        {field.words}
        {field.symbol === undefined ? undefined : <i className="symbol"> {field.symbol}</i>}
        <Help of={field.words}>
          <p>{field.meaning}.</p>
          <p>
            Expected: {field.expected}; for example {field.example}.
          </p>
        </Help>
      </th>
      <td data-head="Value">
        {field.choices === undefined ? (
          <input
            type="text"
            aria-label={name}
            aria-invalid={refused !== undefined}
            aria-describedby={why}
            autoComplete="off"
            value={typed.value}
            placeholder={`${nothing}; e.g. ${field.example}`}
            onChange={(event) => setTyped({ ...typed, value: event.target.value })}
            {...shared}
          />
        ) : (
          <select
            aria-label={name}
            aria-invalid={refused !== undefined}
            aria-describedby={why}
            value={typed.value}
            onChange={(event) => {
              const next = { ...typed, value: event.target.value };
              setTyped(next);
              void take(next);
            }}
          >
            <option value="">{nothing}</option>
            {field.choices.includes(typed.value) || typed.value === '' ? undefined : <option>{typed.value}</option>}
            {field.choices.map((each) => (
              <option key={each}>{each}</option>
            ))}
          </select>
        )}
        <p id={why} className="beside">
          {refused === undefined ? (
            <span className={waits === undefined ? 'quiet' : undefined}>
              {waits ?? field.unknown ?? (field.shown === undefined ? '' : `shown as ${field.shown}`)}
            </span>
          ) : (
            <span className="refused" role="alert">
              {refused}
            </span>
          )}
        </p>
      </td>
      {field.plain ? (
        <td colSpan={2} className="quiet">
          as it is set, without a word of how it is known
        </td>
      ) : isUnknown(typed.value, field.mayBeLeftOut) ? (
        <Unknown name={name} field={field} typed={typed} change={setTyped} shared={shared} />
      ) : (
        <>
          <td data-head="How it is known">
            <select
              aria-label={`How the ${name} is known`}
              value={typed.status}
              disabled={typed.value.trim() === ''}
              onChange={(event) => {
                const next = { ...typed, status: event.target.value };
                setTyped(next);
                void take(next);
              }}
            >
              <option value="">not said</option>
              {statuses.map((each) => (
                <option key={each}>{each}</option>
              ))}
            </select>
          </td>
          <td data-head="Where from">
            <input
              type="text"
              aria-label={`Where the ${name} comes from`}
              autoComplete="off"
              value={typed.source}
              disabled={typed.value.trim() === ''}
              placeholder="drawing, certificate, page"
              onChange={(event) => setTyped({ ...typed, source: event.target.value })}
              {...shared}
            />
          </td>
        </>
      )}
    </tr>
  );
}

interface UnknownOptions {
  readonly name: string;
  readonly field: FieldForm;
  readonly typed: StatementForm;
  readonly change: (typed: StatementForm) => void;
  readonly shared: { readonly onKeyDown: (event: KeyboardEvent) => void; readonly onBlur: () => void };
}

/** Of what is not known: who could answer, and between which bounds it is believed to lie. */
function Unknown({ name, field, typed, change, shared }: UnknownOptions) {
  const text = (key: 'ask' | 'low' | 'high', label: string, placeholder: string) => (
    <input
      type="text"
      aria-label={label}
      autoComplete="off"
      value={typed[key] ?? ''}
      placeholder={placeholder}
      onChange={(event) => change({ ...typed, [key]: event.target.value })}
      {...shared}
    />
  );
  return (
    <>
      <td data-head="Who could answer">{text('ask', `Who could answer the ${name}`, 'who could answer')}</td>
      <td data-head="Believed between" className="bounds">
        {field.mayBeBounded ? (
          <>
            {text('low', `Least believed ${name}`, 'believed at least')}
            {text('high', `Most believed ${name}`, 'at most')}
          </>
        ) : undefined}
      </td>
    </>
  );
}
