import { type FormEvent, useState } from 'react';
import type { MachineBench } from '../engine/machine/views.ts';
import { SheetDialog } from '../plant/sheet-dialog.tsx';
import { useBuild } from './use-build.ts';

interface HearsButtonOptions {
  readonly bench: MachineBench;
  readonly point: string;
  readonly hears: readonly string[];
}

/** What a point is there to listen to, by shafts and elements of the train; all of it where nothing is ticked. */
export function HearsButton({ bench, point, hears }: HearsButtonOptions) {
  const [chosen, setChosen] = useState<ReadonlySet<string>>();
  const [refused, setRefused] = useState<string>();
  const build = useBuild();
  const elements = bench.forms.flatMap(({ element, kind }) =>
    element === undefined ? [] : [[element.name, kind] as const],
  );
  const shafts = bench.shafts.map(({ name }) => [name, 'shaft'] as const);
  const all = [...new Map([...shafts, ...elements.filter(([name]) => !shafts.some(([each]) => each === name))])];
  const take = async (event: FormEvent) => {
    event.preventDefault();
    const words = await build({ act: 'hear', machine: bench.name, point, hears: [...(chosen ?? [])] });
    if (words === undefined) setChosen(undefined);
    setRefused(words);
  };
  return (
    <>
      <button type="button" aria-label={`Listens to… point ${point}`} onClick={() => setChosen(new Set(hears))}>
        Listens to…
      </button>
      {chosen === undefined ? undefined : (
        <SheetDialog title={`What ${point} listens to`} close={() => setChosen(undefined)}>
          <form onSubmit={(event) => void take(event)} className="renaming">
            <div className="dialog-body removal">
              <p>
                Lines of these shafts and elements are looked for at this point, and set points and spectra are made for
                them. Nothing ticked means the whole train.
              </p>
              <ul className="hears-list">
                {all.map(([name, kind]) => (
                  <li key={name}>
                    <label className="tick">
                      <input
                        type="checkbox"
                        checked={chosen.has(name)}
                        onChange={(event) => {
                          const next = new Set(chosen);
                          if (event.target.checked) next.add(name);
                          else next.delete(name);
                          setChosen(next);
                        }}
                      />{' '}
                      <bdi>{name}</bdi> <span className="quiet">{kind}</span>
                    </label>
                  </li>
                ))}
              </ul>
            </div>
            <footer>
              <p role="alert" className="refused">
                {refused === undefined ? '' : `✗ ${refused}`}
              </p>
              <button type="submit" className="main">
                {chosen.size === 0 ? 'Listen to the whole train' : `Listen to ${chosen.size} of ${all.length}`}
              </button>
            </footer>
          </form>
        </SheetDialog>
      )}
    </>
  );
}
