import { clientRecordToJson } from '#core/client/record/clientRecordJson.ts';
import type { ClientVault } from '../clientVault.ts';
import { demoClients } from './demoClients.ts';
import { localDay } from './localDay.ts';

/** Loads the invented clients that are not there yet, dated as of now. */
export async function loadDemoClients(vault: ClientVault, now: Date): Promise<void> {
  for (const client of demoClients(localDay(now))) {
    if ((await vault.get(client.id)) === undefined) await vault.put(clientRecordToJson({ ...client, version: 0 }), null);
  }
}

/** Erases the clients that are marked as demo, and no others. */
export async function removeDemoClients(vault: ClientVault): Promise<void> {
  for (const { id, version, isDemo } of await vault.list()) if (isDemo === true) await vault.remove(id, version);
}
