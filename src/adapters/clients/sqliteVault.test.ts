import { execFileSync, spawn } from 'node:child_process';
import { chmodSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import SqliteDatabase from 'better-sqlite3';
import { afterEach, describe, expect, test } from 'vitest';
import type { ClientJson, ClientVault } from '#app/clientVault.ts';
import { Fault } from '#core/errors.ts';
import { openClientVault } from './sqliteVault.ts';

/** Far too cheap for real use; it lets a test try many passphrases. */
const cheap = { n: 2 ** 10, r: 8, p: 1 };
const passphrase = 'seven herons by the weir';
const another = 'no heron stands on ice';

const program = fileURLToPath(new URL('./vaultProgram.fixture.ts', import.meta.url));
const folders: string[] = [];
const vaults: ClientVault[] = [];

function newFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'platewright-clients-'));
  folders.push(folder);
  return folder;
}

async function open(folder: string, cost = cheap): Promise<ClientVault> {
  const vault = await openClientVault(folder, cost);
  vaults.push(vault);
  return vault;
}

afterEach(async () => {
  for (const vault of vaults.splice(0)) await vault.close();
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});

/** An invented client. What must never be read on disk: the name, the id, the lab value. */
function client(index: number): ClientJson {
  return {
    id: `ottoline-${index}`,
    version: 0,
    name: `Ottoline Marrow ${index}`,
    labs: [{ name: 'serum potassium', value: 5.9731, unit: 'mmol/L', on: '2025-03-01' }],
    notes: `prefers barley soup ${index} `.repeat(200),
  };
}
const tellTales = ['ottoline', 'Ottoline', 'Marrow', 'potassium', '5.9731', 'barley'];

async function filled(folder: string, count = 30): Promise<ClientVault> {
  const vault = await open(folder);
  for (let index = 0; index < count; index++) await vault.put(client(index), null);
  return vault;
}

/** Which of the tell-tales stand in any file of the folder. */
function readOnDisk(folder: string): readonly string[] {
  const bytes = readdirSync(folder).map(name => readFileSync(join(folder, name)));
  return tellTales.filter(text => bytes.some(file => file.includes(text)));
}

/** Changes a closed vault from outside. */
function tamper(folder: string, sql: string, ...values: readonly unknown[]): void {
  const db = new SqliteDatabase(join(folder, 'clients.sqlite'));
  try {
    db.prepare(sql).run(...values);
  } finally {
    db.close();
  }
}

function sealedRows(folder: string): readonly { readonly row: Buffer; readonly body: Buffer }[] {
  const db = new SqliteDatabase(join(folder, 'clients.sqlite'));
  try {
    return db.prepare<[], { row: Buffer; body: Buffer }>('select row, body from records order by row').all();
  } finally {
    db.close();
  }
}

async function faultOf(work: Promise<unknown>): Promise<Fault> {
  const outcome = await work.then(
    () => undefined,
    (error: unknown) => error,
  );
  if (!(outcome instanceof Fault)) throw new Error('no fault was thrown', { cause: outcome });
  return outcome;
}

const codeOf = async (work: Promise<unknown>): Promise<string> => (await faultOf(work)).code;

