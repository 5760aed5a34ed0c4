import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { MiddlewareHandler } from 'hono';

/** The header of an answer that tells which browser part is served. */
export type ServedPartHeader = 'platewright-browser-part';
const header: ServedPartHeader = 'platewright-browser-part';

/** What tells a built browser part from any other: its one page names every file of it by what stands in it. */
export async function servedPart(folder: string): Promise<string> {
  return createHash('sha256')
    .update(await readFile(join(folder, 'index.html')))
    .digest('base64url');
}

/** A page that stays open while the program is renewed hears of it with its next call, before it asks for a file that is gone. */
export function tellBrowserPart(part: string): MiddlewareHandler {
  return async (context, next) => {
    await next();
    context.res.headers.set(header, part);
  };
}
