import type { Command } from '../command.ts';
import { atMostPositionals } from '../readOptions.ts';

export const command: Command = {
  name: 'start',
  usage: 'start',
  summary: 'Opens the workbench in the browser: PORT and PLATEWRIGHT_DATA say where, PLATEWRIGHT_DATABASE_URL names a PostgreSQL database.',
  options: {},
  async run(given, world) {
    atMostPositionals(given, 0);
    const { serve } = await import('../../server/main.ts');
    const serving = await serve(process.env, world.say);
    await world.write(
      `Platewright runs at ${serving.address}\nOpen this address in a browser of this computer. Ctrl-C ends the program.\n`,
    );
    const stop = (): void => void serving.close().then(() => process.exit(0));
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.once(signal, stop);
    await new Promise(() => undefined);
  },
};
