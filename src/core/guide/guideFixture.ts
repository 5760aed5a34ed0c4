import type { PrintedLabel } from '#core/label/label.ts';
import type { Plate, PlateFood } from '#core/plate/plate.ts';
import { foodWith } from '#core/plate/plateFixture.ts';
import { builtInYardsticks } from '#core/yardstick/builtInYardsticks.ts';
import { judgePlate } from '#core/yardstick/judgePlate.ts';
import { prepareWaysIn } from '#core/yardstick/waysIn.ts';
import type { GuideDraft, GuideInput } from './guide.ts';
import { guideFromJson } from './guideFromJson.ts';

const yardstick = builtInYardsticks.find(({ id }) => id === 'low-in-sodium-as-eaten')!;

/** Two slices of bread of 160 kcal and 20 mg sodium, so that a portion may hold as many mg as it has kcal, and 140 mg more. */
const plate: Plate = {
  id: 'slices-on-bread',
  title: 'two slices of bread',
  portion: { servings: 1 },
  companions: [{ food: foodWith('Bread', { panel: { energyKcal: 160, sodiumMg: 20 } }), portion: { servings: 1 } }],
};

export const draftJson = {
  id: 'slices',
  title: 'Slices',
  purpose: 'Slices that keep a sandwich low in sodium.',
  whoItIsFor: 'Adults who were told to watch sodium.',
  publishedOn: '2026-11-15',
  survey: { category: 'slices', plateId: 'slices-on-bread', yardstickId: 'low-in-sodium-as-eaten' },
  author: { name: 'A. Writer', credentials: 'RDN' },
};

/** A draft as its author writes it, with what a test adds to it. */
export function draftWith(more: Readonly<Record<string, unknown>> = {}): GuideDraft {
  return guideFromJson({ ...draftJson, ...more }).value!;
}

/** Invented slices, read on 1 November 2026 unless a test says otherwise. */
export function slices(name: string, energyKcal: number, sodiumMg: number, printed: Partial<PrintedLabel> = {}): PlateFood {
  const { panel, ...more } = printed;
  return foodWith(name, {
    readOn: '2026-11-01',
    statement: 'Turkey, water.',
    serving: { household: '4 slices', grams: 56 },
    panel: { energyKcal, sodiumMg, ...panel },
    ...more,
  });
}

/** What a guide is built from: the foods judged on the bread, on the day of publication unless a test says otherwise. */
export function guideInput(foods: readonly PlateFood[], draft = draftWith(), more: Partial<GuideInput> = {}): GuideInput {
  const { switchedOn } = draft.survey;
  const waysIn = prepareWaysIn({ plate, yardstick, switchedOn, shelf: { foods, plates: [plate] } });
  const surveyed = foods.map(food => {
    const verdict = judgePlate({ food, plate, yardstick, switchedOn });
    return { food, verdict, ...(verdict.verdict === 'nearly' ? { waysIn: waysIn(food, verdict) } : {}) };
  });
  return { draft, survey: { plate, yardstick, foods: surveyed }, today: '2026-11-15', ...more };
}
