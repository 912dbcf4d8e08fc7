export function CatalogueView(_: { readonly part: string | undefined }) {
  return <p className="waiting">Opening…</p>;
}
