import type { DefectTyped, KindChoice } from '../engine/rehearsal/rehearsal-views.ts';

/** Defects of a chain: what, and how large. */
export function DefectList({
  title,
  kinds,
  typed,
  change,
}: {
  readonly title: string;
  readonly kinds: readonly KindChoice[];
  readonly typed: readonly DefectTyped[];
  change(typed: readonly DefectTyped[]): void;
}) {
  const put = (index: number, next: DefectTyped) => change(typed.with(index, next));
  return (
    <fieldset className="typed-list">
      <legend>{title}</legend>
      {typed.map((each, index) => {
        const kind = kinds.find((one) => one.kind === each.kind)!;
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: the rows have no other name than their place
          <div key={index} className="typed-row">
            <label>
              Defect
              <select value={each.kind} onChange={(event) => put(index, { kind: event.target.value, size: '' })}>
                {kinds.map((one) => (
                  <option key={one.kind} value={one.kind}>
                    {one.name}
                  </option>
                ))}
              </select>
            </label>
            <label>
              {kind.sized}
              <input
                value={each.size}
                placeholder={kind.example}
                onChange={(event) => put(index, { ...each, size: event.target.value })}
              />
            </label>
            <button type="button" onClick={() => change(typed.toSpliced(index, 1))}>
              Take out<span className="unseen"> {kind.name}</span>
            </button>
          </div>
        );
      })}
      <button type="button" onClick={() => change([...typed, { kind: kinds[0]!.kind, size: '' }])}>
        Put in a defect
      </button>
    </fieldset>
  );
}
