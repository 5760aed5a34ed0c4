import { createHash, createHmac, randomBytes, timingSafeEqual } from 'node:crypto';
import type { MiddlewareHandler } from 'hono';
import { getCookie, setCookie } from 'hono/cookie';
import { Fault } from '#core/errors.ts';
import { entryPage } from './entryPage.ts';

/** The word of the printed address that the secret stands behind. */
const word = 'entry';

/** 256 bits, made anew for each start and kept in memory alone. */
export function newSecret(): string {
  return randomBytes(32).toString('base64url');
}

/** The address to print: whoever opens it is let in, as often as wanted, until the program ends. */
export function printedAddress(origin: string, secret: string): string {
  return `${origin}/?${word}=${secret}`;
}

/**
 * Lets in only who has opened the printed address. Other accounts of the computer reach the same port; the secret, which they do not
 * see, becomes a cookie, and the address is at once exchanged for one without it: it stays in no history and in no Referer.
 * The cookie is derived, so that who reads it from a browser's files cannot open the printed address with it.
 */
export function entry(secret: string): MiddlewareHandler {
  const pass = createHmac('sha256', secret).update('cookie').digest('base64url');
  return async (context, next) => {
    const { req } = context;
    const cookie = cookieName(req.header('host') ?? new URL(req.url).host);
    const isKnown = isSame(getCookie(context, cookie), pass);
    const isCall = isApi(req.path);
    const given = req.method === 'GET' && !isCall ? req.query(word) : undefined;
    const isOpening = given !== undefined && isSame(given, secret);
    if (isOpening) setCookie(context, cookie, pass, { path: '/', httpOnly: true, sameSite: 'Strict' });
    if (isOpening || (isKnown && given !== undefined)) {
      context.header('cache-control', 'no-store');
      return context.redirect(withoutSecret(req.url), 303);
    }
    if (isKnown) return next();
    if (isCall) throw new Fault('entry-refused', 'This browser has not opened the printed address.');
    return entryPage();
  };
}

function isApi(path: string): boolean {
  return path === '/api' || path.startsWith('/api/');
}

/** Cookies are shared by all ports of a name: the port in the cookie's own name keeps two programs apart. */
function cookieName(host: string): string {
  return `platewright-${/:(\d+)$/.exec(host)?.[1] ?? '80'}`;
}

/** Takes the same time for every value, by comparing digests of one length. */
function isSame(given: string | undefined, wanted: string): boolean {
  if (given === undefined) return false;
  const digest = (text: string): Buffer => createHash('sha256').update(text).digest();
  return timingSafeEqual(digest(given), digest(wanted));
}

/** Path and the rest of the query. Two slashes at its head would name another machine. */
function withoutSecret(address: string): string {
  const { pathname, searchParams } = new URL(address);
  searchParams.delete(word);
  const query = searchParams.toString();
  return `${pathname.replace(/^\/+/, '/')}${query === '' ? '' : `?${query}`}`;
}
