import { type MissingPart, missingPartPercent } from '#core/client/formulas/amputation.ts';
import { heightCmFrom, heightUnits, kilogramsPerPound, weightKgFrom } from '#core/client/formulas/bodyUnits.ts';
import type { Assessment, Weighing } from './assessment.ts';
import type { AssessmentIssue } from './assessmentIssue.ts';
import { mayBeOfHemodialysis } from './checkLabs.ts';
import { weightKinds } from './vocabularies.ts';

type Span = readonly [lo: number, hi: number];

/** What is plausible (own decision): outside it is refused with what was likely meant. */
export const plausibleWeightKg: Span = [30, 250];
const plausibleHeightCm: Span = [100, 250];
/** A BMI that is asked about, and one that only another unit explains. */
const askedBmi: Span = [13, 60];
const suspectBmi: Span = [14, 50];
const usualBmi: Span = [16, 45];

const within = (value: number, [lo, hi]: Span): boolean => value >= lo && value <= hi;

/**
 * What is asked or refused about body, intake and schedule. An ordinary assessment gives nothing. A weight in question stands once its unit
 * is confirmed; everything else is answered by typing what was meant. Source: care rules 5, own decision.
 */
export function checkBody(assessment: Assessment): readonly AssessmentIssue[] {
  return [
    ...ageIssues(assessment),
    ...partIssues(assessment),
    ...heightIssues(assessment),
    ...weightIssues(assessment),
    ...figureIssues(assessment),
  ];
}

/** Height in cm where it is one that an adult can have. 5 ft 13 in is none. */
export function plausibleHeight({ height }: Assessment): number | undefined {
  if (height === undefined) return undefined;
  const cm = heightCmFrom(height);
  const partsStand = !('feet' in height) || (within(height.inches, [0, 11.99]) && Number.isInteger(height.feet));
  return partsStand && within(cm, plausibleHeightCm) ? cm : undefined;
}

function ageIssues({ age }: Assessment): readonly AssessmentIssue[] {
  if (!('years' in age) || age.years !== 0) return [];
  return [question('value-in-question', 'age', 'The age is 0: was it left blank? Expected the age in years, or the day of birth.')];
}

/** A body has two arms and two legs; of one limb the largest missing part is entered alone. */
function partIssues({ missingParts = [] }: Assessment): readonly AssessmentIssue[] {
  const arms: readonly MissingPart[] = ['hand', 'forearm-with-hand', 'whole-arm'];
  const ofArms = missingParts.filter(part => arms.includes(part)).length;
  return [...(ofArms > 2 ? ['arms'] : []), ...(missingParts.length - ofArms > 2 ? ['legs'] : [])].map(limbs =>
    refusal('missing parts', `More than two parts of the ${limbs} are missing: of each limb enter the largest part alone.`),
  );
}

function heightIssues(assessment: Assessment): readonly AssessmentIssue[] {
  const { height } = assessment;
  if (height === undefined || plausibleHeight(assessment) !== undefined) return [];
  if ('feet' in height) {
    const written = `Height ${height.feet} ft ${height.inches} in`;
    if (!within(height.inches, [0, 11.99])) return [refusal('height', `${written} cannot be: expected 0 to 11.99 inches beside the feet.`)];
    if (!Number.isInteger(height.feet)) return [refusal('height', `${written} cannot be: expected whole feet, the rest in inches.`)];
    return [refusal('height', `${written} cannot be: expected 3 ft 4 in to 8 ft 2 in.`)];
  }
  const { value, unit } = height;
  const meant = heightUnits.find(other => other !== unit && within(heightCmFrom({ value, unit: other }), [120, 220]));
  const told = `Height ${value} ${unit} cannot be: ${meant === undefined ? 'expected 100 to 250 cm.' : `was it ${meant}?`}`;
  return meant === undefined ? [refusal('height', told)] : [question('unit-in-question', 'height', told)];
}

