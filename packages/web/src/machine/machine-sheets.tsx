import { Tabs } from 'radix-ui';
import type { SheetView } from '../engine/views.ts';
import { Markup } from '../parts/markup.tsx';

/** What follows from the machine as it is stated, one sheet at a time. */
export function MachineSheets({ sheets }: { readonly sheets: readonly SheetView[] }) {
  return (
    <Tabs.Root className="sheets" defaultValue={sheets[1]?.name ?? ''} activationMode="manual">
      <h2>Sheets of this machine</h2>
      <Tabs.List aria-label="Sheets of this machine">
        {sheets.map((each) => (
          <Tabs.Trigger key={each.name} value={each.name}>
            {each.title}
          </Tabs.Trigger>
        ))}
      </Tabs.List>
      {sheets.map((each) => (
        <Tabs.Content key={each.name} value={each.name} tabIndex={-1}>
          <Markup className="set" markup={each.markup} />
        </Tabs.Content>
      ))}
    </Tabs.Root>
  );
}
