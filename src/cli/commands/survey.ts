import { foodsOf, importLabels } from '#app/importLabels.ts';
import { type JudgedShelf, judgeShelf, type TellableWays, tellable } from '#app/judgeShelf.ts';
import { surveyCsv } from '#app/survey/surveyCsv.ts';
import { Fault, type Issue } from '#core/errors.ts';
import type { PlateFood } from '#core/plate/plate.ts';
import { type SurveyColumnKey, surveyColumnKeys } from '#core/yardstick/surveyColumns.ts';
import type { Arguments, Command, World } from '../command.ts';
import { progress } from '../progress.ts';
import { readBuiltInOrFile } from '../readBuiltInOrFile.ts';
import { plates, yardsticks } from '../readNamed.ts';
import { atMostPositionals, needed, oneOf, severalOf } from '../readOptions.ts';
import { readSetting } from '../readSetting.ts';
import { reportText } from '../reportText.ts';
import { surveyJson } from '../surveyJson.ts';
import { surveyTable } from '../surveyTable.ts';

type Survey = JudgedShelf<TellableWays>;

export const command: Command = {
  name: 'survey',
  usage:
    'survey FILE.csv --plate PLATE --yardstick YARDSTICK [--setting SETTING] [--category CATEGORY] [--columns NAME,NAME] [--format table|csv|json]',
  summary: 'Judges the foods of a table of labels on a plate, and shows ways in for those that do not fit.',
  options: {
    plate: { type: 'string' },
    yardstick: { type: 'string' },
    setting: { type: 'string' },
    category: { type: 'string' },
    columns: { type: 'string' },
    format: { type: 'string' },
  },
  async run(given, world) {
    atMostPositionals(given, 1);
    const [file] = given.positionals;
    if (file === undefined) throw new Fault('option-missing', `The table of labels is missing. Usage: platewright ${this.usage}`);
    const format = oneOf(given, 'format', ['table', 'csv', 'json']);
    const columns = severalOf(given, 'columns', surveyColumnKeys);
    const { survey, report } = await runSurvey(file, given, world);
    world.say(format === 'json' ? '' : reportText(report));
    if (format === 'csv') world.say(survey.yardstick.cautions.map(caution => `Note: ${caution}\n`).join(''));
    await world.write(printed({ survey, columns }, report, format, world.width));
  },
};

export async function runSurvey(file: string, given: Arguments, world: World): Promise<{ survey: Survey; report: readonly Issue[] }> {
  const setting = given.options.setting === undefined ? undefined : readSetting(needed(given, 'setting'));
  const plate = await readBuiltInOrFile(plates, needed(given, 'plate'), world);
  const yardstick = await readBuiltInOrFile(yardsticks, needed(given, 'yardstick'), world);
  const { value: labels, issues: report } = importLabels(world.readTable(await world.readBytes(file)));
  const foods = inCategory(foodsOf(labels), given.options.category);
  const ways = { shelf: { foods, plates: [plate] }, keep: tellable };
  const survey = judgeShelf({ foods, plate, yardstick, ways, ...(setting === undefined ? {} : { setting }) }, progress(world, 'foods'));
  return { survey, report };
}

/** @throws Fault unknown-option when the table has no food of this category. */
function inCategory(foods: readonly PlateFood[], category: string | boolean | undefined): readonly PlateFood[] {
  if (typeof category !== 'string') return foods;
  const categoryOf = ({ label }: PlateFood) => label.printed.category?.toLowerCase();
  const found = foods.filter(food => categoryOf(food) === category.trim().toLowerCase());
  if (found.length > 0) return found;
  const known = [...new Set(foods.map(categoryOf).filter(one => one !== undefined))];
  throw new Fault('unknown-option', `No food is in the category "${category}". Found: ${known.join(', ') || 'no categories'}.`);
}

interface Asked {
  readonly survey: Survey;
  readonly columns: readonly SurveyColumnKey[];
}

function printed({ survey, columns }: Asked, report: readonly Issue[], format: 'table' | 'csv' | 'json', width: number): string {
  if (format === 'csv') return surveyCsv(survey, columns);
  if (format === 'json') return `${JSON.stringify(surveyJson(survey, report, columns), null, 2)}\n`;
  return surveyTable(survey, width, columns);
}
