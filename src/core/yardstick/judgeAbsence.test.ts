import { describe, expect, it } from 'vitest';
import { builtInPlates } from '#core/plate/builtInPlates.ts';
import type { Plate } from '#core/plate/plate.ts';
import { foodWith } from '#core/plate/plateFixture.ts';
import { judgePlate } from './judgePlate.ts';
import type { Measure, Test, TestVerdict } from './yardstick.ts';

const alone = builtInPlates.find(({ id }) => id === 'on-its-own')!;

function judge(measure: Measure, statement: string | undefined, basis: Test['basis'] = 'as-eaten', plate: Plate = alone): TestVerdict {
  const test: Test = { id: 't', measure, basis, absent: true, source: { kind: 'own-table', text: 'own table' } };
  const food = foodWith('Slices', statement === undefined ? {} : { statement });
  return judgePlate({
    food,
    plate,
    yardstick: { id: 'y', title: 'y', purpose: '', tests: [test], classScales: [], settings: 'any', cautions: [] },
  }).tests[0]!;
}

const phosphate: Measure = { kind: 'additive', class: 'phosphate' };
const potassium: Measure = { kind: 'additive', class: 'potassium' };
const kin = (name: string): Measure => ({ kind: 'ingredient', kin: name });

describe('additives that must not be named', () => {
  it('[YST-14] none found reads "none named on the label"', () => {
    expect(judge(phosphate, 'TURKEY, WATER, SALT.')).toMatchObject({
      verdict: 'fits',
      why: 'Phosphate additives: none named on the label (own table).',
    });
  });

  it('[YST-13] named is over, and the sentence names it', () => {
    const outcome = judge(phosphate, 'TURKEY, WATER, SALT, SODIUM PHOSPHATES.');
    expect(outcome.verdict).toBe('over');
    expect(outcome.why.toLowerCase()).toContain('sodium phosphate');
  });

  it('[YST-13] a misspelled one counts as named', () => {
    expect(judge(phosphate, 'TURKEY, WATER, SODIUM PHOSPATE.').verdict).toBe('over');
  });

  it.each([
    ['may contain', 'TURKEY, WATER, SALT. MAY CONTAIN SODIUM PHOSPHATES.'],
    ['and/or', 'FLOUR, LEAVENING (BAKING SODA AND/OR SODIUM ACID PYROPHOSPHATE).'],
    ['a bare baking powder', 'FLOUR, SUGAR, BAKING POWDER.'],
  ])("[YST-13] %s is can't tell", (_, statement) => {
    expect(judge(phosphate, statement).verdict).toBe("can't tell");
  });

  it('[YST-13] look-alikes and traces do not count', () => {
    expect(judge(phosphate, 'CHOCOLATE, SOY LECITHIN, RICE (RICE, IRON PHOSPHATE).').verdict).toBe('fits');
    expect(judge(potassium, 'CHEESE, POTASSIUM SORBATE.').verdict).toBe('fits');
    expect(judge(potassium, 'HAM, POTASSIUM CHLORIDE.').verdict).toBe('over');
  });

  // Sorbate is a preservative in traces: it does not count, however it is named (ADD-3).
  it.each(['CHEESE. MAY CONTAIN POTASSIUM SORBATE.', 'CHEESE, POTASSIUM SORBATE AND/OR SODIUM BENZOATE.', 'CHEESE, POTASSUM SORBATE.'])(
    '[YST-13] what does not count is not told: %s',
    statement => {
      expect(judge(potassium, statement).verdict).toBe('fits');
    },
  );

  it.each([
    ['TURKEY, E450.', 'over', 'diphosphates (“E450”) named on the label'],
    ['TURKEY, SODIUM PHOSPATE.', 'over', 'sodium phosphates (misspelled “SODIUM PHOSPATE”) named on the label'],
    ['TURKEY, DISODIUM PHOSPHATE, SODIUM PHOSPHATES.', 'over', 'disodium phosphate, sodium phosphates named on the label'],
    ['TURKEY. MAY CONTAIN SODIUM PHOSPHATES.', "can't tell", 'the label says it may contain “SODIUM PHOSPHATES”'],
    [
      'CHEESE, DISODIUM PHOSPHATE AND/OR SODIUM CITRATE.',
      "can't tell",
      '“DISODIUM PHOSPHATE” is one of several that the label leaves open',
    ],
    [
      'FLOUR, BAKING POWDER. MAY CONTAIN SODIUM PHOSPHATES.',
      "can't tell",
      'Baking powder: may hold a phosphate; the label does not say; the label says it may contain “SODIUM PHOSPHATES”',
    ],
    // What is named decides, whatever is open beside it.
    ['FLOUR, BAKING POWDER, DISODIUM PHOSPHATE.', 'over', 'disodium phosphate named on the label'],
  ] as const)('[YST-13] %s: %s, in words', (statement, verdict, words) => {
    const lead = verdict === 'over' ? 'Phosphate additives' : "Can't tell about phosphate additives";
    const outcome = judge(phosphate, statement);
    expect(outcome).toMatchObject({ verdict, closeCall: false, estimated: false, why: `${lead}: ${words} (own table).` });
    expect(outcome.found).toEqual({ food: 'Slices', how: verdict === 'over' ? 'named' : 'possible', words });
    expect(outcome.reason).toBe(verdict === 'over' ? undefined : `phosphate additives: ${words}`);
  });

  it('[YST-9] the food is named where there are several', () => {
    const bread = foodWith('Bread', { statement: 'FLOUR, MONOCALCIUM PHOSPHATE.' });
    const plate: Plate = { ...alone, companions: [{ food: bread, portion: { servings: 1 } }] };
    expect(judge(phosphate, 'TURKEY, BAKING POWDER.', 'on-plate', plate)).toMatchObject({
      why: 'Phosphate additives: Bread: monocalcium phosphate named on the label (own table).',
      found: { food: 'Bread' },
    });
    expect(judge(phosphate, 'TURKEY.')).not.toHaveProperty('found');
  });

  it("[YST-14] no statement, an empty one or one that breaks off is can't tell", () => {
    expect(judge(phosphate, undefined).verdict).toBe("can't tell");
    expect(judge(phosphate, '  ').verdict).toBe("can't tell");
    expect(judge(phosphate, 'TURKEY, WATER, SALT,').verdict).toBe("can't tell");
    expect(judge(phosphate, 'TURKEY, SODIUM PHOSPHATES,').verdict).toBe('over');
  });

  it('[YST-14] on the plate the companions have to have statements too', () => {
    const plate = (statement?: string): Plate => ({
      ...alone,
      companions: [{ food: foodWith('Bread', statement === undefined ? {} : { statement }), portion: { servings: 1 } }],
    });
    expect(judge(phosphate, 'TURKEY.', 'on-plate', plate()).verdict).toBe("can't tell");
    expect(judge(phosphate, 'TURKEY.', 'on-plate', plate('FLOUR, WATER.')).verdict).toBe('fits');
    const named = judge(phosphate, 'TURKEY.', 'on-plate', plate('FLOUR, MONOCALCIUM PHOSPHATE.'));
    expect(named.verdict).toBe('over');
    expect(named.why).toContain('Bread: ');
    expect(judge(phosphate, 'TURKEY.', 'as-eaten', plate('FLOUR, MONOCALCIUM PHOSPHATE.')).verdict).toBe('fits');
  });
});

