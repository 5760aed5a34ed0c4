import type { ClientFacts } from '#core/client/assessment/clientFacts.ts';
import { isOnDialysis } from '#core/client/assessment/clientFacts.ts';
import type { Source } from '#core/client/rules/source.ts';
import { exactly } from '#core/quantity/interval.ts';
import { position, proposed, type Target } from '../target.ts';

const intake: Source = { kind: 'guideline', text: 'Institute of Medicine 2005, adequate intake', short: 'IOM 2005' };

/** A day's fiber in g by sex and age (care rules 4): to 50 years women 25, men 38; above women 21, men 30. */
export function fiberTarget(facts: ClientFacts): Target {
  const isYounger = Math.floor(facts.ageYears) <= 50;
  const grams = facts.assessment.sex === 'female' ? (isYounger ? 25 : 21) : isYounger ? 38 : 30;
  const main = { ...position(`Adequate intake: ${grams} g`, [intake], { limit: 'within' }), range: exactly(grams) };
  const bowel = isOnDialysis(facts) ? ['Constipation holds potassium back and hinders peritoneal dialysis.'] : [];
  return proposed('fiber', bowel.length > 0 ? 'bowels help lose potassium' : 'the general figure', main, [
    'The general figure for adults by sex and age; raise it slowly.',
    ...bowel,
  ]);
}
