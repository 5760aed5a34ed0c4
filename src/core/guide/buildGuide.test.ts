import { describe, expect, it } from 'vitest';
import { buildGuide } from './buildGuide.ts';
import { draftWith, guideInput, slices } from './guideFixture.ts';
import type { GuidePage } from './guidePage.ts';

const titles = ({ sections }: GuidePage) => sections.map(({ title, entries }) => [title, entries.map(entry => entry.title)]);
const fitting = (name: string, maker?: string, sodiumMg = 100) => slices(name, 80, sodiumMg, maker === undefined ? {} : { maker });

describe('a guide out of a survey (the rule of sodium and energy: common practice, no source)', () => {
  // By hand: bread 160 kcal and 20 mg; a portion of 80 kcal may hold 80 + 160 - 20 = 220 mg; slack 10 mg.
  const survey = [slices('Mild', 80, 100), slices('At the bound', 80, 220), slices('Just over', 80, 230), slices('Salty', 80, 900)];

  it('[GDE-1] says fits, nearly and left out as the survey does, and the counts add up', () => {
    const { value: page, issues } = buildGuide(guideInput([...survey, slices('Smudged', 80, Number.NaN)]));
    expect(titles(page)).toEqual([['All foods', ['At the bound', 'Mild']]]);
    expect(page.nearly.map(({ title }) => title)).toEqual(['Just over']);
    expect(page.counts).toEqual({ read: 5, fits: 2, nearly: 1, leftOut: 2, marked: 0 });
    expect(page.leftOut.map(({ count, reason }) => [count, reason.slice(0, 9)])).toEqual([
      [1, 'can’t be '],
      [1, 'does not '],
    ]);
    expect(issues).toEqual([]);
  });

  it('[GDE-2] tells the rule with what the companion leaves, and works an example that adds up', () => {
    const { rule } = buildGuide(guideInput(survey)).value;
    expect(rule.allowance).toBe(
      'Bread (1 serving): 160 kcal, 20 mg sodium. So a portion may hold as many mg of sodium as it has kcal, and 140 mg more.',
    );
    expect(rule.example!.name).toBe('Mild');
    expect(rule.example!.rows.map(({ energy, sodium }) => [energy, sodium])).toEqual([
      ['80 kcal', '100 mg sodium'],
      ['160 kcal', '20 mg sodium'],
      ['240 kcal', '120 mg sodium'],
    ]);
    expect(rule.example!.outcome).toContain('120 mg to spare');
  });

  it('[GDE-3] walks the aisles in the order of the author, then by name, unknown aisles last', () => {
    const foods = ['Ant', 'Bee', 'Cow', 'Doe'].map(name => fitting(name));
    const at = (aisle: string) => [{ shop: 'Shop', aisle }];
    const draft = draftWith({ aisles: ['Deli', 'Dairy'], whereToBuy: { ant: at('Dairy'), bee: at('Frozen'), cow: at('Deli') } });
    expect(titles(buildGuide(guideInput(foods, draft)).value)).toEqual([
      ['Deli', ['Cow']],
      ['Dairy', ['Ant']],
      ['Frozen', ['Bee']],
      ['Aisle not noted', ['Doe']],
    ]);
  });

  it('[GDE-3] or goes by maker or by what is to spare', () => {
    const foods = [fitting('Ant', 'Zed'), fitting('Bee', 'Alder', 10), fitting('Cow', 'Moor', 200)];
    const order = (arrangement: string) => titles(buildGuide(guideInput(foods, draftWith({ arrangement }))).value);
    expect(order('maker')).toEqual([['By maker', ['Bee', 'Cow', 'Ant']]]);
    expect(order('margin')).toEqual([['Most to spare first', ['Bee', 'Ant', 'Cow']]]);
  });

  it('[GDE-4] folds the varieties of a maker that share a verdict, and only those', () => {
    const foods = [fitting('Ant', 'Zed'), fitting('Bee', ' zed'), fitting('Cow', 'Zed', 230), fitting('Doe'), fitting('Elk')];
    const page = buildGuide(guideInput(foods)).value;
    expect(page.sections[0]!.entries.map(entry => entry.varieties.map(({ name }) => name))).toEqual([['Doe'], ['Elk'], ['Ant', 'Bee']]);
    expect(page.nearly.map(({ title, maker }) => [title, maker])).toEqual([['Cow', 'Zed']]);
  });

  it('[GDE-5] tells unknown figures as unknown, not as zero', () => {
    const food = slices('Mild', 80, 100, { panel: { proteinG: 11 } });
    const [only] = buildGuide(guideInput([food])).value.sections[0]!.entries[0]!.varieties;
    expect(only!.perPortion.map(({ text, cell }) => [text, cell])).toEqual([
      ['80 kcal', '80'],
      ['100 mg sodium', '100'],
      ['potassium: not on the label', ''],
      ['phosphorus: not on the label', ''],
      ['11 g protein', '11'],
    ]);
    expect(only!.portion).toBe('4 slices (56 g)');
    expect(only!.additives).toEqual(['Phosphate, potassium and sodium additives: none named on the label.']);
  });

  it('[GDE-5] additives of a food without a statement are unknown', () => {
    const { statement: _, ...rest } = slices('Mild', 80, 100).label;
    const [only] = buildGuide(guideInput([{ id: 'mild', name: 'Mild', label: rest }])).value.sections[0]!.entries[0]!.varieties;
    expect(only!.additives).toEqual(['Additives: unknown, the ingredient statement was not read.']);
  });

  it('[GDE-6] a near miss has its ways in and every additive it carries', () => {
    const food = slices('Just over', 80, 230, { statement: 'Turkey, water, potassium lactate, sodium phosphates.' });
    const [only] = buildGuide(guideInput([food])).value.nearly[0]!.varieties;
    expect(only!.waysIn.length).toBeGreaterThan(0);
    expect(only!.additives).toEqual([
      'Phosphate additives: sodium phosphates.',
      'Potassium additives: potassium lactate.',
      'Sodium additives: sodium phosphates.',
    ]);
  });

  it('[GDE-7] marks a label that changed since publication', () => {
    const before = slices('Mild', 80, 100).label;
    const marked = (sodiumMg: number) =>
      buildGuide(guideInput([slices('Mild', 80, sodiumMg)], draftWith(), { asPublished: new Map([['mild', before]]) })).value;
    expect(marked(100).counts.marked).toBe(0);
    expect(marked(110).counts.marked).toBe(1);
    expect(marked(110).sections[0]!.entries[0]!.varieties[0]!.marks[0]).toContain(
      'changed since this guide was published on November 15, 2026',
    );
  });

  it('[GDE-7] a food that no longer fits is named where readers look for it', () => {
    const asPublished = new Map([['mild', slices('Mild', 80, 100).label]]);
    const page = buildGuide(guideInput([slices('Mild', 80, 900, { maker: 'Zed' })], draftWith(), { asPublished })).value;
    expect(page.takenOff).toEqual(['Mild, Zed']);
  });

  it('[GDE-7] a food without a label any more is named too, if it fitted', () => {
    const gone = [slices('Lost', 80, 100, { maker: 'Zed' }), slices('Salty', 80, 900)];
    expect(buildGuide(guideInput([slices('Mild', 80, 100)], draftWith(), { gone })).value.takenOff).toEqual(['Lost, Zed']);
  });

  it.each([
    ['2027-04-30', 0],
    ['2027-05-01', 1],
  ])('[GDE-8] read on 1 November and due after 180 days: on %s %i marked', (today, marked) => {
    // 1 November 2026 and 180 days are 30 April 2027 by the calendar: 29 + 31 + 31 + 28 + 31 + 30.
    expect(buildGuide(guideInput([slices('Mild', 80, 100)], draftWith(), { today })).value.counts.marked).toBe(marked);
  });

  it('[GDE-8] a day set for the food goes before the count of days', () => {
    const recheckOn = new Map([['mild', '2026-11-10']]);
    expect(buildGuide(guideInput([slices('Mild', 80, 100)], draftWith(), { recheckOn })).value.counts.marked).toBe(1);
  });

  it('[GDE-9] marks paid links of the shops that a disclosure names, and foods that were given', () => {
    const draft = draftWith({
      whereToBuy: {
        mild: [{ shop: 'Tollen', url: 'https://a.example/' }, { shop: 'Other', url: 'https://b.example/' }, { shop: 'Tollen' }],
      },
      disclosures: [
        { kind: 'affiliate', text: 'Paid.', shops: ['tollen'] },
        { kind: 'free-sample', text: 'Given.', foods: ['mild'] },
      ],
    });
    const [only] = buildGuide(guideInput([slices('Mild', 80, 100)], draft)).value.sections[0]!.entries[0]!.varieties;
    expect(only!.places.map(({ paysAuthor }) => paysAuthor)).toEqual([true, false, false]);
    expect(only!.disclosed).toEqual(['The author was given this food free']);
  });

  it('[GDE-10] what is said of a food whose label was removed is reported and left out; the guide is built all the same', () => {
    const draft = draftWith({
      portionNotes: { gone: 'Weigh it.', constructor: 'x' },
      leftOut: [{ foodId: 'salty', reason: 'no longer sold' }],
    });
    const { value: page, issues } = buildGuide(guideInput([slices('Mild', 80, 100), slices('Salty', 80, 900)], draft));
    expect(issues.map(({ code, place }) => [code, place?.heading])).toEqual([
      ['guide-food-not-found', 'portionNotes.gone'],
      ['guide-food-not-found', 'portionNotes.constructor'],
    ]);
    expect(page.leftOut).toEqual([{ reason: 'no longer sold', count: 1 }]);
  });

  it('[GDE-1] a survey in which nothing fits is still a page', () => {
    const page = buildGuide(guideInput([slices('Salty', 80, 900)])).value;
    expect([page.sections, page.rule.example]).toEqual([[], undefined]);
  });
});
