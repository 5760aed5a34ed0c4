import { describe, expect, it } from 'vitest';
import { buildHandout } from './buildHandout.ts';
import { gradeOf, targetGrade } from './gradeOf.ts';
import { draftWith, handoutInput, noPhosphate, slices, sodiumTarget } from './handoutFixture.ts';
import { lineText } from './line.ts';
import { en } from './words/en.ts';
import { es } from './words/es.ts';
import { figure } from './words/numbers.ts';

const settings = ['ckd-not-on-dialysis', 'hemodialysis', 'peritoneal-dialysis', 'transplant'] as const;
const foods = [
  slices('Mild turkey', 100),
  slices('Salty turkey', 900),
  slices('Silent', undefined),
  slices('Named', 100, { statement: 'Turkey, sodium phosphates.' }),
];
const everything = {
  targets: [
    sodiumTarget,
    noPhosphate,
    { item: 'potassiumAdditives', unit: 'named on the label', range: { lo: 0, hi: 0 } },
    { item: 'potassium', unit: 'mg', range: { lo: 0, hi: 2500 }, limit: 'at-most' },
    { item: 'protein', unit: 'g', range: { lo: 60, hi: 80 }, limit: 'within' },
  ],
  signed: { by: 'A. Writer', on: '2026-11-14' },
};

/** Every text of the program in a language, functions called with marked arguments. */
function texts(words: object): string[] {
  return Object.values(words).flatMap(one => {
    if (typeof one === 'string') return [one];
    if (typeof one === 'function') return [];
    if ('runs' in one) return [lineText(one)];
    return texts(one);
  });
}

describe('languages', () => {
  it('[HND-10] a text of the program is in one language: none is the same in English and Spanish but units', () => {
    const [english, spanish] = [texts(en), texts(es)];
    expect(spanish.length).toBe(english.length);
    const same = english.filter((text, at) => text === spanish[at]);
    expect(same).toEqual(['kcal', 'g', 'mg', 'mL']);
  });

  it('[HND-10] a Spanish page has no English sentence of the program; names keep theirs and are marked apart', () => {
    const draft = draftWith({ language: 'es', prescription: everything, notes: ['Own words stay.'] });
    const { value } = buildHandout(handoutInput(foods, draft));
    const lines = value.sections.flatMap(({ blocks }) =>
      blocks.flatMap(block =>
        block.kind === 'list' ? block.lines : block.kind === 'text' || block.kind === 'heading' ? [block.line] : [],
      ),
    );
    const own = lines
      .filter(({ by }) => by === 'program')
      .map(({ runs }) =>
        runs
          .filter(({ kind }) => kind === 'words')
          .map(({ text }) => text)
          .join(''),
      );
    expect(own.join('\n')).not.toMatch(/\b(the|your|you|with|not|than|each|up to|and)\b/i);
    expect(lines.map(lineText)).toContain('Own words stay.');
    expect(own.join('\n')).toMatch(/Tamaño de la porción[\s\S]*Sodio[\s\S]*Ingredientes/);
  });

  it('[HND-10] portions, figures and days by the usage of each language (CLDR es-US groups with commas)', () => {
    expect([figure(2300), figure(1234567), figure(38.5), figure(999)]).toEqual(['2,300', '1,234,567', '38.5', '999']);
    expect(es.portion({ measure: 'slices', count: 4 })).toBe('4 rebanadas');
    expect(es.portion({ measure: 'cup', count: 1.5 })).toBe('1 1/2 tazas');
    expect(es.portion({ measure: 'cup', count: 0.5 })).toBe('1/2 taza');
    expect(es.portion({ measure: 'scoop', count: 2 })).toBe('2 scoop');
    expect(lineText(es.writtenOn('2026-11-15'))).toBe('Escrito el 15 de noviembre de 2026');
    expect(lineText(en.writtenOn('2026-11-15'))).toBe('Written November 15, 2026');
    expect([es.meal('Lunch'), es.meal('midnight tea'), es.meal('constructor')]).toEqual(['Almuerzo', 'Midnight tea', 'Constructor']);
  });
});

// "Up to 2,000 mg" told as "at least 2,000 mg" turns a ceiling into a floor: the client would eat more of what is limited.
describe('ceilings and floors', () => {
  it.each([
    ['at-most', 'up to 2,000 mg', 'hasta 2,000 mg'],
    ['at-least', 'at least 2,000 mg', 'al menos 2,000 mg'],
    ['below', 'less than 2,000 mg', 'menos de 2,000 mg'],
  ] as const)('[HND-10] "%s" says the same in both languages', (kind, english, spanish) => {
    expect([en, es].map(words => words.asked({ kind, figure: '2,000 mg' }))).toEqual([english, spanish]);
    if (kind !== 'at-least')
      expect([en.askedHead[kind], es.askedHead[kind]]).toEqual([english, spanish].map(text => text.replace(' 2,000 mg', '')));
  });

  it('[HND-3] [HND-10] a signed ceiling is one on the Spanish page', () => {
    const { value } = buildHandout(handoutInput(foods, draftWith({ language: 'es', prescription: everything })));
    const told = JSON.stringify(value.sections);
    expect(told).toContain('hasta 2,500 mg');
    expect(told).not.toContain('al menos 2,500 mg');
  });
});

describe('the reading grade', () => {
  it.each(settings)('[HND-12] %s: the program’s sentences measure grade 6 or lower, with and without food names', setting => {
    const { value } = buildHandout(handoutInput(foods, draftWith({ setting, prescription: everything, avoidedFoods: ['garlic'] })));
    const grade = gradeOf(value)!;
    expect(grade.program.sentences).toBeGreaterThan(40);
    expect(grade.program.withoutFoodNames).toBeLessThanOrEqual(targetGrade);
    expect(grade.program.withFoodNames).toBeLessThanOrEqual(targetGrade);
    expect(grade.program.withoutFoodNames).toBeGreaterThan(0);
  });

  it('[HND-12] hard sentences of the author stand apart from the program’s, hardest first, with why', () => {
    const notes = [
      'Eat what you like.',
      'Recommendations regarding phosphorus additives necessitate individualized interpretation.',
      'If you go to the shop and you see a can that has a lot of salt in it then put it back on the shelf and ask us what to buy.',
    ];
    const { hardest, author } = gradeOf(buildHandout(handoutInput(foods, draftWith({ notes }))).value)!;
    expect(hardest.author.map(({ text, why }) => [text, why])).toEqual([
      [notes[1], ['long words']],
      [notes[2], ['long sentence']],
    ]);
    expect(hardest.author[0]!.longWords).toContain('individualized');
    expect(author.sentences).toBe(3);
    expect(hardest.program.map(({ text }) => text)).not.toContain(notes[1]);
    for (const { grade } of hardest.program) expect(grade).toBeGreaterThan(targetGrade);
  });

  it('[HND-11] food names count in one figure and not in the other; Spanish is not graded', () => {
    const long = slices('Extraordinarily caramelized buttermilk-marinated turkey', 900);
    const near = slices('Extraordinarily unadulterated turkey', 100);
    const { program } = gradeOf(buildHandout(handoutInput([long, near], draftWith())).value)!;
    const { program: short } = gradeOf(buildHandout(handoutInput([slices('Turkey ham', 900), slices('Turkey', 100)], draftWith())).value)!;
    expect(program.withoutFoodNames).toBe(short.withoutFoodNames);
    expect(program.withFoodNames).toBeGreaterThan(short.withFoodNames!);
    expect(gradeOf(buildHandout(handoutInput(foods, draftWith({ language: 'es' }))).value)).toBeUndefined();
  });
});
