const most = 40;

/** Each on a line of its own; of very many the first, and how many more. */
export function Listed({ words }: { readonly words: readonly string[] }) {
  return (
    <ul>
      {words.slice(0, most).map((each) => (
        <li key={each}>
          <bdi>{each}</bdi>
        </li>
      ))}
      {words.length > most ? <li className="quiet">and {words.length - most} more.</li> : undefined}
    </ul>
  );
}
