import { ageWords, type ClientFacts, has, isLongHemodialysis, labWords, transplantAge } from '#core/client/assessment/clientFacts.ts';
import { isInDate, latestLowest, weightInDate } from '#core/client/assessment/factAges.ts';
import {
  fluidAllowanceFacts,
  fluidAllowanceMlFromUltrafiltration,
  fluidAllowanceMlFromUrine,
} from '#core/client/formulas/fluidAllowance.ts';
import { commonPractice } from '#core/client/rules/sources.ts';
import { interval } from '#core/quantity/interval.ts';
import { noLimit, type Position, position, proposed, type Target, withheld } from '../target.ts';

const sodiumFirst = 'Thirst follows salt: sodium comes first (8 g of salt hold about 1 L; Br J Renal Med 2015;20(3)).';

/** Urine under this many mL a day asks the team first, off hemodialysis (care rules 4). */
const littleUrineMl = 500;

/**
 * A day's fluid in mL: anything liquid at room temperature, and ice, gelatin, soup. Facts section 3.6; stones 3.9; the order of rules is
 * that of care rules 4: what asks the kidney team first comes before every liberal figure. A range is one to choose a figure from.
 */
export function fluidTarget(facts: ClientFacts): Target {
  if (facts.setting === 'hemodialysis') return onHemodialysis(facts);
  const asks = reasonsToAsk(facts);
  if (asks.length > 0) {
    const why = `${asks.join('. ')}: the kidney team sets the amount.`;
    return withheld(
      'fluid',
      'the kidney team sets it',
      why,
      ['Ask the kidney team first: weight, swelling, blood pressure, sodium.', sodiumFirst],
      [commonPractice],
    );
  }
  if (facts.setting === 'peritoneal-dialysis')
    return withheld(
      'fluid',
      'the kidney team sets it',
      'On peritoneal dialysis it goes by ultrafiltration, urine, edema and blood pressure.',
      ['Ultrafiltration, urine volume, edema and blood pressure, with the team.'],
      [commonPractice],
    );
  if (facts.setting === 'transplant' && transplantAge(facts) !== 'stable')
    return proposed(
      'fluid',
      'the new kidney needs fluid',
      // A need: 2 to 3 L are to be drunk, and neither end is a most.
      {
        ...position('Early after transplant: often 2-3 L', [commonPractice], { limit: 'at-least' }),
        range: interval(2000, 3000),
      },
      ['The transplant team sets it.'],
    );
  return noLimit('fluid', 'no overload on record', ['No limit unless overloaded or low in sodium.'], [commonPractice], stones(facts));
}

/** What asks the kidney team before fluid is set; empty where nothing does. */
export function reasonsToAsk(facts: ClientFacts): readonly string[] {
  const sodium = latestLowest(facts, 'sodium');
  const urine = facts.assessment.urineMlPerDay;
  const isLittle = urine !== undefined && urine.value < littleUrineMl && isInDate(facts, 'urine', urine.on);
  return [
    ...(has(facts, 'overload', 'edema', 'ascites') ? ['There is fluid overload'] : []),
    ...(facts.assessment.symptoms.some(one => one === 'swelling' || one === 'breathlessness') ? ['Swelling or breathlessness'] : []),
    ...(has(facts, 'heart-failure') ? ['Heart failure'] : []),
    ...(sodium !== undefined && sodium.value < 135 ? [`Low sodium: ${labWords(sodium, facts.today)}`] : []),
    // On hemodialysis little urine is what the limit is made of.
    ...(isLittle && facts.setting !== 'hemodialysis'
      ? [`Urine under ${littleUrineMl} mL: ${urine.value} mL a day (${ageWords(urine.on, facts.today)})`]
      : []),
  ];
}

function onHemodialysis(facts: ClientFacts): Target {
  const { treatment, urineMlPerDay } = facts.assessment;
  if (treatment.setting !== 'hemodialysis') throw new RangeError('hemodialysis alone');
  if (urineMlPerDay === undefined || !isInDate(facts, 'urine', urineMlPerDay.on))
    return withheld(
      'fluid',
      'urine volume needed',
      urineMlPerDay === undefined ? 'A day’s urine is not known.' : `Urine ${ageWords(urineMlPerDay.on, facts.today)} is too old.`,
      ['24-hour urine volume.'],
      [commonPractice],
      stones(facts),
    );
  const fromUrine = fluidAllowanceMlFromUrine(urineMlPerDay.value);
  if (fromUrine.kind === 'refused')
    return withheld('fluid', 'urine volume needed', fromUrine.told, ['24-hour urine volume.'], [commonPractice]);
  const main = { ...position('A day’s urine and 500-1000 mL', [commonPractice], { limit: 'within' }), range: fromUrine.value };
  const dry = weightInDate(facts, 'dry');
  const alternatives: Position[] = [];
  if (dry !== undefined && treatment.ultrafiltrationLimitMlPerKgH !== undefined && treatment.sessionHours !== undefined) {
    for (const gapDays of [2, 3]) {
      const allowance = fluidAllowanceMlFromUltrafiltration({
        ultrafiltrationMlPerKgH: treatment.ultrafiltrationLimitMlPerKgH,
        sessionHours: treatment.sessionHours,
        targetWeightKg: dry.kg,
        gapDays,
        urineMlPerDay: urineMlPerDay.value,
      });
      if (allowance.kind === 'computed') {
        alternatives.push(
          position(`From the ultrafiltration limit, gap of ${gapDays} days`, fluidAllowanceFacts.sources, {
            range: interval(0, allowance.value),
            limit: 'at-most',
          }),
        );
      }
    }
  }
  const long = isLongHemodialysis(facts) ? ['With frequent or long sessions fluid is often freer: by gain.'] : [];
  const asks = reasonsToAsk(facts);
  return proposed(
    'fluid',
    asks.length === 0 ? 'between two sessions' : 'ask the kidney team first',
    main,
    [
      `Urine ${urineMlPerDay.value} mL a day (${ageWords(urineMlPerDay.on, facts.today)}).`,
      sodiumFirst,
      'Low gain with falling intake is a warning, not a success.',
      ...long,
      ...(asks.length === 0 ? [] : [`${asks.join('. ')}: ask the kidney team before this is signed.`]),
    ],
    [...alternatives, ...stones(facts)],
  );
}

function stones(facts: ClientFacts): readonly Position[] {
  return has(facts, 'calcium-oxalate-stones')
    ? [
        position(
          'Stones (AUA 2014): enough for over 2.5 L of urine a day; clashes with overload and hemodialysis, where the CKD setting wins',
          [{ kind: 'guideline', text: 'AUA 2014', secondHand: true }],
        ),
      ]
    : [];
}
