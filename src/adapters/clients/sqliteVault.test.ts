import { execFileSync, spawn } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import type { ClientVault } from '#app/clientVault.ts';
import { asAnybody, canCloseFolders, closeFolder, openFolder } from '../../../test/closedFolder.ts';
import { openClientVault } from './sqliteVault.ts';
import {
  another,
  cheap,
  cleanUp,
  client,
  codeOf,
  faultOf,
  filled,
  newFolder,
  onDisk,
  open,
  passphrase,
  peek,
  program,
  readOnDisk,
  sealedRows,
  tamper,
  tellTales,
} from './vaultWorld.fixture.ts';

afterEach(cleanUp);

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
      vault.health(),
      vault.setAside(),
      vault.bringBack({ record: client(1), drafts: undefined }),
      vault.drafts('a'),
      vault.allDrafts(),
      vault.changeDrafts('a', () => undefined),
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

  // 15 characters: NIST SP 800-63B-4, 3.1.1.2, for a passphrase that is all that is asked for; no signs of any sort are asked for.
  test('[VLT-4] a short passphrase is refused, counted in characters; a long one of any signs is taken', async () => {
    const vault = await filled(newFolder(), 1);
    expect(await codeOf(vault.changePassphrase(undefined, 'fourteen chars'))).toBe('passphrase-too-short');
    expect(await codeOf(vault.changePassphrase(undefined, '🥣'.repeat(14)))).toBe('passphrase-too-short');
    expect(vault.hasPassphrase()).toBe(false);
    await vault.changePassphrase(undefined, 'fifteen letters');
    expect(vault.hasPassphrase()).toBe(true);
    await vault.changePassphrase('fifteen letters', `${'grün und 漢字 🥣 '.repeat(60)}x`);
    vault.lock();
    await vault.unlock(`${'grün und 漢字 🥣 '.repeat(60)}x`);
    expect(vault.state()).toBe('open');
  });

  test('[VLT-5] with a passphrase or without, neither file, log nor free pages hold a name, an id or a lab value', async () => {
    const folder = newFolder();
    const vault = await filled(folder, 60);
    // Pages that were split, rewritten and freed.
    for (let index = 0; index < 60; index += 2) await vault.put({ ...client(index), notes: 'barley '.repeat(index) }, 1);
    for (let index = 1; index < 60; index += 6) await vault.remove(client(index).id, 1);
    expect(readOnDisk(folder)).toEqual([]);
    await vault.changePassphrase(undefined, passphrase);
    await vault.put(client(100), null);
    expect(readOnDisk(folder)).toEqual([]);
    await vault.close();
    expect(readOnDisk(folder)).toEqual([]);
    expect(onDisk(folder, [passphrase])).toEqual([]);
  });

  test('[VLT-5] without a passphrase the key stands in a file of its own, the user’s alone; a passphrase takes it away', async () => {
    const folder = newFolder();
    const vault = await filled(folder, 3);
    await vault.close();
    const key = readFileSync(join(folder, 'clients.key'));
    expect([key.length, statSync(join(folder, 'clients.key')).mode & 0o777]).toEqual([64, 0o600]);
    const again = await open(folder);
    await again.changePassphrase(undefined, passphrase);
    expect(readdirSync(folder).filter(name => name.includes('key'))).toEqual([]);
    // Neither the old key nor what it opened is left.
    expect(onDisk(folder, [key])).toEqual([]);
    await again.changePassphrase(passphrase, undefined);
    expect(readFileSync(join(folder, 'clients.key')).equals(key)).toBe(false);
  });

  test('[VLT-5] a removed client leaves nothing on disk, even without a passphrase', async () => {
    const folder = newFolder();
    const vault = await open(folder);
    for (let index = 0; index < 40; index++) await vault.put({ id: `c${index}`, version: 0, notes: 'x'.repeat(700) }, null);
    await vault.close();
    const others = sealedRows(folder).map(({ body }) => body);
    const again = await open(folder);
    await again.put(client(1), null);
    await again.close();
    const [own] = sealedRows(folder).filter(({ body }) => !others.some(other => other.equals(body)));
    // A record lies over several pages: any 64 bytes of it would tell.
    const shreds = Array.from({ length: Math.floor(own!.body.length / 64) }, (_, at) => own!.body.subarray(at * 64, at * 64 + 64));
    expect(onDisk(folder, shreds).length).toBeGreaterThan(40);
    const last = await open(folder);
    await last.remove(client(1).id, 1);
    expect(onDisk(folder, shreds)).toEqual([]);
    expect(await last.list()).toHaveLength(40);
  });

  test('[VLT-6] the cost of scrypt stands in the file: an old one opens, a new passphrase takes the new one', async () => {
    const folder = newFolder();
    const costInFile = (): unknown => peek(folder, 'select scrypt_n as n, scrypt_r as r, scrypt_p as p from wraps')[0];
    const old = await filled(folder, 2);
    await old.changePassphrase(undefined, passphrase);
    await old.close();
    expect(costInFile()).toEqual(cheap);
    const today = await open(folder, { n: 2 ** 17, r: 8, p: 1 });
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
      tamper(folder, 'update wraps set scrypt_n = ?', n);
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
    // Cutting the lock off the file opens nothing, nor does a key of another vault.
    tamper(folder, 'delete from wraps');
    expect(await codeOf(openClientVault(folder))).toBe('clients-file-damaged');
    const other = newFolder();
    await (await filled(other, 1)).close();
    writeFileSync(join(folder, 'clients.key'), readFileSync(join(other, 'clients.key')));
    const cut = await open(folder);
    expect(await cut.list()).toEqual([]);
    expect(await cut.health()).toMatchObject({ whole: 0, index: 'damaged', damaged: { altered: 2 } });
    await cut.eraseAll();
    expect(await cut.health()).toMatchObject({ whole: 0, index: 'whole', damaged: { altered: 0 } });
  });

  test('[VLT-20] locked, erasing everything needs the passphrase; who has lost it says so on the command line', async () => {
    const folder = newFolder();
    const vault = await filled(folder, 2);
    await vault.changePassphrase(undefined, passphrase);
    vault.lock();
    expect(await codeOf(vault.eraseAll())).toBe('passphrase-wrong');
    expect(await codeOf(vault.eraseAll(another))).toBe('passphrase-wrong');
    await vault.unlock(passphrase);
    expect(await vault.list()).toHaveLength(2);
    vault.lock();
    await vault.eraseAll(passphrase);
    expect([vault.state(), vault.hasPassphrase(), await vault.list()]).toEqual(['open', false, []]);
    await vault.put(client(1), null);
    await vault.changePassphrase(undefined, passphrase);
    vault.lock();
    await vault.eraseAllUnread();
    expect([vault.state(), vault.hasPassphrase(), await vault.list()]).toEqual(['open', false, []]);
  });

  test('[VLT-7] a changed salt, cost or sealed secret opens nothing', async () => {
    const folder = newFolder();
    const vault = await filled(folder, 1);
    await vault.changePassphrase(undefined, passphrase);
    await vault.close();
    for (const change of [
      'salt = zeroblob(16)',
      'scrypt_p = 2',
      'sealed_secret = zeroblob(92)',
      "sealed_secret = x'00'",
      'form = 1',
      "id = 'x'",
    ]) {
      const copy = readFileSync(join(folder, 'clients.sqlite'));
      tamper(folder, `update wraps set ${change}`);
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

  test('[VLT-9] taking it off needs it, and leaves records that a key in a file opens', async () => {
    const folder = newFolder();
    const vault = await filled(folder, 3);
    await vault.changePassphrase(undefined, passphrase);
    expect(await codeOf(vault.changePassphrase(another, undefined))).toBe('passphrase-wrong');
    expect(vault.hasPassphrase()).toBe(true);
    await vault.changePassphrase(passphrase, undefined);
    expect(vault.hasPassphrase()).toBe(false);
    await vault.close();
    expect(existsSync(join(folder, 'clients.key'))).toBe(true);
    expect(readOnDisk(folder)).toEqual([]);
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

  test('[VLT-9] kill -9 at any moment of a change: all records, under the one state or the other, and no key beside a passphrase', {
    timeout: 120_000,
  }, async () => {
    const folder = newFolder();
    await (await filled(folder, 60)).close();
    const seen = { set: 0, off: 0 };
    for (let round = 0; round < 12; round++) {
      const child = spawn(process.execPath, [program, folder, 'change forever', passphrase], { stdio: ['ignore', 'pipe', 'inherit'] });
      // Counted from its start, or from its first change: so both states are met on a slow computer as well.
      let linesToCome = 1 + (round % 2);
      await new Promise<void>(done => {
        child.stdout.on('data', (chunk: Buffer) => {
          if (linesToCome <= 0) return;
          linesToCome -= chunk.toString().split('\n').length - 1;
          if (linesToCome <= 0) setTimeout(() => child.kill('SIGKILL'), 15 + round * 7);
        });
        child.once('exit', () => done());
      });
      const vault = await open(folder);
      const hasPassphrase = vault.hasPassphrase();
      seen[hasPassphrase ? 'set' : 'off'] += 1;
      expect(readOnDisk(folder)).toEqual([]);
      expect(existsSync(join(folder, 'clients.key'))).toBe(!hasPassphrase);
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
  test.each([
    ['set', 'die before the key is removed', 'locked'],
    ['set', 'die before the scrub', 'locked'],
    ['set', 'die before the commit', 'open'],
    ['taken off', 'die after the key is written', 'locked'],
    ['taken off', 'die before the commit', 'locked'],
    ['taken off', 'die before the scrub', 'open'],
    ['erased', 'die after the key is written', 'locked'],
    ['erased', 'die before the scrub', 'open'],
  ] as const)(
    '[VLT-9] while the passphrase is %s, %s: the next start finds the one state, %s, and clears up',
    async (change, where, state) => {
      const folder = newFolder();
      const vault = await filled(folder);
      if (change !== 'set') await vault.changePassphrase(undefined, passphrase);
      await vault.close();
      // The beginning of each body: the rest lies on other pages.
      const before = sealedRows(folder).map(({ body }) => body.subarray(0, 64));
      const key = existsSync(join(folder, 'clients.key')) ? readFileSync(join(folder, 'clients.key')) : undefined;
      const child = spawn(process.execPath, [program, folder, where, passphrase, change], { stdio: 'ignore' });
      const signal = await new Promise(done => child.once('exit', (_code, by) => done(by)));
      expect(signal).toBe('SIGKILL');
      const again = await open(folder);
      expect(again.state()).toBe(state);
      expect(existsSync(join(folder, 'clients.key'))).toBe(state === 'open');
      const isChanged = (change === 'set') === (state === 'locked');
      // What was sealed under the old key is gone with the key, or still all there.
      expect(onDisk(folder, before)).toHaveLength(isChanged ? 0 : before.length);
      if (isChanged && key !== undefined) expect(onDisk(folder, [key])).toEqual([]);
      await again.unlock(passphrase);
      expect(await again.exportAll()).toHaveLength(change === 'erased' && isChanged ? 0 : 30);
      expect(await again.health()).toMatchObject({ index: 'whole' });
    },
  );

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
    expect(modes()).toEqual(['clients.key 600', 'clients.sqlite 600', 'clients.sqlite-wal 600']);
    await vault.close();
    expect(statSync(folder).mode & 0o777).toBe(0o700);
    for (const name of readdirSync(folder)) chmodSync(join(folder, name), 0o644);
    await open(folder);
    expect(modes()).toEqual(['clients.key 600', 'clients.sqlite 600', 'clients.sqlite-wal 600']);
  });

  test('[VLT-14] a file that is none, and one of a newer program, are told', async () => {
    const broken = newFolder();
    writeFileSync(join(broken, 'clients.sqlite'), 'this is no database '.repeat(400));
    expect(await codeOf(openClientVault(broken))).toBe('clients-file-damaged');
    const newer = newFolder();
    await (await filled(newer, 1)).close();
    tamper(newer, 'update vault set format = 4');
    expect(await codeOf(openClientVault(newer))).toBe('database-ahead');
  });

  test.skipIf(!canCloseFolders)('[VLT-14] a file that may not be written is told (skipped where a folder cannot be closed)', async () => {
    const folder = newFolder();
    await (await filled(folder, 1)).close();
    closeFolder(folder);
    expect(execFileSync(...asAnybody(process.execPath, program, folder), { encoding: 'utf8' }).trim()).toBe('database-read-only');
    openFolder(folder);
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
    await again.setAside();
    await again.changePassphrase(undefined, passphrase);
    faults.push(await faultOf(again.changePassphrase(another, undefined)));
    again.lock();
    faults.push(await faultOf(again.get('ottoline-0')));
    const said = faults.map(fault => `${fault.title} ${fault.message} ${fault.nextStep} ${fault.stack} ${fault.cause}`).join('\n');
    expect([...tellTales, 'heronweir', passphrase, another].filter(text => said.includes(text))).toEqual([]);
    expect(faults).toHaveLength(7);
  });
});
