import { createRoute, z } from '@hono/zod-openapi';
import { portionsOfFood } from '#app/portionsOfFood.ts';
import type { LabelRow } from '#app/store.ts';
import { surveyCategory } from '#app/surveyCategory.ts';
import { surveyCsv } from '#app/surveyCsv.ts';
import { surveyFoods, surveyForScreen } from '#app/surveyForScreen.ts';
import { Fault } from '#core/errors.ts';
import type { Nutrient } from '#core/quantity/nutrients.ts';
import { testsJudged } from '#core/yardstick/judgePlate.ts';
import { sourceText } from '#core/yardstick/sourceText.ts';
import { testText } from '#core/yardstick/testText.ts';
import { foodPortionsBody, foodPortionsRequest, surveyBody, surveyFoodBody, surveyFoodsRequest, surveyRequest } from '../bodies.ts';
import { newApi } from '../newApi.ts';
import { allPlates, plateOf, type World, yardstickOf } from '../workbench.ts';
import { answers, jsonBody } from './answers.ts';

/** The controls of the survey sentence, as the core takes them. */
async function controls(given: Omit<z.output<typeof surveyRequest>, 'category' | 'columns'>, { store }: World) {
  const plate = await plateOf(given.plate, store);
  return {
    plate: given.portion === undefined ? plate : { ...plate, portion: given.portion },
    yardstick: await yardstickOf(given.yardstick, store),
    switchedOn: given.switchedOn,
    ...(given.setting === undefined ? {} : { setting: given.setting }),
  };
}

/** Whether a survey shows or judges minerals that labels seldom print. */
function usesMinerals(columns: readonly Nutrient[], { yardstick, switchedOn }: Awaited<ReturnType<typeof controls>>): boolean {
  const isMineral = (nutrient: Nutrient): boolean => nutrient === 'phosphorusMg' || nutrient === 'potassiumMg';
  return columns.some(isMineral) || testsJudged(yardstick, switchedOn).some(({ useEstimates }) => useEstimates);
}

async function standing({ shelf }: World, category: string): Promise<readonly LabelRow[]> {
  return (await shelf.foods(category)).map(({ label }) => label);
}

export function surveyRoutes(world: World) {
  return newApi(world.log)
    .openapi(
      createRoute({
        method: 'post',
        path: '/survey',
        request: { body: jsonBody(surveyRequest) },
        responses: answers(surveyBody, 'Counts, the rule for the plane, one short row a food'),
      }),
      async context => {
        const given = context.req.valid('json');
        const asked = await controls(given, world);
        const estimating = usesMinerals(given.columns, asked) ? await world.minerals.want(await standing(world, given.category)) : null;
        const input = { ...asked, foods: await world.shelf.foods(given.category) };
        const { plate, yardstick, switchedOn } = input;
        const survey = surveyForScreen({ ...input, columns: given.columns });
        return context.json(
          {
            ...survey,
            rows: survey.rows.map(row => ({ ...row, columns: [...row.columns] })),
            estimating,
            plateTitle: plate.title,
            yardstickTitle: yardstick.title,
            tests: yardstick.tests.map(test => ({
              id: test.id,
              text: testText(test),
              source: sourceText(test.source),
              isOn: !test.off || switchedOn.includes(test.id),
            })),
            cautions: [...yardstick.cautions],
          },
          200,
        );
      },
    )
    .openapi(
      createRoute({
        method: 'post',
        path: '/survey/foods',
        request: { body: jsonBody(surveyFoodsRequest) },
        responses: answers(z.array(surveyFoodBody), 'Reasons, classes, additives and ways in of some foods'),
      }),
      async context => {
        const given = context.req.valid('json');
        const input = { ...(await controls(given, world)), foods: await world.shelf.foods(given.category) };
        return context.json(surveyFoods(input, new Set(given.foodIds), await allPlates(world.store)), 200);
      },
    )
    .openapi(
      createRoute({
        method: 'post',
        path: '/survey/csv',
        request: { body: jsonBody(surveyRequest) },
        responses: {
          200: { description: 'The survey as a table, as the command line writes it', content: { 'text/csv': { schema: z.string() } } },
          default: answers(surveyBody, '').default,
        },
      }),
      async context => {
        const given = context.req.valid('json');
        const input = await controls(given, world);
        const foods = (await world.shelf.foods(given.category)).map(({ food }) => food);
        const survey = surveyCategory({ ...input, foods, shelf: { foods, plates: await allPlates(world.store) } });
        return context.body(surveyCsv(survey), 200, { 'content-type': 'text/csv; charset=utf-8' }) as never;
      },
    )
    .openapi(
      createRoute({
        method: 'post',
        path: '/food-portions',
        request: { body: jsonBody(foodPortionsRequest) },
        responses: answers(foodPortionsBody, 'Verdicts over the portion, and the tipping point'),
      }),
      async context => {
        const given = context.req.valid('json');
        const all = await world.shelf.foods();
        const found = all.find(({ row }) => row.id === given.foodId);
        if (found === undefined) throw new Fault('food-not-found', 'The food has no label that stands.');
        const shelf = { foods: all.map(({ food }) => food), plates: await allPlates(world.store) };
        return context.json(portionsOfFood({ ...(await controls(given, world)), food: found.food, shelf }), 200);
      },
    );
}
