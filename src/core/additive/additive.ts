/** What an additive adds. One that is both a phosphate and a potassium salt gives one finding per class. */
export const additiveClasses = ['phosphate', 'potassium', 'sodium'] as const;
export type AdditiveClass = (typeof additiveClasses)[number];

/**
 * How certain a finding is.
 * - `named`: the statement names it.
 * - `alternative`: one of several ("and/or", "one or more of"): it may or may not be in the package.
 * - `may-contain`: the statement only allows it ("may contain sodium phosphates").
 * - `possible`: the name hides its composition (a bare "baking powder", "milk minerals").
 * - `misspelled`: named, after a repair of the spelling.
 */
export const certainties = ['named', 'alternative', 'may-contain', 'possible', 'misspelled'] as const;
export type Certainty = (typeof certainties)[number];

export interface AdditiveFinding {
  /** Row of the additive table, such as "sodium-acid-pyrophosphate"; "stem:…" when only the chemical-stem rule knew it. */
  readonly id: string;
  readonly name: string;
  /** INS or E number without the letter, such as "450(i)"; null where there is none. */
  readonly ins: string | null;
  readonly class: AdditiveClass;
  /** False for look-alikes and traces that are reported but not counted (lecithin, iron phosphate, potassium sorbate). */
  readonly counts: boolean;
  readonly certainty: Certainty;
  /** The words as printed. */
  readonly found: string;
  /** Code points in the statement, end exclusive. */
  readonly start: number;
  readonly end: number;
  /** Names of the ingredients it stands in, outermost first. */
  readonly path: readonly string[];
  /** One sentence for the dietitian. */
  readonly why: string;
}
