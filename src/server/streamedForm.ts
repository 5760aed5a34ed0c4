import { once } from 'node:events';
import { setImmediate, setTimeout } from 'node:timers/promises';
import { Busboy } from '@fastify/busboy';
import type { MiddlewareHandler } from 'hono';
import { Fault } from '#core/errors.ts';
import { pieces } from './pieces.ts';

/** A file, its mapping of up to a thousand columns, and what else a form of ours names. */
const limits = { fields: 2_000, files: 100, parts: 2_100 };

/** After the last byte nothing is waited for but the parser's own turns. */
const longestEndMilliseconds = 2_000;

/**
 * A form that carries a file is taken apart as it comes in, and the routes find it ready: taken as a whole, a file of 20 MB holds up
 * everybody else for a quarter of a second. @throws Fault request-not-valid
 */
export const streamedForm: MiddlewareHandler = async ({ req }, next) => {
  const type = req.header('content-type') ?? '';
  if (/^multipart\/form-data\b/i.test(type) && req.raw.body !== null) req.bodyCache.formData = await formOf(req.raw.body, type);
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
    for (const wrong of ['error', 'partsLimit', 'filesLimit', 'fieldsLimit']) parts.on(wrong, cut);
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
    // Not a pipeline: of a form with something behind its end the parser says so in the middle, and a pipeline waits for good.
    const isWhole = once(parts, 'finish');
    isWhole.catch(() => undefined);
    for await (const piece of pieces(body)) {
      parts.write(piece);
      await setImmediate();
    }
    parts.end();
    await Promise.race([isWhole, setTimeout(longestEndMilliseconds, undefined, { ref: false }).then(cut)]);
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
