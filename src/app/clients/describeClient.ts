import type { Assessment } from '#core/client/assessment/assessment.ts';
import { assessmentToJson } from '#core/client/assessment/assessmentJson.ts';
import { checkAssessment } from '#core/client/assessment/checkAssessment.ts';
import { labWords, weightWords } from '#core/client/assessment/clientFacts.ts';
import type { Day } from '#core/client/calendarDay.ts';
import { nextChecks } from '#core/client/cautions/nextChecks.ts';
import { analyteFacts, analyteKeys } from '#core/client/labs/analytes.ts';
import { labTrend } from '#core/client/labs/trend.ts';
import { proposePrescription, standingNotice } from '#core/client/prescription/proposePrescription.ts';
import { type Limit, type Position, type Target, type TargetItem, targetItems, targetUnits } from '#core/client/prescription/target.ts';
import { decidedWords, householdWords, rangeWords, targetNames } from '#core/client/prescription/targetWords.ts';
import { type ClientRecord, contactsMade, currentAssessment, type DecidedTarget, type Prescription } from '#core/client/record/record.ts';
import { type CareRules, usualCareRules } from '#core/client/rules/careRules.ts';
import { sourceWords } from '#core/client/rules/source.ts';
import { basisWords, type WeightBasisId } from '#core/client/states/weightBasis.ts';
import { type Interval, type IntervalJson, intervalToJson, isOpenEnded } from '#core/quantity/interval.ts';
import { ceilTo, floorTo, roundHalfUp } from '#core/quantity/rounding.ts';

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
  const before = record.assessments[1];
  return {
    ...describeClientShort(record, today, rules),
    ...(newest === undefined
      ? {}
      : {
          assessmentId: newest.id,
          assessment: assessmentToJson(newest.assessment),
          changes: before === undefined ? [] : changesBetween(before.assessment, newest.assessment, today),
          ...describeProposal(newest.assessment, today, pick, rules),
          trends: trendsOf(record, today),
          nextChecks: nextChecks(newest.assessment, today, rules).map(({ item, every, lastOn, dueBy, state, source }) => ({
            item,
            every,
            ...(lastOn === undefined ? {} : { lastOn }),
            dueBy,
            state,
            source: sourceWords(source),
          })),
        }),
    assessments: record.assessments.map(({ id, assessment: { on } }) => ({ id, on })),
    prescriptions: record.prescriptions.map((one, index) => describePrescription(one, index === 0)),
    contacts: record.contacts.map(contact => ({ ...contact })),
    ...(record.mealPattern === undefined ? {} : { mealPattern: record.mealPattern.map(share => ({ ...share })) }),
  };
}

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
      notice: standingNotice,
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
    notice: standingNotice,
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

function describePrescription({ id, targets, signed, supersedes }: Prescription, stands: boolean) {
  return {
    id,
    stands,
    signedBy: `${signed.by}, ${signed.credentials}`,
    signedAt: signed.at,
    ...(supersedes === undefined ? {} : { supersedes }),
    targets: targets.map(target => ({
      item: target.item,
      title: targetNames[target.item],
      figure: decidedText(target),
      kind: target.kind ?? (target.range === undefined ? ('not-told' as const) : ('bounded' as const)),
      ...(target.range === undefined ? {} : { range: rangeOut(target.range), limit: target.limit ?? ('within' as const) }),
      from: target.from,
      says: target.says,
      ...(target.reason === undefined ? {} : { reason: target.reason }),
    })),
  };
}

export function decidedText(target: DecidedTarget): string {
  return target.range === undefined ? decidedWords(target) : figureText(target.item, target.range, target.limit ?? 'within');
}

/** "38.5 – 42 g a day", "under 2300 mg a day", "at least 25 g a day", "at most 1000 mL (4 cups, 33 fl oz) a day", "none named on the label". */
function figureText(item: TargetItem, range: Interval, limit: Limit): string {
  const unit = targetUnits[item];
  const figure = rangeWords(unit, range, limit);
  if (unit === 'named on the label') return figure;
  return `${figure}${item === 'fluid' ? householdWords(range, limit) : ''} a day`;
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

function rangeOut(range: Interval): [number, number | null] {
  const [lo, hi]: IntervalJson = intervalToJson(range);
  return [lo, hi];
}

/** Every analyte with more than one value over all assessments, oldest first, with where sources wish it to be. */
function trendsOf(record: ClientRecord, today: Day) {
  const all = [currentAssessment(record), ...record.assessments.slice(1)].flatMap(one => (one === undefined ? [] : [one.assessment]));
  return analyteKeys
    .map(analyte => labTrend(all, analyte, today))
    .filter(({ points }) => points.length > 1)
    .map(({ analyte, name, unit, points, bands }) => ({
      analyte,
      name,
      unit,
      points: points.map(({ on, value }) => ({ on, value })),
      bands: bands.map(({ range, says, source }) => ({ range: rangeOut(range), source: `${says}; ${sourceWords(source)}` })),
    }));
}

/** What the newest assessment says otherwise than the one before: weight, labs of both, appetite, treatment. */
function changesBetween(before: Assessment, after: Assessment, today: Day): string[] {
  const [earlier, later] = [checkAssessment(before, today).facts, checkAssessment(after, today).facts];
  const sentences: string[] = [];
  const [weightBefore, weightNow] = [earlier.weights[0], later.weights[0]];
  if (weightBefore !== undefined && weightNow !== undefined && weightBefore.kg !== weightNow.kg) {
    sentences.push(`Weight ${weightWords(weightBefore)} on ${weightBefore.on}, ${weightWords(weightNow)} on ${weightNow.on}.`);
  }
  for (const lab of later.labs) {
    const same = earlier.labs.find(({ analyte }) => analyte === lab.analyte);
    if (same === undefined || same.takenOn === lab.takenOn || same.value === lab.value) continue;
    const { name, unit } = analyteFacts(lab.analyte);
    sentences.push(
      `${name}: ${roundHalfUp(same.value, 2)} ${unit} on ${same.takenOn}, ${roundHalfUp(lab.value, 2)} ${unit} on ${lab.takenOn}.`,
    );
  }
  if (before.appetite !== after.appetite && after.appetite !== undefined) sentences.push(`Appetite is ${after.appetite} now.`);
  if (before.treatment.setting !== after.treatment.setting)
    sentences.push(`Treatment is another one: ${after.treatment.setting.replaceAll('-', ' ')}.`);
  return sentences;
}
