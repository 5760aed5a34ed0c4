/** One unknown of a model, with its bounds; `hi` may be Infinity. */
export interface Column {
  readonly name: string;
  readonly lo: number;
  readonly hi: number;
}

/** One condition: lo ≤ Σ coefficient × column ≤ hi; an end may be infinite. Each column stands in it once. */
export interface Row {
  readonly name: string;
  readonly lo: number;
  readonly hi: number;
  readonly terms: readonly Term[];
}

/** `at` is the place of the column in the model. */
export interface Term {
  readonly at: number;
  readonly coefficient: number;
}

/** A linear model as data. Core makes it, an adapter solves it, core looks at the answer again (`checkSolution`). */
export interface LinearModel {
  readonly columns: readonly Column[];
  readonly rows: readonly Row[];
}

export interface Objective {
  readonly sense: 'minimum' | 'maximum';
  readonly terms: readonly Term[];
}

export type Solution =
  | { readonly kind: 'optimal'; readonly value: number; readonly columns: Float64Array }
  | { readonly kind: 'infeasible' }
  | { readonly kind: 'unbounded' }
  | { readonly kind: 'out-of-time' };

/** A model in a solver's hands, kept there so that several objectives start from where the last one ended. */
export interface OpenModel {
  readonly optimize: (objective: Objective) => Solution;
  /** Moves the upper bound of a column for the objectives that follow. */
  readonly lowerTo: (at: number, hi: number) => void;
}

/** Port of the solver: `work` gets the open model, which is closed when it returns or throws. */
export interface LinearSolver {
  readonly solve: <Result>(model: LinearModel, work: (open: OpenModel) => Result) => Result;
}
