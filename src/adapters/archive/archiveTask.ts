import type { ArchiveLook } from '#app/archives.ts';
import type { SealedClients } from '#app/clientVault.ts';
import type { RestoredRows, RestoreInto } from '#app/store.ts';
import type { FaultCode } from '#core/errors.ts';

/** What the thread is asked to do. */
export type ArchiveTask =
  | { readonly do: 'write'; readonly path: string; readonly clients?: SealedClients; readonly madeAt: Date; readonly version: string }
  | { readonly do: 'look'; readonly path: string }
  | { readonly do: 'restore'; readonly path: string; readonly into: RestoreInto };

/** What it says while it works, and at the end. */
export type ArchiveWord =
  | { readonly step: readonly [what: string, done: number, of: number] }
  | { readonly look: ArchiveLook }
  | { readonly restored: RestoredRows }
  | { readonly fault: FaultCode; readonly message: string }
  | { readonly failed: string };
