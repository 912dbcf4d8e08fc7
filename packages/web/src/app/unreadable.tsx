/** Something that could not be read, in the words of whoever tried. */
export function Unreadable({ title, message }: { readonly title: string; readonly message: string }) {
  return (
    <section className="unreadable" role="alert">
      <h1>{title}</h1>
      <pre>{message}</pre>
      <p>The file on disk was not changed. Mend it there; this page takes the mended file by itself.</p>
    </section>
  );
}
