import type { FaultTyped, RehearsalChoices } from '../engine/rehearsal/rehearsal-views.ts';
import { TypedRow } from './typed-row.tsx';

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
  type Kind = RehearsalChoices['faults'][number];
  const begun = ({ kind, places, example }: Kind): FaultTyped => ({ kind, at: places[0]!, size: example });
  return (
    <fieldset className="typed-list">
      <legend>Faults of the machine</legend>
      {typed.length === 0 ? <p className="quiet">None: the machine is healthy.</p> : undefined}
      {typed.map((each, index) => {
        const kind = kinds.find((one) => one.kind === each.kind)!;
        return (
          <TypedRow
            // biome-ignore lint/suspicious/noArrayIndexKey: the rows have no other name than their place
            key={index}
            called="Fault"
            kinds={kinds}
            kind={kind}
            size={each.size}
            choose={(next) => put(index, begun(next))}
            resize={(size) => put(index, { ...each, size })}
            takeOut={() => change(typed.toSpliced(index, 1))}
          >
            <label>
              At
              <select value={each.at} onChange={(event) => put(index, { ...each, at: event.target.value })}>
                {kind.places.map((place) => (
                  <option key={place}>{place}</option>
                ))}
              </select>
            </label>
          </TypedRow>
        );
      })}
      {kinds.length === 0 ? undefined : (
        <button type="button" onClick={() => change([...typed, begun(kinds[0]!)])}>
          Put in a fault
        </button>
      )}
    </fieldset>
  );
}
