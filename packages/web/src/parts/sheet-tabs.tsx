import { Tabs } from 'radix-ui';
import type { ReactNode } from 'react';

/** Sheets one at a time under their names; arrow keys go along the names, Enter opens one. */
export function SheetTabs({
  title,
  sheets,
  first,
  content,
}: {
  readonly title: string;
  readonly sheets: readonly { readonly name: string; readonly title: string }[];
  readonly first: string;
  readonly content: (name: string) => ReactNode;
}) {
  return (
    <Tabs.Root className="sheets" defaultValue={first} activationMode="manual">
      <h2>{title}</h2>
      <Tabs.List aria-label={title}>
        {sheets.map((each) => (
          <Tabs.Trigger key={each.name} value={each.name}>
            {each.title}
          </Tabs.Trigger>
        ))}
      </Tabs.List>
      {sheets.map((each) => (
        <Tabs.Content key={each.name} value={each.name} tabIndex={-1}>
          <h3 className="unseen">{each.title}</h3>
          {content(each.name)}
        </Tabs.Content>
      ))}
    </Tabs.Root>
  );
}
