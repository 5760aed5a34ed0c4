import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { readTable } from '#adapters/files/readTable.ts';
import { whatFits } from '#app/clients/whatFits.ts';
import { handoutForClient } from '#app/handouts/handoutForClient.ts';
import { importLabels } from '#app/importLabels.ts';
import type { ShelfFood } from '#app/shelf.ts';
import { clientWith, lab, today, weighing } from '#core/client/assessment/clientFixture.ts';
import { recordOf } from '#core/client/record/recordFixture.ts';
import { buildHandout } from '#core/handout/buildHandout.ts';
import type { ClientHandoutDraft, Language } from '#core/handout/handout.ts';
import type { FoodRow, HandoutPage } from '#core/handout/handoutPage.ts';
import { lineText } from '#core/handout/line.ts';
import type { Plate } from '#core/plate/plate.ts';
import { foodWith } from '#core/plate/plateFixture.ts';

const labels = importLabels(readTable(readFileSync(fileURLToPath(new URL('../data/demo/labels.csv', import.meta.url))))).value;

/** Foods that the demo lacks: peanuts named, only allowed, or spoken of without being in it. */
const invented = [
  ['Peanut noodles', 'WHEAT NOODLES, PEANUTS, SALT.', 'sandwich slices'],
  ['Rice noodles', 'RICE, SALT. MAY CONTAIN PEANUTS.', 'sandwich slices'],
  ['Satay slices', 'CHICKPEAS, GROUNDNUT PASTE.', 'sandwich slices'],
  ['Mixed slices', 'CHICKPEAS, SALT. CONTAINS: PEANUTS, MILK, SOY.', 'sandwich slices'],
  ['Peanut-free bites', 'RICE, SALT. MADE IN A PEANUT-FREE FACILITY.', 'sandwich slices'],
  ['Plain bites', 'RICE, SALT.', 'sandwich slices'],
  ['Coconut spread', 'COCONUT MILK, COCOA BUTTER.', 'sandwich slices'],
] as const;

const foods: readonly ShelfFood[] = [
  ...labels.map(({ row, label }) => ({ label, name: label.printed.name ?? `row ${row}`, id: label.printed.id ?? `row-${row}` })),
  ...invented.map(([name, statement, category]) => {
    const panel = { energyKcal: 80, sodiumMg: 40 };
    const { id, label } = foodWith(name, { statement, category, panel, serving: { household: '4 slices', grams: 56 } });
    return { label, name, id };
  }),
].map(({ label, name, id }) => ({
  row: {
    id,
    name,
    version: 1,
    isDemo: true,
    ...(label.printed.maker === undefined ? {} : { maker: label.printed.maker }),
    category: label.printed.category ?? '',
  },
  label: { kind: 'read', id: `label-${id}`, foodId: id, printed: label.printed, addedAt: '2026-06-01T00:00:00Z', photoIds: [] },
  food: { id, name, label },
}));

const alone: Plate = { id: 'alone', title: 'on its own', portion: { servings: 1 }, companions: [] };
const categories = ['sandwich slices', 'cold cereals', 'soups and broths'];

/** What a statement names, by words of this test and not of the program: a word list a person would search the page for. */
const named: Readonly<Record<string, (statement: string) => boolean>> = {
  peanut: text => /peanut|groundnut/i.test(text.replace(/peanut-free/gi, '')),
  milk: text =>
    /milk|cheese|cream|whey|butter|casein|lactose|yogurt|dairy/i.test(
      text.replace(/coconut milk|cocoa butter|coconut cream|butternut/gi, ''),
    ),
  soy: text => /soy|tofu|miso/i.test(text),
  gluten: text => /wheat|barley|rye\b|malt\b|malted|semolina|durum|gluten/i.test(text.replace(/gluten.free/gi, '')),
};

const allergyWords = [
  ['peanut', 'peanut allergy'],
  ['peanut', 'alergia al cacahuate'],
  ['peanut', 'maní'],
  ['milk', 'milk'],
  ['milk', 'alergia a la leche'],
  ['soy', 'soybeans'],
  ['soy', 'soya'],
  ['gluten', 'celiac disease'],
  ['gluten', 'enfermedad celíaca'],
] as const;

