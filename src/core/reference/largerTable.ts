import { recordOf } from '#core/json/recordOf.ts';
import { type ReferenceFood, referenceNutrients } from './referenceFood.ts';

/** The published tables that can be imported beside our own. */
export type LargerDataset = 'usda-sr' | 'fdc-foundation' | 'fdc-sr-legacy';

/** A food as a published composition table describes it: "Broccoli, raw". */
export interface DescribedFood {
  /** NDB number, or FDC id where the dataset has no other. */
  readonly number: string;
  readonly description: string;
  /** Food group of SR, four digits ("1100" is vegetables); null is unknown. */
  readonly group: string | null;
  /** Null is unknown, never zero. */
  readonly per100G: ReferenceFood['per100G'];
  readonly household: ReferenceFood['household'];
}

/** An imported table: what the dataset says and nothing else; names and kinds are derived where it is used. */
export interface LargerTable {
  readonly dataset: LargerDataset;
  readonly source: string;
  /** "release 28", "2018-04"; as far as the files tell. */
  readonly edition: string;
  readonly foods: readonly DescribedFood[];
}

export const nothingKnown: ReferenceFood['per100G'] = Object.freeze(recordOf(referenceNutrients, () => null));
