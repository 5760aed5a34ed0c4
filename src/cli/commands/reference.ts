import { Fault, type Issue } from '#core/errors.ts';
import { largerReference } from '#core/reference/largerReference.ts';
import { referenceFileText } from '#core/reference/referenceFile.ts';
import type { Command } from '../command.ts';
import { watchOn } from '../progress.ts';
import { atMostPositionals, needed } from '../readOptions.ts';
import { reportText } from '../reportText.ts';

/** Things noticed that are printed; the count tells of the rest. */
const mostShown = 20;

export const command: Command = {
  name: 'reference',
  usage: 'reference import FOLDER-or-FILE --out FILE',
  summary: 'Reads a composition table (USDA SR, FoodData Central foundation and legacy) into a reference file for `minerals --reference`.',
  options: { out: { type: 'string' } },
  async run(given, world) {
    atMostPositionals(given, 2);
    const [what, path] = given.positionals;
    if (what !== 'import' || path === undefined)
      throw new Fault('option-missing', `What to import is missing. Usage: platewright ${this.usage}`);
    const out = needed(given, 'out');
    const { value: tables, issues } = await world.readDatasets(path, watchOn(world));
    await world.writeFile(out, referenceFileText(tables));
    world.say(reported(issues));
    for (const { source, edition, foods } of tables) world.say(`${source}, ${edition}: ${foods.length.toLocaleString('en-US')} foods\n`);
    world.say(`${largerReference(tables).names.toLocaleString('en-US')} names of ingredients lead to one of them. Written to ${out}\n`);
  },
};

function reported(issues: readonly Issue[]): string {
  const more = issues.length - mostShown;
  return `${reportText(issues.slice(0, mostShown))}${more > 0 ? `and ${more} more\n` : ''}`;
}
