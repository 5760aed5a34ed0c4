import { type ClientFacts, has, isLongHemodialysis, isOnDialysis, takes } from '#core/client/assessment/clientFacts.ts';
import { supplements } from '#core/client/assessment/vocabularies.ts';
import type { Source } from '#core/client/rules/source.ts';
import { asQuoted, commonPractice, fromMemory, kdigoMbd2017, kdoqi2020, ownRule } from '#core/client/rules/sources.ts';
import { hasAdded } from '#core/client/states/eaten.ts';
import { potassiumState } from '#core/client/states/potassiumState.ts';
import { newestRate, stageFacts } from '#core/client/states/stage.ts';
import { suppressed } from '#core/client/states/suppressed.ts';
import { weightGainToCall } from '#core/client/states/weightGain.ts';
import type { CautionRule } from './caution.ts';
import { always, on } from './cautionRule.ts';

const urolNurs: Source = { kind: 'paper', text: 'Urol Nurs 2005' };
const pages: Source = { kind: 'common-practice', text: 'hospital and kidney patient pages' };
const memory = fromMemory(commonPractice);

/** What holds for everybody in a setting; lines of facts section 8, in its order. Every client has kidney disease, so "any CKD" is always met. */
export const settingRules: readonly CautionRule[] = [
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
    'No high-dose vitamin C. On dialysis KDOQI aims at 90 mg (men) and 75 mg (women), older texts cap tablets at 60-100 mg: they differ.',
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
  on('vitamin-k', 'Keep vitamin K food steady, no sudden change, no supplement; tell the clinic.', commonPractice, facts =>
    takes(facts, 'vitamin-k-antagonist') ? 'vitamin K antagonist' : undefined,
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
    facts => {
      const found = (['creatine', 'sports-or-slimming-product', 'protein-powder'] as const).filter(
        one => facts.assessment.supplements.includes(one) || (one === 'protein-powder' && hasAdded(facts, one)),
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
