import { useState } from 'react';
import { Link } from 'wouter';
import { pointAddress } from '../app/address.ts';
import { useAnswer, useFarAlong, usePlantStore } from '../app/plant-context.tsx';
import type { FieldView, PartEdits, PartView, ShelfView } from '../engine/catalogue/views.ts';
import { Cited } from '../parts/cited.tsx';
import { Letter } from '../parts/formula.tsx';
import { useKept } from '../parts/use-kept.ts';
import { useShown } from '../parts/use-shown.ts';
import { PartForm } from './part-form.tsx';

/** Every part of a name; as a rule one. */
export function PartSheets({ name, shelves }: { readonly name: string; readonly shelves: readonly ShelfView[] }) {
  const far = useFarAlong();
  const parts = useKept(useAnswer((store) => store.engine.partSheets(name), `part ${name}, ${far}`));
  if (parts === undefined) return <p className="waiting">Opening…</p>;
  if (parts.length === 0) {
    return (
      <>
        <h2>There is no entry of that name</h2>
        <p>No catalogue of this plant has it, nor the plant itself.</p>
      </>
    );
  }
  return parts.map((each) => <PartSheet key={each.shelf} part={each} shelves={shelves} />);
}

const owners: Readonly<Record<PartView['owner'], string>> = {
  catalogue: 'from a catalogue',
  plant: 'of this plant alone',
  changed: 'changed for this plant; the catalogue has another of this name',
};

function PartSheet({ part, shelves }: { readonly part: PartView; readonly shelves: readonly ShelfView[] }) {
  const [changing, setChanging] = useState(false);
  useShown(changing ? `${part.name} changing` : part.name);
  if (changing) return <PartForm shelves={shelves} changes={part} onDone={() => setChanging(false)} />;
  const stands = part.fields.filter((each) => each.state !== 'left out' || !each.optional);
  const leftOut = part.fields.filter((each) => each.state === 'left out' && each.optional);
  return (
    <article className="part">
      <h2>
        <bdi>{part.name}</bdi>
      </h2>
      <p className="quiet">
        {part.kindName}, {owners[part.owner]}
      </p>
      <div className="hands part-acts">
        <button type="button" onClick={() => setChanging(true)}>
          {part.owner === 'catalogue' ? 'Change it for this plant' : 'Change it'}
        </button>
        {part.owner === 'catalogue' ? undefined : <Removal part={part} />}
      </div>
      <section aria-labelledby={`sheet-${part.shelf}`}>
        <h3 id={`sheet-${part.shelf}`}>Data sheet</h3>
        <Missing count={stands.filter((each) => each.state !== 'stated').length} />
        <div className="folds">
          <table className="sheet-table">
            <thead>
              <tr>
                <th scope="col">What it is</th>
                <th scope="col">
                  <span className="unseen">Letter</span>
                </th>
                <th scope="col">Value</th>
                <th scope="col">How known</th>
              </tr>
            </thead>
            <tbody>
              {stands.map((each) => (
                <FieldRow key={each.key} field={each} />
              ))}
            </tbody>
          </table>
        </div>
        {leftOut.length === 0 ? undefined : (
          <details>
            <summary>{leftOut.length} more may be stated</summary>
            <ul className="left-out">
              {leftOut.map((each) => (
                <li key={each.key}>{each.meaning}</li>
              ))}
            </ul>
          </details>
        )}
      </section>
      <section aria-labelledby={`uses-${part.shelf}`}>
        <h3 id={`uses-${part.shelf}`}>Where it is used</h3>
        {part.uses.length === 0 ? <p className="quiet">At no point of this plant.</p> : <Uses uses={part.uses} />}
      </section>
      <section aria-labelledby={`of-kind-${part.shelf}`}>
        <h3 id={`of-kind-${part.shelf}`}>Whose model of the kind it is</h3>
        <Cited sources={part.sources} />
      </section>
    </article>
  );
}

function Missing({ count }: { readonly count: number }) {
  if (count === 0) return undefined;
  return (
    <p className="unknowns">
      ? {count === 1 ? 'One value is' : `${count} values are`} not stated: what rests on {count === 1 ? 'it' : 'them'}{' '}
      cannot be told.
    </p>
  );
}

function FieldRow({ field }: { readonly field: FieldView }) {
  const { state, meaning, symbol, shown, status, source, ask, between, leavesOpen } = field;
  return (
    <tr className={state === 'stated' ? undefined : 'not-stated'}>
      <td data-head="">{meaning}</td>
      <td data-head="">{symbol === undefined ? undefined : <Letter text={symbol} />}</td>
      <td data-head="Value">
        {state === 'stated' ? (
          <bdi>{shown}</bdi>
        ) : (
          <>
            <span className="unknown">? not stated</span>
            {between === '' ? '' : `, believed within ${between}`}
            {ask === '' ? '' : `; ask ${ask}`}
            {leavesOpen.length === 0 ? undefined : (
              <span className="open">Cannot be told without it: {leavesOpen.join('; ')}.</span>
            )}
          </>
        )}
      </td>
      <td data-head="How known">
        {status === '' && source === '' ? (
          <span className="quiet">{state === 'stated' ? 'not said' : ''}</span>
        ) : (
          <bdi>{[status, source].filter(Boolean).join(': ')}</bdi>
        )}
      </td>
    </tr>
  );
}

function Uses({ uses }: { readonly uses: PartView['uses'] }) {
  return (
    <ul className="uses">
      {uses.map(({ of, place }) => (
        <li key={`${of} ${place}`}>
          <Link href={pointAddress(of)}>
            <bdi>{of}</bdi>
          </Link>{' '}
          <span className="quiet">as {place}</span>
        </li>
      ))}
    </ul>
  );
}

/** Takes the plant's own entry away; one of a catalogue that it hid shows again. */
function Removal({ part }: { readonly part: PartView }) {
  const store = usePlantStore();
  const [refused, setRefused] = useState<string>();
  const remove = async () => {
    const answer: PartEdits = await store.engine.partRemoval(part.shelf, part.name);
    setRefused('edits' in answer ? await store.act(answer.label, answer.edits) : undefined);
  };
  return (
    <>
      <button type="button" onClick={() => void remove()}>
        {part.owner === 'changed' ? 'Back to the entry of the catalogue' : 'Take it away'}
      </button>
      <p className="words refused" aria-live="polite">
        {refused ?? ''}
      </p>
    </>
  );
}
