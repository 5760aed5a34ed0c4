import { createRoute, z } from '@hono/zod-openapi';
import { allPlates, findPlate } from '#app/findPlate.ts';
import { findYardstick } from '#app/findYardstick.ts';
import { foodsToJudge, wantsEstimates } from '#app/foodsToJudge.ts';
import { judgeShelf, tellable } from '#app/judgeShelf.ts';
import { portionsOfFood } from '#app/survey/portionsOfFood.ts';
import { surveyCsv } from '#app/survey/surveyCsv.ts';
import { surveyForScreen } from '#app/survey/surveyForScreen.ts';
import { surveyReasons } from '#app/survey/surveyReasons.ts';
import { Fault } from '#core/errors.ts';
import { newApi } from '../newApi.ts';
import { foodPortionsBody, foodPortionsRequest, surveyBody, surveyFoodBody, surveyFoodsRequest, surveyRequest } from '../surveyBodies.ts';
import type { World } from '../world.ts';
import { answers, fileAnswer, fileBody, jsonBody } from './answers.ts';

/** The controls of the survey sentence, as the core takes them. */
async function question(given: Omit<z.output<typeof surveyRequest>, 'category' | 'columns'>, { store }: World) {
  const plate = await findPlate(given.plate, store);
  return {
    plate: given.portion === undefined ? plate : { ...plate, portion: given.portion },
    yardstick: await findYardstick(given.yardstick, store),
    switchedOn: given.switchedOn,
    ...(given.setting === undefined ? {} : { setting: given.setting }),
  };
}

export function surveyRoutes(world: World) {
  const { shelf, store } = world;
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
        const asked = await question(given, world);
        const wanted = wantsEstimates(asked.yardstick, asked.switchedOn, given.columns);
        const { foods, estimating } = await foodsToJudge(world, given.category, wanted);
        const judged = judgeShelf({ ...asked, foods: foods.map(({ food }) => food) });
        return context.json({ ...surveyForScreen(judged, foods, given.columns), estimating }, 200);
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
        const foods = (await shelf.foods(given.category)).map(({ food }) => food);
        const wanted = new Set(given.foodIds);
        const asked = foods.filter(({ id }) => wanted.has(id));
        return context.json(surveyReasons(await question(given, world), asked, { foods, plates: await allPlates(store) }), 200);
      },
    )
    .openapi(
      createRoute({
        method: 'post',
        path: '/survey/csv',
        request: { body: jsonBody(surveyRequest) },
        responses: fileAnswer('text/csv', 'The survey as a table, as the command line writes it'),
      }),
      async context => {
        const given = context.req.valid('json');
        const foods = (await shelf.foods(given.category)).map(({ food }) => food);
        const ways = { shelf: { foods, plates: await allPlates(store) }, keep: tellable };
        const judged = judgeShelf({ ...(await question(given, world)), foods, ways });
        return fileBody(surveyCsv(judged, given.columns), 'text/csv; charset=utf-8');
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
        const foods = (await shelf.foods()).map(({ food }) => food);
        const food = foods.find(({ id }) => id === given.foodId);
        if (food === undefined) throw new Fault('food-not-found', 'The food has no label that stands.');
        const borrowed = { foods, plates: await allPlates(store) };
        return context.json(portionsOfFood({ ...(await question(given, world)), food, shelf: borrowed }), 200);
      },
    );
}
