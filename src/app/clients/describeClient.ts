import { assessmentToJson } from '#core/client/assessment/assessmentJson.ts';
import { nextChecks } from '#core/client/cautions/nextChecks.ts';
import { proposePrescription } from '#core/client/prescription/proposePrescription.ts';
import { assessmentsThatStand, type ClientRecord, contactsMade, currentAssessment } from '#core/client/record/record.ts';
import { type CareRules, usualCareRules } from '#core/client/rules/careRules.ts';
import { sourceWords } from '#core/client/rules/source.ts';
import type { WeightBasisId } from '#core/client/states/weightBasis.ts';
import { type Day, isDay } from '#core/quantity/calendarDay.ts';

import { aboutWords } from './aboutClient.ts';
import { changesBetween } from './clientHistory.ts';
import { describePrescription } from './describePrescription.ts';
import { describeProposal } from './describeProposal.ts';
import { describeResults, describeWeights } from './describeResults.ts';

/** A client in the list: no more than is needed to find one and to see who waits. */
export function describeClientShort(record: ClientRecord, today: Day, rules: CareRules = usualCareRules) {
  const newest = currentAssessment(record);
  const proposal = newest && proposePrescription(newest.assessment, today, undefined, rules);
  const urgent = proposal?.cautions.filter(({ sameDay }) => sameDay) ?? [];
  return {
    id: record.id,
    version: record.version,
    name: record.name,
    isDemo: record.isDemo,
    ...(newest === undefined ? {} : { setting: newest.assessment.treatment.setting, assessedOn: newest.assessment.on }),
    ...(record.prescriptions[0] === undefined ? {} : { signedAt: record.prescriptions[0].signed.at.slice(0, 10) }),
    openContacts: urgent.filter(caution => contactsMade(record, caution).length === 0).length,
    overdue: newest === undefined ? 0 : nextChecks(newest.assessment, today, rules).filter(({ state }) => state === 'overdue').length,
  };
}

/** A client as the screen shows one: the newest assessment with the one before, what is proposed from it, cautions, next checks. */
export function describeClient(record: ClientRecord, today: Day, pick?: WeightBasisId, rules: CareRules = usualCareRules) {
  const newest = currentAssessment(record);
  const [, before] = assessmentsThatStand(record);
  return {
    ...describeClientShort(record, today, rules),
    ...(newest === undefined
      ? {}
      : {
          assessmentId: newest.id,
          assessment: assessmentToJson(newest.assessment),
          changes: before === undefined ? [] : changesBetween(before, newest.assessment, today),
          about: aboutWords(newest.assessment, today),
          ...describeProposal(
            newest.assessment,
            today,
            pick ?? pickedBefore(record, today, rules),
            rules,
            record.prescriptions[0]?.targets,
          ),
          results: describeResults(record, today, rules),
          weights: describeWeights(record, today),
          nextChecks: nextChecks(newest.assessment, today, rules).map(({ item, every, lastOn, dueBy, state, source }) => ({
            item,
            every,
            ...(lastOn === undefined ? {} : { lastOn }),
            dueBy,
            state,
            source: sourceWords(source),
          })),
        }),
    assessments: record.assessments.map(({ id, assessment: { on }, corrects }) => ({
      id,
      on,
      ...(corrects === undefined ? {} : { corrects }),
    })),
    prescriptions: record.prescriptions.map((one, index) => describePrescription(one, index === 0)),
    contacts: record.contacts.map(contact => ({ ...contact })),
    ...(record.mealPattern === undefined ? {} : { mealPattern: record.mealPattern.map(share => ({ ...share })) }),
  };
}

/**
 * The weight basis that was picked at the signature, where it was a choice: of the assessment that it was signed for another one is proposed. What
 * was proposed then is no choice, and the newest facts propose anew.
 */
function pickedBefore(record: ClientRecord, today: Day, rules: CareRules): WeightBasisId | undefined {
  const [signed] = record.prescriptions;
  const signedFor = record.assessments.find(({ id }) => id === signed?.assessmentId);
  if (signed?.weightBasis === undefined || signedFor === undefined) return undefined;
  const on = signed.signed.at.slice(0, 10);
  const proposal = proposePrescription(signedFor.assessment, isDay(on) ? on : today, undefined, rules);
  const isAsProposed =
    proposal.kind === 'proposal' && proposal.weight.kind === 'chosen' && proposal.weight.chosen.id === signed.weightBasis;
  return isAsProposed ? undefined : signed.weightBasis;
}
