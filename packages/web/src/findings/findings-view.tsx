export function FindingsView() {
  return <p className="waiting">Opening…</p>;
}
