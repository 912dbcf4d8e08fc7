import { useId } from 'react';
import type { FindingView } from '../engine/views.ts';
import { Help } from '../parts/help.tsx';
import type { Sought } from './kept-findings.ts';

interface FindingFilterOptions {
  readonly findings: readonly FindingView[];
  readonly sought: Sought;
  seek(change: Partial<Sought>): void;
  /** Goes from the filter into the list. */
  enter(): void;
}

/** By rule, by machine, by what is said. */
export function FindingFilter({ findings, sought, seek, enter }: FindingFilterOptions) {
  const rule = useId();
  const machine = useId();
  const text = useId();
  return (
    <search className="finding-filter">
      <span>
        <label htmlFor={rule}>Rule</label>
        <Help of="a rule">
          One comparison this program makes, by its name. The words before the stroke say what it looks at; the command{' '}
          <code>soundpost explain</code> gives its reasons and sources.
        </Help>
        <Choices id={rule} all="all rules" counts={counts(findings, (each) => each.rule)} value={sought.rule}>
          {(value) => seek({ rule: value })}
        </Choices>
      </span>
      <span>
        <label htmlFor={machine}>Machine</label>
        <Choices
          id={machine}
          all="all machines"
          counts={counts(findings, (each) => each.machine ?? '')}
          value={sought.machine}
        >
          {(value) => seek({ machine: value })}
        </Choices>
      </span>
      <label htmlFor={text}>
        Words in it
        <input
          id={text}
          type="text"
          value={sought.text}
          placeholder="cable, burst, P-301 …"
          onChange={(event) => seek({ text: event.target.value })}
          onKeyDown={(event) => {
            if (event.key !== 'ArrowDown' && event.key !== 'Enter') return;
            event.preventDefault();
            enter();
          }}
        />
      </label>
      <button
        type="button"
        disabled={sought.rule === '' && sought.machine === '' && sought.text === ''}
        onClick={() => seek({ rule: '', machine: '', text: '' })}
      >
        Show all
      </button>
    </search>
  );
}

interface ChoicesOptions {
  readonly id: string;
  readonly all: string;
  readonly counts: readonly (readonly [string, number])[];
  readonly value: string;
  children(value: string): void;
}

function Choices({ id, all, counts: counted, value, children: choose }: ChoicesOptions) {
  return (
    <select id={id} value={value} onChange={(event) => choose(event.target.value)}>
      <option value="">{all}</option>
      {counted.some(([name]) => name === value) || value === '' ? undefined : <option value={value}>{value}</option>}
      {counted.map(([name, count]) => (
        <option key={name} value={name}>
          {name.length > 60 ? `${name.slice(0, 60)}…` : name} ({count})
        </option>
      ))}
    </select>
  );
}

function counts(findings: readonly FindingView[], of: (each: FindingView) => string) {
  const counted = new Map<string, number>();
  for (const each of findings) counted.set(of(each), (counted.get(of(each)) ?? 0) + 1);
  counted.delete('');
  return [...counted].sort(([a], [b]) => a.localeCompare(b));
}
