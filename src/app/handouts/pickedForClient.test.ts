/** What a handout picks, swaps and adds for the reasons of one client. */
import { describe, expect, it } from 'vitest';
import type { AimStates } from '#core/client/aims/aimStates.ts';
import { buildHandout } from '#core/handout/buildHandout.ts';
import { gradeOf } from '#core/handout/gradeOf.ts';
import type { Language, SignedTarget } from '#core/handout/handout.ts';
import { draftWith, noPhosphate, sodiumTarget } from '#core/handout/handoutFixture.ts';
import type { HandoutPage, SectionId } from '#core/handout/handoutPage.ts';
import { handoutHtml } from '#core/handout/html/handoutHtml.ts';
import { lineText } from '#core/handout/line.ts';
import type { PrintedLabel } from '#core/label/label.ts';
import type { Plate, PlateFood } from '#core/plate/plate.ts';
import { foodWith } from '#core/plate/plateFixture.ts';
import { surveysForHandout } from './surveysForHandout.ts';

const alone: Plate = { id: 'slices-on-bread', title: 'on its own', portion: { servings: 1 }, companions: [] };
const least = (item: SignedTarget['item'], unit: SignedTarget['unit'], lo: number): SignedTarget => ({
  item,
  unit,
  range: { lo, hi: Number.POSITIVE_INFINITY },
  limit: 'at-least',
});
const most = (item: SignedTarget['item'], unit: SignedTarget['unit'], hi: number): SignedTarget => ({
  item,
  unit,
  range: { lo: 0, hi },
  limit: 'at-most',
});

/** A cup, 240 g, of 100 mg sodium. */
const cup = (name: string, panel: PrintedLabel['panel'], statement = 'Rice, water.') =>
  foodWith(name, { statement, serving: { household: '1 cup', grams: 240 }, panel: { energyKcal: 80, sodiumMg: 100, ...panel } });

interface Asked {
  readonly language?: Language;
  readonly states?: AimStates;
  readonly plate?: Plate;
  readonly more?: Readonly<Record<string, unknown>>;
}

function pageOf(targets: readonly SignedTarget[], foods: readonly PlateFood[], asked: Asked = {}): HandoutPage {
  const { language = 'en', states = {}, plate = alone, more = {} } = asked;
  const draft = { ...draftWith({ language, ...more }), prescription: { targets, signed: { by: 'A. Writer', on: '2026-11-14' } } };
  const categories = draft.categories.map(category => ({ category, plate, foods }));
  return buildHandout(surveysForHandout({ draft, categories, states })).value;
}

const blocksOf = ({ sections }: HandoutPage, id: SectionId) => sections.find(one => one.id === id)?.blocks ?? [];
const picksOf = (page: HandoutPage) => blocksOf(page, 'fridge').flatMap(block => (block.kind === 'foods' ? block.rows : []));
const linesOf = (page: HandoutPage, id: SectionId): readonly string[] =>
  blocksOf(page, id).flatMap(block => {
    if (block.kind === 'text' || block.kind === 'heading') return [lineText(block.line)];
    if (block.kind === 'list') return block.lines.map(lineText);
    return block.kind === 'foods' ? block.rows.map(row => [row.name, ...row.keepTo, ...row.told].join(' | ')) : [];
  });

