import { readFile } from 'node:fs/promises';
import { join, normalize } from 'node:path';
import type { Context } from 'hono';
import { Fault } from '#core/errors.ts';

const types: Readonly<Record<string, string>> = {
  html: 'text/html; charset=utf-8',
  js: 'text/javascript; charset=utf-8',
  mjs: 'text/javascript; charset=utf-8',
  css: 'text/css; charset=utf-8',
  svg: 'image/svg+xml; charset=utf-8',
  woff2: 'font/woff2',
  json: 'application/json',
};

/** The built browser part. Hashed files may be kept for good; any other path is a screen of the one page. */
export function staticFiles(folder: string): (context: Context) => Promise<Response> {
  return async context => {
    const path = normalize(decoded(context.req.path)).replace(/^(\.\.[/\\])+/, '');
    const ending = /\.([a-z0-9]+)$/.exec(path)?.[1];
    if (ending !== undefined && types[ending] !== undefined && !path.includes('..')) {
      const bytes = await readFile(join(folder, path)).catch(() => undefined);
      if (bytes === undefined) return context.body(null, 404);
      return context.body(bytes, 200, {
        'content-type': types[ending],
        'cache-control': path.startsWith('/assets/') ? 'public, max-age=31536000, immutable' : 'no-cache',
      });
    }
    const page = await readFile(join(folder, 'index.html')).catch(() => undefined);
    if (page === undefined) return context.text('The browser part is not built. Start the program with npm start.', 503);
    return context.body(page, 200, { 'content-type': types.html!, 'cache-control': 'no-cache' });
  };
}

/** @throws Fault request-not-valid for an address that is no text: "/%E0%A4%A", "/%00" */
function decoded(path: string): string {
  try {
    const text = decodeURIComponent(path);
    if (!text.includes('\0')) return text;
  } catch {
    // Told below.
  }
  throw new Fault('request-not-valid', 'The address of the page cannot be read.');
}
