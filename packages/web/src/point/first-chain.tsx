import { type FormEvent, useState } from 'react';
import { useAnswer, usePlantStore } from '../app/plant-context.tsx';
import type { PlaceView, PointView } from '../engine/views.ts';

const order: readonly PlaceView['place'][] = ['transducer', 'mount', 'cable', 'input'];

/** A point without a chain: what has to be stated before anything can be judged, in one form. */
export function FirstChain({ point }: { readonly point: PointView }) {
  const store = usePlantStore();
  const [refused, setRefused] = useState<string>();
  const lineParts = useAnswer(({ engine }) => engine.lineParts(), 'line parts') ?? [];
  const begin = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const given = new FormData(event.currentTarget);
    const line = (name: string) => `${name}: ${JSON.stringify(String(given.get(name) ?? ''))}`;
    const between = ['in-line', 'in-line-then'].map((name) => String(given.get(name) ?? '')).filter(Boolean);
    const inLine = between.length === 0 ? [] : [`in-line: ${JSON.stringify(between)}`];
    const yaml = [...[...order, 'cable-length'].map(line), ...inLine].join('\n');
    setRefused(await store.act(`A chain at ${point.name}`, [{ path: [...point.path, 'chain'], yaml }]));
  };
  return (
    <form className="first-chain" onSubmit={(event) => void begin(event)}>
      <h2>Begin a chain</h2>
      <p>
        Nothing is chosen here yet. Pick any parts to begin with: the shortlist below then tells which do better, and
        every one can be swapped under the hand.
      </p>
      {order.map((name) => (
        <label key={name}>
          <span>{name}</span>
          <select name={name} defaultValue={point.places.find((each) => each.place === name)?.chosen}>
            <Choices of={point.places.find((each) => each.place === name)?.choices ?? []} />
          </select>
        </label>
      ))}
      <label>
        <span>cable length, as walked</span>
        <input type="text" name="cable-length" placeholder="for example 25 m" required />
      </label>
      {(
        [
          ['in-line', 'in the line, first'],
          ['in-line-then', 'in the line, then'],
        ] as const
      ).map(([name, words]) => (
        <label key={name}>
          <span>{words}</span>
          <select name={name}>
            <option value="">nothing</option>
            <Choices of={lineParts} />
          </select>
        </label>
      ))}
      <button type="submit" className="main">
        Begin with this chain
      </button>
      {refused === undefined ? undefined : (
        <p className="refused" role="alert">
          Not taken. {refused}
        </p>
      )}
    </form>
  );
}

function Choices({ of }: { readonly of: PlaceView['choices'] }) {
  return of.map((each) => (
    <option key={each.name} value={each.name}>
      {each.name}
      {each.remark === '' ? '' : ` · ${each.remark}`}
    </option>
  ));
}
