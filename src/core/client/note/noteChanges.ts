import type { Assessment } from '#core/client/assessment/assessment.ts';
import { checkAssessment } from '#core/client/assessment/checkAssessment.ts';
import { type ClientFacts, type Lab, type Weight, weightWords } from '#core/client/assessment/clientFacts.ts';
import { conditions, drawnTimes, medicines, supplements, symptoms, weightKinds } from '#core/client/assessment/vocabularies.ts';
import { analyteFacts, analyteKeys } from '#core/client/labs/analytes.ts';
import { targetItems } from '#core/client/prescription/target.ts';
import { decidedWords, targetNames } from '#core/client/prescription/targetWords.ts';
import type { Prescription } from '#core/client/record/record.ts';
import type { CareRules } from '#core/client/rules/careRules.ts';
import type { Day } from '#core/quantity/calendarDay.ts';
import { roundHalfUp } from '#core/quantity/rounding.ts';
import { isolated } from './noteSection.ts';
import type { Since } from './noteSince.ts';
import { takenWords } from './noteTaken.ts';
import { treatmentWords } from './noteTreatment.ts';

/** What the record says otherwise than it did then, each with its days; empty where nothing is. "potassium 5.1 mmol/L (2026-03-01) → 5.8 mmol/L (2026-06-05)" */
export function changesSince(
  { assessment: before, prescription: signedBefore }: Since,
  now: Assessment,
  signedNow: Prescription | undefined,
  today: Day,
  rules: CareRules,
): readonly string[] {
  const facts = checkAssessment(now, today, rules).facts;
  return [
    ...(before === undefined ? [] : factChanges(before, now, checkAssessment(before, today, rules).facts, facts)),
    ...(signedNow === undefined || signedNow.id === signedBefore?.id ? [] : targetChanges(signedBefore, signedNow)),
  ];
}

function factChanges(before: Assessment, now: Assessment, then: ClientFacts, facts: ClientFacts): readonly string[] {
  return [
    ...differing('treatment', treatmentWords(before.treatment), treatmentWords(now.treatment)),
    ...differing('stage', before.stage?.value, now.stage?.value),
    ...resultChanges(then, facts),
    ...weightChanges(then, facts),
    ...differing('appetite', before.appetite, now.appetite),
    ...differing('energy eaten, as told', amount(before.intake?.energyKcal, 'kcal a day'), amount(now.intake?.energyKcal, 'kcal a day')),
    ...differing('protein eaten, as told', amount(before.intake?.proteinG, 'g a day'), amount(now.intake?.proteinG, 'g a day')),
    ...differing('urine', amount(before.urineMlPerDay?.value, 'mL a day'), amount(now.urineMlPerDay?.value, 'mL a day')),
    ...listChange('medicines', before.medicines.map(medicines.words), now.medicines.map(medicines.words), ['begun', 'stopped']),
    ...listChange('supplements', before.supplements.map(supplements.words), now.supplements.map(supplements.words), ['begun', 'stopped']),
    ...listChange('conditions', before.conditions.map(conditions.words), now.conditions.map(conditions.words)),
    ...listChange('symptoms', before.symptoms.map(symptoms.words), now.symptoms.map(symptoms.words)),
    ...listChange('allergies', before.allergies, now.allergies),
    ...listChange('foods avoided', before.avoidedFoods, now.avoidedFoods),
    ...listChange('taken', takenWords(before), takenWords(now), ['now', 'before']),
    ...listChange('goals', before.goals, now.goals),
    ...differing('diabetes', before.diabetes ? 'yes' : 'no', now.diabetes ? 'yes' : 'no'),
    ...differing('weight loss', lossWords(before.weightLoss), lossWords(now.weightLoss)),
    ...differing('muscle loss', lossWords(before.muscleLoss), lossWords(now.muscleLoss)),
    ...differing('access to food', before.foodAccess, now.foodAccess),
  ];
}

function differing(name: string, before: string | undefined, now: string | undefined): readonly string[] {
  return before === now ? [] : [`${name}: ${before ?? 'not on record'} → ${now ?? 'not on record'}`];
}

