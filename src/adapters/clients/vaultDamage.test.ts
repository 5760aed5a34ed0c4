import { existsSync, readdirSync, readFileSync, renameSync, rmSync, statSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import type { ClientVault, DamageKind, VaultHealth } from '#app/clientVault.ts';
import { moveAside } from './setAside.ts';
import { openClientVault } from './sqliteVault.ts';
import {
  another,
  cleanUp,
  client,
  codeOf,
  faultOf,
  filled,
  newFolder,
  open,
  passphrase,
  peek,
  sealedRows,
  tamper,
  withoutWalls,
} from './vaultWorld.fixture.ts';

afterEach(cleanUp);

const none = { altered: 0, truncated: 0, emptied: 0, missing: 0, exchanged: 0, added: 0 };

describe.each([['without a passphrase'], ['under a passphrase']])('damage, %s', mode => {
  /** Ten clients of version 2, and the row as it was in version 1. */
  async function closedVault(): Promise<{ readonly folder: string; readonly older: ReturnType<typeof sealedRows> }> {
    const folder = newFolder();
    const vault = await filled(folder, 10);
    if (mode === 'under a passphrase') await vault.changePassphrase(undefined, passphrase);
    await vault.close();
    const older = sealedRows(folder);
    const again = await reopened(folder);
    for (let index = 0; index < 10; index++) await again.put(client(index), 1);
    await again.close();
    return { folder, older };
  }
  async function reopened(folder: string): Promise<ClientVault> {
    const vault = await open(folder);
    await vault.unlock(passphrase);
    return vault;
  }

  const harms: readonly [DamageKind, number, (folder: string, older: ReturnType<typeof sealedRows>) => void][] = [
    [
      'altered',
      1,
      (folder, [row]) =>
        tamper(folder, "update records set body = cast(x'000000000000000000000000' || substr(body, 13) as blob) where row = ?", row!.row),
    ],
    ['truncated', 1, (folder, [row]) => tamper(folder, 'update records set body = substr(body, 1, 100) where row = ?', row!.row)],
    ['emptied', 1, (folder, [row]) => tamper(folder, "update records set body = x'' where row = ?", row!.row)],
    // What the table forbids can stand in a file whose pages are damaged.
    ['emptied', 1, (folder, [row]) => withoutWalls(folder, 'update records set body = null where row = ?', row!.row)],
    ['missing', 1, (folder, [row]) => tamper(folder, 'delete from records where row = ?', row!.row)],
    ['missing', 10, folder => tamper(folder, 'delete from records')],
    ['exchanged', 1, (folder, [row]) => tamper(folder, 'update records set body = ? where row = ?', row!.body, row!.row)],
    [
      'exchanged',
      2,
      (folder, [one, other]) => {
        const bodies = sealedRows(folder);
        tamper(folder, 'update records set body = ? where row = ?', bodies[1]!.body, one!.row);
        tamper(folder, 'update records set body = ? where row = ?', bodies[0]!.body, other!.row);
      },
    ],
    ['added', 1, folder => tamper(folder, "insert into records (row, body) values (x'0102', x'03')")],
  ];
  test.each(harms)(
    '[VLT-16] %s (%i) is told as such; the others open and are written; set aside, nothing is deleted',
    async (kind, count, harm) => {
      const { folder, older } = await closedVault();
      harm(folder, older);
      const vault = await reopened(folder);
      const whole = kind === 'added' ? 10 : 10 - count;
      expect(await vault.health()).toMatchObject({ whole, index: 'whole', damaged: { ...none, [kind]: count } });
      const readable = await vault.list();
      expect(readable).toHaveLength(whole);
      for (const { id, version } of readable) {
        expect(await vault.get(id)).toMatchObject({ version: 2 });
        expect(await vault.put(client(Number(id.slice('ottoline-'.length))), version)).toMatchObject({ version: 3 });
      }
      const lost = Array.from({ length: 10 }, (_, index) => client(index).id).filter(id => !readable.some(one => one.id === id));
      for (const id of lost)
        for (const work of [vault.get(id), vault.put({ ...client(1), id }, null), vault.remove(id, 2)])
          expect(await codeOf(work)).toBe('client-record-damaged');
      for (const work of [vault.exportAll(), vault.changePassphrase(passphrase, another)])
        expect(await codeOf(work)).toBe('client-record-damaged');
      const aside = await vault.setAside();
      expect(aside.records).toBe(count);
      expect(await vault.health()).toMatchObject({ whole, index: 'whole', damaged: none });
      expect(await vault.exportAll()).toHaveLength(whole);
      await vault.put(client(50), null);
      await vault.close();
      expect(peek(folder, 'select damage from records', aside.file)).toEqual(Array(count).fill({ damage: kind }));
      expect(statSync(join(folder, aside.file!)).mode & 0o777).toBe(0o600);
      expect(await (await reopened(folder)).health()).toMatchObject({ whole: whole + 1, damaged: none });
    },
  );

  test('[VLT-16] a client who was erased and is put back from an older copy of the file is told, not shown', async () => {
    const { folder } = await closedVault();
    const kept = sealedRows(folder);
    const vault = await reopened(folder);
    await vault.remove('ottoline-3', 2);
    await vault.close();
    const rest = new Set(sealedRows(folder).map(({ row }) => row.toString('hex')));
    const gone = kept.find(({ row }) => !rest.has(row.toString('hex')))!;
    tamper(folder, 'insert into records (row, body) values (?, ?)', gone.row, gone.body);
    const again = await reopened(folder);
    expect(await again.health()).toMatchObject({ whole: 9, damaged: { ...none, added: 1 } });
    expect((await again.list()).map(({ id }) => id)).not.toContain('ottoline-3');
  });

  test.each([
    ['missing', 'update vault set sealed_index = null'],
    ['missing', "update vault set sealed_index = x''"],
    ['damaged', "update vault set sealed_index = cast(x'000000000000000000000000' || substr(sealed_index, 13) as blob)"],
    ['damaged', 'update vault set sealed_index = substr(sealed_index, 1, 40)'],
  ] as const)('[VLT-16] an index that is %s (%s) is told: records open, nothing is written before it is made anew', async (state, sql) => {
    const { folder } = await closedVault();
    tamper(folder, sql);
    const vault = await reopened(folder);
    expect(await vault.health()).toMatchObject({ whole: 10, index: state, damaged: none });
    expect(await vault.list()).toHaveLength(10);
    expect(await vault.get('ottoline-3')).toMatchObject({ version: 2 });
    for (const work of [vault.put(client(1), 2), vault.put(client(11), null), vault.remove('ottoline-1', 2)])
      expect(await codeOf(work)).toBe('client-record-damaged');
    expect(await vault.setAside()).toMatchObject({ records: 0, file: expect.stringMatching(/^clients-set-aside-/) });
    expect(await vault.health()).toMatchObject({ whole: 10, index: 'whole' });
    expect(await vault.put(client(1), 2)).toMatchObject({ version: 3 });
    expect(await vault.setAside()).toEqual({ records: 0, file: undefined });
  });

  test('[VLT-16] an older index alone does not hide what came since', async () => {
    const { folder } = await closedVault();
    const [old] = peek<{ sealed_index: Buffer }>(folder, 'select sealed_index from vault');
    const vault = await reopened(folder);
    await vault.put(client(3), 2);
    await vault.remove('ottoline-4', 2);
    await vault.close();
    tamper(folder, 'update vault set sealed_index = ?', old!.sealed_index);
    expect(await (await reopened(folder)).health()).toMatchObject({ whole: 8, damaged: { ...none, exchanged: 1, missing: 1 } });
  });

  test('[VLT-16] a whole older file is no damage: it opens and tells its day', async () => {
    const folder = newFolder();
    const vault = await open(folder, undefined, () => new Date('2026-03-04T05:06:07Z'));
    await vault.put(client(1), null);
    if (mode === 'under a passphrase') await vault.changePassphrase(undefined, passphrase);
    await vault.close();
    const health: VaultHealth = await (await reopened(folder)).health();
    expect(health).toMatchObject({ whole: 1, damaged: none, writtenAt: '2026-03-04T05:06:07.000Z' });
  });
});

describe('a wrap that somebody else put beside the key', () => {
  const bogus = "insert into wraps values ('a', 'passphrase', 2, 1024, 8, 1, x'00', x'00')";

  test('[VLT-16] does not take the key away: the records open, and a passphrase can be set', async () => {
    const folder = newFolder();
    await (await filled(folder, 3)).close();
    const key = readFileSync(join(folder, 'clients.key'));
    tamper(folder, bogus);
    const vault = await open(folder);
    expect([vault.state(), vault.hasPassphrase()]).toEqual(['open', false]);
    expect(readFileSync(join(folder, 'clients.key')).equals(key)).toBe(true);
    expect(await vault.health()).toMatchObject({ whole: 3, index: 'whole', damaged: none });
    await vault.changePassphrase(undefined, passphrase);
    vault.lock();
    await vault.unlock(passphrase);
    expect(await vault.exportAll()).toHaveLength(3);
    expect(existsSync(join(folder, 'clients.key'))).toBe(false);
  });

  test('[VLT-16] with the index gone as well, the file is told and key and records stay', async () => {
    const folder = newFolder();
    await (await filled(folder, 3)).close();
    const key = readFileSync(join(folder, 'clients.key'));
    tamper(folder, bogus);
    tamper(folder, 'update vault set sealed_index = null');
    expect(await codeOf(openClientVault(folder))).toBe('clients-file-damaged');
    expect(readFileSync(join(folder, 'clients.key')).equals(key)).toBe(true);
    expect(sealedRows(folder)).toHaveLength(3);
  });

  test('[VLT-9] a key that opens nothing, whole or not, goes where there is a passphrase', async () => {
    for (const left of [Buffer.alloc(64, 7), Buffer.alloc(32, 7)]) {
      const folder = newFolder();
      const vault = await filled(folder, 3);
      const old = readFileSync(join(folder, 'clients.key'));
      await vault.changePassphrase(undefined, passphrase);
      await vault.close();
      for (const bytes of [left, old]) {
        writeFileSync(join(folder, 'clients.key'), bytes);
        const again = await open(folder);
        expect([again.state(), existsSync(join(folder, 'clients.key'))]).toEqual(['locked', false]);
        await again.unlock(passphrase);
        expect(await again.exportAll()).toHaveLength(3);
        await again.close();
      }
    }
  });
});

describe('a file that does not open', () => {
  const harms: readonly [string, (folder: string) => void][] = [
    ['no database', folder => writeFileSync(join(folder, 'clients.sqlite'), 'this is no database '.repeat(400))],
    ['emptied', folder => truncateSync(join(folder, 'clients.sqlite'))],
    ['cut', folder => truncateSync(join(folder, 'clients.sqlite'), 5000)],
    ['without its head', folder => tamper(folder, 'delete from vault')],
    ['said to be of format 1', folder => tamper(folder, 'update vault set format = 1')],
    ['without its tables', folder => tamper(folder, 'drop table wraps')],
    ['without its key', folder => rmSync(join(folder, 'clients.key'))],
    ['with half a key', folder => truncateSync(join(folder, 'clients.key'), 32)],
  ];
  test.each(harms)('[VLT-17] %s: it is told, moved aside with its day, and the program starts with none', async (_, harm) => {
    const folder = newFolder();
    await (await filled(folder, 12)).close();
    harm(folder);
    const bytes = readFileSync(join(folder, 'clients.sqlite'));
    expect(await codeOf(openClientVault(folder))).toBe('clients-file-damaged');
    const name = moveAside(folder, new Date('2026-03-04T12:00:00Z'));
    expect(name).toMatch(/^clients-set-aside-2026-03-04-\d{4}\.sqlite$/);
    expect(readFileSync(join(folder, name)).equals(bytes)).toBe(true);
    expect(statSync(join(folder, name)).mode & 0o777).toBe(0o600);
    expect(existsSync(join(folder, 'clients.sqlite'))).toBe(false);
    const vault = await open(folder);
    expect(await vault.health()).toMatchObject({ whole: 0, index: 'whole', damaged: none });
  });

  test('[VLT-17] taken away while its key stands: it is told, put back it opens; set aside, the key stays and the program starts with none', async () => {
    const folder = newFolder();
    await (await filled(folder, 3)).close();
    const [file, key] = [join(folder, 'clients.sqlite'), join(folder, 'clients.key')];
    const [bytes, secret] = [readFileSync(file), readFileSync(key)];
    rmSync(file);
    const fault = await faultOf(openClientVault(folder));
    expect([fault.code, fault.message]).toEqual(['clients-file-damaged', expect.stringContaining('is missing')]);
    expect(existsSync(file)).toBe(false);
    writeFileSync(file, bytes);
    const back = await open(folder);
    expect(await back.list()).toHaveLength(3);
    await back.close();
    for (const name of [/-\d{4}\.key$/, /-\d{4}-2\.key$/]) {
      rmSync(file);
      writeFileSync(key, secret);
      const aside = moveAside(folder, new Date('2026-03-04T12:00:00Z'));
      expect(aside).toMatch(name);
      expect(readFileSync(join(folder, aside)).equals(secret)).toBe(true);
      const anew = await open(folder);
      expect(await anew.health()).toMatchObject({ whole: 0, index: 'whole', damaged: none });
      await anew.close();
    }
  });

  test('[VLT-17] taken away from under a passphrase: it is told, put back it opens; set aside, the program starts with none', async () => {
    const folder = newFolder();
    const vault = await filled(folder, 3);
    await vault.changePassphrase(undefined, passphrase);
    await vault.close();
    const file = join(folder, 'clients.sqlite');
    const bytes = readFileSync(file);
    rmSync(file);
    const fault = await faultOf(openClientVault(folder));
    expect([fault.code, fault.message]).toEqual(['clients-file-damaged', expect.stringContaining('is missing: a passphrase was set')]);
    expect(existsSync(file)).toBe(false);
    writeFileSync(file, bytes);
    const back = await open(folder);
    await back.unlock(passphrase);
    expect(await back.list()).toHaveLength(3);
    await back.close();
    rmSync(file);
    expect(moveAside(folder, new Date('2026-03-04T12:00:00Z'))).toMatch(/-\d{4}\.locked$/);
    const anew = await open(folder);
    expect([anew.hasPassphrase(), await anew.health()]).toMatchObject([false, { whole: 0, index: 'whole', damaged: none }]);
    // Without a passphrase again, an empty folder is a first start.
    await anew.changePassphrase(undefined, passphrase);
    await anew.changePassphrase(passphrase, undefined);
    await anew.close();
    for (const name of ['clients.sqlite', 'clients.key']) rmSync(join(folder, name));
    expect((await open(folder)).state()).toBe('open');
  });

  test('[VLT-17] a first start that ended between two steps is not taken for it', async () => {
    const folder = newFolder();
    await (await open(folder)).close();
    const [file, key] = [join(folder, 'clients.sqlite'), join(folder, 'clients.key')];
    // After the key, before the file came into its place.
    renameSync(file, `${file}.new`);
    await (await filled(folder, 1)).close();
    expect(existsSync(`${file}.new`)).toBe(false);
    // Before the key, with the file beside whole or half.
    rmSync(key);
    for (const harm of [() => undefined, () => truncateSync(`${file}.new`, 5000)]) {
      renameSync(file, `${file}.new`);
      harm();
      const vault = await open(folder);
      expect(await vault.health()).toMatchObject({ whole: 0, index: 'whole', damaged: none });
      await vault.close();
      rmSync(key);
    }
  });

  test('[VLT-17] a file that opens, or is in use, stays where it is', async () => {
    const folder = newFolder();
    const vault = await filled(folder, 2);
    const moving = (): Promise<never> => Promise.resolve().then(() => moveAside(folder, new Date()) as never);
    expect(await codeOf(moving())).toBe('database-locked');
    await vault.close();
    expect(await codeOf(moving())).toBe('clients-file-whole');
    expect(readdirSync(folder).filter(name => name.includes('aside'))).toEqual([]);
    expect(await (await open(folder)).list()).toHaveLength(2);
  });
});
