/** The rule of a topic, the steps of a label, the parts of a page and its grades. */
import { describe, expect, it } from 'vitest';
import { foodWith } from '#core/plate/plateFixture.ts';
import type { Test, Yardstick } from '#core/yardstick/yardstick.ts';
import { buildHandout } from './buildHandout.ts';
import { gradeOf } from './gradeOf.ts';
import type { HandoutSurvey } from './handout.ts';
import { draftWith, handoutInput, noPhosphate, plate, slices, sodiumTarget, topicWith } from './handoutFixture.ts';
import type { Block, HandoutPage, SectionId } from './handoutPage.ts';
import { labelSteps, lookFor } from './labelSteps.ts';
import { authorLine, foodRun, type joined, line, lineText, programLine } from './line.ts';
import { looksAtSodium, topicRules } from './topicRule.ts';
import { wordsIn } from './words/inLanguage.ts';

const words = wordsIn.en;
const source = { kind: 'clinic', text: 'own clinic' } as const;
const signed = (targets: readonly unknown[], more = {}) =>
  draftWith({ prescription: { targets, signed: { by: 'A. Writer', on: '2026-11-14' } }, ...more });

const section = ({ value }: { readonly value: HandoutPage }, id: SectionId) => value.sections.find(one => one.id === id);
const textOf = (blocks: readonly Block[] = []): readonly string[] =>
  blocks.flatMap(block => {
    if (block.kind === 'list') return block.lines.map(lineText);
    if (block.kind === 'foods')
      return block.rows.flatMap(({ name, maker = '', keepTo, told }) => [[name, maker, ...keepTo, ...told].join(' | ')]);
    return block.kind === 'table' ? block.head : [lineText(block.line)];
  });
const surveyOf = (...args: Parameters<typeof handoutInput>): HandoutSurvey => handoutInput(...args).surveys[0]!;

function yardstickOf(...tests: Partial<Test>[]): Yardstick {
  const whole = tests.map(
    (test, at): Test => ({ id: `t${at}`, measure: { kind: 'nutrient', nutrient: 'sodiumMg' }, basis: 'on-plate', source, ...test }),
  );
  return { id: 'own', title: 'own', purpose: '', tests: whole, classScales: [], settings: 'any', cautions: [] };
}

describe('the rule of a topic', () => {
  const rules = (tests: Partial<Test>[], on = plate) =>
    topicRules([surveyOf([], topicWith('x'), yardstickOf(...tests), on)], words).map(lineText);
  const alone = { ...plate, companions: [] };
  const sodiumToEnergy = { measure: { kind: 'difference', nutrient: 'sodiumMg', minus: 'energyKcal' } } as const;

  it('[HND-3] each kind in words', () => {
    expect(
      rules(
        [
          { atMost: 140, basis: 'per-serving' },
          { below: 5, basis: 'as-eaten' },
        ],
        alone,
      ),
    ).toEqual(['Sodium: up to 140 mg in one serving.', 'Sodium: less than 5 mg in the portion you eat.']);
    expect(
      rules(
        [
          { measure: { kind: 'additive', class: 'phosphate' }, absent: true },
          { measure: { kind: 'ingredient', kin: 'garlic' }, absent: true },
        ],
        alone,
      ),
    ).toEqual(['No phosphate additive is named on the label.', 'No garlic is named on the label.']);
    expect(rules([{ ...sodiumToEnergy, atMost: 0 }], alone)).toEqual([lineText(words.sodiumToEnergy)]);
    for (const other of [
      { ...sodiumToEnergy, atMost: 50 },
      { ...sodiumToEnergy, atMost: 0, basis: 'as-eaten' as const },
      { atLeast: 5 },
      { measure: { kind: 'nutrient', nutrient: 'proteinG' } as const, atMost: 5 },
      { measure: { kind: 'ratio', nutrient: 'sodiumMg', per: 'energyKcal' } as const, atMost: 0 },
    ])
      expect(rules([other], alone)[0]).toMatch(/^The rule we used: /);
  });

  it('[HND-3] what companions leave room for, in whole mg, where it is one at least', () => {
    const room = (energyKcal: number, sodiumMg: number) =>
      rules([{ ...sodiumToEnergy, atMost: 0 }], {
        ...plate,
        companions: [{ food: foodWith('Roll', { panel: { energyKcal, sodiumMg } }), portion: { servings: 1.01 } }],
      })[1];
    // 1.01 × (160 − 20) is 141.4.
    expect(room(160, 20)).toBe('With Roll (1.01 servings), the food may have as many mg of sodium as calories, and 141 mg more.');
    expect(room(20, 20)).toBeUndefined();
    expect(rules([{ atMost: 140 }])).toHaveLength(1);
    expect(topicRules([], words)).toEqual([]);
  });

  it('[HND-5] the steps of a label follow the rule', () => {
    const steps = (tests: Partial<Test>[], parts?: readonly string[]) => {
      const draft = { ...topicWith('x'), ...(parts === undefined ? {} : { parts: parts as ('fridge' | 'numbers' | 'labels')[] }) };
      const survey = surveyOf([], draft, yardstickOf(...tests));
      return { said: labelSteps(draft, [survey], words).map(lineText), look: lookFor(draft, [survey]), sodium: looksAtSodium(survey) };
    };
    const phosphate = { measure: { kind: 'additive', class: 'phosphate' }, absent: true } as const;
    const garlic = { measure: { kind: 'ingredient', kin: 'garlic' }, absent: true } as const;
    const both = steps([{ atMost: 140 }, phosphate, garlic]);
    expect(both.look).toEqual({ sodium: true, phosphate: true, potassium: false, avoided: ['garlic'] });
    expect(both.said).toEqual([
      lineText(words.steps.serving),
      lineText(words.steps.sodiumOfTopic),
      lineText(words.steps.percent),
      lineText(words.steps.ingredients),
      lineText(words.steps.phosphate),
      'Look for what you do not eat: garlic.',
      lineText(words.steps.noneNamed),
      lineText(words.steps.again),
    ]);
    expect(steps([phosphate])).toMatchObject({ look: { sodium: false, phosphate: true }, sodium: false });
    expect(steps([phosphate]).said).not.toContain(lineText(words.noSodiumNumber));
    expect(steps([{ atMost: 140 }]).said).toHaveLength(4);
    // The rule itself, where it stands nowhere else.
    expect(steps([{ atMost: 140 }], ['labels']).said[1]).toBe('Sodium: up to 140 mg in all that you eat with it.');
    for (const part of ['fridge', 'numbers']) expect(steps([{ atMost: 140 }], [part]).said[1]).toBe(lineText(words.steps.sodiumOfTopic));
    expect(labelSteps(topicWith('x'), [], words).map(lineText)).toContain(lineText(words.noSodiumNumber));
    expect(lookFor(signed([noPhosphate]), [])).toEqual({ sodium: false, phosphate: true, potassium: false, avoided: [] });
  });
});

