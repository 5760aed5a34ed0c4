import { describe, expect, it } from 'vitest';
import { builtInYardsticks } from './builtInYardsticks.ts';
import { settings } from './yardstick.ts';

const perSetting = builtInYardsticks.filter(yardstick => yardstick.settings !== 'any');

describe('builtInYardsticks', () => {
  it('[YST-20] there is one combination for each setting', () => {
    expect(perSetting.map(yardstick => yardstick.settings)).toEqual(settings.map(setting => [setting]));
  });

  it('[YST-20] none bounds potassium or phosphorus by setting (KDOQI 2020: adjust to labs); their classes are shown', () => {
    for (const { tests, classScales } of perSetting) {
      const bounds = tests.filter(
        ({ measure }) => 'nutrient' in measure && (measure.nutrient === 'potassiumMg' || measure.nutrient === 'phosphorusMg'),
      );
      expect(bounds.length).toBe(2);
      expect(bounds.every(({ off }) => off)).toBe(true);
      expect(classScales.map(({ nutrient }) => nutrient)).toEqual(['potassiumMg', 'phosphorusMg']);
    }
  });

  it('[YST-20] each combination says for whom it is, that local protocols come first and that labs decide', () => {
    for (const { cautions } of perSetting) {
      const text = cautions.join(' ');
      expect(text).toContain('licensed dietitians');
      expect(text).toContain('Local protocols come first');
      expect(text).toContain('Labs decide about potassium and phosphorus');
    }
  });

  it('[YST-20] the rule of sodium and energy says that it is not the FDA claim', () => {
    expect(builtInYardsticks[0]?.cautions[0]).toBe('Not the FDA\'s "low sodium" claim.');
  });

  it('[YST-9] every bound and scale has a source, and ids are their own', () => {
    for (const { tests, classScales } of builtInYardsticks)
      for (const { source } of [...tests, ...classScales]) expect(source.text).not.toBe('');
    expect(new Set(builtInYardsticks.map(({ id }) => id)).size).toBe(builtInYardsticks.length);
  });
});
