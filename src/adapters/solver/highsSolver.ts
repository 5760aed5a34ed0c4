import highsModule, { type Highs, type Model } from 'highs';
import type { LinearModel, LinearSolver, Objective, OpenModel, Solution } from '#core/optimize/linearModel.ts';

/** The package's types are written for require; its default import is the loader itself. */
const loadHighs = 'default' in highsModule ? highsModule.default : highsModule;

const secondsAtMost = 5;

/** HiGHS as the solver of linear models. Loading takes about a tenth of a second; keep what it gives. */
export async function openHighsSolver(): Promise<LinearSolver> {
  const highs: Highs = await loadHighs();
  return {
    solve: (model, work) =>
      highs.withModel(open => {
        open.options.set({ output_flag: false, presolve: 'off', time_limit: secondsAtMost });
        open.passModel(modelData(model));
        return work(openModel(open, model));
      }),
  };
}

function openModel(open: Model, model: LinearModel): OpenModel {
  const lower = model.columns.map(({ lo }) => lo);
  const costs = new Float64Array(model.columns.length);
  const every = { kind: 'range', from: 0, to: model.columns.length - 1 } as const;
  return {
    optimize({ sense, terms }: Objective): Solution {
      costs.fill(0);
      for (const { at, coefficient } of terms) costs[at] = (costs[at] ?? 0) + (sense === 'minimum' ? coefficient : -coefficient);
      open.changeColsCost(every, costs);
      open.run();
      const status = open.getModelStatus();
      if (status === optimal) {
        const value = open.getObjectiveValue();
        return { kind: 'optimal', value: sense === 'minimum' ? value : -value, columns: open.getSolution().colValue };
      }
      if (status === infeasible) return { kind: 'infeasible' };
      if (status === unbounded || status === unboundedOrInfeasible) return { kind: 'unbounded' };
      return { kind: 'out-of-time' };
    },
    lowerTo: (at, hi) => void open.changeColBounds(at, lower[at]!, hi),
  };
}

/** Status codes of HiGHS. */
const optimal = 7;
const infeasible = 8;
const unboundedOrInfeasible = 9;
const unbounded = 10;

function modelData({ columns, rows }: LinearModel) {
  const starts = new Int32Array(rows.length + 1);
  for (const [at, { terms }] of rows.entries()) starts[at + 1] = starts[at]! + terms.length;
  const terms = rows.flatMap(row => row.terms);
  return {
    numCols: columns.length,
    numRows: rows.length,
    colCost: new Float64Array(columns.length),
    colLower: Float64Array.from(columns, ({ lo }) => lo),
    colUpper: Float64Array.from(columns, ({ hi }) => hi),
    rowLower: Float64Array.from(rows, ({ lo }) => lo),
    rowUpper: Float64Array.from(rows, ({ hi }) => hi),
    matrix: {
      format: 'csr' as const,
      numRows: rows.length,
      numCols: columns.length,
      starts,
      indices: Int32Array.from(terms, ({ at }) => at),
      values: Float64Array.from(terms, ({ coefficient }) => coefficient),
    },
  };
}
