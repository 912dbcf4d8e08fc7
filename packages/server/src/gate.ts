import type { Context, MiddlewareHandler } from 'hono';

const policy = [
  "default-src 'none'",
  "script-src 'self'",
  "worker-src 'self'",
  "style-src 'self'",
  // Drawings carry style attributes; a style element or sheet from elsewhere stays shut out.
  "style-src-attr 'unsafe-inline'",
  "img-src 'self' data:",
  "font-src 'self'",
  "connect-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

const headers: Readonly<Record<string, string>> = {
  'Content-Security-Policy': policy,
  'X-Content-Type-Options': 'nosniff',
  'X-Frame-Options': 'DENY',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Permissions-Policy': 'camera=(), geolocation=(), microphone=(), payment=(), usb=()',
};

/** Every answer carries these, also a refusal. */
export const guarded: MiddlewareHandler = async (context, next) => {
  await next();
  for (const [name, value] of Object.entries(headers)) {
    // Only a document that was issued says otherwise: it brings its style along, and runs nothing.
    if (!context.res.headers.has(name)) context.res.headers.set(name, value);
  }
  if (!context.res.headers.has('Cache-Control')) context.res.headers.set('Cache-Control', 'no-store');
};

/** Requests that another site could have made this browser send are refused, before anything is looked up. */
export function fromHere(port: () => number): MiddlewareHandler {
  return async (context, next) => {
    const reason = strange(context, port());
    if (reason !== undefined) return context.text(`Refused: ${reason}.`, 403);
    return next();
  };
}

function strange(context: Context, port: number): string | undefined {
  const host = context.req.header('host') ?? '';
  if (host !== `127.0.0.1:${port}` && host !== `localhost:${port}`) return 'the request names another host';
  const site = context.req.header('sec-fetch-site');
  if (site !== undefined && site !== 'same-origin' && site !== 'none') return 'the request comes from another site';
  const origin = context.req.header('origin');
  const reads = context.req.method === 'GET' || context.req.method === 'HEAD';
  if (origin === undefined && reads) return undefined;
  return origin === `http://${host}` ? undefined : 'the request comes from another origin';
}
