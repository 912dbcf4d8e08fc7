import {
  type ArrangementResult,
  arrangementKindOf,
  type Clause,
  type Fields,
  fieldOf,
  kebab,
  type ProbeRow,
  type Sheet,
  type Showing,
  type Stated,
  showMeasure,
} from '@soundpost/core';
import { capital, type Explain } from '../derivation/explained.ts';

/** A number that follows from an arrangement of probes: what was typed of it, and the formula. */
export function explainedProbe(
  { stated, title }: ArrangementResult,
  row: ProbeRow,
  showing: Showing,
): Explain | undefined {
  if (!row.value.known) return undefined;
  const shown = showMeasure(row.value.value, showing);
  return () => {
    const kind = arrangementKindOf(stated) as unknown as {
      readonly dataSheet: Fields;
      readonly sources: readonly Clause[];
    };
    const sheet = stated.sheet as unknown as Sheet;
    const typed = Object.entries(kind.dataSheet).flatMap(([key, field]) => {
      const entry = sheet.values[key] as Stated<unknown> | undefined;
      return entry?.known === true
        ? [{ name: kebab(key).replaceAll('-', ' '), shown: fieldOf(field).show(entry.value, showing) }]
        : [];
    });
    const name = row.name.replaceAll('-', ' ');
    return {
      title: `${capital(name)}: ${title}`,
      sentence: `${capital(name)} is ${shown}: ${showMeasure(row.because, showing)}.`,
      numbers: [{ name, shown }, ...typed],
      steps: row.derived.known
        ? [{ formula: row.derived.value.formula, substituted: showMeasure(row.derived.value.substituted, showing) }]
        : [],
      sources: kind.sources,
    };
  };
}