function recordFor(allergy: string) {
  return recordOf(clientWith({ allergies: [allergy], weighings: [weighing('actual', 70)], labs: [lab('potassium', 4.5, 'mmol/L')] }));
}

function pageFor(allergy: string, language: Language, plate = alone): HandoutPage {
  const draft: ClientHandoutDraft = {
    id: 'one',
    language,
    writtenOn: today,
    author: { name: 'Ada Example', credentials: 'RDN' },
    notes: [],
    parts: ['fridge', 'numbers', 'foods', 'labels', 'swaps', 'shopping'],
    categories: categories.map(category => ({ category, plateId: 'alone', meal: 'lunch', foodAisles: {}, leftOut: [] })),
    aisleOrder: [],
  };
  return buildHandout(
    handoutForClient({ record: recordFor(allergy), draft, foods, plates: new Map([['alone', plate]]), useEstimates: false, rules: [] }),
  ).value;
}

/** Names of foods that a page offers: rows to eat and best picks, the shopping list, and what swaps lead to or take less of. */
function offeredOn({ sections }: HandoutPage): readonly string[] {
  return sections.flatMap(({ id, blocks }) =>
    blocks.flatMap((block): readonly string[] => {
      if (block.kind === 'foods') return block.rows.map(({ name }: FoodRow) => name);
      if (id === 'shopping' && block.kind === 'list')
        return block.lines.flatMap(({ runs }) => runs.filter(({ kind }) => kind === 'food').map(({ text }) => text));
      if (id === 'swaps' && block.kind === 'list') {
        // "In place of A, pick B" offers the last one named; "A: have 1 slice" offers the only one.
        return block.lines.map(({ runs }) => runs.filter(({ kind }) => kind === 'food').at(-1)?.text ?? '');
      }
      return [];
    }),
  );
}

const bannedFor = (allergen: string): ReadonlySet<string> =>
  new Set(foods.filter(({ food }) => named[allergen]!(food.label.printed.statement ?? '')).map(({ row }) => row.name));

describe('the whole demo shelf for clients with an allergy', () => {
  it.each(allergyWords)('[CLT-60] %s, written “%s”: no food that names it has a portion on the screen', (allergen, words) => {
    const { rows } = whatFits({ record: recordFor(words), served: [{ plate: alone, foods }], meal: 'lunch', useEstimates: false, today });
    const banned = bannedFor(allergen);
    expect(banned.size).toBeGreaterThan(2);
    for (const { name, offer, inMeal, inDay, reasons } of rows.filter(row => banned.has(row.name))) {
      expect(['never', 'ask'], `${name} names ${allergen}`).toContain(offer);
      expect([inMeal, inDay].join(), name).not.toMatch(/\d/);
      expect(reasons[0], name).toMatchObject({ kind: 'allergen', kin: allergen });
    }
  });

  it.each(allergyWords)(
    '[HND-22] %s, written “%s”: it is in no list, swap or best pick of a handout, in either language',
    (allergen, words) => {
      const banned = bannedFor(allergen);
      for (const language of ['en', 'es'] as const) {
        const offered = offeredOn(pageFor(words, language));
        expect(offered.length, `${language}: foods are still offered`).toBeGreaterThan(5);
        expect(
          offered.filter(name => banned.has(name)),
          language,
        ).toEqual([]);
      }
    },
  );

  it('[CLT-60] peanuts named or from groundnuts are never; “may contain” is asked about; a peanut-free facility is no peanut', () => {
    const { rows, toAsk } = whatFits({
      record: recordFor('peanut allergy'),
      served: [{ plate: alone, foods }],
      meal: 'lunch',
      useEstimates: false,
      today,
    });
    const of = (name: string) => rows.find(row => row.name === name)!;
    expect(of('Peanut noodles')).toMatchObject({
      offer: 'never',
      inMeal: 'none',
      inDay: 'none',
      why: 'Not for this client: peanuts (allergy). Peanut noodles: “PEANUTS” named on the label.',
    });
    expect(of('Satay slices').offer).toBe('never');
    expect(of('Rice noodles')).toMatchObject({ offer: 'ask', inMeal: 'ask first', inDay: 'ask first' });
    expect(toAsk.join()).toContain('Rice noodles: Ask first about peanuts (allergy)');
    expect(of('Peanut-free bites').offer).toBe('portion');
    expect(of('Plain bites').offer).toBe('portion');
  });

  it('[CLT-60] coconut milk and cocoa butter are no milk', () => {
    const { rows } = whatFits({ record: recordFor('leche'), served: [{ plate: alone, foods }], meal: 'lunch', useEstimates: false, today });
    expect(rows.find(({ name }) => name === 'Coconut spread')?.offer).toBe('portion');
  });

  it('[HND-22] an allergen in what the food is eaten with bars every food of the plate', () => {
    const bread = foodWith('Peanut bread', { statement: 'RICE FLOUR, PEANUTS.', panel: { energyKcal: 80, sodiumMg: 20 } });
    const plate: Plate = { ...alone, companions: [{ food: bread, portion: { servings: 1 } }] };
    expect(offeredOn(pageFor('peanuts', 'en', plate)).filter(name => name !== '')).toEqual([]);
  });

  it('[HND-22] a Spanish page names what is avoided in Spanish', () => {
    const text = (page: HandoutPage): string =>
      page.sections.flatMap(({ blocks }) => blocks.flatMap(block => (block.kind === 'list' ? block.lines.map(lineText) : []))).join('\n');
    expect(text(pageFor('peanut allergy', 'es'))).toContain('Busque lo que usted no come: cacahuate (maní).');
    expect(text(pageFor('alergia al maní', 'en'))).toContain('Look for what you do not eat: peanuts.');
  });
});

