import { describe, expect, it } from 'vitest';
import { today } from '#core/client/assessment/clientFixture.ts';
import { hemodialysisClient, recordOf } from '#core/client/record/recordFixture.ts';
import { Fault } from '#core/errors.ts';
import { buildHandout } from '#core/handout/buildHandout.ts';
import type { ClientHandoutDraft, HandoutDraft } from '#core/handout/handout.ts';
import { plate, slices } from '#core/handout/handoutFixture.ts';
import { whatFits } from '../clients/whatFits.ts';
import type { ShelfFood } from '../shelf.ts';
import { handoutForClient } from './handoutForClient.ts';

const draft: ClientHandoutDraft = {
  id: 'a-client',
  language: 'en',
  writtenOn: '2026-06-20',
  author: { name: 'Ada Example', credentials: 'RDN' },
  notes: [],
  parts: ['fridge', 'numbers', 'foods', 'labels', 'swaps', 'shopping'],
  categories: [{ category: 'Slices', plateId: plate.id, meal: 'lunch', foodAisles: {}, leftOut: [] }],
  aisleOrder: [],
};
function shelved(name: string, mg: number | undefined, statement = 'Turkey, water.', category = 'slices'): ShelfFood {
  const food = slices(name, mg, { statement });
  const row = { id: food.id, name, category, version: 1, isDemo: false } satisfies ShelfFood['row'];
  const label = {
    kind: 'read' as const,
    id: `${food.id}-label`,
    foodId: food.id,
    printed: food.label.printed,
    addedAt: '2026-06-01T00:00:00Z',
    photoIds: [],
  };
  return { row, label, food };
}

const foods = [
  shelved('Mild', 100),
  shelved('Salty', 1200),
  shelved('Silent', undefined),
  shelved('Named', 100, 'Turkey, sodium phosphates.'),
  shelved('With pork', 100, 'Turkey, pork.'),
  shelved('Elsewhere', 100, 'Turkey.', 'soups'),
];
const plates = new Map([[plate.id, plate]]);

describe('handoutForClient', () => {
  it('[HND-18] takes setting, signed targets, avoided foods and allergies from the record, and not the client’s name', () => {
    const record = recordOf(hemodialysisClient);
    const input = handoutForClient({ record, draft, foods, plates, useEstimates: false, rules: [] });
    const whole: HandoutDraft = input.draft;
    expect(whole.setting).toBe('hemodialysis');
    expect(whole.avoidedFoods).toEqual(['pork', 'sesame']);
    expect(whole.prescription?.signed).toEqual({ by: 'Ada Example', credentials: 'RDN', on: '2026-06-15' });
    expect(whole.prescription?.targets).toHaveLength(record.prescriptions[0]!.targets.length);
    expect(JSON.stringify(buildHandout(input).value)).not.toContain(record.name);
    expect(input.surveys[0]!.foods.map(({ food }) => food.name)).not.toContain('Elsewhere');
  });

  it('[HND-18] an allergy that a newer assessment tells is avoided too, though nothing was signed for it yet', () => {
    const record = recordOf(hemodialysisClient);
    const [first] = record.assessments;
    const newer = { id: 'newer', assessment: { ...first!.assessment, allergies: ['turkey'], avoidedFoods: [] } };
    const both = { ...record, assessments: [newer, ...record.assessments] };
    const [survey] = handoutForClient({ record: both, draft, foods, plates, useEstimates: false, rules: [] }).surveys;
    expect(survey!.foods.filter(({ verdict }) => verdict.verdict === 'fits')).toEqual([]);
    const screen = whatFits({ record: both, served: [{ plate, foods: foods.slice(0, 5) }], meal: 'lunch', useEstimates: false, today });
    expect(screen.rows.filter(({ verdict }) => verdict === 'fits')).toEqual([]);
  });

  it('[HND-18] judges as the client screen does: the same verdicts at the same meal', () => {
    const record = recordOf(hemodialysisClient);
    const [survey] = handoutForClient({ record, draft, foods, plates, useEstimates: false, rules: [] }).surveys;
    const screen = whatFits({ record, served: [{ plate, foods: foods.slice(0, 5) }], meal: 'lunch', useEstimates: false, today });
    expect(screen.rows.length).toBe(5);
    expect(survey!.foods.map(({ food, verdict }) => [food.id, verdict.verdict])).toEqual(
      screen.rows.map(({ foodId, verdict }) => [foodId, verdict]),
    );
  });

  it('[HND-18] without a signed prescription it is refused, with what to do', () => {
    const record = { ...recordOf(hemodialysisClient), prescriptions: [] };
    const make = () => handoutForClient({ record, draft, foods, plates, useEstimates: false, rules: [] });
    expect(make).toThrow(Fault);
    expect(make).toThrow(/signed prescription/);
  });

  it('[HND-18] a plate that is not there, or a meal that is none, is refused', () => {
    const record = recordOf(hemodialysisClient);
    const make = (more: object) => () =>
      handoutForClient({
        record,
        draft: { ...draft, categories: [{ ...draft.categories[0]!, ...more }] },
        foods,
        plates,
        useEstimates: false,
        rules: [],
      });
    expect(make({ plateId: 'none' })).toThrow(/no plate "none"/);
    expect(make({ meal: 'tea' })).toThrow(/"tea" is no meal/);
  });
});