function weightIssues(assessment: Assessment): readonly AssessmentIssue[] {
  const cm = plausibleHeight(assessment);
  const missing = (assessment.missingParts ?? []).reduce((sum, part) => sum + missingPartPercent[part], 0);
  /** BMI as it would be with the missing parts. */
  const bmiOf = (kg: number): number | undefined => (cm === undefined ? undefined : kg / (1 - missing / 100) / (cm / 100) ** 2);
  return assessment.weighings.flatMap((weighing, at): readonly AssessmentIssue[] => {
    const { weight, kind, on } = weighing;
    const field = `${kind} weight`;
    const issues: AssessmentIssue[] = [];
    const kg = weightKgFrom(weight);
    const other = weight.unit === 'kg' ? 'lb' : 'kg';
    const otherKg = weightKgFrom({ value: weight.value, unit: other });
    const isOther = `${field} ${weight.value} ${weight.unit}: was it ${other}? ${weight.value} ${other} is ${otherWords(otherKg, other, weight.value)}.`;
    if (!within(kg, plausibleWeightKg)) {
      const likely = within(otherKg, plausibleWeightKg) && within(bmiOf(otherKg) ?? 25, usualBmi);
      const cannotBe = `${field} ${weight.value} ${weight.unit} cannot be: expected 30 to 250 kg (66 to 551 lb).`;
      issues.push(likely ? question('unit-in-question', field, isOther) : refusal(field, cannotBe));
    } else if (!weighing.unitConfirmed) {
      const bmi = bmiOf(kg);
      const otherBmi = bmiOf(otherKg);
      const answeredBy = { list: 'weighings', at } as const;
      const isSuspect = bmi !== undefined && !within(bmi, suspectBmi) && otherBmi !== undefined && within(otherBmi, usualBmi);
      if (isSuspect || likeAnother(weighing, otherKg, assessment.weighings))
        issues.push({ ...question('unit-in-question', field, isOther), answeredBy });
      else if (bmi !== undefined && !within(bmi, askedBmi)) {
        const told = `${field} ${weight.value} ${weight.unit} gives a BMI of ${bmi.toFixed(1)}: are weight and height right? Confirm the weight if they are.`;
        issues.push({ ...question('value-in-question', field, told), answeredBy });
      }
    }
    const isOfHemodialysis = kind === 'before-dialysis' || kind === 'after-dialysis';
    const isOfPeritoneal = kind === 'after-drain';
    if (
      (isOfHemodialysis && !mayBeOfHemodialysis(assessment.treatment, on)) ||
      (isOfPeritoneal && assessment.treatment.setting === 'ckd-not-on-dialysis')
    ) {
      const told = `A weight of ${on} is marked as ${weightKinds.words(kind)}, and the client is not on ${isOfPeritoneal ? 'peritoneal dialysis' : 'hemodialysis'}: which of the two is right?`;
      issues.push(question('contradiction', field, told));
    }
    return issues;
  });
}

function otherWords(otherKg: number, other: 'kg' | 'lb', value: number): string {
  return other === 'lb' ? `${otherKg.toFixed(1)} kg` : `${(value / kilogramsPerPound).toFixed(1)} lb`;
}

/** True when the figure in the other unit is what another of the client's weights says, and as typed it is not. */
function likeAnother({ weight, kind }: Weighing, otherKg: number, all: readonly Weighing[]): boolean {
  if (kind === 'goal' || kind === 'standard') return false;
  return all.some(one => {
    const ratio = otherKg / weightKgFrom(one.weight);
    return one.weight !== weight && one.kind !== 'goal' && one.kind !== 'standard' && ratio > 0.93 && ratio < 1.07;
  });
}

function figureIssues({ urineMlPerDay, intake, weightLoss, muscleLoss, treatment }: Assessment): readonly AssessmentIssue[] {
  const issues: AssessmentIssue[] = [];
  const spans = (field: string, unit: string, span: Span, value: number | undefined, hint = ''): void => {
    if (value !== undefined && !within(value, span))
      issues.push(refusal(field, `${field} ${value} ${unit} cannot be: expected ${span[0]} to ${span[1]} ${unit}.${hint}`));
  };
  const urine = urineMlPerDay?.value;
  spans('urine', 'mL a day', [0, 6000], urine);
  if (urine !== undefined && urine > 0 && urine <= 10) {
    const told = `Urine ${urine} mL a day: were liters meant (${Math.round(urine * 1000)} mL)? Type 0 for none.`;
    issues.push(question('unit-in-question', 'urine', told));
  }
  const kilojoules = intake?.energyKcal !== undefined && within(intake.energyKcal, [6000, 17_000]) ? ' Was it kilojoules?' : '';
  spans('energy eaten', 'kcal a day', [0, 6000], intake?.energyKcal, kilojoules);
  spans('protein eaten', 'g a day', [0, 300], intake?.proteinG);
  spans('days with next to nothing eaten', 'days', [0, 365], intake?.littleForDays);
  for (const [name, loss] of [
    ['weight loss', weightLoss],
    ['muscle loss', muscleLoss],
  ] as const) {
    spans(`${name} in 3 months`, '%', [0, 50], loss?.percent3Months, ' A loss has no sign; a gain is left out.');
    spans(`${name} in 6 months`, '%', [0, 50], loss?.percent6Months, ' A loss has no sign; a gain is left out.');
  }
  if (treatment.setting === 'hemodialysis') {
    const { sessionHours } = treatment;
    const minutes = sessionHours !== undefined && within(sessionHours, [60, 720]) ? ' Was it minutes?' : '';
    spans('hours a session', 'h', [1, 12], sessionHours, minutes);
    spans('sessions a week', 'sessions', [1, 7], treatment.sessionsPerWeek);
    spans('ultrafiltration limit', 'mL/kg/h', [1, 30], treatment.ultrafiltrationLimitMlPerKgH);
  }
  if (treatment.setting === 'peritoneal-dialysis') {
    const { absorbedShare } = treatment;
    const percent = absorbedShare !== undefined && within(absorbedShare, [10, 100]) ? ` Was it ${absorbedShare} %?` : '';
    spans('absorbed share', 'of 1', [0.1, 1], absorbedShare, percent);
    for (const { liters, percent: strength } of treatment.bags ?? []) {
      spans('dialysate bag', 'L', [0.1, 30], liters);
      spans('dialysate glucose', '%', [0.5, 4.25], strength);
    }
  }
  return issues;
}

function question(code: AssessmentIssue['code'], field: string, told: string): AssessmentIssue {
  return { kind: 'question', code, field, told };
}

function refusal(field: string, told: string): AssessmentIssue {
  return { kind: 'refusal', code: 'impossible-value', field, told };
}
