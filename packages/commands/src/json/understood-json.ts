import type { UnderstoodTable } from '../import/understood-table.ts';
import type { Imported } from '../text/understood-text.ts';

export function understoodJson(understood: UnderstoodTable, imported: Imported): unknown {
  const { plant, table, exportedIn, tabsNotRead, written } = imported;
  const { kind, carriesExported, cells, rowsMissing, headsUnknown, headsMissing } = understood;
  return {
    plant,
    table,
    ...(exportedIn === undefined ? {} : { exportedIn }),
    document: kind,
    carriesExported,
    cells: cells.map(({ edit, ...told }) => ({ ...told, ...(edit === undefined ? {} : { yaml: edit.yaml }) })),
    rowsMissing,
    headsUnknown,
    headsMissing,
    tabsNotRead,
    written,
  };
}
