import type { ClientJson } from '#app/clientVault.ts';

const undoMilliseconds = 10 * 60_000;

/** Clients who were just erased, for ten minutes or until the lock: in memory alone, so that nothing of them is on disk. */
export class ErasedClients {
  private readonly erased = new Map<string, { readonly record: ClientJson; readonly name: string; readonly until: Date }>();
  private readonly now: () => Date;
  private readonly keptMilliseconds: number;

  constructor(now: () => Date, keptMilliseconds = undoMilliseconds) {
    this.now = now;
    this.keptMilliseconds = keptMilliseconds;
  }

  keep(record: ClientJson, name: string): void {
    const until = new Date(this.now().getTime() + this.keptMilliseconds);
    const kept = { record, name, until };
    this.erased.set(record.id, kept);
    setTimeout(() => {
      if (this.erased.get(record.id) === kept) this.erased.delete(record.id);
    }, this.keptMilliseconds).unref();
  }

  list(): readonly { readonly id: string; readonly name: string; readonly until: string }[] {
    return [...this.erased].map(([id, { name, until }]) => ({ id, name, until: until.toISOString() }));
  }

  record(id: string): ClientJson | undefined {
    return this.erased.get(id)?.record;
  }

  forget(id?: string): void {
    if (id === undefined) this.erased.clear();
    else this.erased.delete(id);
  }
}
