import { randomBytes } from 'node:crypto';
import { setTimeout } from 'node:timers/promises';
import type { ClientJson, ClientVault } from '#app/clientVault.ts';
import { Fault } from '#core/errors.ts';
import { lockSecret, openLock, type PassphraseLock, refuseShort, type ScryptCost, todaysCost } from './passphrase.ts';
import { plainForm, type RecordForm, sealedForm, secretBytes } from './recordForm.ts';
import { type Row, VaultFile } from './vaultFile.ts';

/**
 * Opens the client records of a data folder, in a file of their own, and makes it when it is missing. `cost` holds for
 * passphrases set from now on; a standing one is opened at the cost written beside it.
 * @throws Fault database-locked, database-read-only, database-full, database-ahead, client-record-damaged
 */
export async function openClientVault(folder: string, cost: ScryptCost = todaysCost): Promise<ClientVault> {
  return new SqliteVault(new VaultFile(folder), cost);
}

/** The first two wrong tries are slips; each further one doubles the wait, from half a second to half a minute. */
const freeWrongTries = 2;
const firstPauseMilliseconds = 500;
const longestPauseMilliseconds = 30_000;

class SqliteVault implements ClientVault {
  private readonly file: VaultFile;
  private readonly cost: ScryptCost;
  /** Undefined while locked. */
  private form: RecordForm | undefined;
  private wrongTries = 0;
  /** Counts the times it was locked: a passphrase that was still being tried must not open it again. */
  private lockings = 0;
  /** What waits for a derived key goes one after the other, wrong tries with their pauses among them. */
  private last: Promise<unknown> = Promise.resolve();
  private readonly closing = new AbortController();

  constructor(file: VaultFile, cost: ScryptCost) {
    this.file = file;
    this.cost = cost;
    this.form = this.hasPassphrase() ? undefined : plainForm;
  }

  state(): 'open' | 'locked' {
    return this.form === undefined ? 'locked' : 'open';
  }

  hasPassphrase(): boolean {
    return this.file.lock() !== undefined;
  }

  unlock(passphrase: string): Promise<void> {
    return this.inTurn(async () => {
      const lock = this.file.lock();
      if (lock === undefined) return;
      const { lockings } = this;
      const form = sealedForm(await this.secretOf(lock, passphrase));
      if (this.lockings === lockings) this.use(form);
      else form.forget();
    });
  }

  lock(): void {
    if (!this.hasPassphrase()) return;
    this.lockings += 1;
    this.use(undefined);
  }

  changePassphrase(current: string | undefined, next: string | undefined): Promise<void> {
    return this.inTurn(async () => {
      if (next !== undefined) refuseShort(next);
      const { lockings } = this;
      const lock = this.file.lock();
      if (lock === undefined && next === undefined) return;
      const from = lock === undefined ? plainForm : sealedForm(await this.secretOf(lock, current ?? ''));
      const secret = randomBytes(secretBytes);
      const nextLock = next === undefined ? undefined : await lockSecret(secret, next, this.cost);
      const to = nextLock === undefined ? plainForm : sealedForm(secret);
      try {
        this.file.transact(() => {
          const records = this.file.rows().map(row => whole(from, row));
          this.file.removeAll();
          for (const record of records) this.keep(to, record);
          this.file.putLock(nextLock);
        });
      } finally {
        from.forget();
      }
      this.use(nextLock === undefined || this.lockings === lockings ? to : undefined);
      this.file.scrub();
    });
  }

  async list(): Promise<readonly ClientJson[]> {
    const form = this.opened();
    return byId(this.file.rows().flatMap(({ row, body }) => form.fromBody(row, body) ?? []));
  }

  async get(id: string): Promise<ClientJson | undefined> {
    return this.standing(this.opened(), id);
  }

  async put(record: ClientJson, seenVersion: number | null): Promise<ClientJson> {
    const form = this.opened();
    return this.file.transact(() => {
      refuseUnseen(this.standing(form, record.id), seenVersion);
      this.keep(form, { ...record, version: (seenVersion ?? 0) + 1 });
      return this.standing(form, record.id)!;
    });
  }

  async remove(id: string, seenVersion: number): Promise<void> {
    const form = this.opened();
    this.file.transact(() => {
      refuseUnseen(this.standing(form, id), seenVersion);
      this.file.remove(form.rowOf(id));
    });
    this.file.scrub();
  }

  async damaged(): Promise<number> {
    return this.damagedRows(this.opened()).length;
  }

  async removeDamaged(): Promise<number> {
    const rows = this.damagedRows(this.opened());
    this.file.transact(() => {
      for (const { row } of rows) this.file.remove(row);
    });
    this.file.scrub();
    return rows.length;
  }

  async exportAll(): Promise<readonly ClientJson[]> {
    const form = this.opened();
    return byId(this.file.rows().map(row => whole(form, row)));
  }

  eraseAll(): Promise<void> {
    return this.inTurn(async () => {
      this.file.transact(() => {
        this.file.removeAll();
        this.file.putLock(undefined);
      });
      this.use(plainForm);
      this.file.scrub();
    });
  }

  async close(): Promise<void> {
    this.closing.abort();
    await this.last;
    this.use(undefined);
    this.file.close();
  }

  private opened(): RecordForm {
    if (this.form === undefined) throw new Fault('clients-locked', 'The client records are locked.');
    return this.form;
  }

  private use(form: RecordForm | undefined): void {
    this.form?.forget();
    this.form = form;
  }

  private standing(form: RecordForm, id: string): ClientJson | undefined {
    const row = form.rowOf(id);
    const body = this.file.body(row);
    return body === undefined ? undefined : whole(form, { row, body });
  }

  private keep(form: RecordForm, record: ClientJson): void {
    const row = form.rowOf(record.id);
    this.file.put(row, form.toBody(row, record));
  }

  private damagedRows(form: RecordForm): readonly Row[] {
    return this.file.rows().filter(({ row, body }) => form.fromBody(row, body) === undefined);
  }

  private inTurn<Result>(work: () => Promise<Result>): Promise<Result> {
    const turn = this.last.then(work);
    this.last = turn.catch(() => undefined);
    return turn;
  }

  private async secretOf(lock: PassphraseLock, passphrase: string): Promise<Buffer> {
    const secret = await openLock(lock, passphrase);
    if (secret !== undefined) {
      this.wrongTries = 0;
      return secret;
    }
    this.wrongTries += 1;
    await this.pauseAfterWrongTry();
    throw new Fault('passphrase-wrong', 'The client records do not open with it.');
  }

  private async pauseAfterWrongTry(): Promise<void> {
    const paid = this.wrongTries - freeWrongTries;
    if (paid <= 0) return;
    const milliseconds = Math.min(firstPauseMilliseconds * 2 ** (paid - 1), longestPauseMilliseconds);
    // Closing does not wait for the pause to end.
    await setTimeout(milliseconds, undefined, { signal: this.closing.signal }).catch(() => undefined);
  }
}

/** @throws Fault client-record-damaged */
function whole(form: RecordForm, { row, body }: Row): ClientJson {
  const record = form.fromBody(row, body);
  if (record === undefined) throw new Fault('client-record-damaged', 'It was changed outside this program or by a failing disk.');
  return record;
}

function refuseUnseen(standing: ClientJson | undefined, seenVersion: number | null): void {
  if ((standing?.version ?? null) !== seenVersion)
    throw new Fault('changed-meanwhile', 'The client was changed in another window after it was opened here.');
}

function byId(records: readonly ClientJson[]): readonly ClientJson[] {
  return records.toSorted((one, other) => (one.id < other.id ? -1 : one.id > other.id ? 1 : 0));
}