describe('the page', () => {
  it('[HND-9] the parts that were picked, with title, notes and who wrote it', () => {
    const ids = (parts?: readonly string[], foods = [slices('Ham', 100), slices('Salt', 900), slices('Silent', undefined)]) =>
      buildHandout(handoutInput(foods, draftWith({ notes: ['Hello.'], ...(parts === undefined ? {} : { parts }) }))).value.sections.map(
        ({ id }) => id,
      );
    expect(ids()).toEqual(['fridge', 'notes', 'numbers', 'foods', 'ask', 'labels', 'swaps', 'shopping', 'cautions']);
    expect(ids([])).toEqual(['notes', 'call', 'cautions']);
    for (const part of ['numbers', 'labels', 'swaps', 'shopping']) expect(ids([part])).toEqual(['notes', part, 'call', 'cautions']);
    expect(ids(['foods'])).toEqual(['notes', 'foods', 'ask', 'call', 'cautions']);
    const built = (more: Record<string, unknown>) => buildHandout(handoutInput([], draftWith(more))).value;
    expect(lineText(built({}).title)).toBe('Food that fits with hemodialysis');
    expect(built({ title: 'My title' }).title).toEqual(authorLine('My title'));
    expect(built({ author: { name: 'B. Writer' } }).about.map(lineText)[1]).toBe('From B. Writer');
    expect(built({}).about.map(lineText)[1]).toBe('From A. Writer, RDN');
  });

  it('[HND-3] the part of numbers says what there is and what there is not', () => {
    const numbers = (targets: readonly unknown[]) => textOf(section(buildHandout(handoutInput([], signed(targets))), 'numbers')?.blocks);
    const has = (targets: readonly unknown[]) => {
      const said = numbers(targets);
      return [words.noNumbers, words.sharesOfDay, words.noSodiumNumber, words.fluidCounts].map(one => said.includes(lineText(one)));
    };
    expect(has([])).toEqual([true, false, true, false]);
    expect(has([sodiumTarget])).toEqual([false, true, false, false]);
    expect(has([noPhosphate])).toEqual([false, false, true, false]);
    expect(has([{ item: 'fluid', unit: 'mL', range: { lo: 0, hi: 1000 }, limit: 'at-most' }])).toEqual([false, false, true, true]);
    const topic = buildHandout(handoutInput([], topicWith('own'), yardstickOf({ atMost: 140 })));
    expect(section(topic, 'numbers')?.title).toBe('The rule on this page');
    expect(section(buildHandout(handoutInput([])), 'numbers')?.title).toBe('Your numbers');
    const signer = draftWith({
      prescription: { targets: [sodiumTarget], signed: { by: 'B. Writer', credentials: 'RDN', on: '2026-11-14' } },
    });
    expect(textOf(section(buildHandout(handoutInput([], signer)), 'numbers')?.blocks)[0]).toContain('by B. Writer, RDN.');
  });

  it('[HND-9] cautions tell from when to when labels were read, and to read again where no steps say so', () => {
    const cautions = (foods: Parameters<typeof handoutInput>[0], more = {}) =>
      textOf(section(buildHandout(handoutInput(foods, draftWith(more))), 'cautions')?.blocks);
    const read = (name: string, readOn: string) => slices(name, 100, { readOn });
    expect(cautions([read('A', '2026-11-03'), read('B', '2026-11-01'), read('C', '2026-11-02')])).toContain(
      'We read these labels from November 1, 2026 to November 3, 2026.',
    );
    expect(cautions([read('A', '2026-11-03')]).at(-1)).toBe('We read these labels on November 3, 2026.');
    expect(cautions([]).join()).not.toContain('We read these labels');
    expect(cautions([], { parts: [] }).at(-1)).toBe(lineText(words.steps.again));
    expect(cautions([])).toContain(lineText(words.clientCaution));
    expect(textOf(section(buildHandout(handoutInput([], topicWith('own'), yardstickOf({ atMost: 1 }))), 'cautions')?.blocks)).not.toContain(
      lineText(words.clientCaution),
    );
  });

  it('[HND-13] a food that was left out stands nowhere; one that is not there is told', () => {
    const draft = draftWith({ categories: [{ category: 'slices', plateId: 'p', meal: 'lunch', leftOut: ['ham', 'gone'] }] });
    const built = buildHandout(handoutInput([slices('Ham', 100), slices('Loaf', 100)], draft));
    expect(JSON.stringify(built.value)).not.toContain('Ham');
    expect(built.issues).toMatchObject([{ code: 'handout-food-not-found', place: { heading: 'categories[0].leftOut[1]' }, found: 'gone' }]);
  });
});

