import type { UnderstoodTable } from '../import/understood-table.ts';
import type { Imported } from '../text/understood-text.ts';

export function understoodJson(understood: UnderstoodTable, { plant, table, exportedIn, written }: Imported): unknown {
  const { kind, carriesExported, cells, rowsMissing, headsUnknown } = understood;
  return {
    plant,
    table,
    ...(exportedIn === undefined ? {} : { exportedIn }),
    document: kind,
    carriesExported,
    cells: cells.map(({ edit, ...told }) => ({ ...told, ...(edit === undefined ? {} : { yaml: edit.yaml }) })),
    rowsMissing,
    headsUnknown,
    written,
  };
}
