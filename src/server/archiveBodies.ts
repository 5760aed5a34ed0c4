import { z } from '@hono/zod-openapi';
import type { CopiesState } from '#app/archive/dailyCopies.ts';
import type { Restored } from '#app/archive/restoreArchive.ts';
import type { ArchiveLook } from '#app/archives.ts';
import { leftOutReasons } from '#app/store.ts';
import { list } from './bodies.ts';

/** An archive that waits: what is in it, and what is not. */
export const archiveBody = z
  .object({
    id: z.string(),
    kind: z.enum(['archive', 'workspace-file']),
    /** ISO 8601, UTC; empty for a workspace file, which does not say it. */
    madeAt: z.string(),
    version: z.string(),
    bytes: z.number(),
    rows: z.record(z.string(), z.number()).readonly(),
    damaged: z.number(),
    clients: z.object({ records: z.number(), opensWith: z.enum(['passphrase', 'key']) }).exactOptional(),
  })
  .openapi('Archive');

export function shownArchive({ id, look }: { readonly id: string; readonly look: ArchiveLook }): z.infer<typeof archiveBody> {
  const { kind, madeAt, version, bytes, rows, damaged, clients } = look;
  return { id, kind, madeAt, version, bytes, rows, damaged, ...(clients === undefined ? {} : { clients }) };
}

export const restoredBody = z
  .object({
    added: z.record(z.string(), z.number()).readonly(),
    same: z.number(),
    leftOut: z.partialRecord(z.enum(leftOutReasons), z.number()).readonly(),
    examples: list(z.object({ table: z.string(), id: z.string(), reason: z.enum(leftOutReasons), name: z.string().exactOptional() })),
    clients: z
      .object({
        added: z.number(),
        same: z.number(),
        conflicts: z.number(),
        damaged: z.number(),
        /** Of how many clients who stand here the archive has other half-typed things. */
        draftsLeftOut: z.number().exactOptional(),
      })
      .exactOptional(),
  })
  .openapi('Restored');

export function shownRestored({ rows, clients }: Restored): z.infer<typeof restoredBody> {
  return { ...rows, ...(clients === undefined ? {} : { clients }) };
}

export const copiesBody = z
  .object({
    folder: z.string(),
    earlierFolders: list(z.string()).exactOptional(),
    lastAt: z.string().exactOptional(),
    lastFault: z.object({ at: z.string(), title: z.string(), message: z.string(), nextStep: z.string() }).exactOptional(),
    /** `holdsKey`: whoever has the copy can read the client records in it. */
    copies: list(z.object({ day: z.string(), bytes: z.number(), madeAt: z.string(), holdsKey: z.boolean() })),
    /** In folders that were chosen before. */
    earlier: z.object({ copies: z.number(), holdKey: z.number() }),
    heldUntil: z.string().exactOptional(),
    isReadable: z.boolean(),
    /** A restore of an earlier start was broken off between the shelf and the client records. */
    restoreBrokenOff: z.boolean(),
  })
  .openapi('Copies');

export function shownCopies(state: CopiesState, restoreBrokenOff: boolean): z.infer<typeof copiesBody> {
  return { ...state, restoreBrokenOff };
}
