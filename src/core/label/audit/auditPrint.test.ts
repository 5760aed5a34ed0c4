import { describe, expect, test } from 'vitest';
import type { Finding, PrintedLabel, PrintedPanel } from '../label.ts';
import { readLabel } from '../readLabel.ts';

function findings(panel: PrintedPanel, more: Partial<PrintedLabel> = {}): readonly Finding[] {
  return readLabel({ market: 'us', serving: {}, basis: 'per-serving', state: 'as-packaged', front: [], otherColumns: [], panel, ...more })
    .findings;
}

describe('figures that no US panel prints', () => {
  const rows: readonly (readonly [PrintedPanel, string, string])[] = [
    [{ energyKcal: 55 }, 'energy goes by 5 kcal up to 50, by 10 above', '21 CFR 101.9(c)(1)'],
    [{ energyKcal: '<5 kcal' }, 'energy goes by 5 kcal up to 50, by 10 above', '21 CFR 101.9(c)(1)'],
    [{ fatG: 5.5 }, 'fat goes by 0.5 g under 5, by 1 g above, and under 0.5 g is 0', '21 CFR 101.9(c)(2)'],
    [{ fatG: '<1 g' }, 'fat goes by 0.5 g under 5, by 1 g above, and under 0.5 g is 0', '21 CFR 101.9(c)(2)'],
    [{ cholesterolMg: '<10 mg' }, 'cholesterol goes by 5 mg, or "less than 5 mg"', '21 CFR 101.9(c)(3)'],
    [{ sodiumMg: 145 }, 'sodium goes by 5 mg up to 140, by 10 mg above', '21 CFR 101.9(c)(4)'],
    [{ fiberG: 2.5 }, 'dietary fiber goes by 1 g, or "less than 1 g"', '21 CFR 101.9(c)(6) and (c)(7)'],
    [
      { potassiumMg: '600 mg 13%' },
      'a %DV goes by 1, for vitamins and minerals by 2 up to 10, by 5 up to 50, by 10 above',
      '21 CFR 101.9(c)(8)(iii)',
    ],
  ];
  test.each(rows)('[LBL-17] %j: %s (%s)', (panel, why, source) => {
    const [finding] = findings(panel);
    expect(finding).toMatchObject({ code: 'not-a-us-print', source });
    expect(finding?.message).toContain(`${why}. It may be an old or foreign label`);
    expect(findings(panel, { market: 'ca' }).filter(({ code }) => code === 'not-a-us-print')).toEqual([]);
  });

  // 21 CFR 101.9(c)(1)-(c)(7), (c)(8)(iii): at the bounds and on either side of them.
  test.each<PrintedPanel>([
    { energyKcal: 45 },
    { energyKcal: 50 },
    { energyKcal: 60 },
    { fatG: 4.5 },
    { fatG: 5 },
    { fatG: 7 },
    { cholesterolMg: 15 },
    { sodiumMg: 135 },
    { sodiumMg: 140 },
    { sodiumMg: 150 },
    { potassiumMg: '10%' },
    { potassiumMg: '15%' },
    { potassiumMg: '50%' },
    { potassiumMg: '60%' },
    { sodiumMg: '13%' },
    { potassiumMg: '<2%' },
    // A figure in another unit is converted; what it was printed as says nothing of the steps.
    { sodiumMg: '0.145 g' },
  ])('[LBL-17] %j may be printed', panel => {
    expect(findings(panel)).toEqual([]);
  });

  test.each<PrintedPanel>([{ potassiumMg: '5%' }, { potassiumMg: '12%' }, { potassiumMg: '55%' }, { sodiumMg: '12.5%' }])(
    '[LBL-17] %j may not',
    panel => {
      expect(findings(panel).map(({ code }) => code)).toEqual(['not-a-us-print']);
    },
  );
});

