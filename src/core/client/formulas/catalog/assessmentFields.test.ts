import { describe, expect, it } from 'vitest';
import { formulaCatalog } from './formulaCatalog.ts';

describe('a result that goes into an assessment', () => {
  it('[CALC-9] is offered of a figure alone, and never as an eGFR, a corrected calcium or a weight', () => {
    const offered = formulaCatalog.filter(({ fills }) => fills.length > 0);
    expect(offered.map(({ name }) => name).sort()).toEqual([
      'kt-v-single-pool',
      'npcr-before-session',
      'npcr-between-sessions',
      'protein-equivalent-peritoneal',
      'protein-intake-from-urea-generation',
      'protein-intake-from-urine',
      'urea-reduction-ratio',
      'weight-loss-percent',
    ]);
    for (const { fills, example } of offered) for (const { result } of fills) expect(typeof example.results[result]).toBe('number');
  });
});
