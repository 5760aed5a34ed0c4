import type { ClientVault, VaultHealth } from '#app/clientVault.ts';
import { damageKinds } from '#app/clientVault.ts';
import { Fault } from '#core/errors.ts';
import type { Command, World } from '../command.ts';
import { atMostPositionals } from '../readOptions.ts';

const eraseWords = 'erase every client';

export const command: Command = {
  name: 'clients',
  usage: 'clients check | set-aside [--file] | erase-all',
  summary:
    'Looks through the client records for damage; moves what is damaged aside, or with --file a file that does not open; or erases them all, the passphrase lost. The passphrase is asked for. The workbench must not be running.',
  options: { file: { type: 'boolean' } },
  async run(given, world) {
    atMostPositionals(given, 1);
    const [task] = given.positionals;
    if (task === 'check') return withVault(world, check);
    if (task === 'set-aside') return given.options.file === true ? moveFile(world) : withVault(world, setAside);
    if (task === 'erase-all') return eraseAll(world);
    throw new Fault('unknown-option', `Say what is to be done. Usage: platewright ${this.usage}`);
  },
};

/** Opens the records, with their passphrase where there is one. */
async function withVault(world: World, work: (vault: ClientVault, world: World) => Promise<void>): Promise<void> {
  const vault = await world.openClientVault();
  try {
    if (vault.state() === 'locked') await vault.unlock(await world.askHidden('Passphrase of the client records: '));
    await work(vault, world);
  } finally {
    await vault.close();
  }
}

async function check(vault: ClientVault, world: World): Promise<void> {
  const health = await vault.health();
  await world.write(`${described(health).join('\n')}\n`);
  const isWhole = health.index === 'whole' && damageKinds.every(kind => health.damaged[kind] === 0);
  if (!isWhole) throw new Fault('client-record-damaged', 'Not everything in the file is whole.');
}

async function setAside(vault: ClientVault, world: World): Promise<void> {
  const { records, file } = await vault.setAside();
  await world.write(file === undefined ? 'Nothing is damaged: nothing was moved.\n' : `${records} moved to ${file}, in the same folder.\n`);
}

async function moveFile(world: World): Promise<void> {
  const name = await world.moveClientsAside();
  const what = name.endsWith('.sqlite') ? 'The file of clients is' : 'The file of clients is missing; what stood beside it is';
  await world.write(`${what} now ${name}, in the same folder. The program starts with none.\n`);
}

async function eraseAll(world: World): Promise<void> {
  const vault = await world.openClientVault();
  try {
    world.say(
      'Every client goes for good: assessments, results, signed prescriptions, handouts, what is half typed, and the passphrase. Nothing brings it back.\n',
    );
    const typed = await world.ask(`To erase, type: ${eraseWords}\n`);
    if (typed.trim() !== eraseWords) throw new Fault('not-confirmed', 'Something else was typed.');
    await vault.eraseAllUnread();
    await world.write('Every client is erased.\n');
  } finally {
    await vault.close();
  }
}

const damageWords = {
  altered: 'changed outside this program or by a failing disk',
  truncated: 'cut short',
  emptied: 'emptied',
  missing: 'missing',
  exchanged: 'exchanged for another or an older one',
  added: 'put there from outside',
} as const;

function described({ whole, damaged, index, writtenAt }: VaultHealth): readonly string[] {
  return [
    `${whole} ${whole === 1 ? 'record is' : 'records are'} whole.`,
    ...damageKinds.filter(kind => damaged[kind] > 0).map(kind => `${damaged[kind]} ${damageWords[kind]}.`),
    index === 'whole'
      ? `The index is whole, last written ${writtenAt}.`
      : `The index is ${index}: what was taken away or put back cannot be told.`,
  ];
}