describe('the whole demo shelf for other clients', () => {
  const demo = foods.slice(0, labels.length);

  it('[CLT-63] a default phosphorus figure does not empty the list: what no label tells is judged by additives and counted', () => {
    const record = recordFor('kiwi');
    const bounded = (item: 'sodium' | 'phosphorus', hi: number) =>
      ({ item, unit: 'mg', kind: 'bounded', range: { lo: 0, hi }, limit: 'at-most', from: 'own', reason: 'r', says: 's' }) as const;
    const targets = [bounded('sodium', 2300), bounded('phosphorus', 1000)];
    const signed = { ...record, prescriptions: record.prescriptions.map(one => ({ ...one, targets })) };
    const { rows, notTold } = whatFits({
      record: signed,
      served: [{ plate: alone, foods: demo }],
      meal: 'lunch',
      useEstimates: false,
      today,
    });
    const told = demo.filter(({ food }) => food.label.amounts.phosphorusMg.kind === 'known').length;
    expect(notTold).toMatchObject([{ mineral: 'phosphorus', foods: demo.length - told, of: demo.length }]);
    // An own look for the letters: no food that names a phosphate has a portion, and most of the others do.
    const named = new Set(demo.filter(({ food }) => /phosphate/i.test(food.label.printed.statement ?? '')).map(({ row }) => row.id));
    const offered = rows.filter(({ offer }) => offer === 'portion' || offer === 'less');
    expect(offered.filter(({ foodId }) => named.has(foodId))).toEqual([]);
    expect(offered.length).toBeGreaterThan((demo.length - named.size) * 0.8);
    for (const { verdict, marks, offer } of offered)
      if (offer === 'portion' && verdict === 'fits') expect(marks.join()).toContain('phosphorus not known');
  });

  it('[CLT-64] after a transplant every deli meat carries its line, and no cheese, plant slice, cereal or soup does', () => {
    const record = recordOf(clientWith({ treatment: { setting: 'transplant', transplantedOn: '2026-01-10' } }));
    const { rows } = whatFits({ record, served: [{ plate: alone, foods: demo }], meal: 'lunch', useEstimates: false, today });
    const isMeat = (statement: string): boolean => /turkey|chicken|ham|pork|beef/i.test(statement);
    const deli = demo.filter(({ row, food }) => row.category === 'sandwich slices' && isMeat(food.label.printed.statement ?? ''));
    expect(deli.length).toBeGreaterThan(10);
    expect(rows.filter(({ marks }) => marks.join().includes('steams')).map(({ foodId }) => foodId)).toEqual(deli.map(({ row }) => row.id));
  });
});
