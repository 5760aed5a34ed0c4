import { z } from 'zod';
import { Fault } from '#core/errors.ts';

/** Rises when a program of before could no longer read what is written. */
export const archiveFormat = 1;

export const manifestName = 'manifest.json';
export const clientsName = 'clients.json';
export const photosTable = 'photos';

/** What lies in the archive and how to know that it is whole. docs/formats.md, "Archive". */
export const manifestSchema = z.strictObject({
  platewrightArchive: z.literal(archiveFormat),
  madeAt: z.iso.datetime(),
  version: z.string().max(40),
  rows: z.record(z.string(), z.number().int().nonnegative()),
  clients: z.strictObject({ records: z.number().int().nonnegative(), opensWith: z.enum(['passphrase', 'key']) }).optional(),
  /** Every other file of the archive, in its order. */
  files: z.array(z.strictObject({ name: z.string(), bytes: z.number().int().nonnegative(), sha256: z.hash('sha256') })),
});
export type Manifest = z.infer<typeof manifestSchema>;

const anyFormat = z.object({ platewrightArchive: z.number() });

/** @throws Fault archive-newer, archive-not-valid */
export function readManifest(text: string): Manifest {
  const json = parsed(text);
  const { success, data } = manifestSchema.safeParse(json);
  if (success) return data;
  const { data: other } = anyFormat.safeParse(json);
  if (other !== undefined && other.platewrightArchive > archiveFormat)
    throw new Fault('archive-newer', `It has format ${other.platewrightArchive}; this program reads formats up to ${archiveFormat}.`);
  throw new Fault('archive-not-valid', 'Its list of contents cannot be read.');
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

/** The file of the archive that holds the rows of a table. */
export function tableFile(table: string): string {
  return `tables/${table}.jsonl`;
}