function lossWords(loss: Assessment['weightLoss'] | Assessment['muscleLoss']): string | undefined {
  if (loss === undefined) return undefined;
  const parts = [
    ...(loss.percent3Months === undefined ? [] : [`${loss.percent3Months} % in 3 months`]),
    ...(loss.percent6Months === undefined ? [] : [`${loss.percent6Months} % in 6 months`]),
    ...('cause' in loss && loss.cause !== undefined ? [loss.cause] : []),
  ];
  return parts.join(', ');
}

function amount(value: number | undefined, unit: string): string | undefined {
  return value === undefined ? undefined : `${value} ${unit}`;
}

function listChange(
  name: string,
  before: readonly string[],
  now: readonly string[],
  [came, went] = ['new', 'no longer on record'],
): readonly string[] {
  const begun = now.filter(one => !before.includes(one)).map(isolated);
  const ended = before.filter(one => !now.includes(one)).map(isolated);
  const told = [
    ...(begun.length === 0 ? [] : [`${came} ${begun.join(', ')}`]),
    ...(ended.length === 0 ? [] : [`${went} ${ended.join(', ')}`]),
  ];
  return told.length === 0 ? [] : [`${name}: ${told.join('; ')}`];
}

/** Of each analyte the newest result of then, and every one since, oldest first. */
function resultChanges(then: ClientFacts, now: ClientFacts): readonly string[] {
  return analyteKeys.flatMap(analyte => {
    const known = then.labs.filter(lab => lab.analyte === analyte);
    const came = now.labs.filter(lab => lab.analyte === analyte && !known.some(one => isSame(one, lab))).toReversed();
    if (came.length === 0) return [];
    const [old] = known;
    const line = old === undefined ? came : [old, ...came];
    const { name, unit } = analyteFacts(analyte);
    // Side by side in one unit: as entered where all were, else in the unit of the analyte.
    const isOneUnit = new Set(line.map(({ entered }) => entered.unit)).size === 1;
    const words = line.map(lab => resultWords(lab, isOneUnit ? lab.entered : { value: lab.value, unit }));
    return [`${name} ${words.join(' → ')}${old === undefined ? ', none on record before' : ''}`];
  });
}

function isSame(a: Lab, b: Lab): boolean {
  return a.takenOn === b.takenOn && a.takenAt === b.takenAt && a.value === b.value;
}

function resultWords({ takenOn, drawn, hemolyzed }: Lab, { value, unit }: Lab['entered']): string {
  const marks = [takenOn, ...(drawn === undefined ? [] : [drawnTimes.words(drawn)]), ...(hemolyzed ? ['hemolyzed'] : [])];
  return `${Number(value.toPrecision(4))}${unit === '{ratio}' ? '' : ` ${unit}`} (${marks.join(', ')})`;
}

/** Of each kind the newest of then and of now, with the difference in kg. */
function weightChanges(then: ClientFacts, now: ClientFacts): readonly string[] {
  return weightKinds.keys.flatMap(kind => {
    const newest = (weights: readonly Weight[]) => weights.find(weight => weight.kind === kind);
    const [old, present] = [newest(then.weights), newest(now.weights)];
    if (present === undefined || (old?.kg === present.kg && old.on === present.on)) return [];
    const words = `${weightWords(present)} (${present.on})`;
    if (old === undefined) return [`${weightKinds.words(kind)} weight ${words}, none on record before`];
    const difference = roundHalfUp(Math.abs(present.kg - old.kg), 1);
    const more = difference === 0 ? 'the same' : `${difference} kg ${present.kg > old.kg ? 'more' : 'less'}`;
    return [`${weightKinds.words(kind)} weight ${weightWords(old)} (${old.on}) → ${words}, ${more}`];
  });
}

function targetChanges(before: Prescription | undefined, now: Prescription): readonly string[] {
  const signedOn = now.signed.at.slice(0, 10);
  if (before === undefined) return [`targets signed ${signedOn}, none before`];
  const changed = targetItems.flatMap(item => {
    const [old, present] = [before, now].map(({ targets }) => targets.find(one => one.item === item));
    if (present === undefined) return [];
    const [was, is] = [old === undefined ? 'not signed' : decidedWords(old), decidedWords(present)];
    const reason = present.reason === undefined ? '' : ` (${isolated(present.reason)})`;
    return was === is ? [] : [`${targetNames[item].toLowerCase()} target: ${was} → ${is}, signed ${signedOn}${reason}`];
  });
  return changed.length === 0 ? [`targets signed again ${signedOn}, as before`] : changed;
}