describe.each([['without a passphrase'], ['under a passphrase']])('%s', mode => {
  async function fresh(folder = newFolder()): Promise<ClientVault> {
    const vault = await open(folder);
    if (mode === 'under a passphrase') await vault.changePassphrase(undefined, passphrase);
    return vault;
  }

  test('[VLT-1] a record comes back as it was given, its version raised by one', async () => {
    const folder = newFolder();
    const vault = await fresh(folder);
    const given = { id: 'a', version: 0, name: 'Zoë 🥣', list: [null, true, 0.1, { deep: 'x' }] };
    expect(await vault.put(given, null)).toEqual({ ...given, version: 1 });
    expect(await vault.put({ ...given, list: [] }, 1)).toEqual({ ...given, list: [], version: 2 });
    await vault.close();
    const again = await open(folder);
    await again.unlock(passphrase);
    expect(await again.get('a')).toEqual({ ...given, list: [], version: 2 });
    expect(await again.get('b')).toBeUndefined();
  });

  test('[VLT-2] who changes or removes a client names the version that was seen', async () => {
    const vault = await fresh();
    await vault.put(client(1), null);
    await vault.put({ ...client(1), name: 'second' }, 1);
    const { id } = client(1);
    expect(await codeOf(vault.put(client(1), null))).toBe('changed-meanwhile');
    expect(await codeOf(vault.put(client(1), 1))).toBe('changed-meanwhile');
    expect(await codeOf(vault.put(client(2), 1))).toBe('changed-meanwhile');
    expect(await codeOf(vault.remove(id, 1))).toBe('changed-meanwhile');
    expect(await vault.get(id)).toMatchObject({ name: 'second', version: 2 });
    await vault.remove(id, 2);
    expect(await vault.list()).toEqual([]);
    expect(await codeOf(vault.remove(id, 2))).toBe('changed-meanwhile');
  });

  test('[VLT-1] list and export give every record by id', async () => {
    const vault = await fresh();
    for (const index of [3, 1, 2]) await vault.put(client(index), null);
    const ids = ['ottoline-1', 'ottoline-2', 'ottoline-3'];
    expect((await vault.list()).map(({ id }) => id)).toEqual(ids);
    expect((await vault.exportAll()).map(({ id }) => id)).toEqual(ids);
  });

  test('[VLT-10] erasing leaves an empty vault without a passphrase, and nothing readable on disk', async () => {
    const folder = newFolder();
    const vault = await fresh(folder);
    for (let index = 0; index < 30; index++) await vault.put(client(index), null);
    await vault.eraseAll();
    expect(readOnDisk(folder)).toEqual([]);
    expect(vault.hasPassphrase()).toBe(false);
    expect(await vault.list()).toEqual([]);
    await vault.put(client(1), null);
    await vault.close();
    expect(sealedRows(folder)).toHaveLength(1);
  });

  test('[VLT-8] a damaged record is told, and the others stay readable', async () => {
    const folder = newFolder();
    const vault = await fresh(folder);
    for (const index of [1, 2, 3]) await vault.put(client(index), null);
    await vault.close();
    const [first] = sealedRows(folder);
    const changed = Buffer.from(first!.body);
    changed[0]! ^= 1;
    tamper(folder, 'update records set body = ? where row = ?', changed, first!.row);
    const again = await open(folder);
    await again.unlock(passphrase);
    const readable = (await again.list()).map(({ id }) => id);
    expect(readable).toHaveLength(2);
    const lost = [1, 2, 3].map(index => client(index).id).find(id => !readable.includes(id))!;
    expect(await again.damaged()).toBe(1);
    for (const id of readable) expect(await again.get(id)).toMatchObject({ id });
    for (const work of [
      again.get(lost),
      again.put({ ...client(1), id: lost }, null),
      again.remove(lost, 1),
      again.exportAll(),
      again.changePassphrase(passphrase, another),
    ])
      expect(await codeOf(work)).toBe('client-record-damaged');
    expect(await again.removeDamaged()).toBe(1);
    expect(await again.damaged()).toBe(0);
    expect(await again.exportAll()).toHaveLength(2);
  });

  test('[VLT-8] a record that was moved to the place of another is damaged, not mistaken for it', async () => {
    const folder = newFolder();
    const vault = await fresh(folder);
    await vault.put(client(1), null);
    await vault.put(client(2), null);
    await vault.close();
    const [first, second] = sealedRows(folder);
    tamper(folder, 'update records set body = ? where row = ?', first!.body, second!.row);
    const again = await open(folder);
    await again.unlock(passphrase);
    expect(await again.list()).toHaveLength(1);
    expect(await again.damaged()).toBe(1);
  });
});

