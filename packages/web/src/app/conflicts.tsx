import { usePlantState, usePlantStore } from './plant-context.tsx';

/** What another program wrote in place of what was typed here: nothing of it is lost while this stands. */
export function Conflicts() {
  const { conflicts } = usePlantState();
  const store = usePlantStore();
  if (conflicts.length === 0) return undefined;
  return (
    <section className="conflicts" role="alert" aria-label="Conflicts">
      <p>
        Another program changed the same values. The file has theirs; yours is kept here until you have looked at it,
        and in the history under Undo.
      </p>
      <table>
        <thead>
          <tr>
            <th scope="col">Place</th>
            <th scope="col">Yours</th>
            <th scope="col">Theirs, in the file</th>
          </tr>
        </thead>
        <tbody>
          {conflicts.map((each) => (
            <tr key={each.path}>
              <td>{each.path}</td>
              <td>{each.mine ?? 'taken away'}</td>
              <td>{each.theirs ?? 'taken away'}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <button type="button" onClick={() => store.settleConflicts()}>
        I have looked at them
      </button>
    </section>
  );
}
