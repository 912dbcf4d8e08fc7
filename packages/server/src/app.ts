import { Refusal } from '@soundpost/core';
import { type Context, Hono } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { getCookie, setCookie } from 'hono/cookie';
import { streamSSE } from 'hono/streaming';
import type { Changes } from './changes.ts';
import type { Entrance } from './entrance.ts';
import { fromHere, guarded } from './gate.ts';
import { issueRoutes } from './issuing/routes.ts';
import { pageFile } from './page-files.ts';
import { plainPage, strangerPage, usedPage } from './plain-page.ts';
import type { PlantFile } from './plant-on-disk.ts';
import { journalIn, savingIn } from './protocol-reading.ts';

const largestBody = 32 * 1024 * 1024;
const heartbeat = 15_000;

/** What the routes lean on. */
export interface Serving {
  readonly plant: PlantFile;
  readonly changes: Changes;
  readonly entrance: Entrance;
  /** The folder of the built page. */
  readonly page: string;
  /** Known once the server listens. */
  readonly port: () => number;
  /** Aborted when the server is to end. */
  readonly ending: AbortSignal;
}

export function app(serving: Serving): Hono {
  const { plant, changes, entrance, page, port } = serving;
  // Cookies do not tell ports apart: two workbenches on one machine need two names.
  const cookie = (): string => `soundpost-${port()}`;
  const known = (context: Context): boolean => entrance.knows(getCookie(context, cookie()));
  const routes = new Hono();

  routes.use(guarded);
  routes.use(fromHere(port));
  routes.get('/enter', (context) => {
    if (known(context)) return context.redirect('/', 303);
    // A look ahead (HEAD) uses nothing up.
    const session = context.req.method === 'GET' ? entrance.enter(context.req.query('token') ?? '') : undefined;
    if (session === undefined) return context.html(usedPage, 403);
    setCookie(context, cookie(), session, { httpOnly: true, sameSite: 'Strict', path: '/' });
    return context.redirect('/', 303);
  });
  routes.use(async (context, next) => (known(context) ? next() : context.html(strangerPage, 401)));

  routes.use(
    '/api/*',
    bodyLimit({ maxSize: largestBody, onError: (context) => context.text('Refused: more than 32 MiB.', 413) }),
  );
  routes.get('/api/plant', async (context) => context.json(await plant.read()));
  routes.put('/api/plant', async (context) => {
    const saving = savingIn(await said(context));
    if (saving === undefined) return context.text('Refused: expected a save with base, text and journal.', 400);
    const answer = await plant.save(saving);
    if ('text' in answer) return context.json(answer, 409);
    changes.saved(answer.hash);
    return context.json(answer);
  });
  routes.put('/api/journal', async (context) => {
    const journal = journalIn(await said(context));
    if (journal === undefined) return context.text('Refused: expected a history with steps and done.', 400);
    return context.json(await plant.saveJournal(journal));
  });
  routes.get('/api/changes', (context) => changesTo(context, serving));
  issueRoutes(routes, { plant, said, ending: serving.ending });
  routes.all('/api/*', (context) => context.text('There is nothing at this address.', 404));

  routes.get('*', async (context) => {
    const path = context.req.path;
    const file = await pageFile(page, /\.\w+$/.test(path) ? path : '/index.html');
    if (file === undefined && /\.\w+$/.test(path)) return context.text('There is no such file.', 404);
    if (file === undefined) return context.html(unbuiltPage, 503);
    context.header('Content-Type', file.type);
    if (path.startsWith('/assets/')) context.header('Cache-Control', 'private, max-age=31536000, immutable');
    return context.body(file.bytes as Uint8Array<ArrayBuffer>);
  });
  routes.all('*', (context) => context.text('This address can only be read.', 405, { Allow: 'GET, HEAD' }));

  routes.onError((error, context) => {
    if (error instanceof Unfit) return context.text(error.message, error.status);
    if (error instanceof Refusal) return context.text(error.message.replace(/^r/, 'R'), 422);
    return context.text(`Soundpost itself failed here: ${error.message}`, 500);
  });
  return routes;
}

export const howToBuild =
  'The page is not built here yet. Run `npm run build -w packages/web` in the folder of Soundpost.';
const unbuiltPage = plainPage('The page is not built', howToBuild);

class Unfit extends Error {
  readonly status: 400 | 415;

  constructor(status: 400 | 415, message: string) {
    super(message);
    this.status = status;
  }
}

async function said(context: Context): Promise<unknown> {
  const type = context.req.header('content-type') ?? '';
  if (!/^application\/json\s*(?:;|$)/i.test(type)) throw new Unfit(415, 'Refused: expected JSON.');
  try {
    return await context.req.json();
  } catch (error) {
    if (error instanceof SyntaxError) throw new Unfit(400, 'Refused: the JSON cannot be read.');
    throw error;
  }
}

/** Word of changes for as long as the page listens; one that comes back hears what it missed. */
function changesTo(context: Context, { plant, changes, ending }: Serving): Response {
  return streamSSE(context, async (stream) => {
    const tell = (event: string, hash: string) => stream.writeSSE({ event, data: JSON.stringify({ hash }), id: hash });
    const deaf = changes.listen((heard, hash) => void tell(heard, hash));
    const beat = setInterval(() => void stream.write(': still here\n\n'), heartbeat);
    const { hash } = await plant.read();
    const last = context.req.header('last-event-id');
    await tell(last === undefined || last === hash ? 'current' : 'changed', hash);
    await new Promise<void>((resolve) => {
      const end = () => {
        ending.removeEventListener('abort', end);
        resolve();
      };
      stream.onAbort(end);
      ending.addEventListener('abort', end);
      if (ending.aborted) end();
    });
    clearInterval(beat);
    deaf();
  });
}