describe('grades', () => {
  const pageOf = (...lines: Parameters<typeof joined>[0]): HandoutPage => ({
    ...buildHandout(handoutInput([])).value,
    sections: [{ id: 'notes', title: '', blocks: lines.map(one => ({ kind: 'text', line: one })) }],
  });

  // Kincaid: 0.39 × words / sentences + 11.8 × syllables / words − 15.59.
  it('[HND-11] by hand: "Eat the ham." is 3 words and syllables, "Potassium." 1 word of 4', () => {
    const graded = gradeOf(pageOf(programLine('Eat the ham.'), authorLine('Potassium.')))!;
    expect(graded.program).toEqual({ withFoodNames: -2.6, withoutFoodNames: -2.6, sentences: 1, words: 3 });
    // 0.39 + 47.2 − 15.59.
    expect(graded.author).toEqual({ withFoodNames: 32, withoutFoodNames: 32, sentences: 1, words: 1 });
    expect(graded.hardest.program).toEqual([]);
    expect(graded.hardest.author).toEqual([{ text: 'Potassium.', grade: 32, words: 1, why: ['long words'], longWords: ['potassium'] }]);
    expect(graded.all).toMatchObject({ sentences: 2, words: 4 });
    expect(gradeOf({ ...pageOf(), language: 'es' })).toBeUndefined();
    expect(gradeOf(pageOf())!.all).toEqual({ sentences: 0, words: 0 });
  });

  it('[HND-11] a sentence that stands there for many foods counts once without their names', () => {
    const about = (name: string, mg: number) => line`Eat ${foodRun(name)}. It has ${String(mg)} mg.`;
    const { program } = gradeOf(pageOf(about('Ham', 100), about('Banana', 1200), about('Fish', 5)))!;
    expect(program).toMatchObject({ sentences: 6, words: 18 });
    // "Eat." and "It has # mg." once each: 5 words, 5 syllables.
    expect(program.withoutFoodNames).toBe(-2.8);
    // With names 18 words; banana has 3 syllables: 20.
    expect(program.withFoodNames).toBe(-1.3);
  });

  it('[HND-11] more than fifteen words make a long sentence; the hardest ten are told, hardest first', () => {
    const long = (words: number) => `${'go '.repeat(words - 1)}potassium.`;
    const why = (text: string) => gradeOf(pageOf(programLine(text)))!.hardest.program[0]?.why;
    expect(why('Potassium additives everywhere today go go.')).toEqual(['long words']);
    expect(why(`${'walking '.repeat(15)}on.`)).toEqual(['long sentence', 'long words']);
    expect(why(`${'walking '.repeat(14)}on.`)).toEqual(['long words']);
    expect(why(`${long(45)}`)).toEqual(['long sentence']);
    const many = Array.from({ length: 12 }, (_, at) => programLine(`${'potassium '.repeat(at + 1)}today.`));
    const hardest = gradeOf(pageOf(...many))!.hardest.program;
    expect(hardest).toHaveLength(10);
    expect(hardest.map(({ grade }) => grade)).toEqual([...hardest.map(({ grade }) => grade)].sort((a, b) => b - a));
  });
});
