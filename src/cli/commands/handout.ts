import { join } from 'node:path';
import { buildHandouts } from '#app/handouts/buildHandouts.ts';
import { surveysForHandout } from '#app/handouts/surveysForHandout.ts';
import { importLabels } from '#app/importLabels.ts';
import { newestFoods } from '#app/labelHistories.ts';
import { Fault } from '#core/errors.ts';
import type { HandoutDraft } from '#core/handout/handout.ts';
import { handoutFromJson } from '#core/handout/handoutFromJson.ts';
import { isDay } from '#core/quantity/calendarDay.ts';
import type { Command, World } from '../command.ts';
import { gradeTable } from '../gradeTable.ts';
import { readJsonFile } from '../readBuiltInOrFile.ts';
import { folderOf, plates, readNamed, yardsticks } from '../readNamed.ts';
import { needed } from '../readOptions.ts';
import { reportText } from '../reportText.ts';

export const command: Command = {
  name: 'handout',
  usage: 'handout build HANDOUT.json … --labels FILE.csv --out FOLDER [--plates FOLDER] [--yardsticks FOLDER] [--today DAY] [--pdf]',
  summary:
    'Builds handouts for one client or one topic: a page for the fridge, foods and portions, label steps, swaps, a shopping list; with their reading grade.',
  options: {
    labels: { type: 'string' },
    out: { type: 'string' },
    plates: { type: 'string' },
    yardsticks: { type: 'string' },
    today: { type: 'string' },
    pdf: { type: 'boolean' },
  },
  async run(given, world) {
    const [verb, ...files] = given.positionals;
    if (verb !== 'build') throw new Fault('unknown-option', `"handout ${verb ?? ''}" is not known. Usage: platewright ${this.usage}`);
    if (files.length === 0) throw new Fault('option-missing', `The handout file is missing. Usage: platewright ${this.usage}`);
    const out = needed(given, 'out');
    const today = given.options.today === undefined ? world.today() : needed(given, 'today');
    if (!isDay(today)) throw new Fault('unknown-option', `--today "${today}" is no day as yyyy-mm-dd.`);
    // Asked for first: whoever has no browser hears of it before anything is read or written.
    const printPdf = given.options.pdf === true ? await world.pdfPrinter() : undefined;
    const { value: labels, issues: report } = importLabels(await world.readTable(needed(given, 'labels')));
    world.say(reportText(report));
    const handouts = [];
    for (const file of files) {
      const draft = await readHandout(file, world);
      const categories = [];
      for (const category of draft.categories) {
        const plate = await readNamed(plates, category.plateId, folderOf(given, 'plates', file), world);
        categories.push({ category, plate, foods: newestFoods(labels, category.category, today) });
      }
      const { topic } = draft;
      const topicYardstick =
        topic === undefined ? undefined : await readNamed(yardsticks, topic.yardstickId, folderOf(given, 'yardsticks', file), world);
      handouts.push(surveysForHandout({ draft, categories, ...(topicYardstick === undefined ? {} : { topicYardstick }) }));
    }
    const built = await buildHandouts({ handouts, ...(printPdf === undefined ? {} : { printPdf }) });
    world.say(reportText(built.issues));
    world.say(gradeTable(built.value.grades));
    await world.writeSite(out, built.value.files);
    await world.write([...built.value.files.keys()].map(path => `${join(out, path)}\n`).join(''));
  },
};

async function readHandout(file: string, world: World): Promise<HandoutDraft> {
  const { value, issues } = handoutFromJson(await readJsonFile(file, 'handout-not-valid', world));
  const report = reportText(issues);
  if (value === undefined) throw new Fault('handout-not-valid', `"${file}":\n${report.trimEnd()}`);
  world.say(report);
  return value;
}
