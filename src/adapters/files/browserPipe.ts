import type { Readable, Writable } from 'node:stream';
import { isObject, type JsonObject } from '#core/json/presentForm.ts';

/**
 * Speaks to a browser in the Chrome DevTools Protocol over two pipes that nobody else can reach: JSON messages, each ended by a NUL
 * (https://chromedevtools.github.io/devtools-protocol/). What is asked fails when the pipe ends.
 */
export class BrowserPipe {
  private readonly out: Writable;
  private readonly waiting = new Map<number, { done: (result: JsonObject) => void; failed: (error: Error) => void }>();
  private last = 0;
  private ended = false;

  constructor(out: Writable, back: Readable) {
    this.out = out;
    let parts: Buffer[] = [];
    back.on('data', (chunk: Buffer) => {
      let from = 0;
      for (let end = chunk.indexOf(0); end !== -1; end = chunk.indexOf(0, from)) {
        this.take(Buffer.concat([...parts, chunk.subarray(from, end)]).toString());
        parts = [];
        from = end + 1;
      }
      parts.push(chunk.subarray(from));
    });
    for (const stream of [out, back]) stream.on('error', () => this.end());
    back.on('close', () => this.end());
  }

  /** @param session of a page; without it the browser itself is asked. @throws Error in the browser's words */
  ask(method: string, params: JsonObject = {}, session?: string): Promise<JsonObject> {
    const id = ++this.last;
    return new Promise((done, failed) => {
      if (this.ended) return failed(new Error('the browser has ended'));
      this.waiting.set(id, { done, failed });
      this.out.write(`${JSON.stringify({ id, method, params, ...(session !== undefined && { sessionId: session }) })}\0`);
    });
  }

  private take(text: string): void {
    const message: unknown = JSON.parse(text);
    if (!isObject(message) || typeof message.id !== 'number') return;
    const asked = this.waiting.get(message.id);
    this.waiting.delete(message.id);
    if (isObject(message.result)) asked?.done(message.result);
    else asked?.failed(new Error(isObject(message.error) ? String(message.error.message) : 'no answer'));
  }

  private end(): void {
    this.ended = true;
    for (const { failed } of this.waiting.values()) failed(new Error('the browser has ended'));
    this.waiting.clear();
  }
}
