import type { Assessment } from '#core/client/assessment/assessment.ts';
import { checkAssessment } from '#core/client/assessment/checkAssessment.ts';
import { labWords } from '#core/client/assessment/clientFacts.ts';
import { proposePrescription, standingCaution } from '#core/client/prescription/proposePrescription.ts';
import { type Limit, type Position, type Target, type TargetItem, targetItems, targetUnits } from '#core/client/prescription/target.ts';
import { targetNames } from '#core/client/prescription/targetWords.ts';
import { type CareRules, usualCareRules } from '#core/client/rules/careRules.ts';
import { sourceWords } from '#core/client/rules/source.ts';
import { basisWords, type WeightBasisId } from '#core/client/states/weightBasis.ts';
import type { Day } from '#core/quantity/calendarDay.ts';
import { type Interval, isOpenEnded } from '#core/quantity/interval.ts';
import { ceilTo, floorTo, roundHalfUp } from '#core/quantity/rounding.ts';

import { figureText, rangeOut } from './targetText.ts';

/** What is proposed from an assessment, in words and figures ready to read. */
export function describeProposal(assessment: Assessment, today: Day, pick?: WeightBasisId, rules: CareRules = usualCareRules) {
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
            text: `${basisWords(weight.chosen)}, ${weight.chosen.id.replaceAll('-', ' ')} weight of ${weight.chosen.on}${weight.uncertain ? ', uncertain' : ''}`,
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
    targets: targetItems.map(item => describeTarget(targets[item])),
  };
}

function describeTarget(target: Target) {
  const { item } = target;
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
        range: rangeOut(target.range),
        limit: target.limit,
        ...(target.perKg === undefined
          ? {}
          : { perKg: `${intervalText(target.perKg, 2, target.limit)} ${targetUnits[item]} per kg a day` }),
        ...(target.weightBasis === undefined ? {} : { weightBasis: target.weightBasis.replaceAll('-', ' ') }),
        needsChoice: target.needsChoice,
        says: target.says,
        reasons: [...target.reasons],
      };
    case 'no-limit':
      return {
        ...common,
        kind: target.kind,
        figure: 'no limit',
        needsChoice: false,
        says: 'No limit is proposed',
        reasons: [...target.reasons],
      };
    case 'withheld':
      return {
        ...common,
        kind: target.kind,
        figure: 'not proposed',
        needsChoice: false,
        // A position is a phrase: what shows it sets the full stop.
        says: target.why.replace(/\.$/, ''),
        reasons: target.whatToCheck.map(check => `To check: ${check}`),
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

/** Of a figure per kg. An end that is open is never a figure. */
function intervalText(range: Interval, decimals: number, limit: Limit, unit = ''): string {
  const { lo, hi } = range;
  if (isOpenEnded(range) || limit === 'at-least') return `at least ${ceilTo(lo, decimals)}${unit}`;
  if (limit === 'below') return `under ${floorTo(hi, decimals)}${unit}`;
  if (limit === 'at-most') return `at most ${floorTo(hi, decimals)}${unit}`;
  const [low, high] = [roundHalfUp(lo, decimals), roundHalfUp(hi, decimals)];
  return `${low === high ? low : `${low} – ${high}`}${unit}`;
}
