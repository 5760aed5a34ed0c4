import { describe, expect, test } from 'vitest';
import { findFormula, runFormula } from './formulaCatalog.ts';
import { printedWords, withUnit } from './formulaResult.ts';
import { formulaToJson, resultToJson } from './formulaToJson.ts';
import { feetAndInches, rangeWords, readFigure } from './readInput.ts';

const weight = {
  label: 'Weight',
  units: [
    ['kg', 1],
    ['lb', 0.45359237],
  ],
  lo: 20,
  hi: 400,
} as const;
const height = {
  label: 'Height',
  units: [
    ['cm', 1],
    [feetAndInches, 2.54],
    ['m', 100],
  ],
  lo: 100,
  hi: 250,
} as const;
const ratio = { label: 'Ratio', units: [['', 1]], lo: 0, hi: 1 } as const;
const grams = { label: 'Grams', units: [['g', 1]], lo: 0, hi: 100 } as const;

describe('a figure as somebody types it', () => {
  const canonical = (json: unknown, asked: Parameters<typeof readFigure>[1] = weight) => {
    const read = readFigure(json, asked);
    return read.ok ? read.value.canonical : [read.fault.code, read.fault.found, read.fault.expected];
  };

  test.each<[unknown, unknown]>([
    ['72 kg', 72],
    ['72kg', 72],
    [' 72.5 KG ', 72.5],
    ['100 lb', 45.359237],
    [{ value: 72, unit: 'kg' }, 72],
    [{ value: '72', unit: ' kg ' }, 72],
    [{ value: '72 kg', unit: 'kg' }, 72],
    [20, ['no-unit', '20', 'its unit: kg or lb']],
    [{ value: 72 }, ['no-unit', '72', 'its unit: kg or lb']],
    [{ value: 72, unit: 7 }, ['no-unit', '72', 'its unit: kg or lb']],
    [{ value: '', unit: 'kg' }, ['input-missing', 'nothing', 'a number in kg or lb']],
    [{ value: null, unit: 'kg' }, ['input-missing', 'nothing', 'a number in kg or lb']],
    [undefined, ['input-missing', 'nothing', 'a number in kg or lb']],
    [null, ['input-missing', 'nothing', 'a number in kg or lb']],
    ['  ', ['input-missing', 'nothing', 'a number in kg or lb']],
    [true, ['not-a-number', 'true', 'a number, with a point for decimals']],
    [{ value: '72 lb', unit: 'kg' }, ['not-a-number', '72 lb kg', 'a number, with a point for decimals']],
    ['1e400 kg', ['not-a-number', '1e400 kg', 'a number, with a point for decimals']],
    ['x'.repeat(50), ['not-a-number', 'x'.repeat(40), 'a number, with a point for decimals']],
    ['72 stone', ['unit-not-known', '72 stone', 'a figure in kg or lb']],
    // At the ends: 20 kg, 400 kg, and what the other unit would make possible.
    ['20 kg', 20],
    ['400 kg', 400],
    ['19.9 kg', ['impossible', '19.9 kg', '20 to 400 kg']],
    ['401 kg', ['impossible', '401 kg', '20 to 400 kg; was it lb?']],
    ['882 lb', ['impossible', '882 lb', '44.1 to 881.8 lb']],
    ['44 lb', ['impossible', '44 lb', '44.1 to 881.8 lb; was it kg?']],
    ['900 kg', ['impossible', '900 kg', '20 to 400 kg']],
  ])('[CALC-4] a weight of %j: %j', (json, outcome) => {
    expect(canonical(json)).toEqual(outcome);
  });

  const inFeet = 'feet and inches, such as 5 ft 9 in';
  test.each<[unknown, unknown]>([
    ['175 cm', 175],
    ['5 ft 9 in', 175.26],
    ['5\'9"', 175.26],
    ['5 ft', 152.4],
    ['5 ft 11.5 in', 181.61],
    [{ value: '5 9', unit: 'ft in' }, 175.26],
    [{ value: '5 ft 9 in', unit: 'ft in' }, 175.26],
    ['5 ft 12 in', ['not-a-number', '5 ft 12 in', inFeet]],
    ['5 ft nine', ['not-a-number', '5 ft nine', inFeet]],
    ['9 ft 0 in', ['impossible', '9 ft 0 in', '3 ft 4 in to 8 ft 2 in; was it cm?']],
    ['100 cm', 100],
    ['2.5 m', 250],
    ['1.75 cm', ['impossible', '1.75 cm', '100 to 250 cm; was it m?']],
  ])('[CALC-4] a height of %j: %j', (json, outcome) => {
    expect(canonical(json, height)).toEqual(outcome);
  });

  test('[CALC-4] without a unit where none or one is asked for', () => {
    expect([canonical(0.5, ratio), canonical('0.5', ratio), canonical(50, grams), canonical('50 g', grams)]).toEqual([0.5, 0.5, 50, 50]);
    expect(canonical('', ratio)).toEqual(['input-missing', 'nothing', 'a number']);
    expect(canonical('', grams)).toEqual(['input-missing', 'nothing', 'a number in g']);
    expect(canonical(2, ratio)).toEqual(['impossible', '2', '0 to 1']);
  });

  test('[CALC-4] what is possible in a unit, its ends inward', () => {
    expect(rangeWords(weight, ['kg', 1])).toBe('20 to 400 kg');
    // 20 / 0.45359237 = 44.09; 400 / 0.45359237 = 881.85.
    expect(rangeWords(weight, ['lb', 0.45359237])).toBe('44.1 to 881.8 lb');
    expect(rangeWords({ lo: 0.25, hi: 12.34 }, ['g/dL', 1])).toBe('0.25 to 12.34 g/dL');
    // 0.1 / 88.4 = 0.00113 and 99 / 88.4 = 1.1199: three decimals under 1, one from there on.
    expect(rangeWords({ lo: 0.1, hi: 99 }, ['mg/dL', 88.4])).toBe('0.002 to 1.1 mg/dL');
    expect(rangeWords({ lo: 88.4, hi: 884 }, ['mg/dL', 88.4])).toBe('1 to 10 mg/dL');
    expect(rangeWords({ lo: 150, hi: 184 }, [feetAndInches, 2.54])).toBe('5 ft 0 in to 6 ft 0 in');
  });
});

