import { createHash } from 'node:crypto';
import { z } from 'zod';
import { readJson } from '#adapters/storage/readJson.ts';
import type { DataKey } from './dataKey.ts';
import type { Row } from './vaultFile.ts';

const indexSchema = z.object({
  /** Raised by every write. */
  generation: z.number().int().min(0),
  /** When it was last written, ISO 8601. */
  writtenAt: z.string(),
  /** By the row's name: digest and length of its body. */
  rows: z.record(z.string(), z.tuple([z.string(), z.number().int().min(0)])),
});

/**
 * What must stand in the file: each row with the digest of its sealed body. Sealed under the data key, so that whoever can write the file
 * but has no key can neither take a record away, nor put an older version in its place, without being noticed.
 */
export type VaultIndex = z.output<typeof indexSchema>;

export type IndexRead = { readonly state: 'whole'; readonly index: VaultIndex } | { readonly state: 'missing' | 'damaged' };

export function emptyIndex(now: Date): VaultIndex {
  return { generation: 0, writtenAt: now.toISOString(), rows: {} };
}

export function sealIndex(key: DataKey, index: VaultIndex): Buffer {
  return key.sealIndex(Buffer.from(JSON.stringify(index)));
}

export function readIndex(key: DataKey, sealed: Buffer | undefined): IndexRead {
  if (sealed === undefined || sealed.length === 0) return { state: 'missing' };
  const clear = key.openIndex(sealed);
  if (clear === undefined) return { state: 'damaged' };
  const index = readJson(clear.toString(), json => indexSchema.safeParse(json).data);
  return index === undefined ? { state: 'damaged' } : { state: 'whole', index };
}

export function entryOf(body: Buffer): [digest: string, length: number] {
  return [createHash('sha256').update(body).digest('hex'), body.length];
}

/** The index of rows as they stand, one generation later. */
export function indexOf(rows: readonly Row[], generation: number, now: Date): VaultIndex {
  return {
    generation,
    writtenAt: now.toISOString(),
    rows: Object.fromEntries(rows.map(({ row, body }) => [row.toString('hex'), entryOf(body)])),
  };
}
