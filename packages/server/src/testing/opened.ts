import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { type IncomingHttpHeaders, request } from 'node:http';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { type Workbench, workbench } from '../workbench.ts';

const generic = resolve(import.meta.dirname, '../../../files/catalogues/generic.yaml');

export interface Answer {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly body: string;
}

/** A plant in a folder of its own, a page of two files, and the workbench that serves them. */
export interface Opened extends Workbench {
  readonly folder: string;
  readonly page: string;
  readonly plant: string;
  ask(method: string, path: string, headers?: Readonly<Record<string, string>>, body?: string): Promise<Answer>;
  /** The same as a page does that came in by the address. */
  askInside(method: string, path: string, body?: unknown): Promise<Answer>;
  cookie(): Promise<string>;
  end(): Promise<void>;
}

export async function opened(text: string): Promise<Opened> {
  const folder = mkdtempSync(join(tmpdir(), 'soundpost-server-'));
  const plant = join(folder, 'plant.yaml');
  writeFileSync(plant, text);
  const page = mkdtempSync(join(tmpdir(), 'soundpost-page-'));
  writeFileSync(join(page, 'index.html'), '<!doctype html><title>page</title>');
  const running = await workbench({ plant, port: 0, genericCatalogue: generic, page });
  const ask: Opened['ask'] = (method, path, headers = {}, body) => asked(running.port, method, path, headers, body);
  let session: Promise<string> | undefined;
  const cookie = (): Promise<string> => {
    session ??= ask('GET', pathOf(running.newAddress())).then(cookieOf);
    return session;
  };
  return {
    ...running,
    folder,
    page,
    plant,
    ask,
    cookie,
    askInside: async (method, path, body) => {
      const own = { cookie: await cookie(), origin: `http://127.0.0.1:${running.port}` };
      if (body === undefined) return ask(method, path, own);
      const written = typeof body === 'string' ? body : JSON.stringify(body);
      return ask(method, path, { ...own, 'content-type': 'application/json' }, written);
    },
    end: async () => {
      await running.close();
      rmSync(folder, { recursive: true });
      rmSync(page, { recursive: true });
    },
  };
}

export const pathOf = (address: string): string => address.slice(address.indexOf('/', 'http://'.length));

export const cookieOf = ({ headers }: Answer): string => headers['set-cookie']?.[0]?.split(';', 1)[0] ?? '';

export function asked(
  port: number,
  method: string,
  path: string,
  headers: Readonly<Record<string, string>>,
  body?: string,
): Promise<Answer> {
  return new Promise((settle, fail) => {
    const sent = request({ host: '127.0.0.1', port, method, path, headers, agent: false }, (answer) => {
      const parts: Buffer[] = [];
      answer.on('data', (part: Buffer) => parts.push(part));
      answer.on('error', fail);
      answer.on('end', () => {
        settle({ status: answer.statusCode ?? 0, headers: answer.headers, body: Buffer.concat(parts).toString() });
      });
    });
    sent.on('error', fail);
    sent.end(body);
  });
}
