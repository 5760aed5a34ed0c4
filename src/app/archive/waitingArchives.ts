import type { ArchiveLook, Archives, WaitingFiles } from '#app/archives.ts';
import type { Watch } from '#app/watch.ts';
import { Fault } from '#core/errors.ts';

interface Waiting {
  readonly path: string;
  readonly look: ArchiveLook;
  /** A file of the person's own, as a daily copy is: it stays when it is no longer waited for. */
  readonly isKept: boolean;
}

/** Archives that were made and not fetched yet, or were brought and looked at and not restored yet, by an identity of their own. */
export class WaitingArchives {
  private readonly archives: Archives;
  private readonly files: WaitingFiles;
  private readonly newId: () => string;
  private readonly waiting = new Map<string, Waiting>();

  constructor(archives: Archives, files: WaitingFiles, newId: () => string) {
    this.archives = archives;
    this.files = files;
    this.newId = newId;
  }

  /** Makes an archive; an earlier one that nobody fetched gives way. */
  async make(clients: Parameters<Archives['write']>[1], watch: Watch): Promise<{ readonly id: string; readonly look: ArchiveLook }> {
    await this.forgetAll();
    const path = this.files.newPath();
    return this.keep(path, await this.archives.write(path, clients, watch), false);
  }

  /** Takes a file in and reads it through. @throws Fault archive-not-valid, archive-newer, workspace-file-not-valid */
  async bring(
    stream: AsyncIterable<Uint8Array>,
    bytes: number,
    watch: Watch,
  ): Promise<{ readonly id: string; readonly look: ArchiveLook }> {
    await this.forgetAll();
    const path = this.files.newPath();
    try {
      await this.files.receive(path, stream, bytes, watch);
      return this.keep(path, await this.archives.look(path, watch), false);
    } catch (error) {
      await this.files.remove(path);
      throw error;
    }
  }

  /** Reads a file through that stays where it is. */
  async bringKept(path: string, watch: Watch): Promise<{ readonly id: string; readonly look: ArchiveLook }> {
    await this.forgetAll();
    return this.keep(path, await this.archives.look(path, watch), true);
  }

  /** @throws Fault archive-not-found */
  get(id: string): Waiting {
    const one = this.waiting.get(id);
    if (one === undefined) throw new Fault('archive-not-found', 'It was fetched, restored or replaced by another meanwhile.');
    return one;
  }

  read(id: string): { readonly look: ArchiveLook; readonly stream: ReadableStream<Uint8Array> } {
    const { path, look } = this.get(id);
    return { look, stream: this.files.read(path) };
  }

  async forget(id: string): Promise<void> {
    const one = this.waiting.get(id);
    this.waiting.delete(id);
    if (one !== undefined && !one.isKept) await this.files.remove(one.path);
  }

  private async forgetAll(): Promise<void> {
    for (const id of [...this.waiting.keys()]) await this.forget(id);
  }

  private keep(path: string, look: ArchiveLook, isKept: boolean): { readonly id: string; readonly look: ArchiveLook } {
    const id = this.newId();
    this.waiting.set(id, { path, look, isKept });
    return { id, look };
  }
}
