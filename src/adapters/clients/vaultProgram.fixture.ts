/** A program of its own for tests: opens the vault of a folder and does what its second argument says, telling each step. */
import { Fault } from '#core/errors.ts';
import { openClientVault } from './sqliteVault.ts';
import { VaultFile } from './vaultFile.ts';

const [folder = '', task = '', passphrase = ''] = process.argv.slice(2);
const cheap = { n: 2 ** 10, r: 8, p: 1 };

function tell(line: string): void {
  process.stdout.write(`${line}\n`);
}

try {
  const vault = await openClientVault(folder, cheap);
  tell(vault.state());
  if (task === 'write forever') {
    for (let index = 0; ; index++) tell((await vault.put({ id: `client-${index}`, version: 0, index }, null)).id);
  }
  if (task === 'change forever') {
    for (;;) {
      await vault.changePassphrase(undefined, passphrase);
      tell('set');
      await vault.changePassphrase(passphrase, undefined);
      tell('taken off');
    }
  }
  if (task === 'die before the scrub') {
    VaultFile.prototype.scrub = () => process.kill(process.pid, 'SIGKILL');
    await vault.changePassphrase(undefined, passphrase);
  }
  await vault.close();
} catch (error) {
  tell(error instanceof Fault ? error.code : String(error));
}