describe('best picks', () => {
  const foods = [
    cup('Much sodium to spare', { sodiumMg: 10, proteinG: 1, phosphorusMg: 250 }),
    cup('Lean in phosphorus', { sodiumMg: 400, proteinG: 1, phosphorusMg: 20 }),
    cup('Full of protein', { sodiumMg: 300, proteinG: 20, energyKcal: 300, phosphorusMg: 200 }),
    cup('Not told', { sodiumMg: 200 }),
  ];

  it('[HND-25] high phosphorus: the least first and what is not told last; without a reason the most sodium to spare, as before', () => {
    const names = (targets: readonly SignedTarget[], states: AimStates = {}) =>
      picksOf(pageOf(targets, foods, { states })).map(({ name }) => name);
    expect(names([sodiumTarget])[0]).toBe('Much sodium to spare');
    // What is told of a food takes a line of its own: "Not told", the last, has no room left.
    expect(names([sodiumTarget], { phosphate: 'food' })).toEqual(['Lean in phosphorus', 'Full of protein', 'Much sodium to spare']);
    expect(names([sodiumTarget], { isWasting: true })[0]).toBe('Full of protein');
    expect(names([sodiumTarget, least('protein', 'g', 80)])[0]).toBe('Full of protein');
  });

  it('[HND-25] a limit on fluid: no soup among the first', () => {
    const withSoup = [cup('Tomato soup', { sodiumMg: 10 }), cup('Rice bowl', { sodiumMg: 400 })];
    const [first] = picksOf(pageOf([sodiumTarget, most('fluid', 'mL', 1000)], withSoup));
    expect(first?.name).toBe('Rice bowl');
    expect(picksOf(pageOf([sodiumTarget], withSoup))[0]?.name).toBe('Tomato soup');
  });

  it.each([
    ['en', 'Your phosphorus is high. So foods with no phosphate added and the least phosphorus are put first.', 'least phosphorus'],
    ['es', 'Su fósforo está alto. Por eso van primero los alimentos sin fosfato agregado y con menos fósforo.', 'menos fósforo'],
  ] as const)('[HND-25] the reason stands among the foods, and on the fridge page no result: %s', (language, reason, short) => {
    const page = pageOf([sodiumTarget], foods, { language, states: { phosphate: 'food' } });
    expect(linesOf(page, 'foods')).toContain(reason);
    const fridge = linesOf(page, 'fridge').join('\n');
    expect(fridge).toContain(short);
    expect(fridge).not.toMatch(/phosphorus is high|fósforo está alto/);
  });

  it.each([
    ['en', 'Not on the label, not known: phosphorus'],
    ['es', 'No está en la etiqueta, no se conoce: fósforo'],
  ] as const)('[HND-25] an amount that is picked by and not told is named on the food, once, in %s', (language, mark) => {
    for (const [targets, states] of [
      [[sodiumTarget], { phosphate: 'food' }],
      [[sodiumTarget, most('phosphorus', 'mg', 1000)], {}],
    ] as const) {
      const line = linesOf(pageOf(targets, foods, { language, states }), 'foods').find(text => text.startsWith('Not told'));
      expect(line?.split(mark)).toHaveLength(2);
    }
  });

  it('[HND-25] every reason measures grade 6 or lower', () => {
    const all: readonly (readonly [readonly SignedTarget[], AimStates])[] = [
      [[most('potassium', 'mg', 2000), most('phosphorus', 'mg', 1000), most('fluid', 'mL', 1000)], { isWasting: true }],
      [[], { potassium: 'food', phosphate: 'food' }],
      [[], { potassium: 'additives', phosphate: 'additives' }],
      [[], { potassium: 'low', phosphate: 'low' }],
      [[least('energy', 'kcal', 2000), least('protein', 'g', 80), least('potassium', 'mg', 3000), least('phosphorus', 'mg', 800)], {}],
      [[least('fluid', 'mL', 2000)], {}],
    ];
    for (const [targets, states] of all) {
      const page = pageOf([sodiumTarget, ...targets], foods, { states, more: { setting: 'transplant' } });
      expect(gradeOf(page)?.program.withoutFoodNames).toBeLessThanOrEqual(6);
    }
  });
});

describe('fluid on foods', () => {
  const soup = cup('Tomato soup', {});
  const rice = cup('Rice bowl', {});
  const unmeasured = foodWith('Beef broth', { statement: 'Water.', serving: { grams: 240 }, panel: { energyKcal: 10, sodiumMg: 50 } });

  it.each([
    // 1,200 mL are 5 cups of 240 mL; a cup of soup is one of them.
    ['en', 'Counts as 1 of your 5 cups of fluid', 'Counts as fluid: ask us how much'],
    ['es', 'Cuenta como 1 de sus 5 tazas de líquido', 'Cuenta como líquido: pregúntenos cuánto'],
  ] as const)('[HND-26] in cups of the signed day, in %s; what is not known is said', (language, told, unknown) => {
    const page = pageOf([sodiumTarget, most('fluid', 'mL', 1200)], [soup, rice, unmeasured], { language });
    const line = (name: string) => linesOf(page, 'foods').find(text => text.startsWith(`${name} |`));
    expect(line('Tomato soup')).toContain(told);
    expect(line('Beef broth')).toContain(unknown);
    expect(line('Rice bowl')).not.toMatch(/cups of fluid|tazas de líquido|Counts|Cuenta/);
  });

  it('[HND-26] what it is eaten with counts: half a cup of milk; nothing is said where no fluid was signed', () => {
    const milk = { food: cup('Reduced fat milk', {}), portion: { measure: 'cup', count: 0.5 } };
    const plate = { ...alone, companions: [milk] };
    const line = (targets: readonly SignedTarget[]) =>
      linesOf(pageOf(targets, [rice], { plate }), 'foods').find(text => text.startsWith('Rice bowl'));
    expect(line([sodiumTarget, most('fluid', 'mL', 1200)])).toContain('Counts as ½ of your 5 cups of fluid');
    expect(line([sodiumTarget])).not.toContain('fluid');
    expect(line([sodiumTarget, least('fluid', 'mL', 1920)])).toContain('Gives ½ of the 8 cups of fluid that you need');
  });
});