describe('the passphrase', () => {
  test('[VLT-3] locked, nothing is given, kept or removed; the right passphrase opens', async () => {
    const vault = await filled(newFolder(), 2);
    expect(vault.state()).toBe('open');
    await vault.changePassphrase(undefined, passphrase);
    expect([vault.state(), vault.hasPassphrase()]).toEqual(['open', true]);
    vault.lock();
    expect([vault.state(), vault.hasPassphrase()]).toEqual(['locked', true]);
    for (const work of [
      vault.list(),
      vault.get('a'),
      vault.put(client(3), null),
      vault.remove('a', 1),
      vault.exportAll(),
      vault.damaged(),
      vault.removeDamaged(),
    ])
      expect(await codeOf(work)).toBe('clients-locked');
    await vault.unlock(passphrase);
    expect(await vault.list()).toHaveLength(2);
  });

  test('[VLT-3] without a passphrase there is nothing to lock', async () => {
    const vault = await filled(newFolder(), 1);
    vault.lock();
    expect(vault.state()).toBe('open');
    await vault.unlock('whatever it may be');
    expect(await vault.list()).toHaveLength(1);
  });

  test('[VLT-3] locking while a passphrase is being tried wins', async () => {
    const vault = await filled(newFolder(), 1);
    await vault.changePassphrase(undefined, passphrase);
    vault.lock();
    const unlocking = vault.unlock(passphrase);
    await Promise.resolve();
    vault.lock();
    await unlocking;
    expect(vault.state()).toBe('locked');
    const changing = vault.changePassphrase(passphrase, another);
    await Promise.resolve();
    vault.lock();
    await changing;
    expect(vault.state()).toBe('locked');
    await vault.unlock(another);
    expect(await vault.list()).toHaveLength(1);
  });

  test('[VLT-4] a short passphrase is refused, counted in characters', async () => {
    const vault = await filled(newFolder(), 1);
    expect(await codeOf(vault.changePassphrase(undefined, 'eleven char'))).toBe('passphrase-too-short');
    expect(await codeOf(vault.changePassphrase(undefined, '🥣🥣🥣🥣🥣🥣🥣🥣🥣🥣🥣'))).toBe('passphrase-too-short');
    expect(vault.hasPassphrase()).toBe(false);
    await vault.changePassphrase(undefined, 'twelve chars');
    expect(vault.hasPassphrase()).toBe(true);
  });

  test('[VLT-5] once it is set, neither file, log nor free pages hold a name, an id or a lab value', async () => {
    const folder = newFolder();
    const vault = await filled(folder, 60);
    // Pages that were split, rewritten and freed before.
    for (let index = 0; index < 60; index += 2) await vault.put({ ...client(index), notes: 'barley '.repeat(index) }, 1);
    for (let index = 1; index < 60; index += 6) await vault.remove(client(index).id, 1);
    expect(readOnDisk(folder)).toEqual(tellTales);
    await vault.changePassphrase(undefined, passphrase);
    expect(readOnDisk(folder)).toEqual([]);
    await vault.put(client(100), null);
    expect(readOnDisk(folder)).toEqual([]);
    await vault.close();
    expect(readOnDisk(folder)).toEqual([]);
    expect(readFileSync(join(folder, 'clients.sqlite')).includes(passphrase)).toBe(false);
  });

  test('[VLT-5] a removed client leaves nothing on disk, even without a passphrase', async () => {
    const folder = newFolder();
    const vault = await open(folder);
    for (let index = 0; index < 40; index++) await vault.put({ id: `c${index}`, version: 0, notes: 'x'.repeat(700) }, null);
    await vault.put(client(1), null);
    expect(readOnDisk(folder)).toEqual(tellTales);
    await vault.remove(client(1).id, 1);
    expect(readOnDisk(folder)).toEqual([]);
    expect(await vault.list()).toHaveLength(40);
  });

  test('[VLT-6] the cost of scrypt stands in the file: an old one opens, a new passphrase takes the new one', async () => {
    const folder = newFolder();
    const costInFile = (): unknown => {
      const db = new SqliteDatabase(join(folder, 'clients.sqlite'));
      try {
        return db.prepare('select scrypt_n as n, scrypt_r as r, scrypt_p as p from vault').get();
      } finally {
        db.close();
      }
    };
    const old = await filled(folder, 2);
    await old.changePassphrase(undefined, passphrase);
    await old.close();
    expect(costInFile()).toEqual(cheap);
    const today = await openClientVault(folder);
    vaults.push(today);
    await today.unlock(passphrase);
    expect(await today.list()).toHaveLength(2);
    await today.changePassphrase(passphrase, passphrase);
    await today.close();
    // OWASP, Password Storage Cheat Sheet: N 2^17, r 8, p 1 as the least.
    expect(costInFile()).toEqual({ n: 131_072, r: 8, p: 1 });
  });

  test('[VLT-6] a cost beyond reason is damage, not a program that stands still', async () => {
    const folder = newFolder();
    const vault = await filled(folder, 1);
    await vault.changePassphrase(undefined, passphrase);
    await vault.close();
    for (const n of [2 ** 40, 1000, 0, -1]) {
      tamper(folder, 'update vault set scrypt_n = ?', n);
      const again = await open(folder);
      expect(await codeOf(again.unlock(passphrase))).toBe('client-record-damaged');
      await again.close();
    }
  });

  test('[VLT-7] there is no other way in: without the passphrase the records can only be erased', async () => {
    const folder = newFolder();
    const vault = await filled(folder, 2);
    await vault.changePassphrase(undefined, passphrase);
    await vault.close();
    const again = await open(folder);
    expect(again.state()).toBe('locked');
    expect(await codeOf(again.changePassphrase(undefined, undefined))).toBe('passphrase-wrong');
    expect(await codeOf(again.changePassphrase(undefined, another))).toBe('passphrase-wrong');
    expect(await codeOf(again.list())).toBe('clients-locked');
    await again.close();
    // Cutting the lock off the file opens nothing.
    tamper(folder, 'update vault set sealed_secret = null');
    const cut = await open(folder);
    expect(await cut.list()).toEqual([]);
    expect(await cut.damaged()).toBe(2);
    await cut.eraseAll();
    expect(await cut.damaged()).toBe(0);
  });

  test('[VLT-7] a changed salt, cost or sealed secret opens nothing', async () => {
    const folder = newFolder();
    const vault = await filled(folder, 1);
    await vault.changePassphrase(undefined, passphrase);
    await vault.close();
    for (const change of ['salt = zeroblob(16)', 'scrypt_p = 2', 'sealed_secret = zeroblob(92)', "sealed_secret = x'00'"]) {
      const copy = readFileSync(join(folder, 'clients.sqlite'));
      tamper(folder, `update vault set ${change}`);
      const again = await open(folder);
      expect(await codeOf(again.unlock(passphrase))).toBe('passphrase-wrong');
      await again.close();
      rmSync(folder, { recursive: true });
      mkdirSync(folder);
      writeFileSync(join(folder, 'clients.sqlite'), copy);
    }
    const whole = await open(folder);
    await whole.unlock(passphrase);
    expect(await whole.list()).toHaveLength(1);
  });

  test('[VLT-7] wrong tries are answered later and later, side by side as well; the right one at once', async () => {
    const vault = await filled(newFolder(), 1);
    await vault.changePassphrase(undefined, passphrase);
    vault.lock();
    const begun = performance.now();
    const codes = await Promise.all(Array.from({ length: 4 }, () => codeOf(vault.unlock(another))));
    expect(codes).toEqual(Array(4).fill('passphrase-wrong'));
    expect(performance.now() - begun).toBeGreaterThan(500 + 1000 - 10);
    const right = performance.now();
    await vault.unlock(passphrase);
    expect(performance.now() - right).toBeLessThan(400);
    const slip = performance.now();
    expect(await codeOf(vault.unlock(another))).toBe('passphrase-wrong');
    expect(performance.now() - slip).toBeLessThan(400);
    expect(vault.state()).toBe('open');
  });

  test('[VLT-9] changing it writes everything anew: the old one and the old key open nothing', async () => {
    const folder = newFolder();
    const vault = await filled(folder, 5);
    await vault.changePassphrase(undefined, passphrase);
    await vault.close();
    const before = sealedRows(folder);
    const again = await open(folder);
    await again.changePassphrase(passphrase, another);
    expect(await again.list()).toHaveLength(5);
    await again.close();
    const after = sealedRows(folder);
    const oldRows = new Set(before.map(({ row }) => row.toString('hex')));
    expect(after.filter(({ row }) => oldRows.has(row.toString('hex')))).toEqual([]);
    const last = await open(folder);
    expect(await codeOf(last.unlock(passphrase))).toBe('passphrase-wrong');
    await last.unlock(another);
    expect(await last.list()).toHaveLength(5);
  });

  test('[VLT-9] taking it off needs it, and leaves plain records', async () => {
    const folder = newFolder();
    const vault = await filled(folder, 3);
    await vault.changePassphrase(undefined, passphrase);
    expect(await codeOf(vault.changePassphrase(another, undefined))).toBe('passphrase-wrong');
    expect(vault.hasPassphrase()).toBe(true);
    await vault.changePassphrase(passphrase, undefined);
    expect(vault.hasPassphrase()).toBe(false);
    await vault.close();
    expect(readOnDisk(folder)).toEqual(tellTales);
    const again = await open(folder);
    expect(again.state()).toBe('open');
    expect(await again.get('ottoline-1')).toEqual({ ...client(1), version: 1 });
  });

  test('[VLT-9] a record that is saved while the key is being derived is not lost', async () => {
    const vault = await filled(newFolder(), 3);
    const changing = vault.changePassphrase(undefined, passphrase);
    await vault.put(client(9), null);
    await changing;
    expect(await vault.list()).toHaveLength(4);
  });

  test('[VLT-9] kill -9 at any moment of a change: all records, under the one state or the other, and no plain text under a passphrase', async () => {
    const folder = newFolder();
    await (await filled(folder, 60)).close();
    const seen = { set: 0, off: 0 };
    for (let round = 0; round < 12; round++) {
      const child = spawn(process.execPath, [program, folder, 'change forever', passphrase], { stdio: ['ignore', 'pipe', 'inherit'] });
      await new Promise<void>(done => {
        child.stdout.once('data', () => setTimeout(() => child.kill('SIGKILL'), 15 + round * 7));
        child.once('exit', () => done());
      });
      const vault = await open(folder);
      const hasPassphrase = vault.hasPassphrase();
      seen[hasPassphrase ? 'set' : 'off'] += 1;
      if (hasPassphrase) expect(readOnDisk(folder)).toEqual([]);
      await vault.unlock(passphrase);
      expect(await vault.exportAll()).toHaveLength(60);
      if (hasPassphrase) await vault.changePassphrase(passphrase, undefined);
      await vault.close();
    }
    // Both states were met; which round meets which is chance.
    expect(Math.min(seen.set, seen.off)).toBeGreaterThan(0);
  });
});

