import type { ArchiveLook, Archives, RestoreMark } from '#app/archives.ts';
import { removeDemoClients } from '#app/clients/loadDemoClients.ts';
import type { ClientVault, Restored as RestoredClients } from '#app/clientVault.ts';
import type { RestoredRows, RestoreInto } from '#app/store.ts';
import type { Watch } from '#app/watch.ts';
import { Fault } from '#core/errors.ts';

export interface RestoreChoice {
  readonly into: RestoreInto;
  /** Whether the client records of the archive are put back too. */
  readonly withClients: boolean;
  /** Under which they were sealed; not needed where they come into an empty file as they are. */
  readonly passphrase?: string;
}

export interface Restored {
  readonly rows: RestoredRows;
  readonly clients?: RestoredClients;
}

/**
 * Puts an archive back that was looked at. What could fail is tried before the first write: the shelf is one transaction
 * and the client records are another, and where the program ends between the two, the mark tells so at the next start; adding
 * the same archive beside brings what is missing.
 * @throws Fault workspace-not-empty, clients-locked, passphrase-wrong, archive-not-valid, work-cancelled
 */
export async function restoreArchive(
  { archives, vault, mark }: { readonly archives: Archives; readonly vault: ClientVault; readonly mark: RestoreMark },
  { path, look }: { readonly path: string; readonly look: ArchiveLook },
  { into, withClients, passphrase }: RestoreChoice,
  watch: Watch,
): Promise<Restored> {
  const copy = withClients ? look.clientsCopy : undefined;
  if (copy !== undefined) {
    if (into === 'beside' && look.clients?.opensWith === 'passphrase' && !passphrase)
      throw new Fault(
        'passphrase-missing',
        'The client records of the archive are sealed; adding them beside others needs their passphrase.',
      );
    if (into === 'empty') await removeDemoClients(vault);
    const staysSealed = into === 'empty' && passphrase === undefined && look.clients?.opensWith === 'passphrase';
    await vault.lookAtCopy(copy, passphrase).catch(error => {
      if (!(staysSealed && error instanceof Fault && error.code === 'passphrase-wrong')) throw error;
    });
  }
  await mark.begin();
  try {
    const rows = await archives.restore(path, into, watch);
    const clients = copy === undefined ? undefined : await vault.restoreCopy(copy, passphrase, into);
    await mark.end();
    return { rows, ...(clients === undefined ? {} : { clients }) };
  } catch (error) {
    // Nothing was written, or the shelf was and the clients were not: the same archive, added beside, tells which.
    if (!(error instanceof Fault) || error.code !== 'program-fault') await mark.end();
    throw error;
  }
}
