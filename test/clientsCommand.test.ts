import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import {
  cleanUp,
  filled,
  newFolder,
  open,
  passphrase,
  readOnDisk,
  sealedRows,
  tamper,
} from '../src/adapters/clients/vaultWorld.fixture.ts';
import { program } from './program.ts';

afterEach(cleanUp);

function clients(folder: string, args: readonly string[], input = '') {
  const env = { ...process.env, PLATEWRIGHT_DATA: folder };
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, 'clients', ...args], {
    input,
    encoding: 'utf8',
    env,
    timeout: 60_000,
  });
  return { status, stdout, stderr };
}

async function closed(isLocked: boolean): Promise<string> {
  const folder = newFolder();
  const vault = await filled(folder, 4);
  if (isLocked) await vault.changePassphrase(undefined, passphrase);
  await vault.close();
  return folder;
}

describe('platewright clients', () => {
  test('[CLI-50] check tells that everything is whole; the passphrase comes from standard input and is not shown', async () => {
    const folder = await closed(true);
    const { status, stdout, stderr } = clients(folder, ['check'], `${passphrase}\n`);
    expect([status, stdout]).toEqual([0, expect.stringMatching(/^4 records are whole\.\nThe index is whole, last written 20\d\d-/)]);
    expect(stderr).toBe('Passphrase of the client records: ');
    const wrong = clients(folder, ['check'], 'another one altogether\n');
    expect([wrong.status, wrong.stderr.includes('The passphrase is wrong'), wrong.stderr.includes('altogether')]).toEqual([1, true, false]);
    expect(clients(folder, ['check']).status).toBe(1);
    // Neither an argument nor the environment is asked.
    expect(clients(folder, ['check', passphrase]).stderr).toContain('one word too many');
    expect(clients(folder, ['check', '--passphrase', passphrase]).stderr).toContain('Option not understood');
  });

  test('[CLI-50] damage is told by its kind and set aside, nothing is deleted', async () => {
    const folder = await closed(false);
    const [first, second] = sealedRows(folder);
    tamper(folder, "update records set body = x'' where row = ?", first!.row);
    tamper(folder, 'delete from records where row = ?', second!.row);
    const told = clients(folder, ['check']);
    expect([told.status, told.stdout]).toEqual([1, expect.stringMatching(/^2 records are whole\.\n1 emptied\.\n1 missing\.\n/)]);
    expect(told.stderr).toContain('platewright clients set-aside');
    const moved = clients(folder, ['set-aside']);
    expect([moved.status, moved.stdout]).toEqual([
      0,
      expect.stringMatching(/^2 moved to clients-set-aside-.*\.sqlite, in the same folder\.\n$/),
    ]);
    expect(clients(folder, ['check']).status).toBe(0);
    expect(clients(folder, ['set-aside']).stdout).toBe('Nothing is damaged: nothing was moved.\n');
    expect(readOnDisk(folder)).toEqual([]);
  });

  test('[CLI-50] a file that does not open is moved aside with its key; one that opens stays', async () => {
    const folder = await closed(false);
    expect(clients(folder, ['set-aside', '--file']).stderr).toContain('The client records open');
    const bytes = Buffer.from('this is no database '.repeat(300));
    writeFileSync(join(folder, 'clients.sqlite'), bytes);
    const told = clients(folder, ['check']);
    expect([told.status, told.stderr.includes('platewright clients set-aside --file')]).toEqual([1, true]);
    expect(clients(folder, ['set-aside', '--file']).status).toBe(0);
    const [file] = readdirSync(folder).filter(name => /^clients-set-aside-.*\.sqlite$/.test(name));
    expect(readFileSync(join(folder, file!)).equals(bytes)).toBe(true);
    expect(readdirSync(folder).some(name => /^clients-set-aside-.*\.key$/.test(name))).toBe(true);
    expect(clients(folder, ['check']).stdout).toContain('0 records are whole.');
  });

  test('[CLI-50] a lost passphrase: everything is erased after the words were typed, and not before', async () => {
    const folder = await closed(true);
    const left = clients(folder, ['erase-all'], 'yes\n');
    expect([left.status, left.stderr.includes('It was not confirmed')]).toEqual([1, true]);
    expect(clients(folder, ['check'], `${passphrase}\n`).stdout).toContain('4 records are whole.');
    expect(clients(folder, ['erase-all'], 'erase every client\n').stdout).toBe('Every client is erased.\n');
    const vault = await open(folder);
    expect([vault.hasPassphrase(), await vault.list()]).toEqual([false, []]);
  });

  test('[CLI-50] while the workbench runs it is told that the records are in use', async () => {
    const folder = newFolder();
    await filled(folder, 1);
    for (const args of [['check'], ['set-aside'], ['set-aside', '--file'], ['erase-all']])
      expect(clients(folder, args, 'erase every client\n').stderr, args.join(' ')).toContain(
        'Another program has the client records open.',
      );
    expect(clients(folder, ['dance']).stderr).toContain('Usage: platewright clients');
  });
});
