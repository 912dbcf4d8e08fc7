import { readFile, realpath, stat } from 'node:fs/promises';
import { extname, join, sep } from 'node:path';

const types: Readonly<Record<string, string>> = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.ico': 'image/x-icon',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json',
  '.map': 'application/json',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.txt': 'text/plain; charset=utf-8',
  '.wasm': 'application/wasm',
  '.woff2': 'font/woff2',
};

/** A built file of the page by the path of its address; undefined where there is none of a known type. */
export async function pageFile(folder: string, path: string): Promise<{ bytes: Uint8Array; type: string } | undefined> {
  const type = types[extname(path)];
  if (type === undefined || !/^(?:\/[\w-][\w.-]*)+$/.test(path)) return undefined;
  try {
    const root = await realpath(folder);
    const file = await realpath(join(root, path));
    if (!file.startsWith(root + sep) || !(await stat(file)).isFile()) return undefined;
    return { bytes: await readFile(file), type };
  } catch {
    return undefined;
  }
}
