import { type ClientFacts, has } from '#core/client/assessment/clientFacts.ts';
import { type Symptom, symptoms } from '#core/client/assessment/vocabularies.ts';
import type { Analyte } from '#core/client/labs/analytes.ts';
import type { CareFigureId } from '#core/client/rules/careFigures.ts';
import { careFigure } from '#core/client/rules/careRules.ts';
import type { Source } from '#core/client/rules/source.ts';
import { commonPractice, fromMemory, ownRule, ukKidney2023 } from '#core/client/rules/sources.ts';
import { daysBetween } from '#core/quantity/calendarDay.ts';
import {
  highFirst,
  highReadings,
  isBeyond,
  isMarked,
  isOfNow,
  lowFirst,
  lowReadings,
  met,
  standing,
  tellAll,
  toTell,
} from './alarmReadings.ts';
import { calcium, creatinineRisen, hemoglobinDropped, risenWithinHours } from './alarmsOfSeveral.ts';
import { actedOn, type CautionRule, type Contact, type Met } from './caution.ts';

const uk = ukKidney2023();
const ukAndKdigo: Source = { ...uk, text: `${uk.text}; KDIGO CKD 2024, as quoted` };
const refeedingPractice = fromMemory({ kind: 'common-practice', text: 'refeeding practice' });
const urgentWords = 'Call the kidney team today; local policy overrides.';
const emergencyWords = 'Emergency: send for care now; local policy overrides.';

/**
 * Values that need medical contact (facts 4.3, care rules 2). The newest result counts; of several of one day the highest for high, the
 * lowest for low. A hemolyzed sample and one after dialysis lift no alarm. How old a value may be is for `cautionOf`.
 */
export const contactRules: readonly CautionRule[] = [
  rule('potassium-6.5', 'emergency-now', emergencyWords, ukAndKdigo, facts => {
    const unwell = symptom(facts, 'palpitations', 'weakness', 'ecg-change');
    const emergency = careFigure(facts.rules, 'contact.potassium-emergency');
    const from = unwell === undefined ? emergency : Math.min(emergency, highPotassium(facts));
    return tellAll(facts, highReadings(facts, 'potassium', from), highFirst, unwell === undefined ? '' : ` with ${unwell}`);
  }),
  rule(
    'potassium-6.0',
    'same-day',
    'Potassium: tell the kidney team the same day. Unwell: hospital. Unexpected: repeat within 24 hours. Well: within 1 working day.',
    uk,
    facts => potassiumIn(facts, 'contact.potassium-same-day', 'contact.potassium-emergency'),
  ),
  rule('potassium-5.5-unwell', 'same-day', 'Unwell with a high potassium: tell the kidney team the same day.', uk, facts =>
    isUnwell(facts) ? potassiumOffHemodialysis(facts) : undefined,
  ),
  rule('potassium-5.5', 'within-days', 'Potassium, unexpected: repeat in 3 days. Well: in 14 days.', uk, facts =>
    isUnwell(facts) ? undefined : potassiumOffHemodialysis(facts),
  ),
  rule('potassium-rise', 'urgent', 'Potassium rose by over 0.5 in 6 to 12 hours: urgent.', uk, risenWithinHours),
  rule('potassium-2.5', 'emergency-now', emergencyWords, commonPractice, facts => under(facts, 'potassium', 'contact.potassium-very-low')),
  rule('potassium-3.0', 'same-day', urgentWords, commonPractice, facts =>
    under(facts, 'potassium', 'contact.potassium-low', 'contact.potassium-very-low'),
  ),
  rule('hemodialysis-missed', 'same-day', urgentWords, commonPractice, facts => {
    if (facts.setting !== 'hemodialysis' || symptom(facts, 'missed-or-shortened-session') === undefined) return undefined;
    const recent = facts.labs.some(
      ({ analyte, takenOn, hemolyzed, drawn }) =>
        analyte === 'potassium' && !hemolyzed && drawn !== 'after-dialysis' && daysBetween(takenOn, facts.today) <= 7,
    );
    const sign = symptom(facts, 'swelling', 'breathlessness') ?? (recent ? undefined : 'potassium not known');
    return told(facts, sign === undefined ? undefined : `missed or shortened session with ${sign}`);
  }),
  rule('calcium-high', 'same-day', urgentWords, commonPractice, facts =>
    calcium(facts, lab => isBeyond(facts, 'contact.calcium-high', 'over', lab)),
  ),
  rule('calcium-low', 'same-day', urgentWords, commonPractice, facts =>
    calcium(facts, lab => isBeyond(facts, 'contact.calcium-low', 'under', lab)),
  ),
  rule('phosphate-1.0', 'same-day', urgentWords, refeedingPractice, facts => under(facts, 'phosphate', 'contact.phosphate-low')),
  rule('phosphate-2.0-new-feeding', 'same-day', urgentWords, refeedingPractice, facts =>
    has(facts, 'new-feeding') ? under(facts, 'phosphate', 'contact.phosphate-low-new-feeding', 'contact.phosphate-low') : undefined,
  ),
  rule('magnesium-low', 'same-day', urgentWords, commonPractice, facts => under(facts, 'magnesium', 'contact.magnesium-low')),
  rule('magnesium-high', 'same-day', urgentWords, commonPractice, facts => over(facts, 'magnesium', 'contact.magnesium-high')),
  rule('bicarbonate-15', 'same-day', urgentWords, commonPractice, facts => under(facts, 'bicarbonate', 'contact.bicarbonate-low')),
  rule('sodium-120', 'emergency-now', emergencyWords, commonPractice, facts => under(facts, 'sodium', 'contact.sodium-very-low')),
  rule('sodium-125', 'same-day', urgentWords, commonPractice, facts =>
    under(facts, 'sodium', 'contact.sodium-low', 'contact.sodium-very-low'),
  ),
  rule('sodium-155', 'same-day', urgentWords, commonPractice, facts => over(facts, 'sodium', 'contact.sodium-high')),
  rule('glucose-low', 'same-day', 'Treat low glucose now; tell the team today.', fromMemory(commonPractice), facts =>
    glucose(under(facts, 'glucose', 'contact.glucose-low')),
  ),
  rule(
    'glucose-high',
    'same-day',
    urgentWords,
    fromMemory(commonPractice),
    facts => glucose(over(facts, 'glucose', 'contact.glucose-high')) ?? told(facts, symptom(facts, 'ketones')),
  ),
  rule('hemoglobin-7', 'same-day', urgentWords, commonPractice, facts => under(facts, 'hemoglobin', 'contact.hemoglobin-low')),
  rule('hemoglobin-drop', 'same-day', urgentWords, commonPractice, hemoglobinDropped),
  rule(
    'creatinine-rise',
    'same-day',
    urgentWords,
    { kind: 'guideline', text: 'definition of acute kidney injury, KDIGO 2012' },
    creatinineRisen,
  ),
  rule('peritoneal-infection', 'same-day', urgentWords, commonPractice, facts =>
    facts.setting === 'peritoneal-dialysis' ? told(facts, symptom(facts, 'cloudy-drain', 'abdominal-pain', 'fever')) : undefined,
  ),
  rule('transplant-unwell', 'same-day', urgentWords, commonPractice, facts =>
    facts.setting === 'transplant' ? told(facts, symptom(facts, 'vomiting', 'diarrhea', 'missed-doses', 'fever')) : undefined,
  ),
];

