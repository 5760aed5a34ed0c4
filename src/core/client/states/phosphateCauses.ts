import { type ClientFacts, isOnDialysis, labWords, takes } from '#core/client/assessment/clientFacts.ts';
import { latest } from '#core/client/assessment/factAges.ts';
import { supplements as supplementList } from '#core/client/assessment/vocabularies.ts';
import { hasAdded } from './eaten.ts';
import type { Cause } from './potassiumCauses.ts';
import { binderWords } from './takenBinders.ts';

/** What of this client's own record can raise phosphate beside food. Common practice, no source. */
export function phosphateCauses(facts: ClientFacts): readonly Cause[] {
  const { supplements, symptoms } = facts.assessment;
  const ktv = latest(facts, 'spKtV');
  const causes: Cause[] = [];
  if (isOnDialysis(facts) && symptoms.includes('missed-or-shortened-session'))
    causes.push({
      text: 'Dialysis that was missed or cut short.',
      ...same('missed or shortened session'),
    });
  if (ktv !== undefined && ktv.value < 1.2)
    causes.push({
      text: 'A low dialysis dose.',
      onRecord: labWords(ktv, facts.today),
      asCause: `too little dialysis (${labWords(ktv, facts.today)})`,
    });
  if (takes(facts, 'active-vitamin-d'))
    causes.push({ text: 'Active vitamin D takes more phosphate in; its dose is the prescriber’s.', ...same('active vitamin D') });
  const binder = binderWords(facts);
  if (binder !== undefined) causes.push({ text: 'Binders: taken with each meal? Review with the prescriber.', onRecord: binder });
  for (const one of ['protein-powder', 'sports-or-slimming-product'] as const)
    if (supplements.includes(one) || (one === 'protein-powder' && hasAdded(facts, one)))
      causes.push({ text: 'Powders and drinks may hold phosphates.', ...same(supplementList.words(one)) });
  return causes;
}

/** A binder is a treatment to look at, and no cause; these are both. */
function same(words: string): Pick<Cause, 'onRecord' | 'asCause'> {
  return { onRecord: words, asCause: words };
}
