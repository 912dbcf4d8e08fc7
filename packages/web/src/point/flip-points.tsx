import { useEffect, useState } from 'react';
import { usePlantState, usePlantStore } from '../app/plant-context.tsx';
import type { FlipView } from '../engine/views.ts';
import { ToldNumber } from '../parts/why.tsx';

type Search = 'not asked' | 'searching' | readonly FlipView[];

/** Every assumption at which the verdict turns; searched when asked for, because it takes seconds. */
export function FlipPoints({ of }: { readonly of: string }) {
  const store = usePlantStore();
  const { generation } = usePlantState();
  const [search, setSearch] = useState<Search>('not asked');
  const [stop, setStop] = useState<() => void>();
  // biome-ignore lint/correctness/useExhaustiveDependencies: flip points of an older text are no longer true
  useEffect(() => setSearch('not asked'), [generation]);
  useEffect(() => stop, [stop]);
  const begin = () => {
    const asked = store.aside((engine) => engine.flips(of));
    setStop(() => asked.stop);
    setSearch('searching');
    void asked.answer.then(setSearch);
  };
  if (search === 'not asked') {
    return (
      <p>
        Which assumption, moved by itself, would turn the verdict on this chain, and at which value?{' '}
        <button type="button" onClick={begin}>
          Search for flip points
        </button>
      </p>
    );
  }
  if (search === 'searching') {
    return (
      <p role="status">
        Moving every assumption two decades either way; this takes some seconds. <progress />{' '}
        <button
          type="button"
          onClick={() => {
            stop?.();
            setSearch('not asked');
          }}
        >
          Stop
        </button>
      </p>
    );
  }
  if (search.length === 0) return <p>No single assumption turns the verdict within two decades of its stated value.</p>;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than the screen is scrolled by key
    <section className="pushed" tabIndex={0} aria-label="Flip points">
      <table>
        <thead>
          <tr>
            <th scope="col">Assumption</th>
            <th scope="col">As stated</th>
            <th scope="col">Turns at</th>
            <th scope="col">Then</th>
            <th scope="col">Because</th>
          </tr>
        </thead>
        <tbody>
          {search.map((each) => (
            <tr key={`${each.of} ${each.what} ${each.flipsAt}`}>
              <th scope="row">
                <bdi>{each.of}</bdi>: {each.what}
              </th>
              <td>
                <ToldNumber why={each.why} what="As stated">
                  {each.stated}
                </ToldNumber>
              </td>
              <td>
                <ToldNumber why={each.why} what="Turns at">
                  {each.flipsAt}
                </ToldNumber>
              </td>
              <td>{each.to}</td>
              <td>{each.decides}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
