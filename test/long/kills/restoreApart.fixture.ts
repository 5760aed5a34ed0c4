/** A program of its own: restores an archive into the workspace of a folder on a thread, as the workbench does, and tells when it begins and ends. */
import { threadArchives } from '#adapters/archive/threadArchives.ts';
import { openSqliteStore } from '#adapters/storage/openStore.ts';
import { unwatched } from '#app/watch.ts';

const [folder = '', file = ''] = process.argv.slice(2);
const store = await openSqliteStore(folder);
process.stdout.write('begun\n');
await threadArchives(store, { engine: 'sqlite', folder }, '0', () => new Date()).restore(file, 'beside', unwatched);
process.stdout.write('done\n');
await store.close();
