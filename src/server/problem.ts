import { randomUUID } from 'node:crypto';
import type { Context } from 'hono';
import { HTTPException } from 'hono/http-exception';
import { Fault, type FaultCode, thrownAt } from '#core/errors.ts';
import { faultCatalogue } from '#core/faultCatalogue.ts';

/** The HTTP status of each fault. */
const statusOf = {
  'file-not-found': 404,
  'file-not-readable': 403,
  'file-too-large': 413,
  'file-took-too-long': 422,
  'workbook-encrypted': 422,
  'workbook-of-another-kind': 422,
  'workbook-not-readable': 422,
  'table-too-large': 413,
  'photo-not-shown': 422,
  'table-without-headings': 422,
  'table-heading-twice': 422,
  'table-heading-missing': 422,
  'unknown-command': 400,
  'unknown-option': 400,
  'option-missing': 400,
  'plate-not-found': 404,
  'plate-not-valid': 422,
  'yardstick-not-found': 404,
  'yardstick-not-valid': 422,
  'formula-not-found': 404,
  'formula-inputs-not-valid': 422,
  'setting-not-known': 422,
  'setting-refused': 422,
  'food-not-found': 404,
  'label-not-found': 404,
  'document-not-found': 404,
  'document-not-valid': 422,
  'changed-meanwhile': 409,
  'work-cancelled': 409,
  'client-not-found': 404,
  'note-not-found': 404,
  'note-too-long': 413,
  'assessment-not-valid': 422,
  'care-figure-not-valid': 422,
  'prescription-not-complete': 422,
  'signed-choice-left-out': 409,
  'label-not-readable': 422,
  'workspace-not-empty': 409,
  'workspace-file-not-valid': 422,
  'archive-not-valid': 422,
  'archive-newer': 422,
  'archive-passphrase-wrong': 403,
  'restore-under-way': 409,
  'archive-not-found': 404,
  'copies-folder-not-usable': 422,
  'copies-folder-taken': 409,
  'passphrase-missing': 422,
  'archive-not-made': 507,
  'database-ahead': 500,
  'database-locked': 503,
  'database-damaged': 500,
  'database-missing': 500,
  'database-read-only': 500,
  'data-folder-not-usable': 500,
  'database-full': 507,
  'database-unreachable': 503,
  'outcome-unknown': 503,
  'clients-locked': 423,
  'passphrase-wrong': 403,
  'passphrase-too-short': 422,
  'passphrase-too-common': 422,
  'passphrase-tries-waiting': 429,
  'clients-file-damaged': 500,
  'clients-file-whole': 409,
  'clients-not-empty': 409,
  'client-copy-not-valid': 422,
  'not-confirmed': 422,
  'client-record-newer': 409,
  'client-record-damaged': 409,
  'request-not-valid': 422,
  'request-too-large': 413,
  'origin-refused': 403,
  'entry-refused': 403,
  'not-found': 404,
  'port-not-valid': 500,
  'port-in-use': 500,
  'guide-not-found': 404,
  'guide-not-valid': 422,
  'handout-not-found': 404,
  'handout-not-valid': 422,
  'handout-not-signed': 409,
  'folder-not-owned': 409,
  'browser-not-found': 503,
  'pdf-not-made': 503,
  'reference-not-recognized': 422,
  'reference-not-valid': 422,
  'reference-not-found': 404,
  'line-not-json': 422,
  'output-not-written': 500,
  'runtime-too-old': 500,
  'program-fault': 500,
} as const satisfies Record<FaultCode, number>;

/** Answers a fault as problem details (RFC 9457). What was not foreseen gets an id; its stack goes to the log, never the request. */
export function problem(error: unknown, context: Context, log: (line: string) => void): Response {
  const fault =
    error instanceof Fault
      ? error
      : error instanceof HTTPException
        ? new Fault('request-not-valid', 'The request could not be read.')
        : unforeseen(error, log);
  const status = statusOf[fault.code];
  return context.body(
    JSON.stringify({
      type: `https://platewright.invalid/faults/${fault.code}`,
      title: faultCatalogue[fault.code].title,
      status,
      detail: fault.message,
      code: fault.code,
      nextStep: faultCatalogue[fault.code].nextStep,
    }),
    status,
    { 'content-type': 'application/problem+json' },
  );
}

function unforeseen(error: unknown, log: (line: string) => void): Fault {
  const id = randomUUID().slice(0, 8);
  const [name, places] = error instanceof Error ? [error.name, thrownAt(error)] : [typeof error, []];
  log(`fault ${id}: ${name}\n${places.join('\n')}\n`);
  return new Fault('program-fault', `Note the number ${id}.`);
}
