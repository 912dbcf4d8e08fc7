export function WorkingsView(_: { readonly name: string | undefined }) {
  return <p className="waiting">Opening…</p>;
}
