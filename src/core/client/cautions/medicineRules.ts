import { type ClientFacts, has, labWords, takes } from '#core/client/assessment/clientFacts.ts';
import { latest, latestLowest } from '#core/client/assessment/factAges.ts';
import { medicines } from '#core/client/assessment/vocabularies.ts';
import type { Source } from '#core/client/rules/source.ts';
import { asQuoted, commonPractice, fromMemory, kdigoMbd2017, kdoqi2003, ownRule } from '#core/client/rules/sources.ts';
import { addedADay, amountWords } from '#core/client/states/eaten.ts';
import { potassiumBinderSodium, potassiumBinderWords } from '#core/client/states/potassiumBinding.ts';
import { potassiumState } from '#core/client/states/potassiumState.ts';
import {
  binderCalcium,
  binderWords,
  calciumOf,
  doseWords,
  isCalciumBinder,
  takenBinders,
  takesBinder,
} from '#core/client/states/takenBinders.ts';
import { add, zero } from '#core/quantity/interval.ts';
import type { CautionRule } from './caution.ts';
import { own } from './cautionRule.ts';

const memory = fromMemory(commonPractice);
const binderReview: Source = { kind: 'paper', text: 'Daugirdas, Semin Dial 2011', toBeConfirmed: true };
const label: Source = { kind: 'regulation', text: 'US label', secondHand: true };

/** Ceilings for calcium in mg a day: from binders, and in all (KDOQI 2003, from memory). */
const mostFromBinders = 1500;
const mostInAll = 2000;

/** From binders, potassium binders, diuretics and statins on record. They are the prescriber's: no rule starts, stops or doses one. */
export const medicineRules: readonly CautionRule[] = [
  own(
    'binder-with-food',
    'Binders work with food that holds phosphorus: with the meals richest in it, not alone; apart from thyroid hormone, iron, quinolones and mycophenolate.',
    memory,
    facts => takenBinders(facts).map(doseWords).join('; ') || undefined,
  ),
  own('binder-chewed', 'It is chewed: with a swallowing difficulty ask the team for another form.', binderReview, facts =>
    // Of a binder that is not named nobody knows: nothing is said of its form.
    takenBinders(facts).length === 0
      ? undefined
      : binderWords(facts, ({ binder }) => binder === 'lanthanum' || binder === 'sucroferric-oxyhydroxide'),
  ),
  own(
    'calcium-binder',
    'The dose of calcium-based binders is kept low in all adults, G3a to G5D; it is the prescriber’s.',
    asQuoted(kdigoMbd2017()),
    facts => {
      const taken = takenBinders(facts).filter(({ binder }) => isCalciumBinder(binder));
      return taken.length === 0 ? undefined : `calcium from binders: ${amountWords(taken.map(calciumOf).reduce(add), 'mg')} a day`;
    },
  ),
  own(
    'calcium-dose-unknown',
    'Ask for strength and number a day: without them the calcium of a day is not known.',
    ownRule,
    facts =>
      takenBinders(facts)
        .filter(taken => calciumOf(taken).hi === Number.POSITIVE_INFINITY)
        .map(doseWords)
        .join('; ') || undefined,
  ),
  own(
    'calcium-load',
    'Over an older ceiling for calcium (1500 mg from binders, 2000 mg in all): tell the prescriber.',
    fromMemory(kdoqi2003()),
    facts => {
      const binders = binderCalcium(facts) ?? zero;
      const all = add(binders, addedADay(facts, 'calciumMg') ?? zero);
      if (binders.lo > mostFromBinders) return `calcium from binders: ${amountWords(binders, 'mg')} a day`;
      return all.lo > mostInAll ? `calcium from binders and supplements: ${amountWords(all, 'mg')} a day, before food` : undefined;
    },
  ),
  own(
    'ferric-citrate',
    'Its iron is absorbed: ferritin and transferrin saturation decide, no iron beside it without the team; no aluminum with it.',
    binderReview,
    facts => {
      if (!takesBinder(facts, 'ferric-citrate')) return undefined;
      const ferritin = latest(facts, 'ferritin');
      return ferritin === undefined ? 'ferric citrate; no ferritin in date' : `ferric citrate; ${labWords(ferritin, facts.today)}`;
    },
  ),
  own(
    'aluminum-binder',
    'Long use of an aluminum binder is avoided; citrate takes more aluminum in. Tell the prescriber.',
    asQuoted(kdigoMbd2017()),
    facts => (takesBinder(facts, 'aluminum-hydroxide') ? 'aluminum hydroxide' : undefined),
  ),
  own('magnesium-binder', 'Magnesium is watched while it is taken.', binderReview, facts => {
    if (!takesBinder(facts, 'magnesium-carbonate')) return undefined;
    const magnesium = latest(facts, 'magnesium');
    return magnesium === undefined
      ? 'magnesium carbonate; no magnesium in date'
      : `magnesium carbonate; ${labWords(magnesium, facts.today)}`;
  }),
  own(
    'potassium-binder',
    'A potassium in range is one with the binder: nothing is freed by it, and the other causes are looked at all the same. Hours apart from other medicines.',
    ownRule,
    facts => potassiumBinderWords(facts),
  ),
  own('potassium-binder-sodium', 'It brings sodium beside food: look for swelling, tell the team.', label, facts => {
    const names = potassiumBinderWords(facts, 'sodium-zirconium-cyclosilicate', 'sodium-polystyrene-sulfonate');
    return names === undefined ? undefined : `${names}: about ${amountWords(potassiumBinderSodium(facts), 'mg')} of sodium a day`;
  }),
  own('patiromer', 'It gives calcium for potassium and binds magnesium: both are watched.', fromMemory(label), facts =>
    potassiumBinderWords(facts, 'patiromer'),
  ),
  own(
    'diuretic-low',
    'Loop and thiazide diuretics can lower potassium and sodium: tell the prescriber before salt, fluid or potassium are changed.',
    memory,
    diureticWithLow,
  ),
  own(
    'statin-grapefruit',
    'Ask which statin: grapefruit raises simvastatin, lovastatin and atorvastatin in the blood; the others little.',
    { kind: 'paper', text: 'Am J Med 2016;129:26', secondHand: true },
    facts => (takes(facts, 'statin') ? 'statin' : undefined),
  ),
];

function diureticWithLow(facts: ClientFacts): string | undefined {
  const taken = (['loop-diuretic', 'thiazide-diuretic', 'diuretic'] as const).filter(one => takes(facts, one));
  const state = potassiumState(facts);
  const sodium = latestLowest(facts, 'sodium');
  const low = [
    ...(state.kind === 'low' ? [labWords(state.lab, facts.today)] : []),
    ...(sodium !== undefined && sodium.value < 135 ? [labWords(sodium, facts.today)] : []),
  ];
  return taken.length === 0 || low.length === 0 ? undefined : [...taken.map(medicines.words), ...low].join('; ');
}

/** Gout with what raises uric acid on record. */
export function goutWords(facts: ClientFacts): string | undefined {
  if (!has(facts, 'gout')) return undefined;
  const raising = (['loop-diuretic', 'thiazide-diuretic', 'nsaid'] as const).filter(one => takes(facts, one));
  return ['gout', ...raising.map(medicines.words)].join(', ');
}
