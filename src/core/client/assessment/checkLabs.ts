import { type Analyte, analyteFacts } from '#core/client/labs/analytes.ts';
import { labConverted, labInCanonicalUnit, labQuestion } from '#core/client/labs/labValue.ts';
import { type Day, isDay } from '#core/quantity/calendarDay.ts';
import type { Assessment, LabResult } from './assessment.ts';
import type { AssessmentIssue } from './assessmentIssue.ts';
import { drawnTimes } from './vocabularies.ts';

/** Urine is no blood: nothing in it can be hemolyzed. */
const ofUrine: readonly Analyte[] = ['urineAcr', 'urineSodium', 'urinePotassium', 'urineUreaNitrogen'];

/**
 * What is asked or refused about the results of an assessment. An ordinary result gives nothing. A question about a possible value is
 * answered by `confirmed` on it; one about a value that cannot be, by typing what was meant. Source: care rules 5, own decision.
 */
export function checkLabs(assessment: Assessment): readonly AssessmentIssue[] {
  const { labs } = assessment;
  return labs.flatMap((lab, at) => [
    ...valueIssues(lab, at, assessment),
    ...limitIssues(lab),
    ...markIssues(lab, assessment),
    ...twiceIssues(lab, at, labs),
  ]);
}

function valueIssues(lab: LabResult, at: number, { treatment }: Assessment): readonly AssessmentIssue[] {
  const { analyte, value, unit } = lab;
  const field = analyteFacts(analyte).name;
  const read = labInCanonicalUnit(analyte, value, unit);
  if (read.kind === 'refused') {
    if (read.why === 'unit-in-question') return [{ kind: 'question', code: 'unit-in-question', field, told: read.told }];
    const code = read.why === 'no-unit' || read.why === 'unit-not-known' ? 'unit-not-known' : 'impossible-value';
    return [{ kind: 'refusal', code, field, told: read.told }];
  }
  // After dialysis a low urea nitrogen is what was aimed at.
  const isLowered = lab.drawn === 'after-dialysis' && analyte === 'ureaNitrogen';
  const asked = lab.confirmed || isLowered ? undefined : labQuestion(analyte, value, unit, treatment.setting);
  if (asked === undefined) return [];
  const told = `${asked} Confirm it if it is right as it stands.`;
  return [{ kind: 'question', code: 'unit-in-question', field, told, answeredBy: { list: 'labs', at } }];
}

function limitIssues({ analyte, unit, lowerNormal, upperNormal }: LabResult): readonly AssessmentIssue[] {
  const { name } = analyteFacts(analyte);
  const limits = [lowerNormal, upperNormal].filter(one => one !== undefined);
  const isRead = limits.every(limit => limit >= 0 && labConverted(analyte, limit, unit) !== undefined);
  if (isRead && (lowerNormal === undefined || upperNormal === undefined || lowerNormal < upperNormal)) return [];
  const told = `${name}: the laboratory's limits ${lowerNormal ?? 'none'} to ${upperNormal ?? 'none'} ${unit} are no range: expected the lower one first, none under 0.`;
  return [{ kind: 'refusal', code: 'impossible-value', field: name, told }];
}

function markIssues({ analyte, takenOn, drawn, hemolyzed }: LabResult, { treatment }: Assessment): readonly AssessmentIssue[] {
  const { name } = analyteFacts(analyte);
  const issues: AssessmentIssue[] = [];
  if (drawn !== undefined && !mayBeOfHemodialysis(treatment, takenOn)) {
    const told = `${name} of ${takenOn} is marked as drawn ${drawnTimes.words(drawn)}, and the client is not on hemodialysis: which of the two is right?`;
    issues.push({ kind: 'question', code: 'contradiction', field: name, told });
  }
  if (hemolyzed && ofUrine.includes(analyte)) {
    const told = `${name} of ${takenOn} is marked as hemolyzed, and is no blood: is the mark on the right result?`;
    issues.push({ kind: 'question', code: 'contradiction', field: name, told });
  }
  return issues;
}

/** True on hemodialysis, and for a day before the transplant or before peritoneal dialysis, when it may have been. */
export function mayBeOfHemodialysis(treatment: Assessment['treatment'], day: Day): boolean {
  if (treatment.setting === 'hemodialysis') return true;
  const changedOn =
    treatment.setting === 'transplant'
      ? treatment.transplantedOn
      : treatment.setting === 'peritoneal-dialysis'
        ? treatment.startedOn
        : undefined;
  return changedOn !== undefined && isDay(changedOn) && day < changedOn;
}

/** Two values of one hour cannot both be right; told once, at the later of the two. Without an hour a day may have several. */
function twiceIssues(lab: LabResult, at: number, labs: readonly LabResult[]): readonly AssessmentIssue[] {
  const { analyte, takenOn, takenAt } = lab;
  if (takenAt === undefined) return [];
  const other = labs
    .slice(0, at)
    .find(
      one =>
        one.analyte === analyte &&
        one.takenOn === takenOn &&
        one.takenAt === takenAt &&
        one.drawn === lab.drawn &&
        one.hemolyzed === lab.hemolyzed &&
        labConverted(analyte, one.value, one.unit) !== labConverted(analyte, lab.value, lab.unit),
    );
  if (other === undefined || (other.confirmed && lab.confirmed)) return [];
  const { name } = analyteFacts(analyte);
  const told = `${name} of ${takenOn} ${takenAt} stands twice: ${other.value} ${other.unit} and ${lab.value} ${lab.unit}. Which is right? Confirm both if two samples were taken.`;
  return [{ kind: 'question', code: 'value-in-question', field: name, told, answeredBy: { list: 'labs', at } }];
}