/** On hemodialysis 5.6 to 5.9 before the session has no schedule of repeats: causes, and the next treatment (care rules 2). */
export const potassiumBeforeHemodialysis: CautionRule = {
  id: 'potassium-hemodialysis',
  told: 'Potassium is above the target before hemodialysis: look for causes, tell the team at the next treatment.',
  source: ownRule,
  isOwn: true,
  when: facts => {
    if (facts.setting !== 'hemodialysis') return undefined;
    const [from, below] = [highPotassium(facts), careFigure(facts.rules, 'contact.potassium-same-day')];
    const found = standing(facts, 'potassium').filter(({ value, drawn }) => value >= from && value < below && drawn !== 'after-dialysis');
    const lab = toTell(facts, found, highFirst);
    return lab && { ...met(lab, facts), ...(isOfNow(facts, lab) ? {} : { told: actedOn }) };
  },
};

function rule(id: string, contact: Contact, words: string, source: Source, when: CautionRule['when']): CautionRule {
  return { id, contact, told: words, source, when };
}

/** A symptom is as old as the assessment that told it. */
function told({ assessment }: ClientFacts, because: string | undefined): Met | undefined {
  return because === undefined ? undefined : { because, on: assessment.on };
}

function glucose(found: Met | undefined): Met | undefined {
  return found && { ...found, isGlucose: true };
}

function highPotassium({ setting, rules }: ClientFacts): number {
  return careFigure(rules, setting === 'hemodialysis' ? 'contact.potassium-hemodialysis' : 'contact.potassium-within-days');
}

/** From the one bound on, unless a clean reading no older in kind reaches the next, which has an alarm of its own. */
function potassiumIn(facts: ClientFacts, from: CareFigureId, below: CareFigureId): Met | undefined {
  const [least, most] = [careFigure(facts.rules, from), careFigure(facts.rules, below)];
  const reached = highReadings(facts, 'potassium', least).filter(({ value }) => value < most);
  const above = highReadings(facts, 'potassium', most).filter(lab => !isMarked(lab));
  const untold = reached.filter(lab => !above.some(one => isOfNow(facts, one) || !isOfNow(facts, lab)));
  return tellAll(facts, untold, highFirst);
}

function potassiumOffHemodialysis(facts: ClientFacts): Met | undefined {
  if (facts.setting === 'hemodialysis') return undefined;
  return potassiumIn(facts, 'contact.potassium-within-days', 'contact.potassium-same-day');
}

/** A constipated client is not ill; every other symptom of the list counts. */
function isUnwell(facts: ClientFacts): boolean {
  const { acuteKidneyInjury, symptoms: told } = facts.assessment;
  return has(facts, 'acute-illness', 'critically-ill') || acuteKidneyInjury === true || told.some(one => one !== 'constipation');
}

function symptom({ assessment }: ClientFacts, ...ofThese: readonly Symptom[]): string | undefined {
  const found = ofThese.filter(one => assessment.symptoms.includes(one));
  return found.length === 0 ? undefined : found.map(symptoms.words).join(', ');
}

/** Under the one, and not under the other, which has an alarm of its own. */
function under(facts: ClientFacts, analyte: Analyte, bound: CareFigureId, notUnder?: CareFigureId): Met | undefined {
  const lower = notUnder === undefined ? [] : lowReadings(facts, analyte, notUnder);
  const reached = lowReadings(facts, analyte, bound).filter(lab => !lower.includes(lab));
  const untold = reached.filter(lab => !lower.some(one => isOfNow(facts, one) || !isOfNow(facts, lab)));
  const told = tellAll(facts, untold, lowFirst);
  // That a low one may be falsely high makes it no less low.
  return told && { because: told.because, on: told.on };
}

function over(facts: ClientFacts, analyte: Analyte, bound: CareFigureId): Met | undefined {
  const high = standing(facts, analyte).filter(lab => isBeyond(facts, bound, 'over', lab));
  return tellAll(facts, high, highFirst);
}
