import type { Analyte } from './analytes.ts';
import { daysBetween } from './calendarDay.ts';
import type { CautionRule, Contact } from './caution.ts';
import type { Symptom } from './client.ts';
import { type ClientFacts, has, isOnDialysis, type Lab, labWords, latest } from './clientFacts.ts';
import { correctedCalciumMgPerDl } from './formulas/correctedCalcium.ts';
import type { Source } from './source.ts';
import { commonPractice, fromMemory, ukKidney2023 } from './sources.ts';

const uk = ukKidney2023();
const ukAndKdigo: Source = { ...uk, text: `${uk.text}; KDIGO CKD 2024, as quoted` };
const urgentWords = 'Call the kidney team today; local policy overrides.';
const emergencyWords = 'Emergency: send for care now; local policy overrides.';

/** Values that need medical contact. Facts section 4.3; the newest result counts, whatever its age. */
export const contactRules: readonly CautionRule[] = [
  rule('potassium-6.5', 'emergency-now', emergencyWords, ukAndKdigo, facts => {
    const lab = potassium(facts);
    if (lab === undefined) return undefined;
    const unwell = symptom(facts, 'palpitations', 'weakness', 'ecg-change');
    if (lab.value >= 6.5) return labWords(lab, facts.today);
    return lab.value > 5.5 && unwell !== undefined ? `${labWords(lab, facts.today)} with ${unwell}` : undefined;
  }),
  rule(
    'potassium-6.0',
    'same-day',
    'Same day. Unwell: hospital. Unexpected: repeat within 24 hours. Well: within 1 working day.',
    uk,
    facts => potassiumIn(facts, 6, 6.5),
  ),
  rule('potassium-5.5-unwell', 'same-day', 'Unwell: same day.', uk, facts => {
    const told = potassiumIn(facts, 5.5, 6);
    return told !== undefined && isUnwell(facts) ? told : undefined;
  }),
  rule('potassium-5.5', 'within-days', 'Unexpected: repeat in 3 days. Well: in 14 days.', uk, facts => {
    const told = potassiumIn(facts, 5.5, 6);
    return told === undefined || isUnwell(facts) ? undefined : told;
  }),
  rule('potassium-rise', 'urgent', 'Potassium rose by over 0.5 in 6 to 12 hours: urgent.', uk, facts => risenWithinHours(facts)),
  rule('potassium-2.5', 'emergency-now', emergencyWords, commonPractice, facts => under(facts, 'potassium', 2.5)),
  rule('potassium-3.0', 'same-day', urgentWords, commonPractice, facts => between(facts, 'potassium', 2.5, 3)),
  rule('hemodialysis-missed', 'same-day', urgentWords, commonPractice, facts => {
    if (facts.setting !== 'hemodialysis' || symptom(facts, 'missed-or-shortened-session') === undefined) return undefined;
    const sign =
      symptom(facts, 'swelling', 'breathlessness') ?? (latest(facts, 'potassium', 7) === undefined ? 'potassium not known' : undefined);
    return sign === undefined ? undefined : `missed or shortened session with ${sign}`;
  }),
  rule('calcium-high', 'same-day', urgentWords, commonPractice, facts => calcium(facts, value => value > 12)),
  rule('calcium-low', 'same-day', urgentWords, commonPractice, facts => calcium(facts, value => value < 7.5)),
  rule('phosphate-1.0', 'same-day', urgentWords, fromMemory({ kind: 'common-practice', text: 'refeeding practice' }), facts =>
    under(facts, 'phosphate', 1),
  ),
  rule('phosphate-2.0-new-feeding', 'same-day', urgentWords, fromMemory({ kind: 'common-practice', text: 'refeeding practice' }), facts =>
    has(facts, 'new-feeding') ? between(facts, 'phosphate', 1, 2) : undefined,
  ),
  rule('magnesium-low', 'same-day', urgentWords, commonPractice, facts => under(facts, 'magnesium', 1)),
  rule('magnesium-high', 'same-day', urgentWords, commonPractice, facts => over(facts, 'magnesium', 4.9)),
  rule('bicarbonate-15', 'same-day', urgentWords, commonPractice, facts => under(facts, 'bicarbonate', 15)),
  rule('sodium-120', 'emergency-now', emergencyWords, commonPractice, facts => under(facts, 'sodium', 120)),
  rule('sodium-125', 'same-day', urgentWords, commonPractice, facts => between(facts, 'sodium', 120, 125)),
  rule('sodium-155', 'same-day', urgentWords, commonPractice, facts => over(facts, 'sodium', 155)),
  rule('glucose-low', 'same-day', 'Treat low glucose now; tell the team today.', fromMemory(commonPractice), facts =>
    under(facts, 'glucose', 54),
  ),
  rule(
    'glucose-high',
    'same-day',
    urgentWords,
    fromMemory(commonPractice),
    facts => over(facts, 'glucose', 360) ?? symptom(facts, 'ketones'),
  ),
  rule('hemoglobin-7', 'same-day', urgentWords, commonPractice, facts => under(facts, 'hemoglobin', 7)),
  rule('hemoglobin-drop', 'same-day', urgentWords, commonPractice, facts => {
    const [now, before] = results(facts, 'hemoglobin');
    return now !== undefined && before !== undefined && before.value - now.value >= 2
      ? `${labWords(now, facts.today)} after ${labWords(before, facts.today)}`
      : undefined;
  }),
  rule('creatinine-rise', 'same-day', urgentWords, { kind: 'guideline', text: 'definition of acute kidney injury, KDIGO 2012' }, facts =>
    creatinineRisen(facts),
  ),
  rule('peritoneal-infection', 'same-day', urgentWords, commonPractice, facts =>
    facts.setting === 'peritoneal-dialysis' ? symptom(facts, 'cloudy-drain', 'abdominal-pain', 'fever') : undefined,
  ),
  rule('transplant-unwell', 'same-day', urgentWords, commonPractice, facts =>
    facts.setting === 'transplant' ? symptom(facts, 'vomiting', 'diarrhea', 'missed-doses', 'fever') : undefined,
  ),
];

