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
  if (copy !== undefined) await tryClients(vault, look, copy, into, passphrase);
  await mark.begin();
  let ended: 'whole' | 'half' | 'nothing' = 'nothing';
  try {
    const rows = await archives.restore(path, into, watch);
    ended = copy === undefined ? 'whole' : 'half';
    if (copy !== undefined && into === 'empty') await removeDemoClients(vault);
    const clients = copy === undefined ? undefined : await vault.restoreCopy(copy, passphrase, into);
    ended = 'whole';
    return { rows, ...(clients === undefined ? {} : { clients }) };
  } finally {
    await mark.end(ended);
  }
}

/** What could keep the client records from coming back, before anything is written. */
async function tryClients(
  vault: ClientVault,
  look: ArchiveLook,
  copy: unknown,
  into: RestoreInto,
  passphrase: string | undefined,
): Promise<void> {
  if (into === 'beside' && vault.state() !== 'open')
    throw new Fault('clients-locked', 'Client records can only be added beside others that are open.');
  if (into === 'empty' && (vault.state() !== 'open' || (await vault.list()).some(({ isDemo }) => isDemo !== true)))
    throw new Fault('clients-not-empty', 'Other client records than those of the demo are here.');
  const isSealed = look.clients?.opensWith === 'passphrase';
  if (into === 'beside' && isSealed && passphrase === undefined)
    throw new Fault(
      'passphrase-missing',
      'The client records of the archive are sealed; adding them beside others needs their passphrase.',
    );
  try {
    await vault.lookAtCopy(copy, passphrase);
  } catch (error) {
    if (!(error instanceof Fault && error.code === 'passphrase-wrong')) throw error;
    // Into an empty file they come as they are sealed.
    if (into === 'empty' && isSealed && passphrase === undefined) return;
    throw new Fault('archive-passphrase-wrong', 'The client records of the archive do not open with it.');
  }
}
