import type { Outcome, PlantView, PointRow } from '../engine/views.ts';

/** What of the plant is shown; an empty word shows all. */
export interface Filters {
  readonly text: string;
  readonly outcome: string;
  readonly rule: string;
}

export const outcomes: readonly (Outcome | 'no chain')[] = ['fails', 'cannot tell', 'warns', 'meets', 'no chain'];

/** A line of the table: a machine, or a measuring point under it. */
export type Line =
  | {
      readonly key: string;
      readonly kind: 'machine';
      readonly name: string;
      readonly title: string;
      readonly points: readonly string[];
    }
  | { readonly key: string; readonly kind: 'point'; readonly row: PointRow };

/** The lines that pass the filters, points under their machines in the order of the file. */
export function linesOf(
  plant: PlantView,
  filters: Filters,
  rules: ReadonlyMap<string, ReadonlySet<string>>,
): readonly Line[] {
  const all = filters.text.trim() === '' && filters.outcome === '' && filters.rule === '';
  const rows = new Map<string, PointRow[]>(plant.machines.map(({ name }) => [name, []]));
  for (const row of plant.points) rows.get(row.machine)?.push(row);
  return plant.machines.flatMap((machine): Line[] => {
    const shown = (rows.get(machine.name) ?? []).filter((row) => all || passes(row, machine.title, filters, rules));
    if (shown.length === 0 && !all) return [];
    const { name, title } = machine;
    const head: Line = { key: `machine ${name}`, kind: 'machine', name, title, points: shown.map((row) => row.of) };
    return [head, ...shown.map((row): Line => ({ key: row.of, kind: 'point', row }))];
  });
}

function passes(
  row: PointRow,
  title: string,
  { text, outcome, rule }: Filters,
  rules: ReadonlyMap<string, ReadonlySet<string>>,
): boolean {
  if (outcome !== '' && row.outcome !== outcome) return false;
  if (rule !== '' && rules.get(row.of)?.has(rule) !== true) return false;
  const written = [row.of, title, row.location, row.direction, row.transducer, row.mount, row.cable, row.input];
  const said = written.join('\n').toLowerCase();
  return text
    .toLowerCase()
    .split(/\s+/)
    .every((word) => said.includes(word));
}

/** The rules that found something at each point; with those only the whole plant can tell, once it is worked out. */
export function rulesAt(plant: PlantView): ReadonlyMap<string, ReadonlySet<string>> {
  const rules = new Map(plant.points.map((row) => [row.of, new Set(row.rules)]));
  for (const { point, rule, weight } of plant.findings) {
    if (point !== undefined && weight !== 'notes') rules.get(point)?.add(rule);
  }
  return rules;
}

/** The coverage of the points shown, counted. */
export interface Coverage {
  readonly points: number;
  /** The points by name, once each is worked out. */
  readonly of: readonly string[] | undefined;
  readonly covered: number;
  readonly uncovered: number;
  readonly waiting: number;
  readonly withoutChain: number;
}

export function coverageOf(lines: readonly Line[]): Coverage {
  const rows = lines.flatMap((line) => (line.kind === 'point' ? [line.row] : []));
  const worked = rows.filter((row) => row.covered !== undefined);
  const covered = worked.reduce((sum, row) => sum + row.covered!, 0);
  return {
    points: rows.length,
    of: worked.length === rows.length ? rows.map((row) => row.of) : undefined,
    covered,
    uncovered: worked.reduce((sum, row) => sum + row.targets, 0) - covered,
    waiting: rows.length - worked.length,
    withoutChain: rows.filter((row) => row.outcome === 'no chain').length,
  };
}
