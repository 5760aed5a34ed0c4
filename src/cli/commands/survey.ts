import { foodsOf, importLabels } from '#app/importLabels.ts';
import { type JudgedShelf, judgeShelf, type TellableWays, tellable } from '#app/judgeShelf.ts';
import type { TableBlocks } from '#app/ports.ts';
import { isOfCategory, noSuchCategory, streamSurvey } from '#app/survey/streamSurvey.ts';
import { surveyCsv, surveyCsvHead, surveyCsvRows } from '#app/survey/surveyCsv.ts';
import { Fault, type Issue } from '#core/errors.ts';
import type { PlateFood } from '#core/plate/plate.ts';
import type { JudgeInput } from '#core/yardstick/judgePlate.ts';
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
    const question = await readQuestion(given, world);
    const category = given.options.category === undefined ? undefined : needed(given, 'category');
    const blocks = format === 'csv' ? await world.streamTable(file) : undefined;
    if (blocks !== undefined) return printAsItComes(blocks, question, category, columns, world);
    const { survey, report } = await holdSurvey(file, question, category, world);
    world.say(format === 'json' ? '' : reportText(report));
    if (format === 'csv') world.say(cautionsText(question));
    await world.write(printed({ survey, columns }, report, format, world.width));
  },
};

async function readQuestion(given: Arguments, world: World): Promise<JudgeInput> {
  const setting = given.options.setting === undefined ? undefined : readSetting(needed(given, 'setting'));
  const plate = await readBuiltInOrFile(plates, needed(given, 'plate'), world);
  const yardstick = await readBuiltInOrFile(yardsticks, needed(given, 'yardstick'), world);
  return { plate, yardstick, ...(setting === undefined ? {} : { setting }) };
}

/** A table by verdict and counts before the foods need all of them: the whole survey is held. */
async function holdSurvey(file: string, question: JudgeInput, category: string | undefined, world: World) {
  const { value: labels, issues: report } = importLabels(await world.readTable(file));
  const foods = inCategory(foodsOf(labels), category);
  const ways = { shelf: { foods, plates: [question.plate] }, keep: tellable };
  return { survey: judgeShelf({ ...question, foods, ways }, progress(world, 'foods')), report };
}

/** Rows in the order of the table are written as they come: the length of the table does not matter. */
async function printAsItComes(
  blocks: () => TableBlocks,
  question: JudgeInput,
  category: string | undefined,
  columns: readonly SurveyColumnKey[],
  world: World,
): Promise<void> {
  const tell = progress(world, 'foods');
  let done = 0;
  let hasBegun = false;
  for await (const { survey, report } of streamSurvey(question, blocks, category)) {
    if (!hasBegun) {
      world.say(cautionsText(question));
      await world.write(surveyCsvHead(columns));
      hasBegun = true;
    }
    world.say(reportText(report));
    await world.write(surveyCsvRows(survey, columns));
    done += survey.foods.length;
    tell(done);
  }
}

function cautionsText({ yardstick }: JudgeInput): string {
  return yardstick.cautions.map(caution => `Note: ${caution}\n`).join('');
}

/** @throws Fault unknown-option when the table has no food of this category. */
function inCategory(foods: readonly PlateFood[], category: string | undefined): readonly PlateFood[] {
  const found = foods.filter(isOfCategory(category));
  if (category === undefined || found.length > 0) return found;
  throw noSuchCategory(category, new Set(foods.flatMap(({ label }) => label.printed.category?.toLowerCase() ?? [])));
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
