import { pipeline } from 'node:stream/promises';
import { setImmediate } from 'node:timers/promises';
import { Busboy } from '@fastify/busboy';
import type { MiddlewareHandler } from 'hono';
import { Fault } from '#core/errors.ts';
import { pieces } from './pieces.ts';

/** A file, its mapping of up to a thousand columns, and what else a form of ours names. */
const limits = { fields: 2_000, files: 100, parts: 2_100 };

/**
 * A form that carries a file is taken apart as it comes in, and the routes find it ready: taken as a whole, a file of 20 MB holds up
 * everybody else for a quarter of a second. @throws Fault request-not-valid
 */
export const streamedForm: MiddlewareHandler = async ({ req }, next) => {
  const type = req.header('content-type') ?? '';
  if (req.raw.body !== null && /^multipart\/form-data\b/i.test(type)) req.bodyCache.formData = await formOf(req.raw.body, type);
  await next();
};

async function formOf(body: ReadableStream<Uint8Array>, type: string): Promise<FormData> {
  const form = new FormData();
  let isCut = false;
  const cut = (): void => {
    isCut = true;
  };
  try {
    const parts = new Busboy({
      headers: { 'content-type': type },
      isPartAFile: (_, __, fileName) => fileName !== undefined,
      preservePath: true,
      limits,
    });
    for (const limit of ['partsLimit', 'filesLimit', 'fieldsLimit']) parts.on(limit, cut);
    parts.on('field', (name, value, isNameCut, isValueCut) => {
      if (isNameCut || isValueCut) cut();
      form.append(name, value);
    });
    parts.on('file', (name, stream, fileName) => {
      const content: Uint8Array<ArrayBuffer>[] = [];
      // Of a part that ends in its middle.
      stream.on('error', cut);
      stream.on('data', piece => content.push(piece));
      stream.on('end', () => form.append(name, new File(content, nameAsGiven(fileName))));
    });
    await pipeline(inTurns(body), parts);
  } catch {
    cut();
  }
  if (isCut) throw new Fault('request-not-valid', 'The request could not be read.');
  return form;
}

/** HTML Standard, "multipart/form-data encoding algorithm": what would end a name is written as its code, and nothing else is. */
function nameAsGiven(name: string): string {
  return name.replace(/%0A|%0D|%22/g, code => decodeURIComponent(code));
}

async function* inTurns(body: ReadableStream<Uint8Array>): AsyncIterable<Uint8Array> {
  for await (const piece of pieces(body)) {
    yield piece;
    await setImmediate();
  }
}
