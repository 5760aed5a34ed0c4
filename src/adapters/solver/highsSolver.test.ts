import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { type Constraint, solve } from 'yalps';
import { checkSolution } from '#core/optimize/checkSolution.ts';
import type { LinearModel, Objective, Term } from '#core/optimize/linearModel.ts';
import { blendProblem } from './blendModels.fixture.ts';
import { openHighsSolver } from './highsSolver.ts';

const solver = await openHighsSolver();
const seeds = Array.from({ length: 500 }, (_, seed) => seed);
const one = (at: number): Term => ({ at, coefficient: 1 });
const free = { name: 'free', lo: 0, hi: Number.POSITIVE_INFINITY };
const flour = { name: 'flour', lo: 0, hi: 60 };
const optimize = (model: LinearModel, objective: Objective) => solver.solve(model, open => open.optimize(objective));

/** The same model in the second solver's words; its variables are never negative, so are all of ours. */
function secondAnswer({ columns, rows }: LinearModel, { sense, terms }: Objective) {
  const coefficients = columns.map((_, at) => new Map<string, number>([[`column ${at}`, 1]]));
  for (const [row, own] of rows.entries()) for (const { at, coefficient } of own.terms) coefficients[at]!.set(`row ${row}`, coefficient);
  for (const { at, coefficient } of terms) coefficients[at]!.set('value', coefficient);
  const constraints = new Map<string, Constraint>(
    rows.map(({ lo, hi }, row) => [`row ${row}`, lo === hi ? { equal: lo } : { min: lo, max: hi }]),
  );
  for (const [at, { hi }] of columns.entries()) if (Number.isFinite(hi)) constraints.set(`column ${at}`, { max: hi });
  return solve({
    direction: sense === 'minimum' ? 'minimize' : 'maximize',
    objective: 'value',
    constraints,
    variables: coefficients.map((own, at) => [at, own] as const),
  });
}

describe('openHighsSolver', () => {
  it('[OPT-2] 500 random blends: both ends are those of a second solver (yalps), and every answer keeps its model', () => {
    const kinds = { optimal: 0, infeasible: 0 };
    for (const seed of seeds) {
      const { model, objective: own, isInfeasible } = blendProblem(seed);
      for (const sense of ['minimum', 'maximum'] as const) {
        const objective = { ...own, sense };
        const answer = optimize(model, objective);
        const second = secondAnswer(model, objective);
        expect(answer.kind, `seed ${seed}, ${sense}`).toBe(isInfeasible ? 'infeasible' : 'optimal');
        expect(second.status, `seed ${seed}, ${sense}`).toBe(answer.kind);
        if (answer.kind !== 'optimal') {
          kinds.infeasible += 1;
          continue;
        }
        kinds.optimal += 1;
        expect(Math.abs(answer.value - second.result), `seed ${seed}, ${sense}`).toBeLessThanOrEqual(
          1e-6 * Math.max(1, Math.abs(second.result)),
        );
        expect(checkSolution(model, objective, answer.value, answer.columns), `seed ${seed}, ${sense}`).toEqual([]);
      }
    }
    expect(kinds).toEqual({ optimal: 900, infeasible: 100 });
  });

  it('[OPT-3] what grows without end is unbounded, also beside a column with an end', () => {
    const model = { columns: [flour, free], rows: [{ name: 'least', lo: 10, hi: Number.POSITIVE_INFINITY, terms: [one(0), one(1)] }] };
    expect(optimize(model, { sense: 'maximum', terms: [one(1)] }).kind).toBe('unbounded');
    expect(optimize(model, { sense: 'minimum', terms: [one(1)] })).toMatchObject({ kind: 'optimal', value: 0 });
  });

  it('[OPT-3] a model that no point keeps is infeasible, whichever way it could grow', () => {
    const model = { columns: [flour, free], rows: [{ name: 'too much', lo: 61, hi: 70, terms: [one(0)] }] };
    expect(optimize(model, { sense: 'maximum', terms: [one(1)] })).toEqual({ kind: 'infeasible' });
    expect(optimize(model, { sense: 'minimum', terms: [one(1)] })).toEqual({ kind: 'infeasible' });
  });

  it('[OPT-4] several objectives on one open model, with an upper bound moved between them', () => {
    const model = { columns: [flour, { ...flour, name: 'sugar' }], rows: [{ name: 'sum', lo: 100, hi: 100, terms: [one(0), one(1)] }] };
    const values = solver.solve(model, open => {
      const ends = (['minimum', 'maximum'] as const).map(sense => open.optimize({ sense, terms: [one(0)] }));
      open.lowerTo(0, 50);
      return [...ends, open.optimize({ sense: 'maximum', terms: [one(0)] }), open.optimize({ sense: 'minimum', terms: [one(1)] })];
    });
    expect(values.map(answer => (answer.kind === 'optimal' ? answer.value : answer.kind))).toEqual([40, 60, 50, 50]);
  });

  it('[OPT-5] a model in error and work that throws leave the solver as it was', () => {
    const wrong = { columns: [flour], rows: [{ name: 'nowhere', lo: 0, hi: 1, terms: [one(7)] }] };
    const right = { columns: [flour], rows: [] };
    const objective = { sense: 'maximum', terms: [one(0)] } as const;
    for (let time = 0; time < 20; time++) {
      expect(() => optimize(wrong, objective)).toThrow();
      expect(() =>
        solver.solve(right, () => {
          throw new RangeError('work failed');
        }),
      ).toThrow('work failed');
      expect(optimize(right, objective)).toMatchObject({ kind: 'optimal', value: 60 });
    }
  });

  it('[OPT-6] after 1,000 models, 2,000 more leave less than 16 MB behind', () => {
    const script = fileURLToPath(new URL('solveManyTimes.fixture.ts', import.meta.url));
    const { stdout, stderr } = spawnSync(process.execPath, ['--expose-gc', script], { encoding: 'utf8' });
    expect(stderr).toBe('');
    const [first = 0, , last = Number.POSITIVE_INFINITY] = JSON.parse(stdout) as number[];
    expect(last - first).toBeLessThan(16);
  });
});
