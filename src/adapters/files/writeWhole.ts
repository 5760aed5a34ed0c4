import { randomUUID } from 'node:crypto';
import { rename, rm, writeFile } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { Fault } from '#core/errors.ts';
import { beginUnfinished, endUnfinished, sweepUnfinished, unfinishedName } from './unfinished.ts';

/**
 * Writes a file beside its place and moves it there, so that what stood there stays whole until the new text is.
 *
 * @throws Fault output-not-written.
 */
export async function writeWhole(path: string, text: string): Promise<void> {
  const writing = `.${basename(path)}.writing-`;
  await sweepUnfinished(dirname(path), writing);
  const beside = join(dirname(path), unfinishedName(writing) + randomUUID().slice(0, 6));
  beginUnfinished(beside);
  try {
    await writeFile(beside, text, { flag: 'wx' });
    await rename(beside, path);
  } catch (error) {
    await rm(beside, { force: true });
    const code = error instanceof Error && 'code' in error ? error.code : undefined;
    throw new Fault('output-not-written', `"${path}" cannot be written (${code ?? 'unknown reason'}).`);
  } finally {
    endUnfinished(beside);
  }
}