describe('ingredients that must not be named', () => {
  it.each([
    ['garlic', 'TOMATOES, GARLIC POWDER, SALT.', 'over'],
    ['garlic', 'TOMATOES, ORGANIC ROASTED GARLIC.', 'over'],
    ['garlic', 'TOMATOES, SALT.', 'fits'],
    ['garlic', 'TOMATOES, SPICES.', "can't tell"],
    ['garlic', 'TOMATOES, NATURAL FLAVORS.', "can't tell"],
    ['garlic', 'TOMATOES, SPICES (PAPRIKA, PEPPER).', 'fits'],
    ['onion', 'TOMATOES, SHALLOTS.', 'over'],
    ['wheat', 'BUCKWHEAT FLOUR, RICE FLOUR.', 'fits'],
    ['wheat', 'DURUM SEMOLINA.', 'over'],
    ['wheat', 'RICE. CONTAINS: WHEAT.', 'over'],
    ['wheat', 'RICE. MAY CONTAIN WHEAT.', "can't tell"],
    ['wheat', 'RICE. MANUFACTURED IN A FACILITY THAT PROCESSES WHEAT.', "can't tell"],
    ['wheat', 'CORN, FLOUR.', "can't tell"],
    ['grapefruit', 'WATER, GRAPEFRUIT JUICE CONCENTRATE.', 'over'],
    ['grapefruit', 'WATER, GRAPE JUICE.', 'fits'],
    ['milk', 'COCONUT MILK, COCOA BUTTER, CREAM OF TARTAR.', 'fits'],
    ['milk', 'SUGAR, NONFAT MILK.', 'over'],
    ['celery', 'CARROTS, CELERY SALT.', 'over'],
    ['celery', 'CARROTS, CELERIAC.', 'fits'],
  ] as const)('[YST-15] %s in "%s": %s', (name, statement, verdict) => {
    expect(judge(kin(name), statement).verdict).toBe(verdict);
  });

  it('[YST-15] "and/or" leaves it open', () => {
    expect(judge(kin('soy'), 'CORN, VEGETABLE OIL (SOYBEAN AND/OR CANOLA).').verdict).toBe("can't tell");
  });

  it('[YST-15] a negated word is not the ingredient', () => {
    expect(judge(kin('garlic'), 'TOMATOES, SALT. NO GARLIC ADDED.').verdict).toBe('fits');
    expect(judge(kin('wheat'), 'RICE, WHEAT-FREE SOY SAUCE.').verdict).toBe('fits');
  });

  it.each([
    ['garlic', 'TOMATOES, GARLIC POWDER.', 'over', 'named', '“GARLIC POWDER” named on the label'],
    ['garlic', 'TOMATOES, SPICES.', "can't tell", 'possible', '“SPICES” on the label may hold or hide it'],
    ['garlic', 'TOMATOES, SALT,', "can't tell", 'unread', 'the statement breaks off before its end'],
    ['garlic', undefined, "can't tell", 'unread', 'no ingredient statement has been read'],
    ['garlic', ' ', "can't tell", 'unread', 'no ingredient statement has been read'],
    ['sulfa', 'TOMATOES.', "can't tell", 'word-not-known', 'the program does not know what else this word stands for: read the statement'],
  ] as const)('[YST-14] %s in %s: %s, %s', (name, statement, verdict, how, words) => {
    const title = verdict === 'over' ? 'Garlic' : `Can't tell about ${name}`;
    expect(judge(kin(name), statement)).toMatchObject({ verdict, why: `${title}: ${words} (own table).`, found: { how, words } });
  });

  it('[YST-14] what is named before a statement breaks off is over all the same; silence in a whole one fits', () => {
    expect(judge(kin('garlic'), 'TOMATOES, GARLIC,').verdict).toBe('over');
    expect(judge(kin('garlic'), 'TOMATOES, SALT.').why).toBe('Garlic: none named on the label (own table).');
  });
});