describe('what has to be added', () => {
  const bean = cup('Bean bowl', { potassiumMg: 600, proteinG: 15 });
  const salted = cup('Salted bowl', { potassiumMg: 900, proteinG: 2 }, 'Rice, potassium chloride.');
  const silent = cup('Silent bowl', {});
  const over = cup('Salty bowl', { potassiumMg: 2000, sodiumMg: 900 });
  const foods = [silent, salted, over, bean];

  it('[HND-27] at least for potassium: those that fit with the most, in both languages; what is over or not told is not among them', () => {
    // 600 mg are printed in steps of 10 mg: 595 mg and more.
    for (const [language, heading, amount] of [
      ['en', 'To get more potassium', 'At least 595 mg of potassium'],
      ['es', 'Para obtener más potasio', 'Al menos 595 mg de potasio'],
    ] as const) {
      const lines = linesOf(pageOf([sodiumTarget, least('potassium', 'mg', 3000)], foods, { language }), 'foods');
      const at = lines.indexOf(heading);
      expect(at).toBeGreaterThan(0);
      const rows = lines.slice(at + 2).filter(text => text.includes(' | '));
      expect(rows[0]).toContain('Salted bowl');
      expect(rows[1]).toContain(amount);
      const added = lines.filter(text => /At least \d+ mg|Al menos \d+ mg/.test(text) && text.includes(' | ')).join('\n');
      expect(added).not.toMatch(/Silent|Salty/);
    }
  });

  it('[HND-27] a needed potassium is not spoken against, but where its salts are ruled out or it has a most', () => {
    const said = (targets: readonly SignedTarget[]) => JSON.stringify(pageOf(targets, foods));
    const none: SignedTarget = { item: 'potassiumAdditives', unit: 'named on the label', range: { lo: 0, hi: 0 }, limit: 'at-most' };
    const against = /Potassium is added to it|“potassium” in the ingredients: put it back/;
    expect(said([sodiumTarget, least('potassium', 'mg', 3000)])).not.toMatch(against);
    expect(said([sodiumTarget])).toMatch(against);
    expect(said([sodiumTarget, none, least('potassium', 'mg', 3000)])).toMatch(against);
  });

  it('[HND-27] a needed phosphorus looks for no phosphate, but where the prescription says none named', () => {
    const need = least('phosphorus', 'mg', 900);
    const said = (targets: readonly SignedTarget[]) => JSON.stringify(pageOf(targets, foods));
    expect(said([sodiumTarget, need])).not.toContain('“phos” in a word');
    expect(said([sodiumTarget, need, noPhosphate])).toContain('“phos” in a word');
  });

  it('[HND-27] only needs are signed: foods to add stand though nothing bounds the category; without any amount told the page says so', () => {
    const lines = linesOf(pageOf([least('protein', 'g', 80)], foods), 'foods');
    expect(lines).toContain('You need at least 80 g of protein each day. Add these foods. They have the most.');
    // 15 g are printed in whole grams: 14.5 g and more.
    expect(lines.find(text => text.startsWith('Bean bowl'))).toContain('At least 14 g of protein');
    expect(linesOf(pageOf([least('protein', 'g', 80)], [silent]), 'foods')).toContain(
      'No label that we read tells how much is in it. Ask us what to add.',
    );
  });

  it('[HND-27] a need of fluid does not say what a limit says', () => {
    const numbers = (target: SignedTarget) => linesOf(pageOf([sodiumTarget, target], foods), 'numbers').join('\n');
    const counts = 'Soup, milk, ice and gelatin count as fluid too.';
    expect(numbers(most('fluid', 'mL', 1200))).toContain(counts);
    expect(numbers({ item: 'fluid', unit: 'mL', range: { lo: 2000, hi: 2000 }, limit: 'at-least' })).not.toContain(counts);
  });
});

describe('what a reader avoids, in the language of the page', () => {
  it.each([
    ['Milk allergy', 'leche'],
    ['alergia al maní', 'alergia al maní'],
    ['shellfish', 'mariscos (crustáceos)'],
  ])('[HND-10] “%s” is “%s” in Spanish, and is not marked as English', (typed, told) => {
    const html = handoutHtml(pageOf([sodiumTarget], [cup('Rice bowl', {})], { language: 'es', more: { avoidedFoods: [typed] } }));
    expect(html).toContain(`<bdi>${told}</bdi>`);
    expect(html).not.toContain(`<bdi lang="en">${told}</bdi>`);
  });

  it('[HND-10] a word that the list does not have stays as it was typed, marked', () => {
    const html = handoutHtml(pageOf([sodiumTarget], [cup('Rice bowl', {})], { language: 'es', more: { avoidedFoods: ['kiwi'] } }));
    expect(html).toContain('<bdi lang="en">kiwi</bdi>');
  });

  it.each(['cacahuate', 'peanuts', 'maní'])(
    '[HND-22] typed “%s”: a label that names peanuts in either language stands in no list',
    typed => {
      const named = [cup('Satay', {}, 'Rice, peanuts.'), cup('Mazapán', {}, 'Cacahuate, azúcar.'), cup('Plain', {})];
      const page = pageOf([sodiumTarget], named, { more: { avoidedFoods: [typed] } });
      const listed = [...linesOf(page, 'foods'), ...linesOf(page, 'shopping'), ...linesOf(page, 'fridge')].join('\n');
      expect(listed).toContain('Plain');
      expect(listed).not.toMatch(/Satay|Mazapán/);
    },
  );
});
