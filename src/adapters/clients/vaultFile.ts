import type SqliteDatabase from 'better-sqlite3';
import { Fault } from '#core/errors.ts';
import type { Wrap } from './passphrase.ts';
import { fileFormat, inWords, openExclusively, tables, vaultFileName } from './vaultDatabase.ts';

export interface Row {
  readonly row: Buffer;
  readonly body: Buffer;
}

/** Wrong tries so far, and until when the next one waits: `notBefore` by the clock of the computer, `pause` in milliseconds. */
export interface KeptTries {
  readonly wrong: number;
  readonly pause: number;
  readonly notBefore: number;
}

/** In a damaged file a column may hold nothing, or something of another kind, whatever the table says. */
const asBytes = (column: string): string => `cast(ifnull(${column}, '') as blob)`;
const asNumber = (column: string): string => `cast(ifnull(${column}, 0) as integer)`;

/** The SQLite file below the vault: rows of bytes, the sealed index and the wraps of the key. It knows nothing of keys or clients. */
export class VaultFile {
  private readonly db: SqliteDatabase.Database;

  /** Opens the file that stands there. @throws Fault database-locked, database-read-only, database-ahead, clients-file-damaged */
  constructor(folder: string) {
    this.db = openExclusively(folder);
    try {
      // Takes the lock on the file, so that a second program is told at once.
      const found = this.transact(() => this.format());
      if (found > fileFormat)
        throw new Fault('database-ahead', `The client records have format ${found}, this program knows ${fileFormat}.`);
    } catch (error) {
      this.db.close();
      throw error;
    }
  }

  /** All or nothing. */
  transact<Result>(work: () => Result): Result {
    return inWords(() => this.db.transaction(work).immediate());
  }

  rows(): readonly Row[] {
    return inWords(() => this.db.prepare<[], Row>(`select ${asBytes('row')} as row, ${asBytes('body')} as body from records`).all());
  }

  body(row: Buffer): Buffer | undefined {
    return inWords(() =>
      this.db
        .prepare<[Buffer], Buffer>(`select ${asBytes('body')} from records where row = ?`)
        .pluck()
        .get(row),
    );
  }

  put(row: Buffer, body: Buffer): void {
    this.db.prepare('insert into records (row, body) values (?, ?) on conflict (row) do update set body = excluded.body').run(row, body);
  }

  remove(row: Buffer): void {
    const { changes } = this.db.prepare('delete from records where row = ?').run(row);
    if (changes === 0) this.db.exec("delete from records where typeof(row) <> 'blob'");
    this.needScrub();
  }

  removeAll(): void {
    this.db.exec('delete from records');
    this.needScrub();
  }

  sealedIndex(): Buffer | undefined {
    const sql = `select ${asBytes('sealed_index')} from vault where sealed_index is not null`;
    return inWords(() => this.db.prepare<[], Buffer>(sql).pluck().get());
  }

  putSealedIndex(sealed: Buffer | undefined): void {
    this.db.prepare('update vault set sealed_index = ?').run(sealed ?? null);
  }

  wraps(): readonly Wrap[] {
    const numbers = ['form', 'scrypt_n', 'scrypt_r', 'scrypt_p'].map(column => `${asNumber(column)} as ${column}`);
    const bytes = ['salt', 'sealed_secret'].map(column => `${asBytes(column)} as ${column}`);
    const sql = `select cast(ifnull(id, '') as text) as id, ${[...numbers, ...bytes].join(', ')} from wraps order by id`;
    const rows = inWords(() => this.db.prepare<[], WrapRow>(sql).all());
    return rows.map(({ id, form, scrypt_n: n, scrypt_r: r, scrypt_p: p, salt, sealed_secret: sealedSecret }) => ({
      id,
      kind: 'passphrase',
      form,
      cost: { n, r, p },
      salt,
      sealedSecret,
    }));
  }

  putWraps(wraps: readonly Wrap[]): void {
    this.db.exec('delete from wraps');
    const insert = this.db.prepare(
      'insert into wraps (id, kind, form, scrypt_n, scrypt_r, scrypt_p, salt, sealed_secret) values (?, ?, ?, ?, ?, ?, ?, ?)',
    );
    for (const { id, kind, form, cost, salt, sealedSecret } of wraps)
      insert.run(id, kind, form, cost.n, cost.r, cost.p, salt, sealedSecret);
  }

