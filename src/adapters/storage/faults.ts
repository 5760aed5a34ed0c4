import { Fault } from '#core/errors.ts';

/**
 * Turns what a driver throws into a fault of the catalogue. The driver's own words stay out of it: they can hold values
 * that the user typed.
 */
export function storageFault(error: unknown): unknown {
  if (error instanceof Fault || !(error instanceof Error)) return error;
  const code = 'code' in error ? String(error.code) : '';
  if (/^SQLITE_(BUSY|LOCKED)|^55P03$|^40001$/.test(code))
    return new Fault('database-locked', 'Another program is writing to the database.');
  if (/^SQLITE_FULL$|^ENOSPC$|^53100$/.test(code))
    return new Fault('database-full', 'There is no room left for what was to be saved; it was not saved.');
  if (/^SQLITE_(READONLY|CANTOPEN|PERM|IOERR_ACCESS)|^E(ACCES|PERM|ROFS)$|^42501$/.test(code)) {
    return new Fault('database-read-only', 'The data folder or its files may not be written.');
  }
  if (/^E(CONNREFUSED|CONNRESET|NOTFOUND|TIMEDOUT|PIPE)$|^57P0[123]$|^08/.test(code))
    return new Fault('database-unreachable', 'PostgreSQL could not be reached.');
  if (/^SQLITE_(CORRUPT|NOTADB|IOERR)|^XX00[12]$/.test(code)) {
    return new Fault('database-damaged', 'The database is damaged, or its file is none.');
  }
  if (/^22(?:021|P05|003)$/.test(code))
    return new Fault('request-not-valid', 'It holds a character or a number that the database cannot keep.');
  if (/^28/.test(code) || code === '3D000')
    return new Fault('database-unreachable', 'PostgreSQL refused the user, the password or the database name.');
  return error;
}

/** Whether the database refused rows for what stands in them: a row that another names is missing, one is there twice, a value is too large. */
export function areRowsRefused(error: unknown): boolean {
  return error instanceof Error && 'code' in error && /^SQLITE_(CONSTRAINT|RANGE|TOOBIG|MISMATCH)|^2[23]\w{3}$/.test(String(error.code));
}