describe('%DVs', () => {
  // 465 / 2300 is 20.21 %, 475 / 2300 is 20.65 %; 465 / 4700 is 9.89 %, 475 / 4700 is 10.11 %.
  test('[LBL-16] the sentence shows what the amount gives', () => {
    expect(findings({ sodiumMg: '470 mg 22%' })[0]).toMatchObject({
      message: 'Sodium is printed as "470 mg 22%": 465 to 475 mg are 20.2 to 20.7 % of 2300 mg, which does not print as 22%.',
      source: '21 CFR 101.9(d)(7)(ii)',
    });
    expect(findings({ potassiumMg: '470 mg 20%' })[0]).toMatchObject({
      message: 'Potassium is printed as "470 mg 20%": 465 to 475 mg are 9.8 to 10.2 % of 4700 mg, which does not print as 20%.',
      source: '21 CFR 101.9(c)(8)(iii)',
    });
  });

  test('[LBL-16] the older Daily Values are named, those of the market', () => {
    expect(findings({ sodiumMg: '480 mg 20%', carbohydrateG: '30 g 10%' })[0]).toMatchObject({
      message:
        'The %DV of sodium (2400 mg), total carbohydrate (300 g) is of an older Daily Value, so the other percents of this panel may be too.',
      source: '9 CFR 317.309 and 381.409 keep the Daily Values from before 2016; 21 CFR 101.9(c)(9) has the present ones',
    });
    // 475 to 525 mg are 14.0 to 15.4 % of 3400 mg, 10.1 to 11.2 % of 4700 mg.
    const [canadian] = findings({ potassiumMg: '500 mg 10%' }, { market: 'ca' });
    expect(canadian?.message).toContain('potassium (4700 mg)');
    expect(canadian?.source).toContain('Canada, Table of Daily Values, 20 October 2022');
  });
});

describe('the serving', () => {
  // 21 CFR 101.9(b)(5): steps of a quarter cup, a spoon, a fluid ounce, half an ounce; halves of them on either side, and the rounding of
  // the metric figure, 0.5 g or mL.
  const rows: readonly (readonly [string, string])[] = [
    // 1 cup less and more 1/8: 210 to 270 mL.
    ['1 cup (210 mL)', '1 cup (209 mL)'],
    ['1 cup (270 mL)', '1 cup (271 mL)'],
    // 1.5 to 2.5 tablespoons: 22.5 to 37.5 mL.
    ['2 Tbsp (22 mL)', '2 Tbsp (21 mL)'],
    ['2 Tbsp (38 mL)', '2 Tbsp (39 mL)'],
    // 1.5 to 2.5 teaspoons: 7.5 to 12.5 mL.
    ['2 tsp (7 mL)', '2 tsp (6 mL)'],
    ['2 tsp (13 mL)', '2 tsp (14 mL)'],
    // 7.5 to 8.5 fluid ounces: 225 to 255 mL.
    ['8 fl oz (225 mL)', '8 fl oz (224 mL)'],
    ['8 fl oz (255 mL)', '8 fl oz (256 mL)'],
    // 1.75 ounces of 28 g, 2.25 of 28.35 g: 49 to 63.8 g.
    ['2 oz (49 g)', '2 oz (48 g)'],
    ['2 oz (64 g)', '2 oz (65 g)'],
    // 1 1/8 cup, 2 g in each mL: 540 g.
    ['1 cup (540 g)', '1 cup (541 g)'],
    // A quarter of a teaspoon is less than the step: nothing is too little.
    ['1/4 tsp (1 mL)', '1/4 tsp (5 mL)'],
  ];
  test.each(rows)('[LBL-18] "%s" goes, "%s" does not', (right, wrong) => {
    expect(findings({}, { serving: { household: right } })).toEqual([]);
    expect(findings({}, { serving: { household: wrong } }).map(({ code }) => code)).toEqual(['serving-mass-against-measure']);
  });

  test.each([
    ['2 oz (80 g)', 'The serving is printed as 2 ounces and as 80 g; 2 ounces would be 49 to 63.8 g.'],
    ['1 cup (120 mL)', 'The serving is printed as 1 cup and as 120 mL; 1 cup would be 210 to 270 mL.'],
    ['1/4 cup (240 g)', 'The serving is printed as 0.25 cup and as 240 g; 0.25 cup would be less than 180 g.'],
    ['1 1/3 cups (100 mL)', 'The serving is printed as 1.33 cups and as 100 mL; 1.33 cups would be 290 to 350 mL.'],
  ])('[LBL-18] "%s": %s', (household, message) => {
    expect(findings({}, { serving: { household } })[0]?.message).toBe(message);
  });
});

describe('the bar code number', () => {
  test('[LBL-13] the sentence quotes forty characters of it', () => {
    const message = (gtin: string) => findings({}, { gtin })[0]?.message;
    expect(message('x'.repeat(40))).toBe(`"${'x'.repeat(40)}" is no bar code number: a bar code number has digits only.`);
    expect(message('x'.repeat(41))).toBe(`"${'x'.repeat(40)}…" is no bar code number: a bar code number has digits only.`);
    expect(message('012345678906')).toContain('"012345678906" is no bar code number: its last digit does not follow from the others');
    expect(message('1234567')).toContain('has 8, 12, 13 or 14 digits');
    expect(findings({}, { gtin: ' ' })).toEqual([]);
  });
});
