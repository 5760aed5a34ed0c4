import { netEndogenousAcidFacts, potentialRenalAcidLoadFacts } from './acidLoad.ts';
import { adjustedEdemaFreeWeightFacts } from './adjustedEdemaFreeWeight.ts';
import { adjustedWeightFacts } from './adjustedWeight.ts';
import { amputationFacts } from './amputation.ts';
import { anionGapFacts } from './anionGap.ts';
import { bodyMassIndexFacts } from './bodyMassIndex.ts';
import type { FormulaFacts } from './computed.ts';
import { correctedCalciumFacts } from './correctedCalcium.ts';
import { dialysateGlucoseFacts } from './dialysateGlucose.ts';
import { spKtVFacts, ureaReductionFacts } from './dialysisDose.ts';
import { egfrFacts } from './egfr.ts';
import { fluidAllowanceFacts } from './fluidAllowance.ts';
import { devineWeightFacts, idealWeightFacts } from './idealWeight.ts';
import { interdialyticGainFacts } from './interdialyticGain.ts';
import { nutritionalRiskIndexFacts } from './nutritionalRiskIndex.ts';
import { peritonealProteinFacts } from './peritonealProtein.ts';
import { phosphateBinderFacts } from './phosphateBinder.ts';
import { phosphorusToProteinFacts } from './phosphorus.ts';
import { potassiumAfterCookingFacts } from './potassiumAfterCooking.ts';
import { proteinCatabolicRateFacts } from './proteinCatabolicRate.ts';
import { proteinEnergyWastingFacts } from './proteinEnergyWasting.ts';
import { proteinFromUrineFacts } from './proteinFromUrine.ts';
import { ultrafiltrationRateFacts } from './ultrafiltrationRate.ts';
import { urineMineralsFacts } from './urineMinerals.ts';

/** Every formula with how it is shown, where it comes from and when not to believe it. */
export const formulaFacts = {
  egfr: egfrFacts,
  bodyMassIndex: bodyMassIndexFacts,
  idealWeight: idealWeightFacts,
  devineWeight: devineWeightFacts,
  adjustedWeight: adjustedWeightFacts,
  adjustedEdemaFreeWeight: adjustedEdemaFreeWeightFacts,
  amputation: amputationFacts,
  potentialRenalAcidLoad: potentialRenalAcidLoadFacts,
  netEndogenousAcid: netEndogenousAcidFacts,
  anionGap: anionGapFacts,
  correctedCalcium: correctedCalciumFacts,
  dialysateGlucose: dialysateGlucoseFacts,
  spKtV: spKtVFacts,
  ureaReduction: ureaReductionFacts,
  fluidAllowance: fluidAllowanceFacts,
  interdialyticGain: interdialyticGainFacts,
  nutritionalRiskIndex: nutritionalRiskIndexFacts,
  peritonealProtein: peritonealProteinFacts,
  phosphateBinder: phosphateBinderFacts,
  phosphorusToProtein: phosphorusToProteinFacts,
  potassiumAfterCooking: potassiumAfterCookingFacts,
  proteinCatabolicRate: proteinCatabolicRateFacts,
  proteinEnergyWasting: proteinEnergyWastingFacts,
  proteinFromUrine: proteinFromUrineFacts,
  ultrafiltrationRate: ultrafiltrationRateFacts,
  urineMinerals: urineMineralsFacts,
} as const satisfies Record<string, FormulaFacts>;

export type FormulaId = keyof typeof formulaFacts;
