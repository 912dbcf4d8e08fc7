import { useState } from 'react';
import { usePlantStore } from '../app/plant-context.tsx';
import type { BesideTyped, RehearsalChoices } from '../engine/rehearsal/rehearsal-views.ts';
import { DefectList } from './defect-list.tsx';

const places = ['transducer', 'mount', 'cable', 'input'] as const;
const nothing: BesideTyped = { parts: {}, cableLength: '', defects: [] };

/** The chain beside: the chosen one with other parts, another length or a defect; or the first other one of the shortlist. */
export function ChainBeside({
  choices,
  typed,
  change,
}: {
  readonly choices: RehearsalChoices;
  readonly typed: BesideTyped | undefined;
  change(typed: BesideTyped | undefined): void;
}) {
  const store = usePlantStore();
  const [looking, setLooking] = useState(false);
  const fromShortlist = async () => {
    setLooking(true);
    const rows = await store.aside((engine) => engine.candidates(choices.of)).answer;
    setLooking(false);
    const other = rows.find((each) => !each.chosen);
    if (other !== undefined) {
      change({ ...(typed ?? nothing), parts: { transducer: other.transducer, mount: other.mount } });
    }
  };
  return (
    <fieldset className="beside">
      <legend>Another chain beside it</legend>
      <label className="tick">
        <input
          type="checkbox"
          checked={typed !== undefined}
          onChange={(event) => change(event.target.checked ? nothing : undefined)}
        />{' '}
        Send the same motion through a second chain
      </label>
      {typed === undefined ? undefined : (
        <>
          <div className="typed-row">
            {places.map((place) => (
              <label key={place}>
                {place}
                <select
                  value={typed.parts[place] ?? ''}
                  onChange={(event) => {
                    const { [place]: _, ...rest } = typed.parts;
                    const chosen = event.target.value;
                    change({ ...typed, parts: chosen === '' ? rest : { ...rest, [place]: chosen } });
                  }}
                >
                  <option value="">as chosen</option>
                  {choices.parts[place].map((name) => (
                    <option key={name}>{name}</option>
                  ))}
                </select>
              </label>
            ))}
            <label>
              length of cable
              <input
                value={typed.cableLength}
                placeholder="as chosen"
                onChange={(event) => change({ ...typed, cableLength: event.target.value })}
              />
            </label>
          </div>
          <button type="button" disabled={looking} onClick={() => void fromShortlist()}>
            {looking ? 'Looking through the shortlist…' : 'Take the best other one of the shortlist'}
          </button>
          <DefectList
            title="Defects of the chain beside"
            kinds={choices.defects}
            typed={typed.defects}
            change={(defects) => change({ ...typed, defects })}
          />
        </>
      )}
    </fieldset>
  );
}
