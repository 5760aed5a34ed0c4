import { describe, expect, it } from 'vitest';
import { buildHandout } from '#core/handout/buildHandout.ts';
import { gradeOf } from '#core/handout/gradeOf.ts';
import type { HandoutDraft, Language, SignedTarget } from '#core/handout/handout.ts';
import { draftWith, noPhosphate, sodiumTarget } from '#core/handout/handoutFixture.ts';
import type { HandoutPage } from '#core/handout/handoutPage.ts';
import { lineText } from '#core/handout/line.ts';
import type { PrintedLabel } from '#core/label/label.ts';
import type { Plate } from '#core/plate/plate.ts';
import { foodWith } from '#core/plate/plateFixture.ts';
import { surveysForHandout } from './surveysForHandout.ts';

const plate: Plate = { id: 'slices-on-bread', title: 'on its own', portion: { servings: 1 }, companions: [] };
const phosphorus: SignedTarget = { item: 'phosphorus', unit: 'mg', range: { lo: 0, hi: 1000 }, limit: 'at-most' };

function slices(name: string, panel: PrintedLabel['panel'], statement: string, more: Partial<PrintedLabel> = {}) {
  return foodWith(name, { statement, serving: { household: '4 slices', grams: 56 }, panel: { energyKcal: 80, ...panel }, ...more });
}

const turkey = slices('Turkey slices', { sodiumMg: 100 }, 'Turkey, water.');
const saltyTurkey = slices('Smoked turkey slices', { sodiumMg: 790 }, 'Turkey, water, salt.');
const fresco = slices('Queso fresco', { sodiumMg: 120 }, 'Pasteurized milk, salt.');
const sprouts = slices('Alfalfa sprouts', { sodiumMg: 5 }, 'Alfalfa sprouts.');
const salmon = slices('Smoked salmon', { sodiumMg: 400 }, 'Salmon, salt.');
const cheddar = slices('Cheddar', { sodiumMg: 150 }, 'Pasteurized milk, salt.');
const all = [turkey, saltyTurkey, fresco, sprouts, salmon, cheddar];

function pageOf(draft: HandoutDraft, foods = all): HandoutPage {
  const categories = draft.categories.map(category => ({ category, plate, foods }));
  return buildHandout(surveysForHandout({ draft, categories })).value;
}

function draftOf(language: Language, targets: readonly SignedTarget[], more: Readonly<Record<string, unknown>> = {}): HandoutDraft {
  return draftWith({ language, prescription: { targets, signed: { by: 'A. Writer', on: '2026-11-14' } }, ...more });
}

/** Every line about foods, wherever it stands: rows with their notes, shopping lines, swaps. */
function foodLines({ sections }: HandoutPage): readonly string[] {
  return sections
    .filter(({ id }) => id === 'fridge' || id === 'foods' || id === 'shopping' || id === 'swaps')
    .flatMap(({ id, blocks }) =>
      blocks.flatMap((block): readonly string[] => {
        if (block.kind === 'foods') return block.rows.map(row => `${id}: ${[row.name, ...row.keepTo, ...row.told].join(' | ')}`);
        if (block.kind !== 'list' || id === 'fridge') return [];
        return block.lines.filter(({ runs }) => runs.some(({ kind }) => kind === 'food')).map(line => `${id}: ${lineText(line)}`);
      }),
    );
}

