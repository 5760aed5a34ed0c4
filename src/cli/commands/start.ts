import type { Command } from '../command.ts';
import { atMostPositionals } from '../readOptions.ts';
import { surveyTable } from '../surveyTable.ts';
import { runSurvey } from './survey.ts';

const table = 'data/demo/labels.csv';
const plate = 'data/demo/plates/slices-on-low-sodium-bread.json';

export const command: Command = {
  name: 'start',
  usage: 'start',
  summary: 'Surveys the demo: foods, makers and shops that were invented.',
  options: {},
  async run(given, world) {
    atMostPositionals(given, 0);
    const options = { plate: world.shipped(plate), yardstick: 'low-in-sodium-as-eaten', category: 'sandwich slices' };
    const { survey } = await runSurvey(world.shipped(table), { options, positionals: [] }, world);
    await world.write(`This is a demo: its foods, makers and shops are invented.\n\n${surveyTable(survey, world.width)}`);
  },
};
