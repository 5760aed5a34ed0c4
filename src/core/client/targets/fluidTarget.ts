import { ageWords, type ClientFacts, has, labWords, latest, latestWeightKg, transplantAge } from '#core/client/clientFacts.ts';
import {
  fluidAllowanceFacts,
  fluidAllowanceMlFromUltrafiltration,
  fluidAllowanceMlFromUrine,
} from '#core/client/formulas/fluidAllowance.ts';
import { commonPractice } from '#core/client/sources.ts';
import { noLimit, type Position, position, proposed, type Target, withheld } from '#core/client/target.ts';
import { interval } from '#core/quantity/interval.ts';

const sodiumFirst = 'Thirst follows salt: sodium comes first (8 g of salt hold about 1 L; Br J Renal Med 2015;20(3)).';

/** A day's fluid in mL: anything liquid at room temperature, and ice, gelatin, soup. Facts section 3.6; stones 3.9. */
export function fluidTarget(facts: ClientFacts): Target {
  switch (facts.setting) {
    case 'hemodialysis':
      return onHemodialysis(facts);
    case 'peritoneal-dialysis':
      return withheld(
        'fluid',
        'On peritoneal dialysis it goes by ultrafiltration, urine, edema and blood pressure.',
        ['Ultrafiltration, urine volume, edema and blood pressure, with the team.'],
        [commonPractice],
      );
    case 'transplant':
      if (transplantAge(facts) === 'stable') break;
      return proposed(
        'fluid',
        { ...position('Early after transplant: often 2-3 L', [commonPractice], { limit: 'within' }), range: interval(2000, 3000) },
        ['The transplant team sets it.'],
      );
    case 'ckd-not-on-dialysis':
      break;
  }
  if (has(facts, 'overload', 'edema', 'heart-failure'))
    return withheld(
      'fluid',
      'There is fluid overload: the team sets the amount.',
      ['Weight, swelling, blood pressure.', sodiumFirst],
      [commonPractice],
    );
  const sodium = latest(facts, 'sodium', 90);
  if (sodium !== undefined && sodium.value < 135)
    return withheld(
      'fluid',
      `${labWords(sodium, facts.today)}: low sodium, the team sets the amount.`,
      ['The cause of low sodium.'],
      [commonPractice],
    );
  return noLimit('fluid', ['No limit unless overloaded or low in sodium.'], [commonPractice], stones(facts));
}

function onHemodialysis(facts: ClientFacts): Target {
  const { treatment, urineMlPerDay } = facts.assessment;
  if (treatment.setting !== 'hemodialysis') throw new RangeError('hemodialysis alone');
  if (urineMlPerDay === undefined)
    return withheld('fluid', 'A day’s urine is not known.', ['24-hour urine volume.'], [commonPractice], stones(facts));
  const fromUrine = fluidAllowanceMlFromUrine(urineMlPerDay.value);
  if (fromUrine.kind === 'refused') return withheld('fluid', fromUrine.told, ['24-hour urine volume.'], [commonPractice]);
  const main = { ...position('A day’s urine and 500-1000 mL', [commonPractice], { limit: 'within' }), range: fromUrine.value };
  const dry = latestWeightKg(facts, 'dry');
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
  const home = treatment.place === 'home' ? ['At home, with frequent or long sessions, fluid is often freer: by gain.'] : [];
  return proposed(
    'fluid',
    main,
    [
      `Urine ${urineMlPerDay.value} mL a day (${ageWords(urineMlPerDay.on, facts.today)}).`,
      sodiumFirst,
      'Low gain with falling intake is a warning, not a success.',
      ...home,
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
