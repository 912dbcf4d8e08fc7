import { extname } from 'node:path';
import type { Context, Hono } from 'hono';
import { stream } from 'hono/streaming';
import type { PlantFile } from '../plant-on-disk.ts';
import { besidePlant, issuedFile, issuedRevisions, issuedTexts } from './issued-folders.ts';
import { issuing } from './issuing.ts';
import type { IssueAsked, IssueWord } from './protocol.ts';

// A document that is issued brings its style along and runs nothing.
const documentPolicy = [
  "default-src 'none'",
  "style-src 'unsafe-inline'",
  'img-src data:',
  'font-src data:',
  "object-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

const types: Readonly<Record<string, string>> = {
  '.csv': 'text/csv; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.json': 'application/json',
  '.pdf': 'application/pdf',
  '.svg': 'image/svg+xml',
  '.xlsx': 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
  '.yaml': 'text/plain; charset=utf-8',
};

/** Issuing beside the plant: what stands, a new set with its progress, and the files of a revision. */
export function issueRoutes(
  routes: Hono,
  { plant, said, ending }: { plant: PlantFile; said(context: Context): Promise<unknown>; ending: AbortSignal },
): void {
  let busy = false;
  routes.get('/api/issues/:folder', async (context) =>
    context.json(await issuedRevisions(plant.path, context.req.param('folder'))),
  );
  routes.get('/api/issues/:folder/:name/stated', async (context) =>
    context.json(await issuedTexts(plant.path, context.req.param('folder'), context.req.param('name'))),
  );
  routes.get('/api/issues/:folder/:name/file/:path{.+}', async (context) => {
    const { folder, name, path } = context.req.param();
    const type = types[extname(path)];
    const bytes = type === undefined ? undefined : await issuedFile(plant.path, folder, name, path);
    if (type === undefined || bytes === undefined) return context.text('There is no such file in this revision.', 404);
    context.header('Content-Type', type);
    context.header('Content-Security-Policy', documentPolicy);
    return context.body(bytes as Uint8Array<ArrayBuffer>);
  });
  routes.post('/api/issues', async (context) => {
    const asked = askedIn(await said(context));
    if (asked === undefined) return context.text('Refused: expected what is to be issued.', 400);
    if ((await plant.read()).hash !== asked.base) {
      return context.text('The plant file was changed since this page looked at it. Look at it again.', 409);
    }
    // Refused before anything is streamed: what has begun to answer has no status left to refuse with.
    besidePlant(plant.path, asked.folder);
    if (busy) return context.text('A set is being issued here already. Wait for it, or cancel it there.', 409);
    busy = true;
    context.header('Content-Type', 'application/x-ndjson');
    return stream(context, async (out) => {
      const cancelled = new AbortController();
      out.onAbort(() => cancelled.abort());
      const tell = (word: IssueWord) => void out.write(`${JSON.stringify(word)}\n`);
      try {
        await issuing(plant.path, asked, tell, AbortSignal.any([cancelled.signal, ending]));
      } finally {
        busy = false;
      }
    });
  });
}

/** What was asked as it came over the wire; undefined where it is none. Its names are judged by the command. */
function askedIn(said: unknown): IssueAsked | undefined {
  if (typeof said !== 'object' || said === null) return undefined;
  const { base, folder, revision, documents, forms, paper, preliminary, showing } = said as Record<string, unknown>;
  const texts = [base, folder, revision, paper].every((each) => typeof each === 'string' && each !== '');
  const lists = [documents, forms].every((each) => Array.isArray(each) && each.every((one) => typeof one === 'string'));
  const { units, decimal } = (showing ?? {}) as Record<string, unknown>;
  const shown = (units === 'metric' || units === 'us') && (decimal === 'point' || decimal === 'comma');
  return texts && lists && shown && typeof preliminary === 'boolean' ? (said as IssueAsked) : undefined;
}
