import { Fault } from '#core/errors.ts';
import type { Command } from '../command.ts';
import { atMostPositionals } from '../readOptions.ts';

/** Help knows the other commands, so it is made from their list. */
export function helpAbout(commands: readonly Command[]): Command {
  return {
    name: 'help',
    usage: 'help [COMMAND]',
    summary: 'Shows this page, or one command.',
    options: {},
    async run(given, world) {
      atMostPositionals(given, 1);
      const [name] = given.positionals;
      const shown = name === undefined ? [...commands, this] : commands.filter(command => command.name === name);
      if (shown.length === 0) throw new Fault('unknown-command', `There is no command "${name}".`);
      const lines = shown.map(({ usage, summary }) => `  platewright ${usage}\n      ${summary}\n`);
      const head = 'Platewright reads food labels for kidney nutrition and judges foods as they are eaten.\n\n';
      await world.write(`${name === undefined ? head : ''}${lines.join('')}`);
    },
  };
}
