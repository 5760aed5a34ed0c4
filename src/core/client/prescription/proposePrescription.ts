import type { Assessment } from '#core/client/assessment/assessment.ts';
import type { AssessmentIssue } from '#core/client/assessment/assessmentIssue.ts';
import { checkAssessment } from '#core/client/assessment/checkAssessment.ts';
import { type NotUsed, notUsed } from '#core/client/assessment/notUsed.ts';
import { type Caution, cautionsFor } from '#core/client/cautions/cautions.ts';
import { type CareRules, usualCareRules } from '#core/client/rules/careRules.ts';
import { type WastingState, wastingState } from '#core/client/states/wastingState.ts';
import { type WeightBasis, type WeightBasisId, weightBasis } from '#core/client/states/weightBasis.ts';
import type { Day } from '#core/quantity/calendarDay.ts';
import { withBeside } from './besideTargets.ts';
import type { Target, TargetItem } from './target.ts';
import { phosphateAdditivesTarget, potassiumAdditivesTarget } from './targets/additiveTargets.ts';
import { calciumTarget } from './targets/calciumTarget.ts';
import { energyTarget } from './targets/energyTarget.ts';
import { fiberTarget } from './targets/fiberTarget.ts';
import { fluidTarget } from './targets/fluidTarget.ts';
import { phosphorusTarget } from './targets/phosphorusTarget.ts';
import { potassiumTarget } from './targets/potassiumTarget.ts';
import { proteinTarget } from './targets/proteinTarget.ts';
import { sodiumTarget } from './targets/sodiumTarget.ts';

export const standingCaution =
  'Targets and advice are for licensed dietitians working with the client’s kidney team; local protocols come first.';

/** What is proposed as of a day. An issue (a refusal or an open question) means no target at all; cautions are shown either way. */
export type Proposal =
  | {
      readonly kind: 'proposal';
      readonly on: Day;
      readonly standingCaution: string;
      readonly weight: WeightBasis;
      readonly wasting: WastingState;
      readonly targets: Readonly<Record<TargetItem, Target>>;
      readonly cautions: readonly Caution[];
      /** Facts on record that no target rests on, with why. */
      readonly notUsed: readonly NotUsed[];
    }
  | {
      readonly kind: 'barred';
      readonly on: Day;
      readonly standingCaution: string;
      readonly issues: readonly AssessmentIssue[];
      readonly cautions: readonly Caution[];
    };

/**
 * Daily targets from an assessment, as of `today`. `pick` is the dietitian's weight basis, where there is a choice; `rules`
 * what the clinic has set for ages and contact values.
 * Stable G3b without diabetes, 70 kg: protein 56 g (KDIGO 2024) with 38.5-42.0 g (KDOQI 2020) beside it, and a choice to make.
 * Sources: facts of kidney nutrition, sections 2 and 3; each target names its own.
 */
export function proposePrescription(assessment: Assessment, today: Day, pick?: WeightBasisId, rules: CareRules = usualCareRules): Proposal {
  const { facts, issues } = checkAssessment(assessment, today, rules);
  const cautions = cautionsFor(facts);
  if (issues.length > 0) return { kind: 'barred', on: today, standingCaution, issues, cautions };
  const weight = weightBasis(facts, pick);
  const wasting = wastingState(facts);
  const protein = proteinTarget(facts, weight, wasting);
  const targets = withBeside(facts, {
    energy: energyTarget(facts, weight, wasting),
    protein,
    sodium: sodiumTarget(facts),
    potassium: potassiumTarget(facts, weight, wasting),
    phosphorus: phosphorusTarget(facts, wasting, protein),
    calcium: calciumTarget(facts),
    fluid: fluidTarget(facts),
    fiber: fiberTarget(facts),
    phosphateAdditives: phosphateAdditivesTarget(facts),
    potassiumAdditives: potassiumAdditivesTarget(facts),
  });
  return { kind: 'proposal', on: today, standingCaution, weight, wasting, targets, cautions, notUsed: notUsed(facts) };
}