  idleMinutes(): number {
    return inWords(
      () =>
        this.db
          .prepare<[], number>(`select ${asNumber('idle_minutes')} from vault`)
          .pluck()
          .get() ?? 0,
    );
  }

  putIdleMinutes(minutes: number): void {
    inWords(() => this.db.prepare('update vault set idle_minutes = ?').run(minutes));
  }

  tries(): KeptTries {
    const sql = `select ${asNumber('wrong_tries')} as wrong, ${asNumber('pause_ms')} as pause, ${asNumber('not_before_ms')} as notBefore from vault`;
    return inWords(() => this.db.prepare<[], KeptTries>(sql).get() ?? { wrong: 0, pause: 0, notBefore: 0 });
  }

  putTries({ wrong, pause, notBefore }: KeptTries): void {
    inWords(() => this.db.prepare('update vault set wrong_tries = ?, pause_ms = ?, not_before_ms = ?').run(wrong, pause, notBefore));
  }

  /** From 1 to the present one; a file in which nobody can tell it is damaged. */
  format(): number {
    const hasVault = this.db.prepare("select 1 from sqlite_schema where name = 'vault'").get() !== undefined;
    const format = hasVault ? this.db.prepare<[], number>('select format from vault').pluck().get() : undefined;
    if (format === undefined)
      throw new Fault('clients-file-damaged', `${vaultFileName} is no file of client records, or its head is missing.`);
    return format;
  }

  /**
   * Format 1 kept one lock in the head of the file, and records in clear where there was none.
   * @throws Fault clients-file-damaged when the head is not of format 1, whatever it says
   */
  lockOfFormat1(): Wrap | undefined {
    const sql = 'select scrypt_n, scrypt_r, scrypt_p, salt, sealed_secret from vault';
    const head = inWords(() =>
      this.db.prepare<[], Omit<WrapRow, 'id' | 'form' | 'sealed_secret'> & { sealed_secret: Buffer | null }>(sql).get(),
    );
    if (head === undefined || head.sealed_secret === null) return undefined;
    const cost = { n: head.scrypt_n ?? 0, r: head.scrypt_r ?? 0, p: head.scrypt_p ?? 0 };
    return { id: '1', kind: 'passphrase', form: 1, cost, salt: head.salt ?? Buffer.alloc(0), sealedSecret: head.sealed_secret };
  }

  /** The tables of the present format with an empty head; records stay. Within a transaction. */
  becomePresent(): void {
    this.db.exec('drop table vault');
    this.db.exec(tables);
    this.db.prepare('insert into vault (id, format, needs_scrub) values (1, ?, 1)').run(fileFormat);
  }

  /** From format 2 on the tables are the same. */
  raiseFormat(): void {
    inWords(() => this.db.prepare('update vault set format = ? where format = 2').run(fileFormat));
  }

  needsScrub(): boolean {
    return inWords(() => this.db.prepare('select needs_scrub from vault').pluck().get() === 1);
  }

  needScrub(): void {
    this.db.exec('update vault set needs_scrub = 1');
  }

  /**
   * Leaves nothing on disk of what was deleted or rewritten. First the pages that secure_delete has zeroed go over the old
   * ones in their places; then the file is built anew, because pages that were split keep shreds; the log is cut last.
   */
  scrub(): void {
    inWords(() => {
      this.db.pragma('wal_checkpoint(truncate)');
      this.db.exec('vacuum');
      this.db.pragma('wal_checkpoint(truncate)');
      this.db.exec('update vault set needs_scrub = 0');
    });
  }

  /** A program that was ended within a change has left its unfinished pages in the log: they count for nothing and can be read all the same. */
  cutLog(): void {
    inWords(() => this.db.pragma('wal_checkpoint(truncate)'));
  }

  isOpen(): boolean {
    return this.db.open;
  }

  close(): void {
    this.db.close();
  }
}

interface WrapRow {
  readonly id: string;
  readonly form: number;
  readonly scrypt_n: number;
  readonly scrypt_r: number;
  readonly scrypt_p: number;
  readonly salt: Buffer;
  readonly sealed_secret: Buffer;
}
