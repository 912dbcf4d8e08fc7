/** Narrows a list while somebody types. `what` completes 'Search …'. */
export function SearchField({
  what,
  sought,
  onSought,
}: {
  readonly what: string;
  readonly sought: string;
  readonly onSought: (sought: string) => void;
}) {
  return (
    <input
      type="search"
      className="seek"
      aria-label={`Search ${what}`}
      placeholder="Search"
      value={sought}
      onChange={(event) => onSought(event.target.value)}
    />
  );
}
