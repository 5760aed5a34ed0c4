import { type ClientFacts, isOnDialysis, latest } from './clientFacts.ts';
import { proteinEnergyWasting, type Wasting } from './formulas/proteinEnergyWasting.ts';
import type { Source } from './source.ts';
import { commonPractice, wastingCriteria } from './sources.ts';
import { bmiOf, weightBasis } from './weightBasis.ts';

/** Whether protein, potassium and phosphorus may be restricted at all, and why not. */
export interface WastingState {
  readonly criteria: Wasting;
  /** The reasons that block a restriction; empty when nothing does. */
  readonly blocks: readonly { readonly why: string; readonly whatToCheck: string; readonly source: Source }[];
}

/** How old a blood result may be to count here: the longest interval at which it is taken (own rule). */
const freshDays = 183;

/**
 * Wasting by the published criteria, and what the cautions add: weight loss or poor appetite. Missing blood results that could make it
 * wasting block as well, so that a missing result never makes a target stricter.
 */
export function wastingState(facts: ClientFacts): WastingState {
  const { assessment } = facts;
  const basis = weightBasis(facts);
  const kg = basis.kind === 'chosen' ? basis.chosen.kg : undefined;
  const perKg = (perDay: number | undefined) => (perDay === undefined || kg === undefined ? undefined : perDay / kg);
  const criteria = proteinEnergyWasting({
    onDialysis: isOnDialysis(facts),
    ...given('albuminGPerDl', latest(facts, 'albumin', freshDays)?.value),
    ...given('prealbuminMgPerDl', latest(facts, 'prealbumin', freshDays)?.value),
    ...given('cholesterolMgPerDl', latest(facts, 'cholesterol', freshDays)?.value),
    ...given('bodyMassIndex', bmiOf(facts)),
    ...given('lossPercent3Months', assessment.weightLoss?.percent3Months),
    ...given('lossPercent6Months', assessment.weightLoss?.percent6Months),
    ...given('muscleLossPercent3Months', assessment.muscleLoss?.percent3Months),
    ...given('muscleLossPercent6Months', assessment.muscleLoss?.percent6Months),
    ...given('proteinGPerKg', perKg(assessment.intake?.proteinG)),
    ...given('energyKcalPerKg', perKg(assessment.intake?.energyKcal)),
  });
  const blocks = [];
  if (criteria.wasting) {
    blocks.push({
      why: `Protein-energy wasting: ${criteria.met} of 4 groups are met. Nothing is restricted until that is corrected.`,
      whatToCheck: 'Raise intake first; review when it is corrected.',
      source: wastingCriteria,
    });
  } else if (criteria.bloodCouldDecide) {
    blocks.push({
      why: 'Wasting is not ruled out: two of four groups are met and blood results are missing.',
      whatToCheck: `Albumin and cholesterol${isOnDialysis(facts) ? ', prealbumin' : ''} from the last 6 months.`,
      source: wastingCriteria,
    });
  }
  const { percent3Months = 0, percent6Months = 0 } = assessment.weightLoss ?? {};
  if (percent3Months >= 5 || percent6Months >= 10 || assessment.appetite === 'poor') {
    blocks.push({
      why: 'Weight loss or poor appetite: do not restrict further.',
      whatToCheck: 'Dietitian review of intake; loosen limits first.',
      source: commonPractice,
    });
  }
  return { criteria, blocks };
}

function given<Key extends string>(key: Key, value: number | undefined): { [K in Key]?: number } {
  return (value === undefined ? {} : { [key]: value }) as { [K in Key]?: number };
}
