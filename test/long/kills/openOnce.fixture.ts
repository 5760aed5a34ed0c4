/** A program of its own: opens the shelf and the client records of a folder, which brings them to the present form, and tells when it begins and ends. */
import { openClientVault } from '#adapters/clients/sqliteVault.ts';
import { openSqliteStore } from '#adapters/storage/openStore.ts';

const [folder = ''] = process.argv.slice(2);
process.stdout.write('begun\n');
const store = await openSqliteStore(folder);
const vault = await openClientVault(folder);
process.stdout.write('done\n');
await vault.close();
await store.close();
