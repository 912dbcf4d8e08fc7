import '../style/cited.css';
import type { CitedView } from '../engine/working-views.ts';

/** Sources with how it is known what they say. */
export function Cited({ sources }: { readonly sources: readonly CitedView[] }) {
  if (sources.length === 0) return <p className="quiet">None: our own invariant.</p>;
  return (
    <ul className="cited">
      {sources.map(({ title, place, how, note }, index) => (
        <li key={`${title} ${place ?? ''} ${how}`}>
          {title}
          {place === undefined ? '' : `, ${place}`} <span className="how">{how}</span>
          {note === '' || sources.findIndex((each) => each.title === title) < index ? undefined : (
            <p className="quiet">{note}</p>
          )}
        </li>
      ))}
    </ul>
  );
}
