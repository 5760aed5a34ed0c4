import type { ClientFacts } from '#core/client/clientFacts.ts';
import { isOnDialysis } from '#core/client/clientFacts.ts';
import { molina2021 } from '#core/client/sources.ts';
import { position, proposed, type Target } from '#core/client/target.ts';
import { interval } from '#core/quantity/interval.ts';

/** A day's fiber in g. Facts section 3.7: the general figure. */
export function fiberTarget(facts: ClientFacts): Target {
  const main = { ...position('25-38 g', [molina2021], { limit: 'within' }), range: interval(25, 38) };
  const bowel = isOnDialysis(facts) ? ['Constipation holds potassium back and hinders peritoneal dialysis.'] : [];
  return proposed('fiber', main, ['The general figure for adults; raise it slowly.', ...bowel]);
}
