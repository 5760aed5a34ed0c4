import { Fault } from '#core/errors.ts';

/** The connection is gone or was never made: the server ended, restarts, or has no place left. */
const lostCodes =
  /^E(CONNREFUSED|CONNRESET|CONNABORTED|PIPE|TIMEDOUT|HOSTUNREACH|NETUNREACH)$|^57P0[123]$|^25P03$|^53300$|^08|^THREAD_ENDED$/;
/** What the driver, its pool and Kysely say without a code. */
const lostWords = /^Connection terminated|^Client (was closed|has encountered)|timeout exceeded when trying to connect|has been discarded$/;
const busyCodes = /^SQLITE_(BUSY|LOCKED|PROTOCOL)|^55P03$|^40001$|^40P01$|^57014$/;

function codeOf(error: Error): string {
  return 'code' in error && error.code !== undefined ? String(error.code) : '';
}

/** Whether the connection broke: what was being done may have been done or not. */
export function isLost(error: unknown): boolean {
  return error instanceof Error && !(error instanceof Fault) && (lostCodes.test(codeOf(error)) || lostWords.test(error.message));
}

/** Whether a read may work a moment later without anybody doing anything. */
export function isPassing(error: unknown): boolean {
  return isLost(error) || (error instanceof Error && /^SQLITE_(BUSY|PROTOCOL)/.test(codeOf(error)));
}

/**
 * Turns what a driver throws into a fault of the catalogue. The driver's own words stay out of it: they can hold values
 * that the user typed.
 */
export function storageFault(error: unknown): unknown {
  if (error instanceof Fault || !(error instanceof Error)) return error;
  const code = codeOf(error);
  if (busyCodes.test(code)) return new Fault('database-locked', 'Another program is writing to the database.');
  if (/^SQLITE_(FULL|IOERR_SHMSIZE)$|^ENOSPC$|^EDQUOT$|^53100$/.test(code))
    return new Fault('database-full', 'There is no room left for what was to be saved; it was not saved.');
  if (/^SQLITE_(READONLY|CANTOPEN|PERM|IOERR_ACCESS)|^E(ACCES|PERM|ROFS)$|^42501$|^25006$/.test(code)) {
    return new Fault('database-read-only', 'The data folder or its files may not be written.');
  }
  if (code === 'DATABASE_MISSING')
    return new Fault('database-missing', 'Files of the database were taken away or exchanged; nothing was written to what is there now.');
  if (isLost(error) || /^E(NOTFOUND|AI_AGAIN)$/.test(code)) return new Fault('database-unreachable', 'The database could not be reached.');
  // A length that is damaged asks for more memory than there is.
  if (/^SQLITE_(CORRUPT|NOTADB|IOERR|NOMEM)|^XX00[12]$/.test(code) || isOfOtherTables(code, error.message)) {
    return new Fault('database-damaged', 'The database is damaged, or its file is none.');
  }
  if (/^22(?:021|P05|003)$/.test(code))
    return new Fault('request-not-valid', 'It holds a character or a number that the database cannot keep.');
  if (/^28/.test(code) || code === '3D000')
    return new Fault('database-unreachable', 'PostgreSQL refused the user, the password or the database name.');
  return error;
}

/** Tables that are missing, or there already when they are to be made, and a file of another form: what it tells of itself is not so. */
function isOfOtherTables(code: string, message: string): boolean {
  return (
    /^42(P01|P07|701|703)$/.test(code) ||
    (code === 'SQLITE_ERROR' &&
      /^no such (table|column)|^table .+ already exists|^duplicate column|^unsupported file format|same text encoding/.test(message))
  );
}

/** Whether the database refused rows for what stands in them: a row that another names is missing, one is there twice, a value is too large. */
export function areRowsRefused(error: unknown): boolean {
  return error instanceof Error && 'code' in error && /^SQLITE_(CONSTRAINT|RANGE|TOOBIG|MISMATCH)|^2[23]\w{3}$/.test(String(error.code));
}
