import type { RemovedClient } from '#app/clientVault.ts';

const undoMilliseconds = 10 * 60_000;

/** Clients who were just erased, for ten minutes or until the lock: in memory alone, so that nothing of them is on disk. */
export class ErasedClients {
  private readonly erased = new Map<string, { readonly removed: RemovedClient; readonly name: string; readonly until: Date }>();
  private readonly now: () => Date;
  private readonly keptMilliseconds: number;

  constructor(now: () => Date, keptMilliseconds = undoMilliseconds) {
    this.now = now;
    this.keptMilliseconds = keptMilliseconds;
  }

  keep(removed: RemovedClient, name: string): void {
    const { id } = removed.record;
    const until = new Date(this.now().getTime() + this.keptMilliseconds);
    const kept = { removed, name, until };
    this.erased.set(id, kept);
    setTimeout(() => {
      if (this.erased.get(id) === kept) this.erased.delete(id);
    }, this.keptMilliseconds).unref();
  }

  list(): readonly { readonly id: string; readonly name: string; readonly until: string }[] {
    return [...this.erased].map(([id, { name, until }]) => ({ id, name, until: until.toISOString() }));
  }

  find(id: string): RemovedClient | undefined {
    return this.erased.get(id)?.removed;
  }

  forget(id?: string): void {
    if (id === undefined) this.erased.clear();
    else this.erased.delete(id);
  }
}
