/** A program of its own for tests: opens the vault of a folder and does what its second argument says, telling each step. */
import { Fault } from '#core/errors.ts';
import { KeyFile } from './keyFile.ts';
import { openClientVault } from './sqliteVault.ts';
import { VaultFile } from './vaultFile.ts';

const [folder = '', task = '', passphrase = '', change = ''] = process.argv.slice(2);
const cheap = { n: 2 ** 10, r: 8, p: 1 };

function tell(line: string): void {
  process.stdout.write(`${line}\n`);
}

function die(): never {
  process.kill(process.pid, 'SIGKILL');
  throw new Error('killed');
}

function prepareToDie(): void {
  if (task === 'die before the scrub') VaultFile.prototype.scrub = die;
  if (task === 'die before the key is removed') KeyFile.prototype.remove = die;
  if (task === 'die before the commit') VaultFile.prototype.putSealedIndex = die;
  if (task !== 'die after the key is written') return;
  const { write } = KeyFile.prototype;
  KeyFile.prototype.write = function (key) {
    write.call(this, key);
    die();
  };
}

try {
  if (change === 'opened') prepareToDie();
  const vault = await openClientVault(folder, cheap);
  tell(vault.state());
  if (task === 'write forever') {
    for (let index = 0; ; index++) tell((await vault.put({ id: `client-${index}`, version: 0, index }, null)).id);
  }
  if (task === 'type forever') {
    for (let revision = 1; ; revision++) {
      await vault.changeDrafts('ottoline-1', () => ({ id: '', version: revision, drafts: [], typed: `barley ${revision}` }));
      tell(String(revision));
    }
  }
  if (task === 'change forever') {
    for (;;) {
      await vault.changePassphrase(undefined, passphrase);
      tell('set');
      await vault.changePassphrase(passphrase, undefined);
      tell('taken off');
    }
  }
  if (task === 'try') {
    tell('trying');
    await vault.unlock(passphrase);
  }
  if (task.startsWith('die ')) {
    prepareToDie();
    if (change === 'set') await vault.changePassphrase(undefined, passphrase);
    if (change === 'taken off') await vault.changePassphrase(passphrase, undefined);
    if (change === 'erased') await vault.eraseAll(passphrase);
  }
  await vault.close();
} catch (error) {
  tell(error instanceof Fault ? error.code : String(error));
}
