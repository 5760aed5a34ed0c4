import { resolve } from 'node:path';
import { clientsForArchive } from '#app/archive/clientsInArchive.ts';
import { Fault } from '#core/errors.ts';
import { archiveLines } from '../archiveText.ts';
import type { Command, World } from '../command.ts';
import { watchOn } from '../progress.ts';
import { atMostPositionals, needed } from '../readOptions.ts';

export const command: Command = {
  name: 'archive',
  usage: 'archive --out FILE.zip [--without-clients]',
  summary:
    'Writes everything into one new file and reads it back: foods, labels, photos, documents and, sealed, the client records. The workbench must not be running; it makes archives itself, under Data.',
  options: { out: { type: 'string' }, 'without-clients': { type: 'boolean' } },
  async run(given, world) {
    atMostPositionals(given, 0);
    const out = resolve(needed(given, 'out'));
    const withClients = given.options['without-clients'] !== true;
    const { vault, archives, close } = await world.openWorkspace();
    try {
      const passphrase = withClients && !vault.hasPassphrase() ? await newPassphrase(world) : undefined;
      const clients = withClients ? await clientsForArchive(vault, passphrase) : undefined;
      const look = await archives.write(out, clients, watchOn(world));
      await world.write(`${[`${out} was written and read back whole.`, ...archiveLines(look)].join('\n')}\n`);
    } finally {
      await close();
    }
  },
};

async function newPassphrase(world: World): Promise<string> {
  const first = await world.askHidden('A passphrase for the client records in this file: ');
  if ((await world.askHidden('The same once more: ')) !== first) throw new Fault('not-confirmed', 'The two were not the same.');
  return first;
}
