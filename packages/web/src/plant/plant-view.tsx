export function PlantView() {
  return <p className="waiting">Opening…</p>;
}
