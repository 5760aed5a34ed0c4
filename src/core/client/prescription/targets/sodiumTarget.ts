import { type ClientFacts, has, isConservative } from '#core/client/assessment/clientFacts.ts';
import type { Source } from '#core/client/rules/source.ts';
import { asQuoted, commonPractice, fromMemory, ijnrd2016, kdigoCkd2024, kdigoDiabetes2022, kdoqi2020 } from '#core/client/rules/sources.ts';
import { interval } from '#core/quantity/interval.ts';
import { noLimit, type Position, position, proposed, type Target } from '../target.ts';

/** A day's sodium in mg. Facts section 3.3; stones 3.9. */
export function sodiumTarget(facts: ClientFacts): Target {
  if (has(facts, 'salt-losing-kidney-disease')) {
    return noLimit(
      'sodium',
      'the kidneys lose salt',
      ['Salt-losing kidney disease: do not restrict.'],
      [asQuoted(kdigoCkd2024('practice point'))],
    );
  }
  const isSwollen = facts.assessment.symptoms.some(one => one === 'swelling' || one === 'breathlessness');
  if (
    isConservative(facts) &&
    !isSwollen &&
    !has(facts, 'edema', 'ascites', 'overload', 'hypertension', 'heart-failure', 'nephrotic-syndrome')
  ) {
    return noLimit(
      'sodium',
      'comfort first',
      ['Conservative care puts comfort first: no restriction without a symptom or a laboratory reason.'],
      [commonPractice],
    );
  }
  const below = (says: string, mg: number, sources: readonly Source[]) => ({
    ...position(says, sources, { limit: 'below' }),
    range: interval(0, mg),
  });
  const notOnDialysis = facts.setting === 'ckd-not-on-dialysis';
  const alternatives: Position[] = [];
  if (notOnDialysis) {
    alternatives.push(below('KDIGO 2024: under 2 g (5 g salt)', 2000, [fromMemory(kdigoCkd2024('2C'))]));
    if (facts.assessment.diabetes) alternatives.push(below('KDIGO Diabetes 2022: under 2 g', 2000, [asQuoted(kdigoDiabetes2022('2C'))]));
  }
  const older = (says: string, lo: number, hi: number) => position(says, [ijnrd2016], { range: interval(lo, hi), limit: 'within' });
  if (facts.setting === 'hemodialysis') alternatives.push(older('Older practice: 2-3 g', 2000, 3000));
  if (facts.setting === 'peritoneal-dialysis') alternatives.push(older('Older practice: 2-4 g by volume', 2000, 4000));
  if (has(facts, 'calcium-oxalate-stones')) {
    alternatives.push(
      position('Stones (AUA 2014): 2300 mg or less', [{ kind: 'guideline', text: 'AUA 2014', secondHand: true }], {
        range: interval(0, 2300),
        limit: 'at-most',
      }),
    );
  }
  const grades = notOnDialysis ? [kdoqi2020('1B, blood pressure and volume'), kdoqi2020('2A, proteinuria')] : [kdoqi2020('1C')];
  return proposed(
    'sodium',
    has(facts, 'hypotension', 'ileostomy') ? 'ask first: may need more salt' : 'blood pressure, thirst, fluid',
    below('KDOQI 2020: under 2.3 g (100 mmol)', 2300, grades),
    [
      'Less sodium lowers blood pressure and thirst and helps with fluid.',
      ...(has(facts, 'hypotension', 'ileostomy')
        ? ['Low blood pressure or an ileostomy may need more salt: ask the kidney team before it is limited.']
        : []),
    ],
    alternatives,
  );
}
