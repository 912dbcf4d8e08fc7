import type { DefectTyped, KindChoice } from '../engine/rehearsal/rehearsal-views.ts';
import { TypedRow } from './typed-row.tsx';

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
          <TypedRow
            // biome-ignore lint/suspicious/noArrayIndexKey: the rows have no other name than their place
            key={index}
            called="Defect"
            kinds={kinds}
            kind={kind}
            size={each.size}
            usual={kind.example}
            choose={(next) => put(index, { kind: next.kind, size: '' })}
            resize={(size) => put(index, { ...each, size })}
            takeOut={() => change(typed.toSpliced(index, 1))}
          />
        );
      })}
      <button type="button" onClick={() => change([...typed, { kind: kinds[0]!.kind, size: '' }])}>
        Put in a defect
      </button>
    </fieldset>
  );
}
