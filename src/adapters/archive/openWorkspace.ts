import { openClientVault } from '#adapters/clients/sqliteVault.ts';
import { openStoreAt, placeFromEnvironment } from '#adapters/storage/openStore.ts';
import { privateFolder } from '#adapters/storage/privateFolder.ts';
import type { Archives, RestoreMark } from '#app/archives.ts';
import type { ClientVault } from '#app/clientVault.ts';
import { restoreMark } from './restoreMark.ts';
import { threadArchives } from './threadArchives.ts';

/** Opens shelf and client records of a data folder for archives, as the program at the command line does. */
export async function openWorkspace(
  folder: string,
  env: Readonly<Record<string, string | undefined>>,
  version: string,
  say: (text: string) => void,
) {
  const { path } = privateFolder(folder, say);
  const place = placeFromEnvironment({ ...env, PLATEWRIGHT_DATA: path });
  const store = await openStoreAt(place);
  let vault: ClientVault;
  try {
    vault = await openClientVault(path);
  } catch (error) {
    await store.close();
    throw error;
  }
  const archives: Archives = threadArchives(store, place, version, () => new Date());
  const mark: RestoreMark = restoreMark(path);
  return {
    vault,
    archives,
    mark,
    close: async () => {
      await vault.close();
      await store.close();
    },
  };
}
