import { spawn } from 'node:child_process';
import { afterEach, describe, expect, test } from 'vitest';
import { dropDraft, findDraft, keepDraft, listDrafts } from '#app/clients/clientDrafts.ts';
import type { ClientJson, ClientVault, SealedClients } from '#app/clientVault.ts';
import {
  another,
  cleanUp,
  client,
  codeOf,
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
} from './vaultWorld.fixture.ts';

afterEach(cleanUp);

const at = new Date('2026-06-15T09:30:00Z');
const { id } = client(1);
const typed = { goals: ['barley soup without salt'], labs: [{ analyte: 'potassium', value: '5.9731' }] };
const type = (vault: ClientVault, seenRevision: number | null, value: object = typed, clientId = id) =>
  keepDraft(vault, clientId, { form: 'assessment', value: { ...value }, seenRevision }, at);

/** Three clients, something half typed about the first. */
async function halfTyped(folder = newFolder()): Promise<ClientVault> {
  const vault = await filled(folder, 3);
  await type(vault, null);
  return vault;
}
const found = (vault: ClientVault, clientId = id) => findDraft(vault, clientId, 'assessment');

describe('what lies half typed about a client', () => {
  test('[VLT-21] comes back as it was typed, a form by itself, and stands in no list of records', async () => {
    const folder = newFolder();
    const vault = await halfTyped(folder);
    expect(await findDraft(vault, id, 'handout')).toBeUndefined();
    await keepDraft(vault, id, { form: 'handout', value: { author: 'Marr' }, seenRevision: null }, at);
    await vault.close();
    const again = await open(folder);
    expect(await found(again)).toEqual({ form: 'assessment', revision: 1, savedAt: '2026-06-15T09:30:00.000Z', value: typed });
    expect((await findDraft(again, id, 'handout'))?.value).toEqual({ author: 'Marr' });
    expect(await found(again, client(2).id)).toBeUndefined();
    expect((await again.list()).map(one => one.id)).toEqual([0, 1, 2].map(index => client(index).id));
    expect(await again.exportAll()).toHaveLength(3);
    expect(await codeOf(found(again, 'nobody'))).toBe('client-not-found');
    expect(await codeOf(type(again, null, typed, 'nobody'))).toBe('client-not-found');
    expect(await listDrafts(again)).toHaveLength(2);
  });

  test('[VLT-21] who changes or drops it names the revision that was seen, and none comes a second time', async () => {
    const vault = await halfTyped();
    expect(await codeOf(type(vault, null))).toBe('changed-meanwhile');
    expect((await type(vault, 1, { second: true })).revision).toBe(2);
    expect(await codeOf(type(vault, 1))).toBe('changed-meanwhile');
    expect(await codeOf(dropDraft(vault, id, 'assessment', 1))).toBe('changed-meanwhile');
    await dropDraft(vault, id, 'assessment', 2);
    await dropDraft(vault, id, 'assessment', 2);
    expect([await found(vault), await listDrafts(vault)]).toEqual([undefined, []]);
    // A window that still knows the second is not taken for one that knows what is typed now.
    expect(await codeOf(type(vault, 2))).toBe('changed-meanwhile');
    expect((await type(vault, null)).revision).toBe(4);
    // Of two at once the one is told.
    const outcomes = await Promise.allSettled([type(vault, 4, { a: 1 }), type(vault, 4, { b: 1 })]);
    expect(outcomes.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected']);
  });

  test('[VLT-5] [VLT-21] is sealed: with a passphrase or without, no typed word stands in any file', async () => {
    const folder = newFolder();
    const vault = await halfTyped(folder);
    for (let revision = 1; revision < 30; revision++)
      await type(vault, revision, { notes: 'Ottoline likes barley '.repeat(revision * 40) });
    expect(readOnDisk(folder)).toEqual([]);
    await vault.changePassphrase(undefined, passphrase);
    await type(vault, 30);
    expect(readOnDisk(folder)).toEqual([]);
    vault.lock();
    expect(await codeOf(found(vault))).toBe('clients-locked');
    expect(await codeOf(type(vault, 31))).toBe('clients-locked');
    await vault.close();
    expect(readOnDisk(folder)).toEqual([]);
    // The same bytes without their seal would be found.
    expect(onDisk(folder, ['SQLite format'])).toHaveLength(1);
  });

  test('[VLT-9] [VLT-21] is sealed anew with a passphrase that is set, changed and taken off', async () => {
    const folder = newFolder();
    const vault = await halfTyped(folder);
    await vault.changePassphrase(undefined, passphrase);
    await vault.close();
    const before = sealedRows(folder);
    const again = await open(folder);
    await again.unlock(passphrase);
    expect((await found(again))?.value).toEqual(typed);
    await again.changePassphrase(passphrase, another);
    await again.close();
    const bodies = new Set(before.map(({ body }) => body.toString('hex')));
    expect(sealedRows(folder).filter(({ body }) => bodies.has(body.toString('hex')))).toEqual([]);
    const last = await open(folder);
    await last.changePassphrase(another, undefined);
    expect((await found(last))?.value).toEqual(typed);
  });

  test('[VLT-21] goes with the client who is erased, leaves nothing on disk, and comes back with the client', async () => {
    const folder = newFolder();
    const vault = await filled(folder, 3);
    await vault.close();
    const records = new Set(sealedRows(folder).map(({ row }) => row.toString('hex')));
    const second = await open(folder);
    await type(second, null, { notes: 'barley '.repeat(3_000) });
    await second.close();
    const [drafts] = sealedRows(folder).filter(({ row }) => !records.has(row.toString('hex')));
    // It lies over several pages: any 64 bytes of it would tell.
    const shreds = Array.from({ length: Math.floor(drafts!.body.length / 64) }, (_, index) =>
      drafts!.body.subarray(index * 64, index * 64 + 64),
    );
    expect(onDisk(folder, shreds).length).toBeGreaterThan(200);
    const third = await open(folder);
    const removed = await third.remove(id, 1);
    expect(onDisk(folder, shreds)).toEqual([]);
    expect([await third.allDrafts(), await codeOf(found(third))]).toEqual([[], 'client-not-found']);
    await third.bringBack(removed);
    expect((await found(third))?.value).toEqual({ notes: 'barley '.repeat(3_000) });
    expect(await third.health()).toMatchObject({ whole: 4, index: 'whole' });
    await third.eraseAll();
    expect([await third.allDrafts(), readOnDisk(folder)]).toEqual([[], []]);
  });

  test('[VLT-11] [VLT-21] what was acknowledged survives kill -9', async () => {
    const folder = newFolder();
    await (await filled(folder, 3)).close();
    const child = spawn(process.execPath, [program, folder, 'type forever'], { stdio: ['ignore', 'pipe', 'inherit'] });
    let told = '';
    await new Promise<void>(done => {
      child.stdout.on('data', chunk => {
        told += chunk;
        if (told.split('\n').length > 41) child.kill('SIGKILL');
      });
      child.once('exit', () => done());
    });
    const acknowledged = Number(told.split('\n').slice(1, -1).at(-1));
    expect(acknowledged).toBeGreaterThanOrEqual(40);
    const kept = await (await open(folder)).drafts(id);
    expect(kept?.version).toBeGreaterThanOrEqual(acknowledged);
    expect(kept?.typed).toBe(`barley ${kept?.version}`);
  });
});

describe('what lies half typed, in copies and beside damage', () => {
  const travelled = (copy: SealedClients): unknown => JSON.parse(JSON.stringify(copy));

  test('[VLT-19] [VLT-21] a copy carries it sealed, and an empty vault has it again', async () => {
    const vault = await halfTyped();
    for (const [copy, words] of [
      [await vault.sealedCopy(another), another],
      [await vault.keyedCopy(), undefined],
    ] as const) {
      const bytes = copy.rows.map(({ body }) => Buffer.from(body, 'base64').toString('latin1')).join('');
      expect([JSON.stringify(copy), bytes].filter(text => text.includes('barley'))).toEqual([]);
      const empty = await open(newFolder());
      expect(await empty.restoreCopy(travelled(copy), words, 'empty')).toEqual({ added: 3, same: 0, conflicts: 0, damaged: 0 });
      expect((await found(empty))?.value).toEqual(typed);
    }
  });

  test('[VLT-19] [VLT-21] beside others it comes with the clients that are added; what is typed here stays, and what is left out is counted', async () => {
    const from = await halfTyped();
    await type(from, null, { second: 'of the copy' }, client(2).id);
    await type(from, null, { third: 'of the copy' }, client(0).id);
    await dropDraft(from, client(0).id, 'assessment', 1);
    const copy = travelled(await from.sealedCopy(another));
    const vault = await open(newFolder());
    for (const index of [0, 2]) await vault.put(client(index), null);
    await type(vault, null, { second: 'typed here' }, client(2).id);
    expect(await vault.restoreCopy(copy, another, 'beside')).toEqual({ added: 1, same: 2, conflicts: 0, damaged: 0, draftsLeftOut: 1 });
    expect((await found(vault))?.value).toEqual(typed);
    expect((await found(vault, client(2).id))?.value).toEqual({ second: 'typed here' });
    // The same copy again has nothing that is not here but that one.
    expect(await vault.restoreCopy(copy, another, 'beside')).toMatchObject({ added: 0, same: 3, draftsLeftOut: 1 });
    expect(await from.restoreCopy(copy, another, 'beside')).toEqual({ added: 0, same: 3, conflicts: 0, damaged: 0 });
  });

  /** A vault in which the row that was written last was changed from outside. */
  async function harmed(
    write: (vault: ClientVault) => Promise<unknown>,
  ): Promise<{ readonly folder: string; readonly vault: ClientVault }> {
    const folder = newFolder();
    const before = await halfTyped(folder);
    await before.close();
    const rows = sealedRows(folder).map(({ body }) => body.toString('hex'));
    const writing = await open(folder);
    await write(writing);
    await writing.close();
    const [written] = sealedRows(folder).filter(({ body }) => !rows.includes(body.toString('hex')));
    tamper(folder, 'update records set body = zeroblob(100) where row = ?', written!.row);
    return { folder, vault: await open(folder) };
  }

  test('[VLT-16] [VLT-21] damaged, it is told and hides no record; the client can be erased, and it can be set aside', async () => {
    const { vault } = await harmed(one => type(one, 1, { notes: 'barley' }));
    expect(await vault.health()).toMatchObject({ whole: 3, damaged: { truncated: 1 } });
    expect([await vault.list(), await vault.allDrafts()]).toMatchObject([{ length: 3 }, []]);
    expect([await codeOf(found(vault)), await codeOf(type(vault, 1))]).toEqual(['client-record-damaged', 'client-record-damaged']);
    expect((await vault.remove(id, 1)).drafts).toBeUndefined();
    expect(await vault.health()).toMatchObject({ whole: 2, damaged: { truncated: 0 } });

    const { vault: other } = await harmed(one => type(one, 1, { notes: 'barley' }));
    expect((await other.setAside()).records).toBe(1);
    expect([await found(other), await type(other, null)]).toMatchObject([undefined, { revision: 1 }]);
  });

  test('[VLT-16] [VLT-21] about a client whose record is damaged it is not shown, and goes aside with the record', async () => {
    const { folder, vault } = await harmed(one => one.put(client(1), 1));
    expect(await vault.health()).toMatchObject({ whole: 3, damaged: { truncated: 1 } });
    expect([await codeOf(found(vault)), await listDrafts(vault)]).toEqual(['client-record-damaged', []]);
    const { records, file } = await vault.setAside();
    expect([
      records,
      peek<{ damage: string }>(folder, 'select damage from records', file)
        .map(({ damage }) => damage)
        .sort(),
    ]).toEqual([2, ['truncated', 'whole']]);
    expect([await vault.health(), await codeOf(found(vault))]).toMatchObject([{ whole: 2, index: 'whole' }, 'client-not-found']);
    expect(readOnDisk(folder)).toEqual([]);
  });

  test('[VLT-21] JSON that is no drafts, under a key that whoever made a copy knew, is told as damage', async () => {
    const vault = await halfTyped();
    for (const none of [{}, { drafts: {} }, { drafts: [{ form: 'assessment' }] }, { drafts: [], more: 1 }]) {
      await vault.changeDrafts(id, () => ({ id: '', version: 1, ...none }) as ClientJson);
      expect([await codeOf(found(vault)), await codeOf(type(vault, 1)), await listDrafts(vault)]).toEqual([
        'client-record-damaged',
        'client-record-damaged',
        [],
      ]);
    }
    await vault.changeDrafts(id, () => ({ id: '', version: 1, format: 2, drafts: [] }));
    expect(await codeOf(found(vault))).toBe('client-record-newer');
  });
});
