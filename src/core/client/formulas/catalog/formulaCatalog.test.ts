import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findFormula, formulaCatalog, runFormula } from './formulaCatalog.ts';

const folder = fileURLToPath(new URL('../', import.meta.url));

/** Exported functions that are no formula, each with why. */
const noFormula: Readonly<Record<string, string>> = {
  computed: 'wraps a value',
  refuse: 'wraps a refusal',
  firstImpossible: 'checks inputs',
  isShort: 'a remark on a height',
};

const shownOf = (name: string, inputs: Record<string, unknown>) =>
  Object.fromEntries(
    (runFormula(name, inputs).value ?? []).map(one => [
      one.name,
      one.kind === 'words' ? one.text : one.kind === 'figure' ? one.rounded : [one.rounded.lo, one.rounded.hi],
    ]),
  );

describe('the catalog of formulas', () => {
  it('[CALC-1] no function of the folder that computes something is left out', () => {
    const read = (name: string) => readFileSync(`${folder}${name}`, 'utf8');
    const files = readdirSync(folder).filter(name => name.endsWith('.ts') && !name.endsWith('.test.ts'));
    const used = [
      ...readdirSync(`${folder}catalog`)
        .filter(name => !name.endsWith('.test.ts'))
        .map(name => read(`catalog/${name}`)),
    ].join('\n');
    const functions = files.flatMap(file => [...read(file).matchAll(/^export function (\w+)/gm)].map(([, name]) => name!));
    expect(functions.length).toBeGreaterThan(40);
    // The conversions between units of weight and height are held by their units.
    const conversions = ['weightKgFrom'];
    const isUsed = (name: string) => new RegExp(`\\b${name}\\(`).test(used);
    expect(functions.filter(name => !isUsed(name) && !Object.hasOwn(noFormula, name) && !conversions.includes(name))).toEqual([]);
  });

  it.each(formulaCatalog.map(one => [one.name, one] as const))(
    '[CALC-2] the worked example of %s comes out as its source has it',
    (name, { example, inputs }) => {
      expect(runFormula(name, example.inputs).issues).toEqual([]);
      expect(shownOf(name, example.inputs)).toMatchObject(example.results);
      for (const given of Object.keys(example.inputs)) expect(inputs.map(one => one.name)).toContain(given);
    },
  );

  it('[CALC-3] every formula says what it is for, how it is worked out, where it comes from and when not to believe it', () => {
    expect(new Set(formulaCatalog.map(({ name }) => name)).size).toBe(formulaCatalog.length);
    for (const { name, title, purpose, formula, sources, cautions, example, inputs } of formulaCatalog) {
      expect(name).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
      for (const words of [title, purpose, ...formula, example.source]) expect(words, name).not.toBe('');
      expect([formula.length, sources.length, cautions.length].every(Boolean), name).toBe(true);
      for (const input of inputs) expect(input.name, name).toMatch(/^[a-z][A-Za-z0-9]*$/);
    }
    expect(findFormula('no-such')).toBeUndefined();
    expect(runFormula('no-such', {}).issues).toMatchObject([{ code: 'formula-not-found' }]);
  });

  it('[CALC-4] everything that stands in the way is told with its place, what was found and what is expected', () => {
    const issuesOf = (name: string, inputs: Record<string, unknown>) =>
      runFormula(name, inputs).issues.map(({ code, place, found, expected }) => [code, place.heading, found, expected]);
    expect(issuesOf('body-mass-index', {})).toEqual([
      ['input-missing', 'weight', 'nothing', 'a number in kg or lb'],
      ['input-missing', 'height', 'nothing', 'a number in cm or ft in or in or m'],
    ]);
    expect(issuesOf('body-mass-index', { weight: 82, height: 'tall', size: 3 })).toEqual([
      ['no-unit', 'weight', '82', 'its unit: kg or lb'],
      ['not-a-number', 'height', 'tall', 'a number, with a point for decimals'],
      ['input-not-known', 'size', 'size', 'one of: weight, height'],
    ]);
    expect(issuesOf('body-mass-index', { weight: '700 kg', height: { value: 175, unit: 'furlong' } })).toEqual([
      ['impossible', 'weight', '700 kg', '20 to 400 kg; was it lb?'],
      ['unit-not-known', 'height', '175 furlong', 'a figure in cm or ft in or in or m'],
    ]);
    expect(issuesOf('egfr-ckd-epi-2021', { sex: 'male', age: 16, creatinine: '132.6 mg/dL' })).toEqual([
      ['impossible', 'age', '16', '18 to 120 years'],
      ['impossible', 'creatinine', '132.6 mg/dL', '0.1 to 30 mg/dL; was it umol/L?'],
    ]);
    expect(issuesOf('urea-reduction-ratio', { bunBefore: '20 mg/dL', bunAfter: '70 mg/dL' })).toEqual([
      ['impossible', 'bunAfter', '70 mg/dL', '1 to 20 mg/dL'],
    ]);
    expect(issuesOf('phosphorus-to-protein', { phosphorus: 40, protein: 0 })).toEqual([
      ['not-defined', 'protein', '0 g', 'more than 0 g: the ratio is not defined without protein'],
    ]);
    expect(issuesOf('potassium-after-cooking', { rawPotassium: '1,500', method: 'fried' })).toEqual([
      ['not-a-number', 'rawPotassium', '1,500', 'a number, with a point for decimals'],
      ['choice-not-known', 'method', 'fried', 'boiled-cubes-1-cm or boiled-shredded or soaked-only or baked-roast-microwave-steam'],
    ]);
    expect(issuesOf('interdialytic-weight-gain', { before: '120 kg', dry: '70 kg' })).toEqual([
      ['impossible', undefined, 'these figures together', 'others: gain 50 kg cannot be: expected -15 to 25 kg.'],
    ]);
    expect(issuesOf('npcr-between-sessions', { bunAfter: '18 mg/dL', bunBeforeNext: '70 mg/dL', gapHours: 44, ureaNitrogen: 3 })).toEqual([
      ['not-defined', 'weight', 'nothing', 'the weight that goes with the urine'],
    ]);
  });

  it('[CALC-5] a unit that could be another one is asked for; every unit of an input gives the same result', () => {
    expect(shownOf('body-mass-index', { weight: '180.78 lb', height: '5 ft 9 in' })).toEqual({ bmi: 26.7 });
    expect(shownOf('body-mass-index', { weight: { value: 82, unit: 'KG' }, height: { value: '1.75', unit: 'm' } })).toEqual({ bmi: 26.8 });
    expect(shownOf('body-mass-index', { weight: '82kg', height: { value: '5\'9"', unit: 'ft in' } })).toEqual({ bmi: 26.7 });
    expect(shownOf('egfr-ckd-epi-2021', { sex: 'female', age: '60', creatinine: '132.6 µmol/l' })).toMatchObject({ egfr: 40 });
    expect(shownOf('albuminuria-category', { acr: '3.39 mg/mmol' })).toEqual(shownOf('albuminuria-category', { acr: '30 mg/g' }));
    expect(shownOf('corrected-calcium', { calcium: '2.1 mmol/L', albumin: '28 g/L' }).calcium).toBeCloseTo(9.38, 2);
  });

  it('[CALC-6] a range stays a range, rounded outward; what is not known is left out', () => {
    expect(runFormula('protein-per-day', { from: 0.55, to: 0.6, weight: '71.3 kg' }).value).toMatchObject([
      { kind: 'range', text: '39.2 – 42.8 g/day', range: { lo: 39.215, hi: 42.78 } },
    ]);
    for (const name of ['protein-per-day', 'energy-per-day'])
      expect(runFormula(name, { from: 3, to: 1, weight: '70 kg' })).toMatchObject({
        value: undefined,
        issues: [{ place: { heading: 'to' } }],
      });
    expect(runFormula('protein-per-day', { from: 1.2, weight: { value: '70 kg', unit: 'kg' } })).toEqual(
      runFormula('protein-per-day', { from: 1.2, weight: '70 kg' }),
    );
    expect(runFormula('protein-per-day', { from: 1.2, weight: { value: '70 lb', unit: 'kg' } }).issues).toMatchObject([
      { place: { heading: 'weight' } },
    ]);
    expect(runFormula('protein-per-day', { from: 1.2, weight: '70 kg' }).value).toMatchObject([{ text: 'at least 84.0 g/day' }]);
    expect(shownOf('anion-gap', { sodium: '138 mmol/L', chloride: '102 mmol/L', bicarbonate: '18 mmol/L' })).toEqual({ gap: 18 });
    expect(shownOf('protein-energy-wasting', { onDialysis: 'no', lossCause: 'wanted', loss3Months: 8, bmi: 25 })).toMatchObject({
      met: 0,
      bodyMass: 'not met',
      told: 'not ruled out: 3 of 4 groups are open',
    });
    expect(shownOf('protein-energy-wasting', { onDialysis: false, lossCause: 'not-asked', loss3Months: 8, bmi: 25 })).toMatchObject({
      bodyMass: 'not known',
    });
  });

  it('[CALC-7] anything at all is answered with a result of finite figures or with issues, never with both or neither', () => {
    const anything = fc.oneof(
      fc.double(),
      fc.integer({ min: -5, max: 400 }).map(String),
      fc.constantFrom('', '70 kg', '175 cm', '5 ft 9 in', 'yes', 'male', '12 mmol', '60 mg/dL', null, true, 'Infinity', '1e400 kg'),
      fc.jsonValue(),
    );
    for (const { name, inputs } of formulaCatalog) {
      const given = fc.record(Object.fromEntries(inputs.map(one => [one.name, anything])), { requiredKeys: [] });
      fc.assert(
        fc.property(given, values => {
          const { value, issues } = runFormula(name, values);
          expect(value === undefined).toBe(issues.length > 0);
          expect(JSON.stringify(value ?? [])).not.toMatch(/NaN/);
          for (const one of value ?? []) if (one.kind === 'figure') expect(Number.isFinite(one.value)).toBe(true);
        }),
        { numRuns: 25 },
      );
    }
  });
});
