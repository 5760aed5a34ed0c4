import { z } from 'zod';
import type { SealedClients } from '#app/clientVault.ts';
import { Fault } from '#core/errors.ts';
import { readWhole } from '#core/json/readWhole.ts';
import { DataKey, dataKeyBytes } from './dataKey.ts';
import { isKnownCost, type Wrap } from './passphrase.ts';
import { fileFormat } from './vaultDatabase.ts';
import type { Row } from './vaultFile.ts';

const bytes = z.base64();
/** Each is tried with the passphrase, and no vault of ours has had more than one. */
const mostWraps = 4;
const whole = z.number().int().min(0);

const copySchema = z.object({
  // A copy of format 2 is one without drafts.
  format: z.number().int().min(2).max(fileFormat),
  wraps: z
    .array(
      z
        .object({
          id: z.string(),
          kind: z.literal('passphrase'),
          form: whole,
          n: whole,
          r: whole,
          p: whole,
          salt: bytes,
          sealedSecret: bytes,
        })
        .refine(isKnownCost, 'a cost that Platewright sets'),
    )
    .max(mostWraps)
    .refine(wraps => new Set(wraps.map(({ id }) => id)).size === wraps.length, 'passphrases of different identities'),
  index: bytes.exactOptional(),
  rows: z.array(z.object({ row: bytes, body: bytes })),
  key: bytes.exactOptional(),
});

/** A copy in bytes. */
export interface Copy {
  readonly wraps: readonly Wrap[];
  readonly sealedIndex: Buffer | undefined;
  readonly rows: readonly Row[];
  readonly key: DataKey | undefined;
}

export function copyToJson({ wraps, sealedIndex, rows, key }: Copy): SealedClients {
  const secret = key?.bytes();
  return {
    format: fileFormat,
    wraps: wraps.map(({ id, kind, form, cost, salt, sealedSecret }) => ({
      id,
      kind,
      form,
      ...cost,
      salt: text(salt),
      sealedSecret: text(sealedSecret),
    })),
    ...(sealedIndex === undefined ? {} : { index: text(sealedIndex) }),
    rows: rows.map(({ row, body }) => ({ row: text(row), body: text(body) })),
    ...(secret === undefined ? {} : { key: text(secret) }),
  };
}

/** @throws Fault client-copy-not-valid, client-record-newer */
export function copyFromJson(json: unknown): Copy {
  if (typeof json === 'object' && json !== null && 'format' in json && typeof json.format === 'number' && json.format > fileFormat)
    throw new Fault('client-record-newer', `The copy of the clients has format ${json.format}, this program knows ${fileFormat}.`);
  const { value, issues } = readWhole(copySchema, json);
  // The places, never the values.
  if (value === undefined)
    throw new Fault(
      'client-copy-not-valid',
      issues
        .slice(0, 5)
        .map(({ place, expected }) => `${place.heading ?? 'the copy'}: expected ${expected}`)
        .join('; '),
    );
  const secret = value.key === undefined ? undefined : buffer(value.key);
  if ((secret !== undefined && secret.length !== dataKeyBytes) || (secret === undefined) !== value.wraps.length > 0)
    throw new Fault('client-copy-not-valid', 'Neither a passphrase nor a key opens the copy.');
  const rows = value.rows.map(({ row, body }) => ({ row: buffer(row), body: buffer(body) }));
  if (new Set(rows.map(({ row }) => row.toString('hex'))).size < rows.length)
    throw new Fault('client-copy-not-valid', 'A record is in the copy twice.');
  return {
    wraps: value.wraps.map(({ n, r, p, salt, sealedSecret, ...head }) => ({
      ...head,
      cost: { n, r, p },
      salt: buffer(salt),
      sealedSecret: buffer(sealedSecret),
    })),
    sealedIndex: value.index === undefined ? undefined : buffer(value.index),
    rows,
    key: secret === undefined ? undefined : new DataKey(secret),
  };
}

function text(given: Buffer): string {
  return given.toString('base64');
}

function buffer(given: string): Buffer {
  return Buffer.from(given, 'base64');
}
