/** A drawing or table the documents set; every text of a file in it was made inert where it was put in. */
export function Markup({ markup, className }: { readonly markup: string; readonly className?: string }) {
  // biome-ignore lint/security/noDangerouslySetInnerHtml: made by our own typesetting, which escapes what is not its own
  return <div className={className} dangerouslySetInnerHTML={{ __html: markup }} />;
}
