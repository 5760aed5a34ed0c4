import type { Test, Yardstick } from '#core/yardstick/yardstick.ts';
import { unprintedCaution } from './sources.ts';

/** mg of phosphorus to g of protein in the eaten portion. Egg white 1.4, milk 25 to 28 (facts as published; others from memory). */
export const phosphorusToProtein: Yardstick = {
  id: 'phosphorus-to-protein',
  title: 'little phosphorus for its protein',
  purpose: 'Phosphorus in mg to protein in g, for those who need protein and have to spare phosphorus.',
  tests: [
    ratio('under-10', { below: 10, source: { kind: 'common-practice', text: 'under 10 is favorable, common practice' } }),
    ratio('at-most-12', {
      atMost: 12,
      off: true,
      source: { kind: 'from-memory', text: 'KDOQI 2003, 10 to 12 for a whole diet, from memory' },
    }),
    ratio('at-most-16', {
      atMost: 16,
      off: true,
      source: { kind: 'from-memory', text: 'Clin J Am Soc Nephrol 2010;5:683, over 16 and mortality on hemodialysis, cut-off from memory' },
    }),
  ],
  classScales: [],
  settings: 'any',
  cautions: [unprintedCaution, 'Not defined for a food without protein.', 'Labs decide about phosphorus, not the setting or the stage.'],
};

function ratio(id: string, rest: Pick<Test, 'below' | 'atMost' | 'off' | 'source'>): Test {
  return { id, measure: { kind: 'ratio', nutrient: 'phosphorusMg', per: 'proteinG' }, basis: 'as-eaten', ...rest };
}
