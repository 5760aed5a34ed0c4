import type { ClientVault, SealedClients } from '#app/clientVault.ts';
import { Fault } from '#core/errors.ts';

/**
 * Client records for an archive: as they are sealed, when they have a passphrase (also while they are locked); else sealed
 * under the one that is given. Undefined when there is no record.
 * @throws Fault passphrase-missing when the records have none and none is given, passphrase-too-short
 */
export async function clientsForArchive(vault: ClientVault, passphrase: string | undefined): Promise<SealedClients | undefined> {
  if (!vault.hasPassphrase()) {
    if ((await vault.list()).length === 0) return undefined;
    if (passphrase === undefined || passphrase === '')
      throw new Fault('passphrase-missing', 'Client records have no passphrase here, and an archive never holds them in clear.');
  }
  return vault.sealedCopy(passphrase);
}
