import { IncomingMessage } from 'node:http';
import type { Context } from 'hono';

/**
 * The bytes of a request as they come, from Node itself where it runs: a web stream copies each piece once more, which for gigabytes is
 * half of the work. Nothing may have looked at the body before, which would make that stream. Undefined when nothing is sent.
 */
export function sentBytes({ req, env }: Context): AsyncIterable<Uint8Array> | undefined {
  // What is left unread must not cut the answer off.
  if (env?.incoming instanceof IncomingMessage) return env.incoming.iterator({ destroyOnReturn: false });
  return req.raw.body === null ? undefined : pieces(req.raw.body);
}

/** The pieces of a request's body as they come. The browser's stream is read by hand, since its type does not say that it can be walked over. */
export async function* pieces(body: ReadableStream<Uint8Array>): AsyncIterable<Uint8Array> {
  const reader = body.getReader();
  try {
    for (let next = await reader.read(); !next.done; next = await reader.read()) yield next.value;
  } finally {
    await reader.cancel();
  }
}
