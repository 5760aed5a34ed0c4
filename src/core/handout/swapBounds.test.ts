import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Plate } from '#core/plate/plate.ts';
import { foodWith, withAmounts } from '#core/plate/plateFixture.ts';
import type { HandoutDraft, HandoutSurvey, SignedTarget } from './handout.ts';
import { draftWith, handoutInput, slices, sodiumTarget } from './handoutFixture.ts';
import { lineText } from './line.ts';
import { swapBlocks } from './swaps.ts';
import { wordsIn } from './words/inLanguage.ts';

const alone: Plate = { id: 'alone', title: 'on its own', portion: { servings: 1 }, companions: [] };
const potassium: SignedTarget = { item: 'potassium', unit: 'mg', range: { lo: 0, hi: 3000 }, limit: 'at-most' };
const signed = (...targets: readonly SignedTarget[]): HandoutDraft => ({
  ...draftWith(),
  prescription: { targets, signed: { by: 'A. Writer', on: '2026-11-14' } },
});

const ham = (name: string, sodiumMg: number, more: Readonly<Record<string, number>> = {}) =>
  slices(name, sodiumMg, { statement: 'Ham, water.', panel: { energyKcal: 80, sodiumMg, ...more } });

function swapsIn(foods: Parameters<typeof handoutInput>[0], draft: HandoutDraft, language: 'en' | 'es' = 'en'): readonly string[] {
  const survey: HandoutSurvey = handoutInput(foods, draft, undefined, alone).surveys[0]!;
  return swapBlocks(survey, draft, wordsIn[language])
    .flatMap(block => (block.kind === 'list' ? block.lines.map(lineText) : []))
    .filter(text => /^(?:In place|En lugar)/.test(text));
}

describe('swaps and bounds', () => {
  it('[HND-6] less sodium for more potassium is no swap where potassium has a most, and is one where it has none', () => {
    const foods = [ham('Salty ham', 900, { potassiumMg: 200 }), ham('Mild ham', 300, { potassiumMg: 400 })];
    expect(swapsIn(foods, signed(sodiumTarget, potassium))).toEqual([]);
    expect(swapsIn(foods, signed(sodiumTarget))).toHaveLength(1);
    const equal = [ham('Salty ham', 900, { potassiumMg: 200 }), ham('Mild ham', 300, { potassiumMg: 200 })];
    expect(swapsIn(equal, signed(sodiumTarget, potassium))).toHaveLength(1);
  });

  it('[HND-6] ranges at the unsafe end: 150 to 250 mg in the place of 200 mg may be more', () => {
    const mild = ham('Mild ham', 300);
    const range = (lo: number, hi: number) => withAmounts(mild, { potassiumMg: { kind: 'known', range: { lo, hi }, source: 'printed' } });
    const salty = ham('Salty ham', 900, { potassiumMg: 200 });
    expect(swapsIn([salty, range(150, 250)], signed(sodiumTarget, potassium))).toEqual([]);
    expect(swapsIn([salty, range(100, 200)], signed(sodiumTarget, potassium))).toHaveLength(1);
  });

  it('[HND-6] a limit on fluid: no soup in the place of what is none', () => {
    const stew = foodWith('Bean stew', {
      statement: 'Beans.',
      serving: { household: '1 cup', grams: 240 },
      panel: { energyKcal: 90, sodiumMg: 900 },
    });
    const soup = foodWith('Bean soup', {
      statement: 'Beans.',
      serving: { household: '1 cup', grams: 240 },
      panel: { energyKcal: 90, sodiumMg: 90 },
    });
    const fluid: SignedTarget = { item: 'fluid', unit: 'mL', range: { lo: 0, hi: 1000 }, limit: 'at-most' };
    expect(swapsIn([stew, soup], signed(sodiumTarget, fluid))).toEqual([]);
    expect(swapsIn([stew, soup], signed(sodiumTarget))).toHaveLength(1);
  });

  it.each([
    ['en', 'But it has less protein.', 'But it may have less protein.'],
    ['es', 'Pero tiene menos proteína.', 'Pero puede tener menos proteína.'],
  ] as const)('[HND-6] less of what is needed is said, sure or possible, in %s', (language, sure, possible) => {
    const need: SignedTarget = { item: 'protein', unit: 'g', range: { lo: 80, hi: Number.POSITIVE_INFINITY }, limit: 'at-least' };
    const said = (to: Readonly<Record<string, number>>, draft = signed(sodiumTarget, need)) =>
      swapsIn([ham('Salty ham', 900, { proteinG: 12 }), ham('Mild ham', 300, to)], draft, language).join();
    expect(said({ proteinG: 6 })).toContain(sure);
    expect(said({})).toContain(possible);
    expect(said({ proteinG: 20 })).not.toMatch(/protein|proteína/);
    expect(said({ proteinG: 6 }, signed(sodiumTarget))).not.toMatch(/protein|proteína/);
  });

  it('[HND-6] law: no swap raises a known amount of what is bounded, and none hides one that was told', () => {
    const figure = fc.option(fc.integer({ min: 0, max: 900 }), { nil: undefined });
    const food = fc.record({ sodiumMg: fc.integer({ min: 0, max: 900 }), potassiumMg: figure });
    const draft = signed(sodiumTarget, potassium);
    fc.assert(
      fc.property(fc.array(food, { minLength: 2, maxLength: 6 }), panels => {
        const foods = panels.map(({ sodiumMg, potassiumMg }, at) =>
          ham(`Ham ${at}x`, sodiumMg, potassiumMg === undefined ? {} : { potassiumMg }),
        );
        for (const text of swapsIn(foods, draft)) {
          const [from, to] = [...text.matchAll(/Ham (\d)x/g)].map(([, at]) => panels[Number(at)]!);
          expect(to!.sodiumMg).toBeLessThanOrEqual(from!.sodiumMg);
          if (from!.potassiumMg !== undefined) expect(to!.potassiumMg).toBeLessThanOrEqual(from!.potassiumMg);
        }
      }),
    );
  });
});
