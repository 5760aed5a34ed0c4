import { once } from 'node:events';
import { Worker } from 'node:worker_threads';
import {
  CompiledQuery,
  type DatabaseConnection,
  type Dialect,
  type Driver,
  type QueryResult,
  SqliteAdapter,
  SqliteIntrospector,
  SqliteQueryCompiler,
} from 'kysely';

export interface WriterData {
  readonly file: string;
  readonly mostPages: number | undefined;
}
export type WriterQuestion = 'open' | { readonly sql: string; readonly parameters: readonly unknown[] };
/** A driver's error does not cross the threads whole: its code is what is needed. */
export type WriterAnswer<Row = unknown> =
  | { readonly rows: Row[]; readonly changes?: number }
  | { readonly failed: { readonly message: string; readonly code: string } };

/** One connection to a SQLite file on a thread of its own: neither a long statement, nor a commit, nor a checkpoint holds up the program. */
export function sqliteWriterDialect(data: WriterData): Dialect {
  return {
    createAdapter: () => new SqliteAdapter(),
    createDriver: () => new WriterDriver(data),
    createIntrospector: db => new SqliteIntrospector(db),
    createQueryCompiler: () => new SqliteQueryCompiler(),
  };
}

class WriterDriver implements Driver {
  private readonly data: WriterData;
  private connection: WriterConnection | undefined;

  constructor(data: WriterData) {
    this.data = data;
  }

  async init(): Promise<void> {
    await this.acquireConnection();
  }
  /** A thread that ended, as one without memory does, is followed by another. */
  async acquireConnection(): Promise<DatabaseConnection> {
    if (this.connection === undefined || this.connection.hasEnded) {
      this.connection = new WriterConnection(this.data);
      await this.connection.open();
    }
    return this.connection;
  }
  async releaseConnection(): Promise<void> {}
  async beginTransaction(connection: DatabaseConnection): Promise<void> {
    await connection.executeQuery(CompiledQuery.raw('begin'));
  }
  async commitTransaction(connection: DatabaseConnection): Promise<void> {
    await connection.executeQuery(CompiledQuery.raw('commit'));
  }
  async rollbackTransaction(connection: DatabaseConnection): Promise<void> {
    await connection.executeQuery(CompiledQuery.raw('rollback'));
  }
  async destroy(): Promise<void> {
    await this.connection?.close();
  }
}

/** Kysely asks one thing at a time of a SQLite connection. */
class WriterConnection implements DatabaseConnection {
  private readonly worker: Worker;
  private readonly ended = new AbortController();

  constructor(data: WriterData) {
    this.worker = new Worker(new URL('./sqliteWriterThread.ts', import.meta.url), { workerData: data });
    this.worker.on('error', () => this.ended.abort());
    this.worker.on('exit', () => this.ended.abort());
    this.worker.unref();
  }

  get hasEnded(): boolean {
    return this.ended.signal.aborted;
  }

  /** @throws what SQLite says of the file */
  async open(): Promise<void> {
    try {
      await this.ask('open');
    } catch (error) {
      await this.close();
      throw error;
    }
  }

  async executeQuery<Row>({ sql, parameters }: CompiledQuery): Promise<QueryResult<Row>> {
    const { rows, changes } = await this.ask<Row>({ sql, parameters });
    return changes === undefined ? { rows } : { rows, numAffectedRows: BigInt(changes) };
  }

  streamQuery(): never {
    throw new Error('The writer does not stream.');
  }

  async close(): Promise<void> {
    if (this.hasEnded) return;
    const exit = once(this.worker, 'exit');
    this.worker.ref();
    this.worker.postMessage('close');
    await exit;
  }

  private async ask<Row>(question: WriterQuestion) {
    const answer = await this.answerTo<Row>(question);
    if ('failed' in answer) throw Object.assign(new Error(answer.failed.message), { code: answer.failed.code });
    return answer;
  }

  /** While an answer is awaited, the program does not end. */
  private async answerTo<Row>(question: WriterQuestion): Promise<WriterAnswer<Row>> {
    this.worker.ref();
    try {
      const message = once(this.worker, 'message', { signal: this.ended.signal });
      this.worker.postMessage(question);
      return (await message)[0];
    } catch {
      throw Object.assign(new Error('The thread that writes has ended.'), { code: 'WRITER_ENDED' });
    } finally {
      this.worker.unref();
    }
  }
}
