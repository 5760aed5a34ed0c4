import { type ClientFacts, has, isLongHemodialysis, isOnDialysis, labWords, takes } from '#core/client/assessment/clientFacts.ts';
import { latest, latestLowest, resultsInDate } from '#core/client/assessment/factAges.ts';
import { supplements } from '#core/client/assessment/vocabularies.ts';
import { reasonsToAsk } from '#core/client/prescription/targets/fluidTarget.ts';
import type { Source } from '#core/client/rules/source.ts';
import { asQuoted, commonPractice, fromMemory, kdigoMbd2017, kdoqi2020, ownRule } from '#core/client/rules/sources.ts';
import { calciumAbove } from '#core/client/states/calciumAbove.ts';
import { potassiumState } from '#core/client/states/potassiumState.ts';
import { refeedingSigns } from '#core/client/states/refeeding.ts';
import { newestRate, stageFacts } from '#core/client/states/stage.ts';
import { wastingState } from '#core/client/states/wastingState.ts';
import { dryWeightAway, gainOverLine, weightGainToCall } from '#core/client/states/weightGain.ts';
import { weightLoss } from '#core/client/states/weightLoss.ts';
import { daysBetween } from '../calendarDay.ts';
import { type Caution, type CautionRule, cautionOf } from './caution.ts';
import { contactRules, potassiumBeforeHemodialysis } from './contactValues.ts';

export type { Caution } from './caution.ts';

const urolNurs: Source = { kind: 'paper', text: 'Urol Nurs 2005' };
const pages: Source = { kind: 'common-practice', text: 'hospital and kidney patient pages' };
const memory = fromMemory(commonPractice);

/** The lines of facts section 8, in its order. Every client has kidney disease, so "any CKD" is always met. */
const rules: readonly CautionRule[] = [
  own(
    'salt-substitute-on-record',
    'First of all: a salt substitute or potassium salt is on record, and potassium is above range. Ask the kidney team before any more of it.',
    commonPractice,
    facts => {
      const state = potassiumState(facts);
      const found = [
        ...(facts.assessment.supplements.includes('salt-substitute') ? ['salt substitute'] : []),
        ...(takes(facts, 'potassium-salt') ? ['potassium salt'] : []),
      ];
      if (found.length === 0) return undefined;
      const [newest] = resultsInDate(facts, 'potassium');
      const isAbove = state.kind === 'high' || state.kind === 'once-above';
      // Marked or contradicting results set nothing; the substitute is told by the highest of the newest day all the same.
      const marked = state.kind === 'unknown' && newest !== undefined && newest.value > (newest.upperNormal ?? 5) ? newest : undefined;
      const lab = isAbove ? state.lab : marked;
      return lab && `${found.join(', ')}; ${labWords(lab, facts.today)}`;
    },
  ),
  potassiumBeforeHemodialysis,
  own(
    'stage-in-question',
    'Until it is answered the milder stage restricts, the lower one cautions.',
    ownRule,
    facts => stageFacts(facts).question,
  ),
  own('dry-weight-again', 'Ask the team for the dry weight again.', ownRule, dryWeightAway),
  own('weight-loss-in-question', 'Was the loss wanted, or fluid? Until it is answered nothing is restricted by it.', ownRule, facts => {
    const { isOpen, percent3Months, percent6Months } = weightLoss(facts);
    return isOpen ? `recorded weights: ${Math.max(percent3Months ?? 0, percent6Months ?? 0).toFixed(1)} % lost` : undefined;
  }),
  own(
    'calcium-above',
    'Calcium is above the limit: calcium in targets, binders and supplements is for the prescriber to look at.',
    ownRule,
    calciumAbove,
  ),
  own(
    'bicarbonate-22',
    'Bicarbonate is under 22: tell the kidney team; acid load and, where they agree, alkali.',
    asQuoted(kdoqi2020('OPINION')),
    facts => {
      const lab = latestLowest(facts, 'bicarbonate');
      return lab !== undefined && lab.value < 22 ? labWords(lab, facts.today) : undefined;
    },
  ),
  own('hba1c-10', 'HbA1c is over 10: tell the diabetes team.', ownRule, facts => {
    const lab = latest(facts, 'hba1c');
    return lab !== undefined && lab.value > 10 ? labWords(lab, facts.today) : undefined;
  }),
  own(
    'fluid-ask-first',
    'Ask the kidney team before a fluid figure is signed.',
    commonPractice,
    facts => reasonsToAsk(facts).join('. ') || undefined,
  ),
  own('salt-and-low-pressure', 'May need more salt: ask the kidney team before sodium is limited.', commonPractice, facts =>
    has(facts, 'hypotension') ? 'low blood pressure' : has(facts, 'ileostomy') ? 'ileostomy' : undefined,
  ),
  always('salt-substitute', 'A salt substitute or low-sodium salt may hold potassium: ask before use.', commonPractice),
  always('star-fruit', 'No star fruit (carambola) or its juice: nerve toxin and oxalate; hiccups, confusion, seizures, deaths.', {
    kind: 'paper',
    text: 'Saudi J Kidney Dis Transpl 2017, review of 123 cases',
  }),
  on(
    'grapefruit',
    'No grapefruit, pomelo or Seville orange; ask about clementine, pomegranate, and turmeric in quantity.',
    { kind: 'paper', text: 'Transplantation 2003;75:1057; PMC9611668, Table 2', toBeConfirmed: true },
    grapefruit,
  ),
  on('grapefruit-mtor', 'No grapefruit, pomelo or Seville orange.', memory, facts =>
    takes(facts, 'sirolimus-or-everolimus') ? 'sirolimus or everolimus' : undefined,
  ),
  on(
    'food-safety',
    'Cook through and chill; no raw egg, meat, fish, shellfish or sprouts, no refrigerated smoked fish, no unwashed produce; cold cuts and hot dogs only heated to steaming. For as long as the immune system is held down, strictest in the first year.',
    pages,
    suppressed,
  ),
  on(
    'pasteurized',
    'Pasteurized milk, cheese and juice only; no soft mold-ripened or blue cheese; queso fresco, panela, requesón and other soft fresh cheese only heated to steaming, whatever the milk; ask about live probiotics.',
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
  own(
    'refeeding',
    'Refeeding risk: a slow start, bloods and thiamine by the medical team.',
    asQuoted({ kind: 'guideline', text: 'NICE CG32, in PMC8672300 Table 2' }),
    facts => refeedingSigns(facts).join(', ') || undefined,
  ),
  own(
    'do-not-restrict',
    'Do not restrict further: loosen potassium, phosphorus and protein limits, dietitian review.',
    commonPractice,
    facts => [...wastingState(facts).blocks.map(({ why }) => why), ...fallingAlbumin(facts)].join(' ') || undefined,
  ),
  on('vitamin-k', 'Keep vitamin K food steady, no sudden change, no supplement; tell the clinic.', commonPractice, facts =>
    takes(facts, 'vitamin-k-antagonist') ? 'vitamin K antagonist' : undefined,
  ),
  own(
    'gain-over-line',
    'The newest gain between treatments was over the line: tell the team, look at salt and fluid.',
    commonPractice,
    gainOverLine,
  ),
  weightCall(),
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
      return found.map(supplements.words).join(', ') || undefined;
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
    'long-hemodialysis',
    'Frequent or long sessions: potassium, phosphorus and fluid are often freer; check for low phosphate and water-soluble vitamins.',
    commonPractice,
    facts => (isLongHemodialysis(facts) ? 'schedule of hemodialysis' : undefined),
  ),
  on('vitamin-a', 'No vitamin A supplement: it accumulates.', fromMemory(kdoqi2020('OPINION')), facts =>
    isOnDialysis(facts) && facts.assessment.supplements.includes('vitamin-a') ? 'vitamin A on dialysis' : undefined,
  ),
];

