import { closeOnSignal } from '../closeOnSignal.ts';
import type { Command } from '../command.ts';
import { atMostPositionals } from '../readOptions.ts';

export const command: Command = {
  name: 'start',
  usage: 'start [--new-shelf]',
  summary:
    'Opens the workbench in the browser: PORT and PLATEWRIGHT_DATA say where, PLATEWRIGHT_DATABASE_URL names a PostgreSQL database. --new-shelf begins one where it is missing beside clients.',
  options: { 'new-shelf': { type: 'boolean' } },
  async run(given, world) {
    atMostPositionals(given, 0);
    const { serve } = await import('../../server/main.ts');
    const serving = await serve(process.env, world.say, given.options['new-shelf'] === true);
    closeOnSignal(serving.close);
    await world.write(
      `Platewright runs at ${serving.address}\nOpen this address in a browser of this computer. Ctrl-C ends the program.\n`,
    );
    // What tells an older copy of the data folder from the newest.
    if (serving.writtenAt !== undefined)
      world.say(`The shelf was last changed on ${new Date(serving.writtenAt).toLocaleString('en-US')}.\n`);
    // To a person only: what reads the lines above as a program needs no advice.
    if (process.stdout.isTTY) {
      await world.write(
        `The address lets in whoever has it, until the program ends: keep it to yourself.\nData folder: ${serving.folder}\n`,
      );
    }
    await new Promise(() => undefined);
  },
};
