import { randomUUID } from 'node:crypto';
import { createReadStream, createWriteStream, mkdirSync, rmSync } from 'node:fs';
import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { WaitingFiles } from '#app/archives.ts';
import { Fault } from '#core/errors.ts';

/** Files in a folder of their own below the data folder; what an earlier start has left there is swept. */
export function waitingFiles(dataFolder: string): WaitingFiles {
  const folder = join(dataFolder, 'waiting');
  rmSync(folder, { recursive: true, force: true });
  return {
    newPath: () => {
      mkdirSync(folder, { recursive: true, mode: 0o700 });
      return join(folder, randomUUID());
    },
    receive: async (path, stream, bytes, watch) => {
      let done = 0;
      async function* counted() {
        for await (const chunk of stream) {
          if (done === 0) refuseOtherKinds(chunk);
          done += chunk.length;
          await watch.step('Taking the file in, MB', Math.round(done / 1e6), Math.round(bytes / 1e6));
          yield chunk;
        }
      }
      try {
        await pipeline(Readable.from(counted()), createWriteStream(path, { flags: 'wx', mode: 0o600 }));
      } catch (error) {
        if (error instanceof Fault) throw error;
        const code = error instanceof Error && 'code' in error ? String(error.code) : '';
        if (/^E(NOSPC|DQUOT|ACCES|PERM|ROFS|IO)$/.test(code))
          throw new Fault('archive-not-made', `The data folder has no room for the file, or may not be written (${code}).`);
        throw new Fault('work-cancelled', 'The file did not come in whole.');
      }
    },
    read: path => {
      const file = createReadStream(path);
      const parts = file[Symbol.asyncIterator]();
      return new ReadableStream<Uint8Array>({
        pull: async controller => {
          const { value, done } = await parts.next();
          if (done) controller.close();
          else controller.enqueue(value);
        },
        cancel: () => void file.destroy(),
      });
    },
    remove: path => rm(path, { force: true }),
  };
}

/** A film or a disk image is not taken in at all. What begins rightly is read through afterwards. @throws Fault workspace-file-not-valid */
function refuseOtherKinds(first: Uint8Array): void {
  const text = Buffer.from(first.subarray(0, 1_000)).toString('latin1');
  if (!'PK'.startsWith(text.slice(0, 2)) && !/^(?:ï»¿)?\s*(?:\{|$)/.test(text))
    throw new Fault('workspace-file-not-valid', 'It is neither an archive nor a workspace file of an earlier program.');
}
