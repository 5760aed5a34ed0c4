import type { LinearModel, Objective, Row } from '#core/optimize/linearModel.ts';
import { randomNumbers } from '#core/recipe/randomNumbers.ts';

export interface BlendProblem {
  readonly model: LinearModel;
  readonly objective: Objective;
  readonly isInfeasible: boolean;
}

/**
 * Random blends as labels make them: 5 to 25 shares that sum to 100, some in descending order, with nutrient ranges about a
 * blend that exists. Every tenth asks for more of a nutrient than its richest part holds. Same seed, same problem.
 */
export function blendProblem(seed: number): BlendProblem {
  const { uniform } = randomNumbers(seed);
  const count = 5 + Math.floor(uniform() * 21);
  const isInfeasible = seed % 10 === 9;
  const known = Array.from({ length: count }, uniform).sort((a, b) => b - a);
  const sum = known.reduce((total, share) => total + share, 0);
  const shares = known.map(share => (100 * share) / sum);
  const columns = shares.map((share, at) => ({ name: `part ${at}`, lo: 0, hi: uniform() < 0.3 ? share * 1.5 : Number.POSITIVE_INFINITY }));
  const rows: Row[] = [{ name: 'sum', lo: 100, hi: 100, terms: shares.map((_, at) => ({ at, coefficient: 1 })) }];
  for (let at = 1; at < count; at++) {
    if (uniform() < 0.3) continue;
    const terms = [
      { at: at - 1, coefficient: 1 },
      { at, coefficient: -1 },
    ];
    rows.push({ name: `order ${at}`, lo: 0, hi: Number.POSITIVE_INFINITY, terms });
  }
  const nutrients = 2 + Math.floor(uniform() * 5);
  for (let nutrient = 0; nutrient < nutrients; nutrient++) {
    const terms = shares.flatMap((_, at) => (uniform() < 0.3 ? [] : [{ at, coefficient: uniform() * 5 }]));
    const amount = terms.reduce((total, { at, coefficient }) => total + coefficient * shares[at]!, 0);
    const isAsked = isInfeasible && nutrient === 0;
    const [lo, hi] = isAsked ? [505, 600] : [amount * (1 - 0.2 * uniform()), amount * (1 + 0.2 * uniform())];
    rows.push({ name: `nutrient ${nutrient}`, lo, hi, terms });
  }
  const terms = shares.map((_, at) => ({ at, coefficient: uniform() * 10 - (seed % 3 === 0 ? 5 : 0) }));
  return { model: { columns, rows }, objective: { sense: seed % 2 === 0 ? 'minimum' : 'maximum', terms }, isInfeasible };
}
