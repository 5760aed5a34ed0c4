/** What the tests of the vault share: folders of their own, invented clients, and hands that reach into the file from outside. */
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import SqliteDatabase from 'better-sqlite3';
import type { ClientJson, ClientVault } from '#app/clientVault.ts';
import { Fault } from '#core/errors.ts';
import { openClientVault } from './sqliteVault.ts';

/** Far too cheap for real use; it lets a test try many passphrases. */
export const cheap = { n: 2 ** 10, r: 8, p: 1 };
export const passphrase = 'seven herons by the weir';
export const another = 'no heron stands on ice';
export const program = fileURLToPath(new URL('./vaultProgram.fixture.ts', import.meta.url));

const folders: string[] = [];
const vaults: ClientVault[] = [];

export function newFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'platewright-clients-'));
  folders.push(folder);
  return folder;
}

export async function open(folder: string, cost = cheap, now?: () => Date): Promise<ClientVault> {
  const vault = await openClientVault(folder, cost, now);
  vaults.push(vault);
  return vault;
}

export async function cleanUp(): Promise<void> {
  for (const vault of vaults.splice(0)) await vault.close();
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
}

/** An invented client. What must never be read on disk: the name, the id, the lab value. */
export function client(index: number): ClientJson {
  return {
    id: `ottoline-${index}`,
    version: 0,
    name: `Ottoline Marrow ${index}`,
    labs: [{ name: 'serum potassium', value: 5.9731, unit: 'mmol/L', on: '2025-03-01' }],
    notes: `prefers barley soup ${index} `.repeat(200),
  };
}
export const tellTales = ['ottoline', 'Ottoline', 'Marrow', 'potassium', '5.9731', 'barley'];

export async function filled(folder: string, count = 30): Promise<ClientVault> {
  const vault = await open(folder);
  for (let index = 0; index < count; index++) await vault.put(client(index), null);
  return vault;
}

/** Which of the texts or bytes stand in any file of the folder. */
export function onDisk<Sought extends string | Buffer>(folder: string, sought: readonly Sought[]): readonly Sought[] {
  const bytes = readdirSync(folder).map(name => readFileSync(join(folder, name)));
  return sought.filter(text => bytes.some(file => file.includes(text)));
}

export const readOnDisk = (folder: string): readonly string[] => onDisk(folder, tellTales);

/** Changes a closed vault from outside. */
export function tamper(folder: string, sql: string, ...values: readonly unknown[]): void {
  const db = new SqliteDatabase(join(folder, 'clients.sqlite'));
  try {
    db.prepare(sql).run(...values);
  } finally {
    db.close();
  }
}

/** Changes a closed vault where its tables would forbid it. */
export function withoutWalls(folder: string, sql: string, ...values: readonly unknown[]): void {
  const db = new SqliteDatabase(join(folder, 'clients.sqlite'));
  try {
    db.unsafeMode();
    db.pragma('writable_schema = on');
    db.exec("update sqlite_schema set sql = replace(sql, 'body blob not null', 'body blob') where name = 'records'");
    db.pragma('writable_schema = reset');
    db.prepare(sql).run(...values);
  } finally {
    db.close();
  }
}

/** Looks into a closed vault from outside. */
export function peek<Line>(folder: string, sql: string, file = 'clients.sqlite'): readonly Line[] {
  const db = new SqliteDatabase(join(folder, file));
  try {
    return db.prepare<[], Line>(sql).all();
  } finally {
    db.close();
  }
}

export const sealedRows = (folder: string) => peek<{ row: Buffer; body: Buffer }>(folder, 'select row, body from records order by row');

export async function faultOf(work: Promise<unknown>): Promise<Fault> {
  const outcome = await work.then(
    () => undefined,
    (error: unknown) => error,
  );
  if (!(outcome instanceof Fault)) throw new Error('no fault was thrown', { cause: outcome });
  return outcome;
}

export const codeOf = async (work: Promise<unknown>): Promise<string> => (await faultOf(work)).code;
