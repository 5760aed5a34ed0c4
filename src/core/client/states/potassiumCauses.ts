import { type ClientFacts, has, isOnDialysis, type Lab, labWords, takes } from '#core/client/assessment/clientFacts.ts';
import { latest, latestLowest, resultsInDate } from '#core/client/assessment/factAges.ts';
import {
  type MedicineClass,
  medicines,
  type SupplementClass,
  type Symptom,
  supplements,
  symptoms,
} from '#core/client/assessment/vocabularies.ts';
import { daysBetween } from '#core/quantity/calendarDay.ts';
import { addedADay, amountWords } from './eaten.ts';
import { weightLoss } from './weightLoss.ts';

/** A cause to look at before food is restricted; `onRecord` says what of this client's record shows it. */
export interface Cause {
  readonly text: string;
  readonly onRecord?: string;
  /** As the cause of a problem statement; missing where it is none: a sample, a treatment. */
  readonly asCause?: string;
}

/**
 * The other causes of a high potassium, those that the client's own record shows first, a salt substitute before all (facts 4.4, care
 * rules 4; trimethoprim, heparin and catabolism from memory). With ibuprofen on record: "On record: NSAID. Heparin, …" leads.
 */
export function potassiumCauses(facts: ClientFacts): readonly Cause[] {
  const all = causes(facts).map(([text, named, ...found]): Cause => {
    const onRecord = found.filter(one => one !== undefined).join(', ');
    if (onRecord === '') return { text };
    return { text, onRecord, ...(named === undefined ? {} : { asCause: named === '' ? onRecord : `${named} (${onRecord})` }) };
  });
  return [...all.filter(({ onRecord }) => onRecord !== undefined), ...all.filter(({ onRecord }) => onRecord === undefined)];
}

export function causeWords({ text, onRecord }: Cause): string {
  return onRecord === undefined ? text : `On record: ${onRecord}. ${text}`;
}

type Found = string | undefined;

/** Each with how a problem statement calls it: '' as it stands on record, undefined where it is no cause of a problem. */
function causes(facts: ClientFacts): readonly (readonly [text: string, named: string | undefined, ...found: Found[]])[] {
  const { assessment } = facts;
  const supplement = (key: SupplementClass): Found => (assessment.supplements.includes(key) ? supplements.words(key) : undefined);
  const medicine = (...keys: readonly MedicineClass[]): Found =>
    keys
      .filter(key => takes(facts, key))
      .map(medicines.words)
      .join(', ') || undefined;
  const symptom = (key: Symptom): Found => (assessment.symptoms.includes(key) ? symptoms.words(key) : undefined);
  const bicarbonate = latestLowest(facts, 'bicarbonate');
  const told = (lab: Lab | undefined, isMet: (value: number) => boolean): Found =>
    lab !== undefined && isMet(lab.value) ? labWords(lab, facts.today) : undefined;
  const [ktv, glucose, protein] = [latest(facts, 'spKtV'), latest(facts, 'glucose'), latest(facts, 'cReactiveProtein')];
  const hba1c = latest(facts, 'hba1c');
  const sodium = latestLowest(facts, 'sodium');
  const [hemoglobin, before] = resultsInDate(facts, 'hemoglobin');
  const hemolyzed = resultsInDate(facts, 'potassium').find(lab => lab.hemolyzed);
  const raas = medicine('raas-inhibitor');
  const potassiumAdded = addedADay(facts, 'potassiumMg');
  return [
    [
      'Potassium tablets, citrate, potassium penicillin, salt substitute, herbal products: ask by name.',
      '',
      supplement('salt-substitute'),
      medicine('potassium-salt'),
      supplement('herbal'),
      potassiumAdded === undefined || potassiumAdded.lo === 0
        ? undefined
        : `supplements or feeds with ${amountWords(potassiumAdded, 'mg')} of potassium a day`,
    ],
    ['Sample: hemolysis, EDTA, delay, cold store, fist clenching, high platelets or white cells.', undefined, told(hemolyzed, () => true)],
    ['Acidosis: bicarbonate under 22.', 'acidosis', told(bicarbonate, value => value < 22)],
    ['Constipation: bowel record.', '', symptom('constipation')],
    [
      'Insulin lack, high glucose, a long fast before hemodialysis.',
      'high glucose or a fast',
      told(glucose, value => value > 250),
      told(hba1c, value => value > 10),
      symptom('ketones'),
      has(facts, 'fasting-for-faith') ? 'fasting' : undefined,
    ],
    [
      'RAAS inhibitor: recent start or dose.',
      '',
      raas === undefined || assessment.raasChangedOn === undefined ? raas : `${raas}, changed on ${assessment.raasChangedOn}`,
    ],
    [
      'Mineralocorticoid antagonist or another potassium-sparing diuretic.',
      '',
      medicine('mineralocorticoid-antagonist', 'potassium-sparing-diuretic'),
    ],
    ['Trimethoprim or pentamidine in the last 2 weeks.', '', medicine('trimethoprim')],
    [
      'Heparin, calcineurin inhibitor, NSAID, non-selective beta-blocker, digoxin excess.',
      '',
      medicine('heparin', 'tacrolimus', 'ciclosporin', 'nsaid', 'non-selective-beta-blocker', 'digoxin'),
    ],
    [
      'Dialysis dose: low Kt/V, missed session, access trouble, dialysate potassium.',
      'too little dialysis',
      told(ktv, value => value < 1.2),
      isOnDialysis(facts) ? symptom('missed-or-shortened-session') : undefined,
    ],
    [
      'Catabolism: infection, weight loss, rhabdomyolysis, tumor lysis, steroid.',
      'catabolism',
      has(facts, 'acute-illness', 'critically-ill', 'peritonitis') ? 'acute illness' : undefined,
      symptom('fever'),
      medicine('high-dose-steroid'),
      told(protein, value => value > 10),
      weightLoss(facts).isLost ? 'weight loss' : undefined,
    ],
    [
      'Bleeding in the gut, transfusion, hemolysis.',
      'bleeding or hemolysis',
      hemoglobin !== undefined &&
      before !== undefined &&
      before.value - hemoglobin.value >= 2 - 1e-9 &&
      daysBetween(before.takenOn, hemoglobin.takenOn) <= 60
        ? labWords(hemoglobin, facts.today)
        : undefined,
    ],
    [
      'Acute kidney injury, obstruction, dehydration, low aldosterone, adrenal failure.',
      '',
      assessment.acuteKidneyInjury ? 'acute kidney injury' : undefined,
      symptom('vomiting'),
      symptom('diarrhea'),
      told(sodium, value => value < 135),
    ],
  ];
}
