import type { Assessment } from '#core/client/assessment/assessment.ts';
import { checkAssessment } from '#core/client/assessment/checkAssessment.ts';
import { labWords } from '#core/client/assessment/clientFacts.ts';
import { proposePrescription, standingCaution } from '#core/client/prescription/proposePrescription.ts';
import { differsSinceSigned } from '#core/client/prescription/sinceSigned.ts';
import { type Position, type Target, type TargetItem, targetItems, targetUnits } from '#core/client/prescription/target.ts';
import { targetLine } from '#core/client/prescription/targetLine.ts';
import { decidedWords, perKgWords, targetNames } from '#core/client/prescription/targetWords.ts';
import type { DecidedTarget } from '#core/client/record/decidedTarget.ts';
import { type CareRules, usualCareRules } from '#core/client/rules/careRules.ts';
import { sourceWords } from '#core/client/rules/source.ts';
import { basisWords, type WeightBasisId } from '#core/client/states/weightBasis.ts';
import { type Day, shortDay } from '#core/quantity/calendarDay.ts';
import { roundHalfUp } from '#core/quantity/rounding.ts';

import { figureText, rangeOut } from './targetText.ts';

/** What is proposed from an assessment, in words and figures ready to read. */
export function describeProposal(
  assessment: Assessment,
  today: Day,
  pick?: WeightBasisId,
  rules: CareRules = usualCareRules,
  signed: readonly DecidedTarget[] = [],
) {
  const proposal = proposePrescription(assessment, today, pick, rules);
  const cautions = proposal.cautions.map(({ id, told, because, source, sameDay, isOwn, contact, since }) => ({
    id,
    told,
    because,
    source: sourceWords(source),
    sameDay,
    isOwn,
    ...(contact === undefined ? {} : { contact }),
    ...(since === undefined ? {} : { since }),
  }));
  const { facts } = checkAssessment(assessment, today, rules);
  const labs = [...new Set([...facts.labs, ...facts.questioned].map(lab => labWords(lab, today)))];
  if (proposal.kind === 'barred') {
    return {
      standingCaution,
      cautions,
      labs,
      issues: proposal.issues.map(({ kind, code, told, answeredBy }) => ({
        kind,
        code,
        told,
        ...(answeredBy === undefined ? {} : { answeredBy: { ...answeredBy } }),
      })),
      targets: [],
    };
  }
  const { weight, wasting, targets } = proposal;
  return {
    standingCaution,
    cautions,
    labs,
    issues: [],
    ...(weight.kind === 'chosen'
      ? {
          weight: {
            text: `${basisWords(weight.chosen)}, ${weight.chosen.id.replaceAll('-', ' ')} weight of ${shortDay(weight.chosen.on, today)}${weight.uncertain ? ', uncertain' : ''}`,
            why: weight.chosen.why,
            chosen: weight.chosen.id,
            others: weight.others.map(({ id, kg, why }) => ({
              id,
              text: `${roundHalfUp(kg, 1)} kg, ${id.replaceAll('-', ' ')}`,
              why,
            })),
            ...(weight.bmi === undefined ? {} : { bmi: roundHalfUp(weight.bmi, 1) }),
          },
        }
      : { weightMissing: weight.whatToCheck }),
    notUsed: proposal.notUsed.map(({ what, why }) => `${what}: ${why}`),
    wasting: wasting.blocks.map(({ why, whatToCheck }) => `${why} ${whatToCheck}`.trim()),
    targets: targetItems.map(item => {
      const before = signed.find(one => one.item === item);
      return {
        ...describeTarget(targets[item]),
        line: targetLine(targets[item], facts, weight),
        ...(before === undefined ? {} : { differsSinceSigned: differsSinceSigned(before, targets[item]) }),
      };
    }),
  };
}

function describeTarget(target: Target) {
  const { item } = target;
  const nothing: string[] = [];
  const common = {
    item,
    title: targetNames[item],
    unit: targetUnits[item],
    sources: target.sources.map(sourceWords),
    toBeConfirmed: target.toBeConfirmed,
    alternatives: target.alternatives.map(one => describePosition(one, item)),
  };
  switch (target.kind) {
    case 'proposed':
      return {
        ...common,
        kind: target.kind,
        figure: figureText(item, target.range, target.limit),
        inShort: decidedWords({ item, unit: targetUnits[item], range: target.range, limit: target.limit }),
        range: rangeOut(target.range),
        limit: target.limit,
        ...(target.perKg === undefined ? {} : { perKg: `${perKgWords(target.perKg, target.limit)} ${targetUnits[item]} per kg a day` }),
        ...(target.weightBasis === undefined ? {} : { weightBasis: target.weightBasis.replaceAll('-', ' ') }),
        needsChoice: target.needsChoice,
        says: target.says,
        reasons: [...target.reasons],
        toCheck: nothing,
      };
    case 'no-limit':
      return {
        ...common,
        kind: target.kind,
        figure: 'no limit',
        inShort: 'no limit',
        needsChoice: false,
        says: 'No limit is proposed',
        reasons: [...target.reasons],
        toCheck: nothing,
      };
    case 'withheld':
      return {
        ...common,
        kind: target.kind,
        figure: 'not proposed',
        inShort: 'withheld',
        needsChoice: false,
        // A position is a phrase: what shows it sets the full stop.
        says: target.why.replace(/\.$/, ''),
        reasons: nothing,
        toCheck: [...target.whatToCheck],
      };
  }
}

function describePosition({ says, range, limit, sources, toBeConfirmed }: Position, item: TargetItem) {
  return {
    says,
    sources: sources.map(sourceWords),
    toBeConfirmed,
    ...(range === undefined
      ? {}
      : { range: rangeOut(range), limit: limit ?? ('within' as const), figure: figureText(item, range, limit ?? 'within') }),
  };
}
