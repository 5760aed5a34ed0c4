import type { PrintedLabel } from '#core/label/label.ts';
import type { Plate, PlateFood } from '#core/plate/plate.ts';
import { foodWith } from '#core/plate/plateFixture.ts';
import { clientYardstick } from '#core/yardstick/clientYardstick.ts';
import { judgePlate } from '#core/yardstick/judgePlate.ts';
import { prepareWaysIn } from '#core/yardstick/waysIn.ts';
import type { Yardstick } from '#core/yardstick/yardstick.ts';
import type { HandoutDraft, HandoutInput, HandoutSurvey, SignedTarget } from './handout.ts';
import { handoutFromJson } from './handoutFromJson.ts';

/** Two slices of bread of 160 kcal and 20 mg sodium. */
export const plate: Plate = {
  id: 'slices-on-bread',
  title: 'two slices of bread',
  portion: { servings: 1 },
  companions: [
    {
      food: foodWith('Bread', { statement: 'Wheat flour, water.', panel: { energyKcal: 160, sodiumMg: 20 } }),
      portion: { servings: 1 },
    },
  ],
};

/** Invented slices: 4 slices are a serving. */
export function slices(name: string, sodiumMg: number | undefined, printed: Partial<PrintedLabel> = {}): PlateFood {
  return foodWith(name, {
    readOn: '2026-11-01',
    statement: 'Turkey, water.',
    serving: { household: '4 slices', grams: 56 },
    panel: { energyKcal: 80, ...(sodiumMg === undefined ? {} : { sodiumMg }) },
    ...printed,
  });
}

export const sodiumTarget: SignedTarget = { item: 'sodium', unit: 'mg', range: { lo: 0, hi: 2000 }, limit: 'below' };
export const noPhosphate: SignedTarget = {
  item: 'phosphateAdditives',
  unit: 'named on the label',
  range: { lo: 0, hi: 0 },
  limit: 'at-most',
};

export const draftJson = {
  id: 'slices',
  setting: 'hemodialysis',
  writtenOn: '2026-11-15',
  author: { name: 'A. Writer', credentials: 'RDN' },
  categories: [{ category: 'slices', plateId: 'slices-on-bread', meal: 'lunch' }],
  prescription: { targets: [sodiumTarget], signed: { by: 'A. Writer', credentials: 'RDN', on: '2026-11-14' } },
};

export function draftWith(more: Readonly<Record<string, unknown>> = {}): HandoutDraft {
  const { value, issues } = handoutFromJson({ ...draftJson, ...more });
  if (value === undefined) throw new Error(JSON.stringify(issues));
  return value;
}

/** A draft on a topic in the place of one client's. */
export function topicWith(yardstickId: string, more: Readonly<Record<string, unknown>> = {}): HandoutDraft {
  const { prescription: _, ...rest } = draftJson;
  const { value } = handoutFromJson({ ...rest, topic: { yardstickId, ...more } });
  return value!;
}

/** The foods judged at lunch, 30 % of the day, and over the day; or by a topic's yardstick. */
export function handoutInput(foods: readonly PlateFood[], draft = draftWith(), topic?: Yardstick, on = plate): HandoutInput {
  const surveys = draft.categories.map((category): HandoutSurvey => {
    const bounds = { targets: draft.prescription?.targets ?? [], avoidedFoods: draft.avoidedFoods, useEstimates: false };
    const yardstick = topic ?? clientYardstick({ ...bounds, percent: 30, meal: 'lunch' });
    const switchedOn = draft.topic?.switchedOn ?? [];
    const waysIn = prepareWaysIn({ plate: on, yardstick, switchedOn, shelf: { foods, plates: [on] } });
    const judged = foods.map(food => {
      const verdict = judgePlate({ food, plate: on, yardstick, switchedOn });
      return { food, verdict, ways: waysIn(food, verdict).ways };
    });
    const day = topic === undefined ? { dayYardstick: clientYardstick({ ...bounds, percent: 100, meal: 'the day' }) } : {};
    return { category, plate: on, yardstick, switchedOn, ...day, foods: judged };
  });
  return { draft, surveys };
}
