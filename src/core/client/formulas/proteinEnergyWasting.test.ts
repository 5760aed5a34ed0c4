import { describe, expect, test } from 'vitest';
import { proteinEnergyWasting, type WastingFacts, type WastingGroup } from './proteinEnergyWasting.ts';

const well: WastingFacts = {
  onDialysis: false,
  albuminGPerDl: 4.2,
  cholesterolMgPerDl: 180,
  bodyMassIndex: 26,
  muscleLossPercent3Months: 0,
  proteinGPerKg: 1.1,
  energyKcalPerKg: 30,
};
const onDialysis = { ...well, onDialysis: true };

// Facts 9.3, PEW criteria as published.
describe('each test of the wasting criteria at its bound', () => {
  test.each<[WastingGroup, WastingFacts, WastingFacts, shown: string]>([
    ['blood', { ...well, albuminGPerDl: 3.7 }, { ...well, albuminGPerDl: 3.8 }, 'albumin 3.7 g/dL'],
    ['blood', { ...onDialysis, prealbuminMgPerDl: 29 }, { ...onDialysis, prealbuminMgPerDl: 30 }, 'prealbumin 29 mg/dL'],
    ['blood', { ...well, cholesterolMgPerDl: 99 }, { ...well, cholesterolMgPerDl: 100 }, 'cholesterol 99 mg/dL'],
    ['body mass', { ...well, bodyMassIndex: 22.9 }, { ...well, bodyMassIndex: 23 }, 'BMI 22.9 kg/m²'],
    ['body mass', { ...well, lossPercent3Months: 5 }, { ...well, lossPercent3Months: 4.9 }, 'weight lost in 3 months 5%'],
    ['body mass', { ...well, lossPercent6Months: 10 }, { ...well, lossPercent6Months: 9.9 }, 'weight lost in 6 months 10%'],
    ['body mass', { ...well, bodyFatPercent: 9.9 }, { ...well, bodyFatPercent: 10 }, 'body fat 9.9%'],
    ['muscle', { ...well, muscleLossPercent3Months: 5 }, { ...well, muscleLossPercent3Months: 4.9 }, 'muscle lost in 3 months 5%'],
    ['muscle', { ...well, muscleLossPercent6Months: 10 }, { ...well, muscleLossPercent6Months: 9.9 }, 'muscle lost in 6 months 10%'],
    [
      'muscle',
      { ...well, armMuscleAreaDownPercent: 10.1 },
      { ...well, armMuscleAreaDownPercent: 10 },
      'arm muscle area under the median by 10.1%',
    ],
    ['intake', { ...well, proteinGPerKg: 0.5 }, { ...well, proteinGPerKg: 0.6 }, 'protein eaten 0.5 g/kg a day'],
    ['intake', { ...onDialysis, proteinGPerKg: 0.7 }, { ...onDialysis, proteinGPerKg: 0.8 }, 'protein eaten 0.7 g/kg a day'],
    ['intake', { ...well, energyKcalPerKg: 24.94 }, { ...well, energyKcalPerKg: 25 }, 'energy eaten 24.9 kcal/kg a day'],
  ])('[CLT-1] %s: %o is met, %o is not', (group, low, normal, shown) => {
    const none = { blood: 'not met', 'body mass': 'not met', muscle: 'not met', intake: 'not met' };
    expect(proteinEnergyWasting(low)).toEqual({ groups: { ...none, [group]: 'met' }, met: 1, shownBy: [shown], wasting: false });
    expect(proteinEnergyWasting(normal)).toEqual({ groups: none, met: 0, shownBy: [], wasting: false });
  });

  test('[CLT-1] a low prealbumin counts on dialysis alone', () => {
    expect(proteinEnergyWasting({ ...well, prealbuminMgPerDl: 20 })).toMatchObject({ met: 0, shownBy: [] });
  });

  test('[CLT-1] a loss that nobody was asked about leaves its group open and shows nothing', () => {
    for (const loss of [{ lossPercent3Months: 6 }, { lossPercent6Months: 11 }])
      expect(proteinEnergyWasting({ ...well, ...loss, lossIsOpen: true })).toMatchObject({
        groups: { 'body mass': 'not known' },
        met: 0,
        shownBy: [],
      });
  });

  test('[CLT-1] muscle is known by any one of its figures', () => {
    const { muscleLossPercent3Months: _, ...unknown } = well;
    const muscle = (more: Partial<WastingFacts>) => proteinEnergyWasting({ ...unknown, ...more }).groups.muscle;
    expect(muscle({})).toBe('not known');
    expect(muscle({ muscleLossPercent6Months: 0 })).toBe('not met');
    expect(muscle({ armMuscleAreaDownPercent: 0 })).toBe('not met');
  });
});