function rule(id: string, contact: Contact, told: string, source: Source, when: CautionRule['when']): CautionRule {
  return { id, contact, told, source, when };
}

function results(facts: ClientFacts, analyte: Analyte): readonly Lab[] {
  return facts.labs.filter(lab => lab.analyte === analyte);
}

/** A hemolyzed sample still raises the alarm: it is repeated, not ignored. */
function potassium(facts: ClientFacts): Lab | undefined {
  return latest(facts, 'potassium');
}

function potassiumIn(facts: ClientFacts, from: number, below: number): string | undefined {
  return between(facts, 'potassium', from, below);
}

function isUnwell(facts: ClientFacts): boolean {
  return has(facts, 'acute-illness') || facts.assessment.acuteKidneyInjury === true || facts.assessment.symptoms.length > 0;
}

function symptom({ assessment }: ClientFacts, ...symptoms: readonly Symptom[]): string | undefined {
  const found = symptoms.filter(one => assessment.symptoms.includes(one));
  return found.length === 0 ? undefined : found.map(one => one.replaceAll('-', ' ')).join(', ');
}

/** From is in, below is out. */
function between(facts: ClientFacts, analyte: Analyte, from: number, below: number): string | undefined {
  const lab = latest(facts, analyte);
  return lab !== undefined && lab.value >= from && lab.value < below ? labWords(lab, facts.today) : undefined;
}

function under(facts: ClientFacts, analyte: Analyte, bound: number): string | undefined {
  return between(facts, analyte, Number.NEGATIVE_INFINITY, bound);
}

function over(facts: ClientFacts, analyte: Analyte, bound: number): string | undefined {
  const lab = latest(facts, analyte);
  return lab !== undefined && lab.value > bound ? labWords(lab, facts.today) : undefined;
}

/** Calcium as corrected by the laboratory, else for the albumin of the same day, else as it is and said so. The newest sample counts. */
function calcium(facts: ClientFacts, isOut: (mgPerDl: number) => boolean): string | undefined {
  const own = latest(facts, 'correctedCalcium');
  const total = latest(facts, 'calcium');
  if (own !== undefined && (total === undefined || daysBetween(own.takenOn, total.takenOn) <= 0)) {
    return isOut(own.value) ? labWords(own, facts.today) : undefined;
  }
  if (total === undefined) return undefined;
  const albumin = results(facts, 'albumin').find(({ takenOn }) => takenOn === total.takenOn);
  const corrected = albumin && correctedCalciumMgPerDl(total.value, albumin.value);
  if (corrected?.kind !== 'computed')
    return isOut(total.value) ? `${labWords(total, facts.today)}, not corrected: no albumin of that day` : undefined;
  return isOut(corrected.value) ? `${labWords(total, facts.today)}, corrected ${corrected.value.toFixed(1)} mg/dL` : undefined;
}

function risenWithinHours(facts: ClientFacts): string | undefined {
  const [now, before] = results(facts, 'potassium');
  if (now?.takenAt === undefined || before?.takenAt === undefined) return undefined;
  const hours = daysBetween(before.takenOn, now.takenOn) * 24 + hourOf(now.takenAt) - hourOf(before.takenAt);
  return hours > 0 && hours <= 12 && now.value - before.value > 0.5
    ? `${labWords(now, facts.today)} after ${labWords(before, facts.today)}`
    : undefined;
}

function hourOf(time: string): number {
  const [hours = 0, minutes = 0] = time.split(':').map(Number);
  return hours + minutes / 60;
}

/** 26 umol/L in 48 hours, or by half in 7 days; not on dialysis, where creatinine swings. */
function creatinineRisen(facts: ClientFacts): string | undefined {
  if (isOnDialysis(facts)) return undefined;
  const [now, ...earlier] = results(facts, 'creatinine');
  if (now === undefined) return undefined;
  const before = earlier.find(lab => {
    const days = daysBetween(lab.takenOn, now.takenOn);
    return (days <= 2 && now.value - lab.value >= 26 / 88.4) || (days <= 7 && now.value >= 1.5 * lab.value);
  });
  return before && `${labWords(now, facts.today)} after ${labWords(before, facts.today)}`;
}
