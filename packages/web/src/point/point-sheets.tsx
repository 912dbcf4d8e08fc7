import { Tabs } from 'radix-ui';
import { useState } from 'react';
import { useAnswer } from '../app/plant-context.tsx';
import type { PointView } from '../engine/views.ts';
import { Markup } from '../parts/markup.tsx';
import { Candidates } from './candidates.tsx';
import { FlipPoints } from './flip-points.tsx';

/** The sheets of the point as the file states it, one at a time. */
export function PointSheets({ point }: { readonly point: PointView }) {
  const sheets = [
    { name: 'candidates', title: 'Shortlist' },
    { name: 'flips', title: 'Flip points' },
    ...point.sheets.filter((each) => !['chart', 'candidates'].includes(each.name)),
  ];
  const [shown, setShown] = useState('candidates');
  return (
    <Tabs.Root className="sheets" value={shown} onValueChange={setShown} activationMode="manual">
      <h2>Sheets of this point</h2>
      <Tabs.List aria-label="Sheets of this point">
        {sheets.map((each) => (
          <Tabs.Trigger key={each.name} value={each.name}>
            {each.title}
          </Tabs.Trigger>
        ))}
      </Tabs.List>
      {sheets.map((each) => (
        <Tabs.Content key={each.name} value={each.name} tabIndex={-1}>
          <h3 className="unseen">{each.title}</h3>
          {each.name === 'candidates' ? (
            <Candidates point={point} />
          ) : each.name === 'flips' ? (
            <FlipPoints of={point.of} />
          ) : (
            <Sheet of={point.of} name={each.name} />
          )}
        </Tabs.Content>
      ))}
    </Tabs.Root>
  );
}

function Sheet({ of, name }: { readonly of: string; readonly name: string }) {
  const sheet = useAnswer(async (store) => ({ found: await store.engine.sheet(of, name) }), `${of} ${name}`);
  if (sheet === undefined) return <p className="waiting">Setting the sheet…</p>;
  if (sheet.found === undefined)
    return <p className="quiet">Nothing of this kind is stated or follows at this point.</p>;
  return <Markup className="set" markup={sheet.found.markup} />;
}
