import { daysBetween } from './calendarDay.ts';
import { type Caution, type CautionRule, cautionOf } from './caution.ts';
import { type ClientFacts, has, isOnDialysis, latest, latestWeightKg, stageOf, takes } from './clientFacts.ts';
import { contactRules } from './contactValues.ts';
import { interdialyticGain } from './formulas/interdialyticGain.ts';
import { potassiumState } from './potassiumState.ts';
import { refeedingSigns } from './refeeding.ts';
import type { Source } from './source.ts';
import { asQuoted, commonPractice, fromMemory, kdigoMbd2017, kdoqi2020, ownRule } from './sources.ts';
import { wastingState } from './wastingState.ts';

export type { Caution } from './caution.ts';

const urolNurs: Source = { kind: 'paper', text: 'Urol Nurs 2005' };
const pages: Source = { kind: 'common-practice', text: 'hospital and kidney patient pages' };
const memory = fromMemory(commonPractice);

/** The lines of facts section 8, in its order. Every client has kidney disease, so "any CKD" is always met. */
const rules: readonly CautionRule[] = [
  always('salt-substitute', 'A salt substitute or low-sodium salt may hold potassium: ask before use.', commonPractice),
  always('star-fruit', 'No star fruit (carambola) or its juice: nerve toxin and oxalate; hiccups, confusion, seizures, deaths.', {
    kind: 'paper',
    text: 'Saudi J Kidney Dis Transpl 2017, review of 123 cases',
  }),
  on(
    'grapefruit',
    'No grapefruit, pomelo or Seville orange; ask about clementine, pomegranate, and turmeric in quantity.',
    { kind: 'paper', text: 'Transplantation 2003;75:1057; PMC9611668, Table 2; Seville orange to be confirmed' },
    facts => (takes(facts, 'tacrolimus', 'ciclosporin') ? 'tacrolimus or ciclosporin' : undefined),
  ),
  on('grapefruit-mtor', 'No grapefruit, pomelo or Seville orange.', memory, facts =>
    takes(facts, 'sirolimus-or-everolimus') ? 'sirolimus or everolimus' : undefined,
  ),
  on(
    'food-safety',
    'Cook through and chill; no raw egg, meat, fish, shellfish or sprouts; strictest in the first 6 months.',
    pages,
    suppressed,
  ),
  on(
    'pasteurized',
    'Pasteurized milk, cheese and juice only; no soft mold-ripened or blue cheese; ask about live probiotics.',
    pages,
    suppressed,
  ),
  always(
    'herbal',
    'Herbal products: kidney injury, potassium, interactions; St John’s wort lowers transplant drugs; aristolochia is toxic.',
    fromMemory(urolNurs),
  ),
  on(
    'vitamin-c',
    'No high-dose vitamin C. On dialysis KDOQI aims at 90 mg (men) and 75 mg (women), older practice caps tablets at 60-100 mg: they differ.',
    asQuoted(kdoqi2020('OPINION')),
    facts => dialysis(facts) ?? (has(facts, 'calcium-oxalate-stones') ? 'calcium oxalate stones' : belowThirty(facts)),
  ),
  on(
    'magnesium-aluminum',
    'No magnesium or aluminum antacids or laxatives unless prescribed.',
    asQuoted(kdigoMbd2017()),
    facts => belowThirty(facts) ?? dialysis(facts),
  ),
  always('sodium-phosphate-bowel', 'No sodium phosphate enema or bowel preparation unless the renal team agrees.', {
    kind: 'regulation',
    text: 'FDA alerts 2006 and 2008',
  }),
  on(
    'low-sugar',
    'Low sugar: glucose tablets or gel 15-20 g, or apple, grape or cranberry juice; not orange juice or milk where potassium or phosphorus is limited; recheck after 15 minutes.',
    commonPractice,
    facts => (facts.assessment.diabetes ? 'diabetes' : undefined),
  ),
  on('icodextrin-meter', 'Some glucose meters read falsely high: use a glucose-specific one.', memory, facts =>
    facts.assessment.treatment.setting === 'peritoneal-dialysis' && facts.assessment.treatment.icodextrin ? 'icodextrin' : undefined,
  ),
  on('out-of-scope', 'Out of scope: stop and refer to a specialist.', ownRule, ({ ageYears, assessment }) =>
    ageYears < 18 ? 'under 18' : assessment.pregnant ? 'pregnant' : assessment.breastfeeding ? 'breastfeeding' : undefined,
  ),
  on(
    'refeeding',
    'Refeeding risk: a slow start, bloods and thiamine by the medical team.',
    fromMemory({ kind: 'guideline', text: 'NICE CG32' }),
    facts => refeedingSigns(facts).join(', ') || undefined,
  ),
  on(
    'do-not-restrict',
    'Do not restrict further: loosen potassium, phosphorus and protein limits, dietitian review.',
    commonPractice,
    facts => [...wastingState(facts).blocks.map(({ why }) => why), ...fallingAlbumin(facts)].join(' ') || undefined,
  ),
  on('vitamin-k', 'Keep vitamin K food steady, no sudden change, no supplement; tell the clinic.', commonPractice, facts =>
    takes(facts, 'vitamin-k-antagonist') ? 'vitamin K antagonist' : undefined,
  ),
  on(
    'overload',
    'Overload: swelling, breathless lying flat, gain over 2 kg in 2 days or over 4-5 % between sessions: call.',
    commonPractice,
    facts => gain(facts) ?? dialysis(facts) ?? (has(facts, 'heart-failure') ? 'heart failure' : undefined),
  ),
  on('licorice', 'No real licorice (glycyrrhizin): it raises blood pressure and drops potassium.', urolNurs, facts => {
    if (has(facts, 'hypertension')) return 'hypertension';
    if (takes(facts, 'digoxin')) return 'digoxin';
    return potassiumState(facts).kind === 'low' ? 'low potassium' : undefined;
  }),
  on(
    'noni',
    'No noni juice: 56.3 mmol/L potassium, about 220 mg in 100 mL.',
    { kind: 'paper', text: 'Am J Kidney Dis 2000;35:310' },
    facts => (potassiumState(facts).kind === 'high' ? 'high potassium' : undefined),
  ),
  on(
    'sports-products',
    'Creatine raises creatinine and is not advised in CKD; check protein, potassium, phosphorus and stimulants.',
    memory,
    ({ assessment }) => {
      const found = assessment.supplements.filter(
        one => one === 'creatine' || one === 'sports-or-slimming-product' || one === 'protein-powder',
      );
      return found.map(one => one.replaceAll('-', ' ')).join(', ') || undefined;
    },
  ),
  on(
    'ketoanalogs',
    'Each tablet holds about 50 mg calcium: count it, check calcium; enough energy is needed; never with normal protein as a substitute.',
    memory,
    facts => (takes(facts, 'ketoanalogs') ? 'ketoanalogs' : undefined),
  ),
  on('sglt2', 'Ketoacidosis with near-normal glucose: stop rules come from the team.', memory, facts =>
    takes(facts, 'sglt2-inhibitor') && has(facts, 'low-carbohydrate-diet', 'fasting-for-faith', 'acute-illness')
      ? 'SGLT2 inhibitor with low carbohydrate, fasting or illness'
      : undefined,
  ),
  on('fasting', 'Ask the team before a fast: potassium, fluid, timing of insulin.', commonPractice, facts =>
    has(facts, 'fasting-for-faith') ? 'fasting for faith' : undefined,
  ),
  on(
    'home-hemodialysis',
    'Frequent or long sessions: potassium, phosphorus and fluid are often freer; check for low phosphate and water-soluble vitamins.',
    commonPractice,
    ({ assessment: { treatment } }) =>
      treatment.setting === 'hemodialysis' && treatment.place === 'home' ? 'home hemodialysis' : undefined,
  ),
  on('vitamin-a', 'No vitamin A supplement: it accumulates.', fromMemory(kdoqi2020('OPINION')), facts =>
    isOnDialysis(facts) && facts.assessment.supplements.includes('vitamin-a') ? 'vitamin A on dialysis' : undefined,
  ),
];

