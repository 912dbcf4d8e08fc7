import { useAnswer } from '../app/plant-context.tsx';
import type { EntryView, FieldView, PartView } from '../engine/catalogue/views.ts';

/** Two to four entries of one shelf beside each other; what differs is marked. */
export function Compared({
  entries,
  onPutAway,
}: {
  readonly entries: readonly EntryView[];
  readonly onPutAway: () => void;
}) {
  const parts = useAnswer(
    async (store) => {
      const found = await Promise.all(entries.map(({ name }) => store.engine.partSheets(name)));
      return entries.flatMap(({ shelf }, index) => found[index]!.filter((each) => each.shelf === shelf));
    },
    `compared ${JSON.stringify(entries.map(({ shelf, name }) => [shelf, name]))}`,
  );
  if (parts === undefined) return <p className="waiting">Opening…</p>;
  const rows = rowsOf(parts);
  return (
    <article className="compared">
      <h2 id="compared-title">Side by side</h2>
      <p className="hands">
        <button type="button" onClick={onPutAway}>
          Put away
        </button>
      </p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than the screen is scrolled by key */}
      <section className="pushed" tabIndex={0} aria-labelledby="compared-title">
        <table>
          <thead>
            <tr>
              <th scope="col">Field</th>
              {parts.map((each) => (
                <th scope="col" key={each.name}>
                  <bdi className="compared-name" title={each.name}>
                    {each.name}
                  </bdi>
                  <span className="quiet">{each.kindName}</span>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map(({ key, meaning, values, differ }) => (
              <tr key={key} className={differ ? 'differs' : undefined}>
                <th scope="row">
                  <span aria-hidden="true">{differ ? '≠' : ''}</span>
                  {meaning}
                </th>
                {values.map((value, index) => (
                  <td key={parts[index]!.name}>
                    <bdi>{value}</bdi>
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </article>
  );
}

/** Every field that one of them states or ought to, in the order of their sheets. */
function rowsOf(parts: readonly PartView[]) {
  const fields = new Map<string, FieldView>();
  for (const each of parts.flatMap((part) => part.fields)) if (!fields.has(each.key)) fields.set(each.key, each);
  return [...fields.values()].flatMap(({ key, meaning }) => {
    const found = parts.map((part) => part.fields.find((each) => each.key === key));
    if (found.every((each) => each === undefined || (each.optional && each.state === 'left out'))) return [];
    const values = found.map(told);
    return [{ key, meaning, values, differ: new Set(values).size > 1 }];
  });
}

function told(field: FieldView | undefined): string {
  if (field === undefined) return 'not asked of its kind';
  if (field.state === 'stated') return field.shown;
  return field.state === 'left out' && field.optional ? 'left out' : '? not stated';
}
