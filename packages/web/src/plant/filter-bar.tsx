import { type Filters, outcomes } from './lines.ts';

/** What of the plant is shown: by words, by outcome, by what was found. */
export function FilterBar(props: {
  readonly filters: Filters;
  readonly change: (filters: Filters) => void;
  /** The rules that found something, with the number of points. */
  readonly rules: readonly (readonly [string, number])[];
  readonly paste: () => void;
  readonly add: () => void;
}) {
  const { filters, change, rules, paste, add } = props;
  const gone = filters.rule !== '' && !rules.some(([rule]) => rule === filters.rule);
  return (
    <search className="filter-bar">
      <label>
        <span>Words</span>
        <input
          type="search"
          placeholder="tag, place, part"
          value={filters.text}
          onChange={(event) => change({ ...filters, text: event.target.value })}
        />
      </label>
      <label>
        <span>Outcome</span>
        <select value={filters.outcome} onChange={(event) => change({ ...filters, outcome: event.target.value })}>
          <option value="">any</option>
          {outcomes.map((each) => (
            <option key={each}>{each}</option>
          ))}
        </select>
      </label>
      <label>
        <span>Finding</span>
        <select value={filters.rule} onChange={(event) => change({ ...filters, rule: event.target.value })}>
          <option value="">any</option>
          {rules.map(([rule, points]) => (
            <option key={rule} value={rule}>
              {rule} ({points})
            </option>
          ))}
          {gone ? <option value={filters.rule}>{filters.rule} (0)</option> : undefined}
        </select>
      </label>
      <span className="paste">
        <button type="button" onClick={add}>
          Add a machine…
        </button>
        <button type="button" onClick={paste}>
          Paste a table…
        </button>
      </span>
    </search>
  );
}