describe('a formula as it is sent', () => {
  test('[CALC-8] has its inputs with what is possible in each unit, its results and its worked example in words', () => {
    const bmi = formulaToJson(findFormula('body-mass-index')!);
    expect(bmi).toMatchObject({ name: 'body-mass-index', example: { results: [{ name: 'bmi', text: '26.8 kg/m²' }] } });
    expect(bmi.inputs[0]).toEqual({
      name: 'weight',
      label: 'Weight',
      kind: 'figure',
      required: true,
      help: 'dry weight on dialysis',
      units: [
        { unit: 'kg', possible: '20 to 400 kg' },
        { unit: 'lb', possible: '44.1 to 881.8 lb' },
      ],
      options: [],
    });
    expect(bmi.results).toStrictEqual([{ name: 'bmi', label: expect.any(String), unit: 'kg/m²' }]);
    const rate = formulaToJson(findFormula('egfr-ckd-epi-2021')!);
    expect(rate.inputs[0]).toMatchObject({ kind: 'choice', units: [], options: [{ key: 'female' }, { key: 'male' }] });
    expect(rate.results[1]).toStrictEqual({ name: 'category', label: 'Category of the number shown' });
    const wasting = formulaToJson(findFormula('protein-energy-wasting')!);
    expect(wasting.inputs[0]).toMatchObject({
      kind: 'yes-no',
      options: [
        { key: 'yes', words: 'yes' },
        { key: 'no', words: 'no' },
      ],
    });
    expect(formulaToJson(findFormula('protein-equivalent-peritoneal')!)).toMatchObject({
      inputs: [{ name: 'ureaNitrogen' }, { name: 'dialysateProtein', required: false, help: 'where it is measured' }],
      fills: [{ result: 'protein', field: 'intake.proteinG', label: 'protein eaten' }],
    });
  });

  test('[CALC-8] results: words, a figure in full and rounded, a range with an open end as null', () => {
    const sent = (name: string, inputs: Record<string, unknown>) => resultToJson(runFormula(name, inputs).value!);
    expect(sent('body-mass-index', { weight: '82 kg', height: '175 cm' })).toMatchObject([
      { kind: 'figure', name: 'bmi', text: '26.8 kg/m²', value: expect.closeTo(26.7755, 4), rounded: 26.8, unit: 'kg/m²' },
    ]);
    expect(sent('protein-per-day', { from: 0.55, to: 0.6, weight: '71.3 kg' })).toMatchObject([
      { kind: 'range', range: [39.215, 42.78], rounded: [39.2, 42.8], unit: 'g/day' },
    ]);
    expect(sent('protein-per-day', { from: 1.2, weight: '70 kg' })).toMatchObject([{ range: [84, null], rounded: [84, null] }]);
    expect(sent('egfr-ckd-epi-2021', { sex: 'female', age: 60, creatinine: '1.5 mg/dL' })[1]).toMatchObject({
      kind: 'words',
      name: 'category',
      text: expect.stringContaining('G3b'),
    });
  });

  test('[CALC-8] what a source prints, with its unit', () => {
    expect(printedWords('met', { label: '' })).toBe('met');
    expect(printedWords(-6.58, { label: '', unit: 'mEq/day', decimals: 1 })).toBe('−6.6 mEq/day');
    expect(printedWords([38.5, 42], { label: '', unit: 'g/day', decimals: 1 })).toBe('38.5 – 42.0 g/day');
    expect(printedWords(3, { label: '' })).toBe('3');
    expect([withUnit('5', ''), withUnit('5', '%'), withUnit('5', 'kg')]).toEqual(['5', '5%', '5 kg']);
  });
});

