import type { DrawnTime } from '#core/client/assessment/vocabularies.ts';
import type { Setting } from '../setting.ts';

/**
 * A laboratory result that the workbench reads: canonical unit first, and how to get there from the other units it may come in.
 * Factors: facts as published with the SI conversion of each analyte (SI = conventional × factor); HbA1c is the IFCC line (from memory).
 */
export interface AnalyteFacts {
  readonly name: string;
  /** At the head of a line, where US laboratories print another word: "Phosphorus"; the name when missing. */
  readonly heading?: string;
  /** The unit that everything is compared in. */
  readonly unit: string;
  /** The other units, with what to multiply by to get the canonical one. */
  readonly from: Readonly<Record<string, number>>;
  /**
   * What a living adult can have, in the canonical unit, wide on purpose (own decision): outside it is a slip of unit or of the finger. It is
   * converted for the other units, unless `possibleIn` gives round figures of their own (care rules 5).
   */
  readonly possible: Span;
  readonly possibleIn?: Readonly<Record<string, Span>>;
  /** What is possible and still looks like a mix-up. */
  readonly ask?: readonly Ask[];
  /** Its LOINC codes; none where none is known (URR, nPCR). */
  readonly loinc?: readonly LoincEntry[];
}

/**
 * One LOINC code. LOINC: free licence, © Regenstrief Institute, the notice stands in `fhir/loinc.ts`.
 * Codes are those of the clinical facts sheet, section 4.1, which were seen with this meaning in public mappings; cholesterol in HL7's
 * example value set of FHIR. `fromMemory` marks the others: check them against the LOINC release before they are relied on.
 */
export interface LoincEntry {
  readonly code: string;
  /** The units, as the workbench writes them, that this code stands for: a mass code refuses moles. First the one it is written with. */
  readonly units: readonly string[];
  readonly fromMemory?: true;
  /** The code itself says that the sample was drawn before or after dialysis. */
  readonly drawn?: DrawnTime;
  /** Read and never written: another code of the analyte is the usual one. */
  readonly readOnly?: true;
}

type Span = readonly [lo: number, hi: number];

/** A band of figures, as typed in `units`, that another meaning explains better. Ends belong to it, but for `over` and `under`. */
export interface Ask {
  readonly units: readonly string[];
  readonly from?: number;
  readonly to?: number;
  readonly over?: number;
  readonly under?: number;
  /** The unit that was meant, or another analyte, or a decimal point that was left out. */
  readonly meant: { readonly unit: string } | { readonly analyte: string } | 'decimal point';
  /** Only for these; for everybody when missing. */
  readonly settings?: readonly Setting[];
}
