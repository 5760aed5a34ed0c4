import { spawn } from 'node:child_process';
import { copyFileSync, existsSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, expect, test } from 'vitest';
import { findDraft, keepDraft } from '#app/clients/clientDrafts.ts';
import { cleanUp, codeOf, newFolder, open, passphrase, peek, program, readOnDisk, tamper } from './vaultWorld.fixture.ts';

afterEach(cleanUp);

/** A file as the program wrote it when the format was 1 or 2: three invented clients, one of them in version 2. */
function folderOf(form: 'plain' | 'passphrase', format: 1 | 2 = 1): string {
  const folder = newFolder();
  const kept = (ending: string): string => fileURLToPath(new URL(`./forms/clients.format${format}.${form}.${ending}`, import.meta.url));
  copyFileSync(kept('sqlite'), join(folder, 'clients.sqlite'));
  if (existsSync(kept('key'))) copyFileSync(kept('key'), join(folder, 'clients.key'));
  return folder;
}
/** It may be shorter than what is asked for today. */
const oldPassphrase = 'old heron rows';
const brought = [
  { id: 'ottoline-1', version: 1, name: 'Ottoline Marrow 1' },
  { id: 'ottoline-2', version: 2, name: 'Ottoline Marrow the second' },
  { id: 'ottoline-3', version: 1, name: 'Ottoline Marrow 3' },
];

test('[VLT-18] format 1 without a passphrase: clear records are sealed when it is opened, and nothing readable is left', async () => {
  const folder = folderOf('plain');
  expect(readOnDisk(folder)).toContain('Ottoline');
  const vault = await open(folder);
  expect(await vault.list()).toMatchObject(brought);
  expect(readOnDisk(folder)).toEqual([]);
  expect(await vault.health()).toMatchObject({ whole: 3, index: 'whole' });
  await vault.put({ id: 'new', version: 0 }, null);
  await vault.close();
  expect(peek(folder, 'select format from vault')).toEqual([{ format: 3 }]);
  expect(await (await open(folder)).list()).toHaveLength(4);
});

test('[VLT-18] format 1 under a passphrase: it is sealed anew with an index when it is first opened', async () => {
  const folder = folderOf('passphrase');
  const vault = await open(folder);
  expect([vault.state(), vault.hasPassphrase(), existsSync(join(folder, 'clients.key'))]).toEqual(['locked', true, false]);
  expect(await codeOf(vault.unlock(passphrase))).toBe('passphrase-wrong');
  // Before that it is copied as it stands.
  expect(await vault.lookAtCopy(await vault.sealedCopy(), oldPassphrase)).toMatchObject({ records: 3, damaged: 0 });
  await vault.unlock(oldPassphrase);
  expect(await vault.list()).toMatchObject(brought);
  expect(await vault.health()).toMatchObject({ whole: 3, index: 'whole' });
  await vault.close();
  expect(peek(folder, 'select form from wraps')).toEqual([{ form: 2 }]);
  const again = await open(folder);
  await again.unlock(oldPassphrase);
  expect(await again.list()).toMatchObject(brought);
});

test('[VLT-18] its passphrase can be changed or taken off without opening it first', async () => {
  const changed = await open(folderOf('passphrase'));
  await changed.changePassphrase(oldPassphrase, passphrase);
  expect(await changed.list()).toMatchObject(brought);
  const off = await open(folderOf('passphrase'));
  await off.changePassphrase(oldPassphrase, undefined);
  expect(await off.health()).toMatchObject({ whole: 3, index: 'whole' });
});

test.each(['plain', 'passphrase'] as const)(
  '[VLT-18] a damaged record of format 1 (%s) is carried along sealed, told, and set aside',
  async form => {
    const folder = folderOf(form);
    tamper(folder, "update records set body = x'7b226964223a224f74746f6c696e65' where row = (select min(row) from records)");
    const vault = await open(folder);
    await vault.unlock(oldPassphrase);
    expect(readOnDisk(folder)).toEqual([]);
    expect(await vault.health()).toMatchObject({ whole: 2, index: 'whole', damaged: { altered: 1 } });
    expect((await vault.setAside()).records).toBe(1);
    expect(await vault.exportAll()).toHaveLength(2);
  },
);

test.each(['die after the key is written', 'die before the commit', 'die before the scrub'])(
  '[VLT-18] the upgrade of clear records, %s: the next start ends it, and nothing is lost',
  async where => {
    const folder = folderOf('plain');
    const child = spawn(process.execPath, [program, folder, where, '', 'opened'], { stdio: 'ignore' });
    expect(await new Promise(done => child.once('exit', (_code, by) => done(by)))).toBe('SIGKILL');
    const vault = await open(folder);
    expect(await vault.list()).toMatchObject(brought);
    expect(readOnDisk(folder)).toEqual([]);
  },
);

test.each(['plain', 'passphrase'] as const)('[VLT-18] format 2 (%s) has the same records, and takes what is half typed', async form => {
  const folder = folderOf(form, 2);
  const vault = await open(folder);
  await vault.unlock(passphrase);
  expect(await vault.list()).toMatchObject(brought);
  expect([await vault.health(), await vault.allDrafts()]).toMatchObject([{ whole: 3, index: 'whole' }, []]);
  expect(await findDraft(vault, 'ottoline-2', 'assessment')).toBeUndefined();
  const typed = { form: 'assessment', value: { on: '2026-06-1' }, seenRevision: null } as const;
  await keepDraft(vault, 'ottoline-2', typed, new Date('2026-06-15T12:00:00Z'));
  await vault.close();
  expect(peek(folder, 'select format from vault')).toEqual([{ format: 3 }]);
  const again = await open(folder);
  await again.unlock(passphrase);
  expect(await findDraft(again, 'ottoline-2', 'assessment')).toMatchObject({ value: { on: '2026-06-1' } });
});

test('[VLT-18] [VLT-19] a copy of format 2 comes back', async () => {
  const vault = await open(folderOf('plain', 2));
  const copy = { ...(await vault.keyedCopy()), format: 2 };
  expect(await (await open(newFolder())).restoreCopy(copy, undefined, 'empty')).toMatchObject({ added: 3, damaged: 0 });
});
