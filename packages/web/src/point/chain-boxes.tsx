import { useState } from 'react';
import type { HandleView, PlaceView, PointView } from '../engine/views.ts';
import type { Hands } from './hands.ts';
import { NumberHand } from './number-hand.tsx';
import { useHeld, useTold } from './use-hands.ts';

const titles: Readonly<Record<PlaceView['place'], string>> = {
  mount: 'Mount',
  transducer: 'Transducer',
  cable: 'Cable',
  input: 'Input',
};

/** What an engineer reaches for first; the rest stands behind a press. */
const inSight = new Set([
  'surface temperature',
  'length',
  'sensitivity',
  'mounted resonance',
  'supply voltage',
  'voltage',
]);

const order: readonly PlaceView['place'][] = ['mount', 'transducer', 'cable', 'input'];

/** The chain in the order of its signal: each place with its part, and the numbers of the part for the hand to move. */
export function ChainBoxes({ point, hands }: { readonly point: PointView; readonly hands: Hands }) {
  const parts = useHeld(hands, ({ asked }) => asked.parts);
  // Numbers stand with the parts they were told of, which a hand may just have swapped.
  const { asked, trial } = useTold(hands);
  const { handles } = trial;
  const places = order.flatMap((name) => point.places.find((each) => each.place === name) ?? []);
  const inPlace = new Set<string>();
  const boxes = places.map((place) => {
    const part = parts[place.place] ?? place.chosen;
    const toldOf = asked.parts[place.place] ?? place.chosen;
    const numbers = handles.filter((each) => belongs(each, toldOf));
    for (const each of numbers) inPlace.add(each.key);
    return { place, part, numbers };
  });
  const rest = handles.filter((each) => !inPlace.has(each.key));
  return (
    <div className="boxes">
      <Box title="Where it stands" handles={rest.filter((each) => each.what === 'surface temperature')} hands={hands} />
      {boxes.map(({ place, part, numbers }) => (
        <Box key={place.place} title={titles[place.place]} handles={numbers} hands={hands}>
          <select
            aria-label={titles[place.place]}
            value={part ?? ''}
            onChange={(event) => hands.place(place.place, event.target.value)}
          >
            {part === undefined ? <option value="">not chosen</option> : undefined}
            {place.choices.map((each) => (
              <option key={each.name} value={each.name} title={each.remark}>
                {each.name}
                {each.remark === '' ? '' : ` · ${each.remark}`}
              </option>
            ))}
          </select>
        </Box>
      ))}
      <Box
        title="In the line"
        handles={rest.filter((each) => each.what !== 'surface temperature' && !each.of.startsWith('target '))}
        hands={hands}
      >
        <LineParts point={point} hands={hands} />
      </Box>
      <Box title="What it must capture" handles={rest.filter((each) => each.of.startsWith('target '))} hands={hands} />
    </div>
  );
}

/** Supplies, barriers and isolators between transducer and input, each to be swapped, taken out, or added to. */
function LineParts({ point, hands }: { readonly point: PointView; readonly hands: Hands }) {
  const line = useHeld(hands, ({ asked }) => asked.inLine) ?? point.inLine;
  const options = point.lineChoices.map((each) => (
    <option key={each.name} value={each.name} title={each.remark}>
      {each.name}
      {each.remark === '' ? '' : ` · ${each.remark}`}
    </option>
  ));
  const withPart = (at: number, name: string) => {
    const next = name === '' ? line.filter((_, index) => index !== at) : line.with(at, name);
    hands.line(next);
  };
  return (
    <div className="line-parts">
      {line.map((name, at) => (
        <select
          // biome-ignore lint/suspicious/noArrayIndexKey: a place in the line is its number, whatever part stands there
          key={at}
          aria-label={`Part ${at + 1} in the line`}
          value={name}
          onChange={(event) => withPart(at, event.target.value)}
        >
          {options}
          <option value="">take it out</option>
        </select>
      ))}
      <select aria-label="Add to the line" value="" onChange={(event) => hands.line([...line, event.target.value])}>
        <option value="">{line.length === 0 ? 'nothing; add a part' : 'add a part'}</option>
        {options}
      </select>
    </div>
  );
}

function belongs(handle: HandleView, part: string | undefined): boolean {
  return part !== undefined && (handle.of === part || handle.of.endsWith(` ${part}`));
}

function Box({
  title,
  handles,
  hands,
  children,
}: {
  readonly title: string;
  readonly handles: readonly HandleView[];
  readonly hands: Hands;
  readonly children?: React.ReactNode;
}) {
  const [open, setOpen] = useState(false);
  const moved = useTold(hands).asked.moved;
  if (handles.length === 0 && children === undefined) return undefined;
  const first = handles.filter((each) => inSight.has(each.what) || (moved[each.key] ?? 0) !== 0);
  const others = handles.filter((each) => !first.includes(each));
  return (
    <div className="box">
      <div className="box-head">
        <h3>{title}</h3>
        {children}
        {others.length === 0 ? undefined : (
          <button type="button" className="plain" aria-expanded={open} onClick={() => setOpen(!open)}>
            {open ? 'Hide' : 'Move'} {others.length} {first.length === 0 ? '' : 'more '}
            {others.length === 1 ? 'number' : 'numbers'}
          </button>
        )}
      </div>
      {(open ? handles : first).map((each) => (
        <NumberHand key={each.key} handle={each} hands={hands} />
      ))}
    </div>
  );
}
