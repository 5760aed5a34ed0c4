import { type ClientFacts, has, isConservative, isOnDialysis, takes } from '#core/client/assessment/clientFacts.ts';
import { asQuoted, commonPractice, ebpg2007, fromMemory, kdoqi2003, kdoqi2020, molina2021 } from '#core/client/rules/sources.ts';
import { stageOf } from '#core/client/states/stage.ts';
import { interval } from '#core/quantity/interval.ts';
import { noLimit, type Position, position, proposed, type Target, withheld } from '../target.ts';

/** A day's calcium in mg from food, tablets and binders together. Facts section 3.5; stones 3.9, where the CKD setting wins. */
export function calciumTarget(facts: ClientFacts): Target {
  const stones: readonly Position[] = has(facts, 'calcium-oxalate-stones')
    ? [
        position(
          'Stones (AUA 2014): 1000-1200 mg from food, not low; the CKD setting wins',
          [{ kind: 'guideline', text: 'AUA 2014', secondHand: true }],
          { range: interval(1000, 1200), limit: 'within' },
        ),
      ]
    : [];
  if (isOnDialysis(facts)) {
    return withheld(
      'calcium',
      'by vitamin D and binders',
      'It depends on vitamin D analogs and calcimimetics.',
      ['Vitamin D analog, calcimimetic and calcium in binders, with the prescriber.'],
      [fromMemory(kdoqi2020('OPINION'))],
      [
        position('Older ceiling: 2000 mg in all, 1500 mg from binders', [fromMemory(kdoqi2003())], {
          range: interval(0, 2000),
          limit: 'at-most',
        }),
        position('European 2007, as checked in a cohort: 800 mg or less', [asQuoted(ebpg2007())], {
          range: interval(0, 800),
          limit: 'at-most',
        }),
        ...stones,
      ],
    );
  }
  if (facts.setting === 'transplant') return withheld('calcium', 'too few data', 'Too few data for transplants.', [], [molina2021], stones);
  if (isConservative(facts)) return noLimit('calcium', 'comfort first', ['Conservative care puts comfort first.'], [commonPractice]);
  const stage = stageOf(facts);
  if (takes(facts, 'active-vitamin-d')) {
    return withheld(
      'calcium',
      'active vitamin D in use',
      'The figure holds without active vitamin D.',
      ['Calcium result and dose, with the prescriber.'],
      [fromMemory(kdoqi2020('2B'))],
      stones,
    );
  }
  if (stage !== 'G3a' && stage !== 'G3b' && stage !== 'G4') {
    return withheld(
      'calcium',
      'figure is for CKD 3 and 4',
      'The figure is for CKD 3 and 4.',
      stage === undefined ? ['The stage set by the kidney team, or two eGFRs at least 90 days apart.'] : [],
      [fromMemory(kdoqi2020('2B'))],
      stones,
    );
  }
  const main = {
    ...position('800-1000 mg in all', [molina2021, fromMemory(kdoqi2020('2B'))], { limit: 'within' }),
    range: interval(800, 1000),
  };
  return proposed(
    'calcium',
    'food, tablets and binders together',
    main,
    [`${stage} without active vitamin D: food, tablets and binders together.`],
    stones,
  );
}
