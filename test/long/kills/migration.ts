import { copyFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import SqliteDatabase from 'better-sqlite3';
import { openClientVault } from '#adapters/clients/sqliteVault.ts';
import { openSqliteStore } from '#adapters/storage/openStore.ts';
import { apart } from './apart.ts';
import { Home } from './program.ts';
import type { Scenario } from './scenario.ts';
import type { Tally } from './tally.ts';

const source = fileURLToPath(new URL('../../../src/adapters/', import.meta.url));
const shelves = join(source, 'storage/migrations/fixtures');
const clients = join(source, 'clients/forms/clients.format1.plain.sqlite');
const program = new URL('./openOnce.fixture.ts', import.meta.url);
const versions = readdirSync(shelves).filter(name => /^workspace-v\d+\.sqlite$/.test(name));

/** Data folders of earlier programs are opened and the program killed: opened again, every row is as it was. */
export const migration: Scenario = async (tally, kills) => {
  let milliseconds = 0;
  while (tally.wants(kills)) {
    const name = versions[tally.kills % versions.length]!;
    const home = new Home();
    const shelf = join(home.data, 'platewright.sqlite');
    copyFileSync(join(shelves, name), shelf);
    copyFileSync(clients, join(home.data, 'clients.sqlite'));
    const before = rowsOf(shelf);
    if (milliseconds === 0) milliseconds = await timed();
    const { isDone } = await apart(program, [home.data], home.env, 1.3 * milliseconds * tally.random());
    tally.kills += 1;
    tally.seen(isDone ? 'killed after' : 'killed within');
    if (isDone) tally.acknowledged += 1;
    const isMigrated = rowsOf(shelf).has('handouts') ? 'brought to the present form by then' : 'still in its earlier form';
    tally.seen(isMigrated);
    await look(home.data, before, name, tally);
    home.remove();
  }
};

/** How long one takes that nobody kills. */
async function timed(): Promise<number> {
  const home = new Home();
  copyFileSync(join(shelves, versions[0]!), join(home.data, 'platewright.sqlite'));
  copyFileSync(clients, join(home.data, 'clients.sqlite'));
  const { milliseconds } = await apart(program, [home.data], home.env);
  home.remove();
  return milliseconds;
}

async function look(folder: string, before: Rows, name: string, tally: Tally): Promise<void> {
  const store = await openSqliteStore(folder);
  const damaged = await store.damagedRows();
  await store.close();
  if (damaged.length > 0) tally.miss('half', `${name}: ${damaged.length} rows cannot be read`);
  const after = rowsOf(join(folder, 'platewright.sqlite'));
  for (const [table, rows] of before) {
    const there = new Set(after.get(table)?.map(row => JSON.stringify(entriesOf(row, rows[0]))));
    // The number of the form and of the last change are what a migration is for.
    if (table === 'workspace') continue;
    const lost = rows.filter(row => !there.has(JSON.stringify(entriesOf(row, rows[0]))));
    if (lost.length > 0) tally.miss('lost', `${name}: ${lost.length} rows of ${table}`);
    if ((after.get(table)?.length ?? 0) > rows.length) tally.miss('doubled', `${name}: ${after.get(table)?.length} rows of ${table}`);
  }
  const vault = await openClientVault(folder);
  const records = await vault.list();
  const { whole, damaged: bad } = await vault.health();
  await vault.close();
  if (records.length !== 3 || whole !== 3 || Object.values(bad).some(count => count > 0))
    tally.miss('lost', `${name}: ${records.length} of 3 clients`);
}

type Row = Readonly<Record<string, unknown>>;
type Rows = ReadonlyMap<string, readonly Row[]>;

/** The columns that the earlier form had. */
function entriesOf(row: Row, earlier: Row | undefined): unknown {
  return Object.keys(earlier ?? {}).map(key => row[key]);
}

function rowsOf(path: string): Rows {
  const file = new SqliteDatabase(path);
  try {
    const names = file.prepare<[], { name: string }>("select name from sqlite_schema where type = 'table'").all();
    return new Map(names.map(({ name }) => [name, file.prepare<[], Row>(`select * from ${name}`).all()]));
  } finally {
    file.close();
  }
}