/** Cautions whose condition is met as of `facts.today`, those for same-day contact first. Facts sections 8 and 4.3. */
export function cautionsFor(facts: ClientFacts): readonly Caution[] {
  const met = [...contactRules, ...rules].flatMap(rule => cautionOf(rule, facts) ?? []);
  const rank = ({ contact, sameDay }: Caution) => (contact === 'emergency-now' ? 0 : sameDay ? 1 : contact === 'within-days' ? 2 : 3);
  return met.sort((a, b) => rank(a) - rank(b));
}

function on(id: string, told: string, source: Source, when: CautionRule['when']): CautionRule {
  return { id, told, source, when };
}

function always(id: string, told: string, source: Source): CautionRule {
  return on(id, told, source, () => 'kidney disease');
}

function suppressed(facts: ClientFacts): string | undefined {
  if (facts.setting === 'transplant') return 'transplant';
  return takes(facts, 'tacrolimus', 'ciclosporin', 'sirolimus-or-everolimus', 'other-immunosuppressant', 'high-dose-steroid')
    ? 'immunosuppressed'
    : undefined;
}

function dialysis(facts: ClientFacts): string | undefined {
  return isOnDialysis(facts) ? 'dialysis' : undefined;
}

/** eGFR under 30: by the newest laboratory eGFR or the stage on record. */
function belowThirty(facts: ClientFacts): string | undefined {
  const lab = latest(facts, 'egfr');
  const stage = stageOf(facts);
  return (lab !== undefined && lab.value < 30) || stage === 'G4' || stage === 'G5' ? 'eGFR under 30' : undefined;
}

/** Albumin lower by 0.3 g/dL or more within half a year (own decision): a sign, never a reason to restrict. */
function fallingAlbumin(facts: ClientFacts): readonly string[] {
  const [now, before] = facts.labs.filter(({ analyte, takenOn }) => analyte === 'albumin' && daysBetween(takenOn, facts.today) <= 183);
  return now !== undefined && before !== undefined && before.value - now.value >= 0.3
    ? [`Albumin fell from ${before.value} to ${now.value} g/dL.`]
    : [];
}

function gain(facts: ClientFacts): string | undefined {
  const before = latestWeightKg(facts, 'before-dialysis');
  const dry = latestWeightKg(facts, 'dry');
  if (before === undefined || dry === undefined) return undefined;
  const result = interdialyticGain(before.kg, dry.kg);
  return result.kind === 'computed' && result.value.gainPercent > 4
    ? `gain ${result.value.gainPercent.toFixed(1)} % (${result.value.gainKg.toFixed(1)} kg over dry ${dry.kg.toFixed(1)} kg)`
    : undefined;
}