describe('the file', () => {
  test('[VLT-9] a program that ends after the change and before the old text is gone: the next start takes it away', async () => {
    const folder = newFolder();
    await (await filled(folder)).close();
    const child = spawn(process.execPath, [program, folder, 'die before the scrub', passphrase], { stdio: 'ignore' });
    const signal = await new Promise(done => child.once('exit', (_code, by) => done(by)));
    expect(signal).toBe('SIGKILL');
    expect(readOnDisk(folder)).toEqual(tellTales);
    const vault = await open(folder);
    expect(readOnDisk(folder)).toEqual([]);
    await vault.unlock(passphrase);
    expect(await vault.list()).toHaveLength(30);
  });

  test('[VLT-11] every acknowledged write survives kill -9', async () => {
    const folder = newFolder();
    const child = spawn(process.execPath, [program, folder, 'write forever'], { stdio: ['ignore', 'pipe', 'inherit'] });
    let told = '';
    await new Promise<void>(done => {
      child.stdout.on('data', chunk => {
        told += chunk;
        if (told.split('\n').length > 41) child.kill('SIGKILL');
      });
      child.once('exit', () => done());
    });
    const acknowledged = told.split('\n').slice(1, -1);
    expect(acknowledged.length).toBeGreaterThanOrEqual(40);
    const kept = new Set((await (await open(folder)).list()).map(({ id }) => id));
    expect(acknowledged.filter(id => !kept.has(id))).toEqual([]);
  });

  test('[VLT-12] a second program, or the same one twice, is told that the file is in use', async () => {
    const folder = newFolder();
    const vault = await filled(folder, 1);
    const second = (): string => execFileSync(process.execPath, [program, folder], { encoding: 'utf8' }).trim();
    expect(second()).toBe('database-locked');
    const fault = await faultOf(openClientVault(folder));
    expect([fault.code, fault.message]).toEqual(['database-locked', 'Another program has the client records open.']);
    await vault.put(client(2), null);
    await vault.close();
    expect(second()).toBe('open');
  });

  test('[VLT-13] it stands apart from the shelf and is the user’s alone, also when it was made readable', async () => {
    const folder = join(newFolder(), 'new');
    const modes = (): readonly string[] =>
      readdirSync(folder).map(name => `${name} ${(statSync(join(folder, name)).mode & 0o777).toString(8)}`);
    const vault = await filled(folder, 1);
    expect(modes()).toEqual(['clients.sqlite 600', 'clients.sqlite-wal 600']);
    await vault.close();
    expect(statSync(folder).mode & 0o777).toBe(0o700);
    chmodSync(join(folder, 'clients.sqlite'), 0o644);
    await open(folder);
    expect(modes()).toContain('clients.sqlite 600');
  });

  test('[VLT-14] a file that is none, and one of a newer program, are told', async () => {
    const broken = newFolder();
    writeFileSync(join(broken, 'clients.sqlite'), 'this is no database '.repeat(400));
    expect(await codeOf(openClientVault(broken))).toBe('client-record-damaged');
    const newer = newFolder();
    await (await filled(newer, 1)).close();
    tamper(newer, 'update vault set format = 2');
    expect(await codeOf(openClientVault(newer))).toBe('database-ahead');
  });

  // Root may write anywhere, so what a person without rights meets is tried under another uid.
  test.skipIf(process.getuid?.() !== 0)('[VLT-14] a file that may not be written is told (needs root to try as another user)', async () => {
    const folder = newFolder();
    await (await filled(folder, 1)).close();
    chmodSync(folder, 0o755);
    const uid = Number(execFileSync('id', ['-u', 'nobody'], { encoding: 'utf8' }));
    expect(execFileSync(process.execPath, [program, folder], { encoding: 'utf8', uid, cwd: '/' }).trim()).toBe('database-read-only');
  });

  test('[VLT-15] no fault says anything about a client or a passphrase', async () => {
    const folder = newFolder();
    const vault = await filled(folder, 1);
    const faults = [
      await faultOf(vault.put(client(0), null)),
      await faultOf(vault.remove('ottoline-0', 7)),
      await faultOf(vault.changePassphrase(undefined, 'heronweir')),
    ];
    await vault.close();
    tamper(folder, 'update records set body = cast(\'{"name": "Ottoline Marrow", 5.9731\' as blob)');
    const again = await open(folder);
    faults.push(await faultOf(again.get('ottoline-0')), await faultOf(again.exportAll()));
    await again.removeDamaged();
    await again.changePassphrase(undefined, passphrase);
    faults.push(await faultOf(again.changePassphrase(another, undefined)));
    again.lock();
    faults.push(await faultOf(again.get('ottoline-0')));
    const said = faults.map(fault => `${fault.title} ${fault.message} ${fault.nextStep} ${fault.stack} ${fault.cause}`).join('\n');
    expect([...tellTales, 'heronweir', passphrase, another].filter(text => said.includes(text))).toEqual([]);
    expect(faults).toHaveLength(7);
  });
});
