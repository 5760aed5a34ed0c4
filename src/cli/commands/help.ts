import { Fault } from '#core/errors.ts';
import type { Command, CommandTable } from '../command.ts';
import { atMostPositionals } from '../readOptions.ts';

/** Help knows the other commands, so it is made from their table. */
export function helpAbout(table: CommandTable): Command {
  return {
    name: 'help',
    usage: 'help [COMMAND]',
    summary: 'Shows this page, or one command.',
    options: {},
    async run(given, world) {
      atMostPositionals(given, 1);
      const [name] = given.positionals;
      if (name !== undefined && !Object.hasOwn(table, name)) throw new Fault('unknown-command', `There is no command "${name}".`);
      const commands = await Promise.all(
        (name === undefined ? Object.keys(table) : [name]).map(async one => (await table[one]!()).command),
      );
      const shown = name === undefined ? [...commands, this] : commands;
      const head = 'Platewright reads food labels for kidney nutrition and judges foods as they are eaten.\n\n';
      const lines = shown.map(({ usage, summary }) => `  platewright ${usage}\n      ${summary}\n`);
      await world.write(`${name === undefined ? head : ''}${lines.join('')}`);
    },
  };
}