describe('foods that are not safe after a transplant', () => {
  const heat = { en: 'Eat it only heated until it steams', es: 'Cómalo solo caliente, hasta que eche vapor' } as const;

  it.each(['en', 'es'] as const)(
    '[HND-23] the line stands on cold cuts and soft fresh cheese wherever they are listed, in %s',
    language => {
      const lines = foodLines(pageOf(draftOf(language, [sodiumTarget], { setting: 'transplant' })));
      for (const part of ['fridge', 'foods', 'shopping', 'swaps']) {
        const here = lines.filter(line => line.startsWith(part) && /turkey slices|queso fresco/i.test(line));
        expect(here.length, part).toBeGreaterThan(0);
        for (const line of here) expect(line, part).toContain(heat[language]);
      }
      // 600 mg at lunch hold three of four salty slices, which are to be heated as well.
      const less = { en: 'Smoked turkey slices: have 3 slices', es: 'Smoked turkey slices: coma 3' }[language];
      expect(lines.find(line => line.includes(less))).toContain(heat[language]);
      for (const line of lines.filter(one => one.includes('Cheddar'))) expect(line).not.toContain(heat[language]);
    },
  );

  it.each(['en', 'es'] as const)('[HND-23] raw sprouts and refrigerated smoked fish stand in no list, in %s', language => {
    const page = pageOf(draftOf(language, [sodiumTarget], { setting: 'transplant' }));
    expect(JSON.stringify(page.sections.map(({ blocks }) => blocks))).not.toMatch(/Alfalfa sprouts|Smoked salmon/);
  });

  it('[HND-23] medicines that suppress the immune system bring the same line, and without either there is none', () => {
    const text = (more: Readonly<Record<string, unknown>>): string => foodLines(pageOf(draftOf('en', [sodiumTarget], more))).join('\n');
    expect(text({ immuneSuppressed: true })).toContain(heat.en);
    expect(text({ immuneSuppressed: true })).not.toContain('Alfalfa sprouts');
    expect(text({})).not.toContain(heat.en);
    expect(text({})).toContain('Alfalfa sprouts');
  });
});

describe('a mineral that labels do not print', () => {
  const silent = slices('Silent slices', { sodiumMg: 100 }, 'Rice, water.');
  const told = slices('Told slices', { sodiumMg: 300, phosphorusMg: 100 }, 'Rice, water.');
  const rich = slices('Rich slices', { sodiumMg: 100, phosphorusMg: 900 }, 'Rice, water.');
  const named = slices('Named slices', { sodiumMg: 100 }, 'Rice, disodium phosphate.');
  const mark = { en: 'Phosphorus is not on the label: not known', es: 'El fósforo no está en la etiqueta: no se conoce' } as const;

  it.each(['en', 'es'] as const)(
    '[HND-24] such a food is listed with its mark; over the bound, or with a phosphate named, it is not: %s',
    language => {
      const lines = foodLines(pageOf(draftOf(language, [sodiumTarget, phosphorus]), [silent, told, rich, named]));
      const inList = lines.filter(line => /^(?:foods|shopping|fridge)/.test(line));
      expect(inList.filter(line => line.includes('Silent')).length).toBe(3);
      for (const line of inList) expect(line.includes(mark[language]), line).toBe(line.includes('Silent'));
      expect(inList.join()).not.toMatch(/Rich|Named/);
      // Twice 100 mg stay under 2,000 mg: the phosphorus that nobody knows takes no day's portion away.
      const day = { en: 'Most in a day: 8 slices', es: 'Máximo en un día: 8' }[language];
      expect(inList.find(line => line.startsWith('foods: Silent'))).toContain(day);
    },
  );

  it('[HND-24] on the fridge page foods whose label tells come first, though others have more sodium to spare', () => {
    const lines = foodLines(pageOf(draftOf('en', [sodiumTarget, phosphorus]), [silent, told]));
    expect(lines.filter(line => line.startsWith('fridge')).map(line => line.slice(8, 12))).toEqual(['Told', 'Sile']);
  });

  it('[HND-5] readers of a phosphorus limit look for "phos", also where no additive target was signed', () => {
    const text = (targets: readonly SignedTarget[]): string => JSON.stringify(pageOf(draftOf('en', targets), [silent]));
    expect(text([sodiumTarget, phosphorus])).toContain('“phos” in a word');
    expect(text([sodiumTarget, noPhosphate])).toContain('“phos” in a word');
    expect(text([sodiumTarget])).not.toContain('“phos” in a word');
  });
});

describe('what a meal’s share is for', () => {
  it.each([
    ['en', 'The whole plate may have less than 600 mg of sodium.'],
    ['es', 'Todo lo que hay en el plato puede tener menos de 600 mg de sodio.'],
  ] as const)('[HND-3] it is told for the whole plate, in %s', (language, told) => {
    const page = pageOf(draftOf(language, [sodiumTarget]));
    const texts = page.sections.flatMap(({ blocks }) => blocks.flatMap(block => (block.kind === 'text' ? [lineText(block.line)] : [])));
    expect(texts.join('\n')).toContain(told);
  });

  it('[HND-12] the new sentences keep to grade 6', () => {
    const grade = gradeOf(pageOf(draftOf('en', [sodiumTarget, phosphorus], { setting: 'transplant' })));
    expect(grade?.program.withoutFoodNames).toBeLessThanOrEqual(6);
  });
});
