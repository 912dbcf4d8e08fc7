import { useAnswer } from '../app/plant-context.tsx';
import type { PointView } from '../engine/views.ts';
import { OpeningMarkup } from '../parts/opening-markup.tsx';
import { SheetTabs } from '../parts/sheet-tabs.tsx';
import { Candidates } from './candidates.tsx';
import { FlipPoints } from './flip-points.tsx';

/** The sheets of the point as the file states it, one at a time. */
export function PointSheets({ point }: { readonly point: PointView }) {
  const own = useAnswer((store) => store.engine.sheets(point.of), `sheets of ${point.of}`) ?? [];
  const sheets = [
    { name: 'candidates', title: 'Shortlist' },
    { name: 'flips', title: 'Flip points' },
    ...own.filter((each) => !['chart', 'candidates'].includes(each.name)),
  ];
  const content = (name: string) => {
    if (name === 'candidates') return <Candidates point={point} />;
    return name === 'flips' ? <FlipPoints of={point.of} /> : <Sheet of={point.of} name={name} />;
  };
  return <SheetTabs title="Sheets of this point" sheets={sheets} first="candidates" content={content} />;
}

function Sheet({ of, name }: { readonly of: string; readonly name: string }) {
  const sheet = useAnswer(async (store) => ({ found: await store.engine.sheet(of, name) }), `${of} ${name}`);
  if (sheet === undefined) return <p className="waiting">Setting the sheet…</p>;
  if (sheet.found === undefined)
    return <p className="quiet">Nothing of this kind is stated or follows at this point.</p>;
  return (
    <OpeningMarkup
      className="set"
      markup={sheet.found.markup}
      asked={(place) => ({ is: 'point sheet', of, sheet: name, place })}
    />
  );
}
