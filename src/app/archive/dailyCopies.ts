import type { Archives, CopyFolder, CopyMemory, KeptCopy } from '#app/archives.ts';
import { localDay } from '#app/clients/localDay.ts';
import type { ClientVault } from '#app/clientVault.ts';
import type { Store } from '#app/store.ts';
import { unwatched, type Watch } from '#app/watch.ts';
import { Fault } from '#core/errors.ts';
import { copiesToDrop, heldUntil } from './copyDays.ts';

export interface CopiesState extends Omit<CopyMemory, 'lastState'> {
  readonly copies: readonly Omit<KeptCopy, 'path'>[];
  /** In folders of before, and how many of them hold the key of the client records. */
  readonly earlier: { readonly copies: number; readonly holdKey: number };
  /** Whether the folder could be read; else copies in it are not known. */
  readonly isReadable: boolean;
  /** The day by which no copy holds any more who is erased today; absent without copies. */
  readonly heldUntil?: string;
}

/** Copies of everything, one a day on which something has changed: the last seven days, and one a week for four weeks more. */
export class DailyCopies {
  private readonly world: { readonly store: Store; readonly vault: ClientVault; readonly archives: Archives; readonly now: () => Date };
  private readonly folder: CopyFolder;
  private last: Promise<unknown> = Promise.resolve();

  constructor(world: DailyCopies['world'], folder: CopyFolder) {
    this.world = world;
    this.folder = folder;
  }

  async state(): Promise<CopiesState> {
    const { lastState: _, ...memory } = this.folder.memory();
    // The folder may be on a disk that is not there: the rest is told all the same.
    const listed = await this.folder.list().catch(() => undefined);
    const copies = listed ?? [];
    const earlier = await this.folder.earlier();
    const until = heldUntil(copies.map(({ day }) => day));
    return {
      ...memory,
      copies: copies.toSorted((one, other) => (one.madeAt < other.madeAt ? 1 : -1)).map(({ path: _, ...copy }) => copy),
      earlier: { copies: earlier.length, holdKey: earlier.filter(({ holdsKey }) => holdsKey).length },
      ...(until === undefined ? {} : { heldUntil: until }),
      isReadable: listed !== undefined,
    };
  }

  /** The file of a day's copy. @throws Fault archive-not-found */
  async pathOf(day: string): Promise<string> {
    const copy = (await this.folder.list()).find(one => one.day === day);
    if (copy === undefined) throw new Fault('archive-not-found', 'There is no copy of that day.');
    return copy.path;
  }

  /** Another folder for the copies to come; those that were made stay where they are. @throws Fault copies-folder-not-usable */
  moveTo(folder: string): Promise<void> {
    // A copy that is being made goes where it was begun.
    return this.inTurn(() => this.move(folder));
  }

  private async move(folder: string): Promise<void> {
    const { lastState: _, lastFault: _fault, lastAt: _at, ...memory } = this.folder.memory();
    if (folder === memory.folder) return;
    // A folder that cannot be read now may hold some.
    const hasCopies = (await this.folder.list().catch(() => undefined))?.length !== 0;
    const earlier = [...(memory.earlierFolders ?? []), ...(hasCopies ? [memory.folder] : [])].filter(one => one !== folder);
    await this.folder.remember({ ...memory, folder, earlierFolders: [...new Set(earlier)] });
  }

  /** Makes the copy of today when something has changed since the last one. A failure is kept and told, never thrown. */
  makeWhenDue(): Promise<void> {
    return this.inTurn(async () => {
      try {
        const state = await this.currentState();
        const today = localDay(this.world.now());
        const standing = await this.folder.list();
        if (standing.some(({ day }) => day === today) || (standing.length > 0 && this.folder.memory().lastState === state.mark))
          await this.dropOld(today);
        else await this.copy(state, unwatched);
      } catch (error) {
        await this.keepFault(error);
      }
    });
  }

  /**
   * Makes one now; `alone` deletes those of before, when it is whole: they hold who was erased since, and records of before a passphrase
   * with their key. @throws Fault archive-not-made and others; they are kept and told too
   */
  makeNow(watch: Watch, alone = false): Promise<void> {
    return this.inTurn(async () => {
      try {
        const made = await this.copy(await this.currentState(), watch);
        if (!alone) return;
        for (const copy of [...(await this.folder.list()), ...(await this.folder.earlier())])
          if (copy.path !== made) await this.folder.remove(copy);
      } catch (error) {
        if (!(error instanceof Fault && error.code === 'work-cancelled')) await this.keepFault(error);
        throw error;
      }
    });
  }

  private async currentState() {
    const clients = await this.world.vault.keyedCopy();
    // The index is sealed anew with every change; its first bytes are chance.
    return { clients, mark: `${await this.world.store.revision()} ${clients.index?.slice(0, 40) ?? clients.rows.length}` };
  }

  /** Gives its path. */
  private async copy({ clients, mark }: Awaited<ReturnType<DailyCopies['currentState']>>, watch: Watch): Promise<string> {
    const draft = await this.folder.draftPath();
    await this.world.archives.write(draft, clients, watch);
    const at = this.world.now();
    const today = localDay(at);
    // A copy is never replaced: what was copied this morning may be what is wanted back.
    const hasOne = (await this.folder.list()).some(({ day }) => day === today);
    const day = hasOne ? `${today}-${timeOf(at)}` : today;
    const path = await this.folder.finish(draft, { day, holdsKey: clients.key !== undefined && clients.rows.length > 0 });
    const { lastFault: _, ...memory } = this.folder.memory();
    await this.folder.remember({ ...memory, lastState: mark, lastAt: at.toISOString() });
    await this.dropOld(today);
    return path;
  }

  private async dropOld(today: string): Promise<void> {
    const copies = await this.folder.list();
    const toDrop = copiesToDrop(
      copies.map(({ day }) => day),
      today,
    );
    for (const copy of copies) if (toDrop.includes(copy.day)) await this.folder.remove(copy);
  }

  private async keepFault(error: unknown): Promise<void> {
    const { title, message, nextStep } = error instanceof Fault ? error : new Fault('archive-not-made', 'The copy could not be made.');
    const lastFault = { at: this.world.now().toISOString(), title, message, nextStep };
    // Where not even this can be written, the disk is full or gone, and the next try tells it again.
    await this.folder.remember({ ...this.folder.memory(), lastFault }).catch(() => undefined);
  }

  private inTurn<Result>(work: () => Promise<Result>): Promise<Result> {
    const turn = this.last.then(work);
    this.last = turn.catch(() => undefined);
    return turn;
  }
}

/** "142305", on the clock of this computer. */
function timeOf(at: Date): string {
  return [at.getHours(), at.getMinutes(), at.getSeconds()].map(part => String(part).padStart(2, '0')).join('');
}
