import type { FaultTyped, RehearsalChoices } from '../engine/rehearsal/rehearsal-views.ts';

/** Faults of the machine: which, where and how large. A healthy machine has none. */
export function FaultList({
  kinds,
  typed,
  change,
}: {
  readonly kinds: RehearsalChoices['faults'];
  readonly typed: readonly FaultTyped[];
  change(typed: readonly FaultTyped[]): void;
}) {
  const put = (index: number, next: FaultTyped) => change(typed.with(index, next));
  const begun = (word: string): FaultTyped => {
    const kind = kinds.find((each) => each.kind === word)!;
    return { kind: word, at: kind.places[0]!, size: kind.example };
  };
  return (
    <fieldset className="typed-list">
      <legend>Faults of the machine</legend>
      {typed.length === 0 ? <p className="quiet">None: the machine is healthy.</p> : undefined}
      {typed.map((each, index) => {
        const kind = kinds.find((one) => one.kind === each.kind)!;
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: the rows have no other name than their place
          <div key={index} className="typed-row">
            <label>
              Fault
              <select value={each.kind} onChange={(event) => put(index, begun(event.target.value))}>
                {kinds.map((one) => (
                  <option key={one.kind} value={one.kind}>
                    {one.name}
                  </option>
                ))}
              </select>
            </label>
            <label>
              At
              <select value={each.at} onChange={(event) => put(index, { ...each, at: event.target.value })}>
                {kind.places.map((place) => (
                  <option key={place}>{place}</option>
                ))}
              </select>
            </label>
            <label>
              {kind.sized}
              <input value={each.size} onChange={(event) => put(index, { ...each, size: event.target.value })} />
            </label>
            <button type="button" onClick={() => change(typed.toSpliced(index, 1))}>
              Take out<span className="unseen"> {kind.name}</span>
            </button>
          </div>
        );
      })}
      {kinds.length === 0 ? undefined : (
        <button type="button" onClick={() => change([...typed, begun(kinds[0]!.kind)])}>
          Put in a fault
        </button>
      )}
    </fieldset>
  );
}
