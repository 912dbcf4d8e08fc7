import type { SheetView } from '../engine/views.ts';
import { OpeningMarkup } from '../parts/opening-markup.tsx';
import { SheetTabs } from '../parts/sheet-tabs.tsx';

/** What follows from the machine as it is stated, one sheet at a time. */
export function MachineSheets({
  machine,
  sheets,
}: {
  readonly machine: string;
  readonly sheets: readonly SheetView[];
}) {
  return (
    <SheetTabs
      title="Sheets of this machine"
      sheets={sheets}
      first={sheets[1]?.name ?? ''}
      content={(name) => (
        <OpeningMarkup
          className="set"
          markup={sheets.find((each) => each.name === name)?.markup ?? ''}
          asked={(place) => ({ is: 'machine sheet', machine, place })}
        />
      )}
    />
  );
}
