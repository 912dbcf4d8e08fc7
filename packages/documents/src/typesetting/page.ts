import { asMarkup, type Html, html, markupOf } from './html.ts';
import { cssString, cut, inert } from './inert-text.ts';
import { pageStyle } from './page-style.ts';

/** What every page of a document says of itself. */
export interface Page {
  readonly title: string;
  /** At the foot of every sheet: document, revision, hash. */
  readonly foot: string;
  readonly body: Html;
}

/** The same with a body that comes piece by piece. */
export interface LongPage extends Omit<Page, 'body'> {
  readonly body: Iterable<Html>;
}

/** Nothing is loaded, nothing runs: the file is what it shows, for as long as browsers read HTML. */
const policy = "default-src 'none'; style-src 'unsafe-inline'";

/** One self-contained HTML file. */
export function page({ body, ...rest }: Page): string {
  return [...pageInPieces({ ...rest, body: [body] })].join('');
}

/** The same piece by piece, for a page too long to be held. */
export function* pageInPieces({ title, foot, body }: LongPage): Generator<string> {
  const sheet = `@page{size:A4;margin:16mm 15mm 19mm;
@bottom-left{content:${cssString(cut(foot, 110))};font:7.5pt system-ui,sans-serif;color:#444;vertical-align:top;padding-top:4mm}
@bottom-right{content:counter(page) " / " counter(pages);font:7.5pt system-ui,sans-serif;color:#444;vertical-align:top;padding-top:4mm}}`;
  const style = asMarkup(`<style>${pageStyle}${sheet}\n</style>`);
  yield markupOf(html`<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<title>${inert(cut(title, 120))}</title>
${style}
</head>
<body>
<main>
`);
  for (const piece of body) yield markupOf(piece);
  yield markupOf(html`
</main>
</body>
</html>
`);
}
