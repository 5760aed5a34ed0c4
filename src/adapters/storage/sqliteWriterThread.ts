/** The thread that writes to a SQLite file: says what it is told, one statement after the other. Everything in it may block. */
import { statfsSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import { parentPort, workerData } from 'node:worker_threads';
import SqliteDatabase from 'better-sqlite3';
import type { WriterAnswer, WriterData, WriterQuestion } from './sqliteWriterDialect.ts';

const { file, mostPages }: WriterData = workerData;
/** Below this many bytes a disk counts as full: a step of the write-ahead log's index is 32,768. */
const noRoom = 65_536;
/** How long SQLite waits for another program that writes. */
const busyMilliseconds = 3_000;

let database: SqliteDatabase.Database | undefined;
/** What tells the opened file and its log from others under their names. */
let identity = '';

/**
 * Write-ahead log with full sync: an acknowledged write survives a power cut. The log's file is cut back after a long write;
 * `mostPages` bounds the database as a full disk would (for tests).
 */
function open(): void {
  database = new SqliteDatabase(file, { timeout: busyMilliseconds });
  const pragmas = ['journal_mode = wal', 'synchronous = full', 'foreign_keys = on', 'secure_delete = on', 'journal_size_limit = 16777216'];
  for (const pragma of pragmas) database.pragma(pragma);
  if (mostPages !== undefined) database.pragma(`max_page_count = ${Math.ceil(mostPages)}`);
  // The first look makes the log.
  database.prepare('select count(*) from sqlite_schema').get();
  identity = identityNow();
}

function identityNow(): string {
  return [file, `${file}-wal`]
    .map(path => statSync(path, { bigint: true }))
    .map(({ dev, ino }) => `${dev} ${ino}`)
    .join();
}

function answerTo(question: WriterQuestion): WriterAnswer {
  if (question === 'open') {
    open();
    return { rows: [] };
  }
  if (database === undefined) throw new Error('The file is not open.');
  // SQLite has rolled back by itself after some failures, and refuses to do so again.
  if (question.sql === 'rollback' && !database.inTransaction) return { rows: [] };
  if (question.sql === 'begin') refuseWhenMoved();
  const statement = database.prepare(question.sql);
  if (statement.reader) return { rows: statement.all(question.parameters) };
  return { rows: [], changes: statement.run(question.parameters).changes };
}

/** A file that was taken away or exchanged would go on being written where nobody can find it. */
function refuseWhenMoved(): void {
  try {
    if (identityNow() === identity) return;
  } catch {
    // Told below.
  }
  throw Object.assign(new Error(), { code: 'DATABASE_MISSING' });
}

/** SQLite calls some kinds of a full disk by other names. */
function codeOf(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  if (!/^SQLITE_(IOERR|CANTOPEN)/.test(code)) return code;
  try {
    const { bavail, bsize } = statfsSync(dirname(file));
    return bavail * bsize < noRoom ? 'SQLITE_FULL' : code;
  } catch {
    return code;
  }
}

parentPort?.on('message', (question: WriterQuestion | 'close') => {
  if (question === 'close') {
    database?.close();
    parentPort?.close();
    return;
  }
  let answer: WriterAnswer;
  try {
    answer = answerTo(question);
  } catch (error) {
    answer = { failed: { message: error instanceof Error ? error.message : '', code: codeOf(error) } };
  }
  parentPort?.postMessage(answer);
});
