import { join } from 'node:path';
import { buildGuideSite } from '#app/guides/buildGuideSite.ts';
import { surveyForGuide } from '#app/guides/surveyForGuide.ts';
import { importLabels } from '#app/importLabels.ts';
import { Fault } from '#core/errors.ts';
import type { GuideDraft } from '#core/guide/guide.ts';
import { guideFromJson } from '#core/guide/guideFromJson.ts';
import { isDay } from '#core/quantity/calendarDay.ts';
import type { Command, World } from '../command.ts';
import { readJsonFile } from '../readBuiltInOrFile.ts';
import { folderOf, plates, readNamed, yardsticks } from '../readNamed.ts';
import { needed } from '../readOptions.ts';
import { reportText } from '../reportText.ts';

export const command: Command = {
  name: 'guide',
  usage:
    'guide build GUIDE.json … --labels FILE.csv --out FOLDER [--plates FOLDER] [--yardsticks FOLDER] [--site-url URL] [--today DAY] [--pdf]',
  summary: 'Builds guides for readers out of surveys: pages, table, cards to cut out and, with --pdf, PDFs, in a folder for a static host.',
  options: {
    labels: { type: 'string' },
    out: { type: 'string' },
    plates: { type: 'string' },
    yardsticks: { type: 'string' },
    'site-url': { type: 'string' },
    today: { type: 'string' },
    pdf: { type: 'boolean' },
  },
  async run(given, world) {
    const [verb, ...files] = given.positionals;
    if (verb !== 'build') throw new Fault('unknown-option', `"guide ${verb ?? ''}" is not known. Usage: platewright ${this.usage}`);
    if (files.length === 0) throw new Fault('option-missing', `The guide file is missing. Usage: platewright ${this.usage}`);
    const out = needed(given, 'out');
    const today = given.options.today === undefined ? world.today() : needed(given, 'today');
    if (!isDay(today)) throw new Fault('unknown-option', `--today "${today}" is no day as yyyy-mm-dd.`);
    // Asked for first: whoever has no browser hears of it before anything is read or written.
    const printPdf = given.options.pdf === true ? await world.pdfPrinter() : undefined;
    const { value: labels, issues: report } = importLabels(await world.readTable(needed(given, 'labels')));
    world.say(reportText(report));
    const guides = [];
    for (const file of files) {
      const draft = await readGuide(file, world);
      const { plateId, yardstickId } = draft.survey;
      const plate = await readNamed(plates, plateId, folderOf(given, 'plates', file), world);
      const yardstick = await readNamed(yardsticks, yardstickId, folderOf(given, 'yardsticks', file), world);
      guides.push(surveyForGuide({ draft, labels, plate, yardstick, today }));
    }
    const siteUrl = given.options['site-url'];
    const { value: site, issues } = await buildGuideSite({
      guides,
      ...(typeof siteUrl === 'string' ? { siteUrl } : {}),
      ...(printPdf === undefined ? {} : { printPdf }),
    });
    world.say(reportText(issues));
    await world.writeSite(out, site);
    await world.write([...site.keys()].map(path => `${join(out, path)}\n`).join(''));
  },
};

async function readGuide(file: string, world: World): Promise<GuideDraft> {
  const { value, issues } = guideFromJson(await readJsonFile(file, 'guide-not-valid', world));
  const report = reportText(issues);
  if (value === undefined) throw new Fault('guide-not-valid', `"${file}":\n${report.trimEnd()}`);
  world.say(report);
  return value;
}
