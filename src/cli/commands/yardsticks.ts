import { builtInYardsticks } from '#core/yardstick/builtInYardsticks.ts';
import { classScaleText, testText } from '#core/yardstick/testText.ts';
import type { Yardstick } from '#core/yardstick/yardstick.ts';
import type { Command } from '../command.ts';
import { hanging, wrap } from '../layOut.ts';
import { atMostPositionals, oneOf } from '../readOptions.ts';

export const command: Command = {
  name: 'yardsticks',
  usage: 'yardsticks [--format table|json]',
  summary: 'Lists the built-in yardsticks with their tests, bounds and sources.',
  options: { format: { type: 'string' } },
  async run(given, world) {
    atMostPositionals(given, 0);
    const asJson = oneOf(given, 'format', ['table', 'json']) === 'json';
    await world.write(
      asJson ? `${JSON.stringify(builtInYardsticks, null, 2)}\n` : builtInYardsticks.map(one => block(one, world.width)).join('\n'),
    );
  },
};

function block(yardstick: Yardstick, width: number): string {
  const indent = '    ';
  const lines = [
    yardstick.id,
    ...wrap(`${yardstick.title}. ${yardstick.purpose}`, width, indent),
    ...(yardstick.settings === 'any' ? [] : hanging('Settings:', yardstick.settings.join(', '), width, indent)),
    ...yardstick.tests.flatMap(test => hanging('Test:', testText(test), width, indent)),
    ...yardstick.classScales.flatMap(scale => hanging('Class:', classScaleText(scale), width, indent)),
    ...yardstick.cautions.flatMap(caution => hanging('Note:', caution, width, indent)),
  ];
  return lines.map(line => `${line}\n`).join('');
}
