import '../style/shelved.css';
import '../style/workings.css';
import { useState } from 'react';
import { Link } from 'wouter';
import { useAnswer } from '../app/plant-context.tsx';
import type { WorkingShelf } from '../engine/working-views.ts';
import { SearchField } from '../parts/search-field.tsx';
import { useShown } from '../parts/use-shown.ts';
import { WorkingSheet } from './working-sheet.tsx';

/** What each room of formulas is about, as the trade says it. */
const roomTitles: Readonly<Record<string, string>> = {
  uncertainty: 'How sure a number is',
  signal: 'Signals and spectra',
  machine: 'What a machine brings',
  demand: 'Limits of vibration',
  chain: 'Transducers, mounts, cables, inputs',
  'hazardous-area': 'Hazardous areas',
  wiring: 'Wiring and hum',
  alarm: 'Alarms and trips',
};

/** Every formula as a calculator: the list at the left, the chosen one beside it. */
export function WorkingsView({ name }: { readonly name: string | undefined }) {
  const shelves = useAnswer((store) => store.engine.workings(), 'workings');
  const [sought, setSought] = useState('');
  useShown(shelves === undefined ? undefined : name);
  if (shelves === undefined) return <p className="waiting">Opening…</p>;
  const known = shelves.some((each) => each.workings.some((one) => one.name === name));
  return (
    <div className={`shelved ${name === undefined ? 'unchosen' : 'chosen'}`}>
      <nav className="shelf-list" aria-label="Workings">
        <h1>Workings</h1>
        <SearchField what="workings" sought={sought} onSought={setSought} />
        <WorkingList shelves={found(shelves, sought)} chosen={name} />
      </nav>
      <div className="shelf-sheet">
        {name === undefined ? (
          <p className="note">
            Every formula the design is made of, to be worked by itself: type values with their units, in whatever unit
            they come. Nothing here changes the plant.
          </p>
        ) : known ? (
          <>
            <p className="back">
              <Link href="/workings">All workings</Link>
            </p>
            <WorkingSheet key={name} name={name} />
          </>
        ) : (
          <h2>There is no working of that name</h2>
        )}
      </div>
    </div>
  );
}

/** Those in which every word that is sought begins or stands somewhere. */
function found(shelves: readonly WorkingShelf[], sought: string): readonly WorkingShelf[] {
  const words = sought.toLowerCase().split(/\s+/).filter(Boolean);
  return shelves
    .map((shelf) => ({
      ...shelf,
      workings: shelf.workings.filter((each) => words.every((word) => each.words.includes(word))),
    }))
    .filter((shelf) => shelf.workings.length > 0);
}

function WorkingList({
  shelves,
  chosen,
}: {
  readonly shelves: readonly WorkingShelf[];
  readonly chosen: string | undefined;
}) {
  if (shelves.length === 0) return <p className="quiet">Nothing is called that.</p>;
  return shelves.map(({ room, workings }) => (
    <section key={room}>
      <h2>{roomTitles[room] ?? room}</h2>
      <ul>
        {workings.map((each) => (
          <li key={each.name}>
            <Link href={`/workings/${each.name}`} aria-current={each.name === chosen ? 'page' : undefined}>
              {each.title}
            </Link>
          </li>
        ))}
      </ul>
    </section>
  ));
}