/** Cautions whose condition is met as of `facts.today`, those for same-day contact first. Facts sections 8 and 4.3. */
export function cautionsFor(facts: ClientFacts): readonly Caution[] {
  const met = [...contactRules, ...rules].flatMap(rule => cautionOf(rule, facts) ?? []);
  const rank = ({ contact, sameDay, isOwn }: Caution) =>
    contact === 'emergency-now' ? 0 : sameDay ? 1 : contact === 'within-days' ? 2 : isOwn ? 3 : 4;
  return met.sort((a, b) => rank(a) - rank(b));
}

function on(id: string, told: string, source: Source, when: CautionRule['when']): CautionRule {
  return { id, told, source, when };
}

/** From this client's own values or record. */
function own(id: string, told: string, source: Source, when: CautionRule['when']): CautionRule {
  return { ...on(id, told, source, when), isOwn: true };
}

function always(id: string, told: string, source: Source): CautionRule {
  return on(id, told, source, () => 'kidney disease');
}

/** Why the immune system is held down; undefined where it is not. Food safety goes by it, here and on foods. */
export function suppressed(facts: ClientFacts): string | undefined {
  if (facts.setting === 'transplant') return 'transplant';
  return takes(facts, 'tacrolimus', 'ciclosporin', 'sirolimus-or-everolimus', 'other-immunosuppressant', 'high-dose-steroid')
    ? 'immunosuppressed'
    : undefined;
}

function dialysis(facts: ClientFacts): string | undefined {
  return isOnDialysis(facts) ? 'dialysis' : undefined;
}

/** eGFR under 30: by the newest in date, also computed from creatinine, or the lower stage where two are in question. */
function belowThirty(facts: ClientFacts): string | undefined {
  const rate = newestRate(facts);
  const stage = stageFacts(facts).cautioning;
  return (rate !== undefined && rate < 30) || stage === 'G4' || stage === 'G5' ? 'eGFR under 30' : undefined;
}

/** Every transplant recipient, unless the medicine list names other immunosuppressants alone (care rules 4). */
function grapefruit(facts: ClientFacts): string | undefined {
  if (takes(facts, 'tacrolimus', 'ciclosporin')) return 'tacrolimus or cyclosporine';
  if (facts.setting !== 'transplant' || takes(facts, 'sirolimus-or-everolimus', 'other-immunosuppressant')) return undefined;
  return 'transplant; the medicine list names no immunosuppressant';
}

/** Albumin lower by 0.3 g/dL or more (own decision): a sign, never a reason to restrict. */
function fallingAlbumin(facts: ClientFacts): readonly string[] {
  const now = latestLowest(facts, 'albumin');
  const before =
    now && facts.labs.find(lab => lab.analyte === 'albumin' && lab.takenOn < now.takenOn && daysBetween(lab.takenOn, facts.today) <= 183);
  return now !== undefined && before !== undefined && before.value - now.value >= 0.3 - 1e-9
    ? [`Albumin fell from ${before.value} to ${now.value} g/dL.`]
    : [];
}

/** When the client is to call for weight (care rules 4); nobody else has such a line. */
function weightCall(): CautionRule {
  return {
    id: 'overload',
    told: 'Overload: the client calls the same day for swelling, for breathless lying flat, and for this gain of weight.',
    source: commonPractice,
    when: facts => {
      const line = weightGainToCall(facts);
      return line?.words;
    },
  };
}
