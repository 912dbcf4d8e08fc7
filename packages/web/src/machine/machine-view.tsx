export function MachineView(_: { readonly name: string }) {
  return <p className="waiting">Opening…</p>;
}
