import { cpSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { unzipSync } from 'fflate';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { openClientVault } from '#adapters/clients/sqliteVault.ts';
import { openSqliteStore } from '#adapters/storage/openStore.ts';
import { testServer } from './testWorld.fixture.ts';

const passphrase = 'plum broth on a quiet sunday';
type Server = Awaited<ReturnType<typeof testServer>>;

let server: Server;
let other: Server;
beforeEach(async () => {
  server = await testServer();
  other = await testServer();
});
afterEach(async () => {
  await server.close();
  await other.close();
});

describe('archives over the server', () => {
  test('[ARC-30] client records without a passphrase go into an archive only under one that is given', async () => {
    expect((await server.call('POST', '/archives', { withClients: true })).body.code).toBe('passphrase-missing');
    const file = await server.archiveOf(true, passphrase);
    const everything = Buffer.concat(Object.values(unzipSync(file))).toString('latin1');
    for (const { id } of await server.vault.list()) expect(everything).not.toContain(id);
    const { body } = await other.bring(file);
    expect(body).toMatchObject({ kind: 'archive', clients: { records: 5, opensWith: 'passphrase' }, rows: { foods: 72 } });
    const { id } = body;
    const restored = await other.call('POST', `/archives/${id}/restore`, { into: 'empty', withClients: true });
    expect(restored.body).toMatchObject({ added: { foods: 72 }, clients: { added: 5 } });
    // They came as they were sealed.
    expect((await other.call('GET', '/clients/lock')).body).toMatchObject({ state: 'locked', hasPassphrase: true });
    expect((await other.call('POST', '/clients/lock', { open: true, passphrase })).body.state).toBe('open');
    expect(await other.vault.list()).toEqual(await server.vault.list());
  });

  test('[ARC-31] records under a passphrase are archived while they are locked, and added beside others with it', async () => {
    await server.call('PUT', '/clients/passphrase', { next: passphrase });
    await server.call('POST', '/clients/lock', { open: false });
    const file = await server.archiveOf(true);
    const { id } = (await other.bring(file)).body;
    const beside = (words?: string) =>
      other.call('POST', `/archives/${id}/restore`, {
        into: 'beside',
        withClients: true,
        ...(words === undefined ? {} : { passphrase: words }),
      });
    expect((await beside()).body.code).toBe('passphrase-missing');
    expect((await beside('not this one at all, no')).body.code).toBe('archive-passphrase-wrong');
    const before = await other.vault.list();
    // The demo of both is the same but for the moment of loading; a client of that identity stands here.
    expect((await beside(passphrase)).body.clients).toMatchObject({ added: 0 });
    expect(await other.vault.list()).toEqual(before);
  });

  test('[ARC-35] what refuses the client records refuses before the first write; the demo clients stay, and the mark of an earlier restore too', async () => {
    const sealed = (await other.bring(await server.archiveOf(true, passphrase))).body.id;
    const restore = (body: object) => other.call('POST', `/archives/${sealed}/restore`, { withClients: true, ...body });
    const own = { id: 'own-1', version: 0, format: 2, label: 'Nobody' };
    await other.vault.put(own, null);
    const before = [await other.store.revision(), await other.vault.list()];
    expect((await restore({ into: 'empty' })).body.code).toBe('clients-not-empty');
    expect((await restore({ into: 'beside', passphrase: 'not this one at all, no' })).body.code).toBe('archive-passphrase-wrong');
    await other.call('PUT', '/clients/passphrase', { next: passphrase });
    await other.call('POST', '/clients/lock', { open: false });
    expect((await restore({ into: 'beside', passphrase })).body.code).toBe('clients-locked');
    await other.call('POST', '/clients/lock', { open: true, passphrase });
    expect([await other.store.revision(), await other.vault.list()]).toEqual(before);
    expect((await other.call('GET', '/copies')).body.restoreBrokenOff).toBe(false);
  });

  test('[ARC-32] a file that is none is refused, nothing stays behind, and an archive that was restored or left is gone', async () => {
    expect((await other.bring(new Uint8Array(Buffer.from('no archive')))).body.code).toBe('workspace-file-not-valid');
    expect((await other.bring(new Uint8Array(Buffer.from('PK\u0003\u0004 and more')))).body.code).toBe('archive-not-valid');
    expect(readdirSync(join(other.folder, 'waiting'))).toEqual([]);
    const { id } = (await other.bring(await server.archiveOf(false))).body;
    expect(readdirSync(join(other.folder, 'waiting'))).toHaveLength(1);
    await other.call('DELETE', `/archives/${id}`);
    expect(readdirSync(join(other.folder, 'waiting'))).toEqual([]);
    expect((await other.call('POST', `/archives/${id}/restore`, { into: 'beside', withClients: false })).body.code).toBe(
      'archive-not-found',
    );
  });

  test('[ARC-34] a copy of the data folder opens with everything in it, and tells the day of its last change', async () => {
    await server.call('PUT', '/clients/passphrase', { next: passphrase });
    const clients = await server.vault.list();
    const foods = await server.store.listFoods();
    const writtenAt = await server.store.writtenAt();
    await server.vault.close();
    await server.store.close();
    const copy = join(other.folder, 'copied by hand');
    cpSync(server.folder, copy, { recursive: true });
    const store = await openSqliteStore(copy);
    const vault = await openClientVault(copy, { n: 2 ** 10, r: 8, p: 1 });
    expect(await store.listFoods()).toEqual(foods);
    expect(await store.writtenAt()).toBe(writtenAt);
    expect(Date.parse(writtenAt!)).toBeGreaterThan(Date.parse('2026-01-01'));
    await vault.unlock(passphrase);
    expect(await vault.list()).toEqual(clients);
    expect((await vault.health()).index).toBe('whole');
    await vault.close();
    await store.close();
    server = await testServer();
  });

  test('[ARC-33] a copy is made once for one state, listed, and restored from; where it cannot be made, that is told', async () => {
    expect((await server.call('GET', '/copies')).body).toMatchObject({
      folder: join(server.folder, 'copies'),
      copies: [],
      restoreBrokenOff: false,
    });
    const { copies, heldUntil, lastAt } = (await server.call('POST', '/copies', {})).body;
    expect(copies).toMatchObject([{ day: '2026-06-15', bytes: expect.any(Number), holdsKey: true }]);
    expect({ heldUntil, lastAt }).toEqual({ heldUntil: '2026-07-20', lastAt: '2026-06-15T12:00:00.000Z' });
    await server.call('DELETE', '/workspace', { confirm: 'delete everything' });
    const { id } = (await server.call('POST', '/copies/2026-06-15/look', {})).body;
    expect((await server.call('POST', `/archives/${id}/restore`, { into: 'empty', withClients: false })).body.added.foods).toBe(72);
    expect((await server.call('GET', '/copies')).body.copies).toHaveLength(1);
    // A second one of the day stands beside the first.
    const second = (await server.call('POST', '/copies', {})).body.copies;
    expect(second.map(({ day }: { day: string }) => day)).toEqual([expect.stringMatching(/^2026-06-15-\d{6}$/), '2026-06-15']);
    expect((await server.call('POST', '/copies/2026-06-14/look', {})).body.code).toBe('archive-not-found');

    writeFileSync(join(server.folder, 'a file'), '');
    expect((await server.call('PUT', '/copies/folder', { folder: join(server.folder, 'a file') })).body.code).toBe(
      'copies-folder-not-usable',
    );
    expect((await server.call('PUT', '/copies/folder', { folder: 'not/from/the/root' })).body.code).toBe('copies-folder-not-usable');
    expect((await server.call('PUT', '/copies/folder', { folder: '/proc/platewright' })).body.code).toBe('copies-folder-not-usable');
    const elsewhere = join(server.folder, 'elsewhere');
    expect((await server.call('PUT', '/copies/folder', { folder: elsewhere })).body).toMatchObject({
      folder: elsewhere,
      copies: [],
      earlierFolders: [join(server.folder, 'copies')],
    });
    // The name of today's copy is taken by a folder: it cannot be put there.
    mkdirSync(join(elsewhere, 'platewright-copy-2026-06-15-unlocked.zip', 'x'), { recursive: true });
    const refused = await server.call('POST', '/copies', {});
    expect(refused.body.code).toBe('archive-not-made');
    expect((await server.call('GET', '/copies')).body.lastFault).toMatchObject({
      title: refused.body.title,
      nextStep: refused.body.nextStep,
    });
    expect(JSON.parse(readFileSync(join(server.folder, 'copies.json'), 'utf8')).folder).toBe(elsewhere);
  });

  test('[ARC-37] on request the copies of before are deleted, when a new one was made: none opens without the passphrase then', async () => {
    const copies = async () => (await server.call('GET', '/copies')).body.copies as readonly { day: string; holdsKey: boolean }[];
    const days = async (): Promise<readonly string[]> => (await copies()).map(({ day }) => day);
    await server.call('POST', '/copies', {});
    await server.call('POST', '/copies', {});
    expect((await copies()).map(({ holdsKey }) => holdsKey)).toEqual([true, true]);
    await server.vault.changePassphrase(undefined, passphrase);
    await server.call('POST', '/copies', { deleteEarlier: true });
    const [only, ...more] = await days();
    expect(more).toEqual([]);
    const look = (await server.call('POST', `/copies/${only}/look`, {})).body;
    expect(look.clients).toMatchObject({ opensWith: 'passphrase' });
    expect((await copies())[0]!.holdsKey).toBe(false);
    // Where no new one can be made, those of before stay.
    mkdirSync(join(server.folder, 'elsewhere'));
    await server.call('PUT', '/copies/folder', { folder: join(server.folder, 'elsewhere') });
    await server.call('POST', '/copies', {});
    const before = await days();
    rmSync(join(server.folder, 'elsewhere', '.platewright-copies.json'));
    writeFileSync(join(server.folder, 'elsewhere', '.platewright-copies.json'), JSON.stringify({ workspace: 'another' }));
    expect((await server.call('POST', '/copies', { deleteEarlier: true })).body.code).toBe('copies-folder-taken');
    rmSync(join(server.folder, 'elsewhere', '.platewright-copies.json'));
    expect(await days()).toEqual(before);
  });
});
