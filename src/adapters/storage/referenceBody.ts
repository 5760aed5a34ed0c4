import { createHash } from 'node:crypto';
import type { LargerTable } from '#core/reference/largerTable.ts';
import { referenceFileFromJson } from '#core/reference/referenceFile.ts';

/** The one table of a kept reference file; undefined when the file is damaged. */
export function readReference(body: string): LargerTable | undefined {
  try {
    const [table, ...more] = referenceFileFromJson(body, 'body');
    return more.length === 0 ? table : undefined;
  } catch {
    return undefined;
  }
}

/** Tells one body from another: estimates carry it. */
export function digestOf(body: string): string {
  return createHash('sha256').update(body).digest('hex').slice(0, 16);
}
