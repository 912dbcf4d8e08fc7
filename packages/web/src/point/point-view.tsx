export function PointView(_: { readonly of: string }) {
  return <p className="waiting">Opening…</p>;
}