describe('formulas of the catalog beside their worked examples', () => {
  const figures = (name: string, inputs: Record<string, unknown>) =>
    Object.fromEntries((runFormula(name, inputs).value ?? []).map(one => [one.name, one.text]));
  const faults = (name: string, inputs: Record<string, unknown>) =>
    runFormula(name, inputs).issues.map(({ code, place }) => [code, place.heading]);

  // 22.99 and 39.10 mg a mmol (facts 5, F8); 2.542 g of salt; urine is about 90 % of intake.
  test('[CALC-2] minerals of urine that come in mg', () => {
    expect(figures('sodium-in-urine', { sodium: '2299 mg' })).toMatchObject({
      mg: '2299 mg/day',
      mmol: '100.0 mmol/day',
      salt: '5.8 g/day',
    });
    expect(figures('potassium-in-urine', { potassium: '3910 mg' })).toMatchObject({ mmol: '100.0 mmol/day', intake: '4344 mg/day' });
    // 21.4 g of urea by 2.14.
    expect(figures('urea-nitrogen-from-urea', { urea: '21.4 g' })).toEqual({ ureaNitrogen: '10.00 g' });
  });

  test('[CALC-2] what may be left out is left out: albumin, urine, a day’s liters, protein in the dialysate', () => {
    const between = { bunAfter: '18 mg/dL', bunBeforeNext: '70 mg/dL', gapHours: 44 };
    expect(Object.values(figures('npcr-between-sessions', between))).toEqual([expect.stringMatching(/^1\.24/)]);
    expect(Object.keys(figures('dialysate-glucose-grodstein', { meanDextrose: 2.4375 }))).toEqual(['perLiter']);
    expect(Object.values(figures('protein-equivalent-peritoneal', { ureaNitrogen: 6 }))).toEqual(['65.1 g/day']);
  });

  // Facts 3.8: 10 L of 2.5 % at 40 %: 340 kcal. One kind of bag is enough; none is no dialysis.
  test('[CALC-2] energy of the dialysate of one kind of bag', () => {
    const name = 'dialysate-glucose-energy';
    expect(figures(name, { medium: 10, absorbed: 40 })).toMatchObject({ energy: '340 kcal/day', infused: '250 g/day' });
    expect(figures(name, { low: 4, absorbed: 60 })).toMatchObject({ infused: '60 g/day' });
    expect(figures(name, { high: 2, absorbed: 60 })).toMatchObject({ infused: '85 g/day' });
    expect(faults(name, { absorbed: 60 })).toHaveLength(1);
    expect(faults(name, { high: 30, medium: 30, absorbed: 60 })).toHaveLength(1);
  });

  test('[CALC-4] what several figures together cannot be has no place; a choice and a yes or no have theirs', () => {
    expect(faults('anion-gap', { sodium: '90 mmol/L', chloride: '170 mmol/L', bicarbonate: '2 mmol/L', albumin: '4 g/dL' })).toEqual([
      ['impossible', undefined],
    ]);
    expect(faults('egfr-ckd-epi-2021', { age: 60, creatinine: '1.5 mg/dL' })).toEqual([['input-missing', 'sex']]);
    expect(faults('protein-energy-wasting', { lossCause: 'wanted' })).toEqual([['input-missing', 'onDialysis']]);
    expect(faults('protein-energy-wasting', { onDialysis: 'maybe', lossCause: 'wanted' })).toEqual([['choice-not-known', 'onDialysis']]);
  });

  test('[CALC-2] wasting: prealbumin counts on dialysis, a loss by its cause, and what shows it is told', () => {
    const of = (inputs: Record<string, unknown>) => figures('protein-energy-wasting', { lossCause: 'unintended', ...inputs });
    expect(of({ onDialysis: 'yes', prealbumin: '20 mg/dL' })).toMatchObject({ blood: 'met', shownBy: 'prealbumin 20 mg/dL' });
    expect(of({ onDialysis: 'no', prealbumin: '20 mg/dL' })).toMatchObject({ blood: 'not known' });
    for (const loss of [{ loss3Months: 6 }, { loss6Months: 11 }]) {
      expect(of({ onDialysis: 'no', bmi: 25, ...loss })).toMatchObject({ bodyMass: 'met' });
      expect(of({ onDialysis: 'no', bmi: 25, ...loss, lossCause: 'wanted' })).toMatchObject({ bodyMass: 'not met' });
    }
    const well = { onDialysis: 'no', albumin: '4.2 g/dL', bmi: 25, muscleLoss3Months: 0, protein: 1, energy: 30 };
    expect(of(well)).toMatchObject({ told: 'not met', met: '0' });
    expect(of(well)).not.toHaveProperty('shownBy');
  });
});
