import '../style/shelved.css';
import '../style/catalogue.css';
import { useState } from 'react';
import { Link, useLocation } from 'wouter';
import { partAddress } from '../app/address.ts';
import { useAnswer, useFarAlong } from '../app/plant-context.tsx';
import type { EntryView, ShelfView } from '../engine/catalogue/views.ts';
import { SearchField } from '../parts/search-field.tsx';
import { useKept } from '../parts/use-kept.ts';
import { useShown } from '../parts/use-shown.ts';
import { Compared } from './compared.tsx';
import { PartForm } from './part-form.tsx';
import { PartSheets } from './part-sheet.tsx';
import { shelfTitles } from './shelf-titles.ts';

/** As many as fit beside each other. */
const mostCompared = 4;

/** Every part at hand by shelf; the chosen one with its whole data sheet, or several side by side. */
export function CatalogueView({ part }: { readonly part: string | undefined }) {
  const far = useFarAlong();
  const shelves = useKept(useAnswer((store) => store.engine.catalogue(), `catalogue, ${far}`));
  const [, go] = useLocation();
  const [sought, setSought] = useState('');
  const [making, setMaking] = useState(false);
  const [listing, setListing] = useState(false);
  const [compared, setCompared] = useState<readonly EntryView[]>([]);
  useShown(shelves === undefined ? undefined : making ? ' ' : part);
  if (shelves === undefined) return <p className="waiting">Opening…</p>;
  const toggle = (entry: EntryView) => {
    setListing(false);
    setCompared((before) =>
      before.some((each) => same(each, entry)) ? before.filter((each) => !same(each, entry)) : [...before, entry],
    );
  };
  const side = making ? 'making' : compared.length > 1 ? 'comparing' : part === undefined ? 'nothing' : 'one';
  return (
    <div className={`shelved ${side === 'nothing' || listing ? 'unchosen' : 'chosen'}`}>
      <nav className="shelf-list" aria-label="Catalogue">
        <h1>Catalogue</h1>
        <SearchField what="the catalogue" sought={sought} onSought={setSought} />
        <p className="hands shelf-acts">
          <button type="button" onClick={() => setMaking(true)}>
            New entry
          </button>
          <span className="quiet">Tick two to four to compare.</span>
        </p>
        <EntryList
          shelves={found(shelves, sought)}
          chosen={part}
          compared={compared}
          onChosen={() => setMaking(false)}
          onCompared={toggle}
        />
      </nav>
      <div className="shelf-sheet">
        {side === 'nothing' ? undefined : (
          <p className="back">
            <Link
              href="/catalogue"
              onClick={() => {
                setMaking(false);
                setCompared([]);
              }}
            >
              The whole catalogue
            </Link>
            {side === 'comparing' && compared.length < mostCompared ? (
              <button type="button" className="plain" onClick={() => setListing(true)}>
                Tick another
              </button>
            ) : undefined}
          </p>
        )}
        {side === 'making' ? (
          <PartForm
            shelves={shelves}
            changes={undefined}
            onDone={(name) => {
              setMaking(false);
              if (name !== undefined) go(partAddress(name));
            }}
          />
        ) : side === 'comparing' ? (
          <Compared entries={compared} onPutAway={() => setCompared([])} />
        ) : part === undefined ? (
          <p className="note">
            The parts of the catalogues this plant names, and its own. An entry that is changed here is kept in the
            plant file under the same name; the catalogue stays as it is.
          </p>
        ) : (
          <PartSheets key={part} name={part} shelves={shelves} />
        )}
      </div>
    </div>
  );
}

function same(a: EntryView, b: EntryView): boolean {
  return a.shelf === b.shelf && a.name === b.name;
}

function found(shelves: readonly ShelfView[], sought: string): readonly ShelfView[] {
  const words = sought.toLowerCase().split(/\s+/).filter(Boolean);
  return shelves
    .map((shelf) => ({
      ...shelf,
      entries: shelf.entries.filter((each) => words.every((word) => each.words.includes(word))),
    }))
    .filter((shelf) => shelf.entries.length > 0);
}

function EntryList({
  shelves,
  chosen,
  compared,
  onChosen,
  onCompared,
}: {
  readonly shelves: readonly ShelfView[];
  readonly chosen: string | undefined;
  readonly compared: readonly EntryView[];
  readonly onChosen: () => void;
  readonly onCompared: (entry: EntryView) => void;
}) {
  if (shelves.length === 0) return <p className="quiet">Nothing is called that.</p>;
  const shelf = compared[0]?.shelf;
  return shelves.map((each) => (
    <section key={each.shelf}>
      <h2>{shelfTitles[each.shelf]}</h2>
      <ul>
        {each.entries.map((entry) => {
          const ticked = compared.some((one) => same(one, entry));
          const full = compared.length >= mostCompared || (shelf !== undefined && shelf !== entry.shelf);
          return (
            <li key={entry.name} className="entry">
              <label className="tick">
                <input
                  type="checkbox"
                  checked={ticked}
                  disabled={full && !ticked}
                  onChange={() => onCompared(entry)}
                  aria-label={`Compare ${entry.name}`}
                />
              </label>
              <Link
                href={partAddress(entry.name)}
                aria-current={entry.name === chosen ? 'page' : undefined}
                onClick={onChosen}
                title={entry.name}
              >
                <bdi className="entry-name">{entry.name}</bdi>
                <span className="quiet entry-kind">{entry.remark || entry.kindName}</span>
                <span className="quiet entry-state">{stateOf(entry)}</span>
              </Link>
            </li>
          );
        })}
      </ul>
    </section>
  ));
}

function stateOf({ owner, missing, used }: EntryView): string {
  return [
    owner === 'plant' ? 'of this plant' : owner === 'changed' ? 'changed for this plant' : '',
    used === 0 ? '' : used === 1 ? 'at 1 point' : `at ${used} points`,
    missing === 0 ? '' : `? ${missing} not stated`,
  ]
    .filter(Boolean)
    .join(' · ');
}
