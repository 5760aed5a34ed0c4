import type { MiddlewareHandler } from 'hono';
import { Fault } from '#core/errors.ts';

/** Everything comes from the program itself; nothing may be sent elsewhere or framed. */
const contentSecurityPolicy = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' blob: data:",
  "font-src 'self'",
  "connect-src 'self'",
  "frame-src 'self'",
  "base-uri 'none'",
  "form-action 'self'",
  "frame-ancestors 'none'",
].join('; ');

const localNames = new Set(['127.0.0.1', 'localhost', '[::1]']);

/**
 * Lets only this machine's own browser in. A page elsewhere can make a browser send requests here (cross-site posts) or
 * make a name of its own point here (DNS rebinding): Host must be a loopback name, and what changes something must come
 * from the workbench's own origin.
 */
export const guard: MiddlewareHandler = async (context, next) => {
  const host = context.req.header('host') ?? new URL(context.req.url).host;
  const name = host.replace(/:\d+$/, '').toLowerCase();
  if (!localNames.has(name)) throw new Fault('origin-refused', 'The address in the request is not this machine.');
  const origin = context.req.header('origin');
  if (origin !== undefined && origin !== `http://${host}`) throw new Fault('origin-refused', 'The request comes from another page.');
  const site = context.req.header('sec-fetch-site');
  const changes = context.req.method !== 'GET' && context.req.method !== 'HEAD';
  if (changes && site !== undefined && site !== 'same-origin' && site !== 'none')
    throw new Fault('origin-refused', 'The request comes from another page.');
  await next();
};

/** What every answer carries, a refusal as well. */
export const answerHeaders: MiddlewareHandler = async (context, next) => {
  await next();
  const { headers } = context.res;
  // A previewed page brings a narrower policy of its own.
  if (!headers.has('content-security-policy')) headers.set('content-security-policy', contentSecurityPolicy);
  headers.set('x-content-type-options', 'nosniff');
  headers.set('referrer-policy', 'no-referrer');
  headers.set('cross-origin-opener-policy', 'same-origin');
  headers.set('cross-origin-resource-policy', 'same-origin');
  if (context.req.path.startsWith('/api/') && !headers.has('cache-control')) headers.set('cache-control', 'no-store');
};
