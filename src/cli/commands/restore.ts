import { resolve } from 'node:path';
import { restoreArchive } from '#app/archive/restoreArchive.ts';
import { Fault } from '#core/errors.ts';
import { archiveLines, restoredLines } from '../archiveText.ts';
import type { Command } from '../command.ts';
import { watchOn } from '../progress.ts';
import { atMostPositionals } from '../readOptions.ts';

export const command: Command = {
  name: 'restore',
  usage: 'restore FILE [--beside] [--without-clients]',
  summary:
    'Puts an archive, or a workspace file of an earlier program, into the empty data folder; with --beside it adds what is new and tells what differs. All or nothing. The workbench must not be running; it restores too, under Data.',
  options: { beside: { type: 'boolean' }, 'without-clients': { type: 'boolean' } },
  async run(given, world) {
    atMostPositionals(given, 1);
    const [file] = given.positionals;
    if (file === undefined) throw new Fault('option-missing', `The file is missing. Usage: platewright ${this.usage}`);
    const path = resolve(file);
    const workspace = await world.openWorkspace();
    try {
      const { vault, archives } = workspace;
      const watch = watchOn(world);
      const look = await archives.look(path, watch);
      world.say(`${archiveLines(look).join('\n')}\n`);
      const into = given.options.beside === true ? 'beside' : 'empty';
      const withClients = look.clients !== undefined && given.options['without-clients'] !== true;
      if (withClients && into === 'beside' && vault.state() === 'locked')
        await vault.unlock(await world.askHidden('Passphrase of the client records here: '));
      const asks = withClients && into === 'beside' && look.clients?.opensWith === 'passphrase';
      const passphrase = asks ? await world.askHidden('Passphrase of the client records in the archive: ') : undefined;
      const choice = { into, withClients, ...(passphrase === undefined ? {} : { passphrase }) } as const;
      const restored = await restoreArchive(workspace, { path, look }, choice, watch);
      await world.write(`${restoredLines(restored).join('\n')}\n`);
    } finally {
      await workspace.close();
    }
  },
};
