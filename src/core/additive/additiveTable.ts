import rows from '#data/additives.json' with { type: 'json' };

/**
 * One row of data/additives.json: a salt, acid or mixture that adds phosphorus, potassium or sodium, a food ingredient
 * rich in one of them, or a look-alike that must not be taken for one. Sources stand in data/additives.md.
 */
export interface AdditiveRow {
  readonly id: string;
  readonly name: string;
  readonly kind: 'additive' | 'rich-ingredient' | 'look-alike';
  readonly family: string;
  readonly ins: string | null;
  /** inorganic counts; organic and trace are reported; possible hides its composition. */
  readonly phosphate: 'inorganic' | 'organic' | 'trace' | 'possible' | 'natural' | 'none';
  /** matters counts; trace (preservatives, sweetener, iodine) is reported. */
  readonly potassium: 'matters' | 'trace' | 'possible' | 'natural' | 'none';
  /** source and minor count: 35 mg and 0.5 mg sodium per 100 g of food at typical use (own cut-offs). */
  readonly sodium: 'source' | 'minor' | 'trace' | 'none';
  readonly spellings: readonly string[];
  readonly abbreviations: readonly string[];
  readonly formula: string | null;
  readonly molarMass: number | null;
  /** Grams of the element per gram of the additive as the formula stands; null where nobody can say. */
  readonly massFraction: Readonly<Record<'phosphorus' | 'potassium' | 'sodium' | 'calcium', number | null>>;
  readonly fractionSource: string;
  readonly hydrates: readonly {
    readonly formula: string;
    readonly massFraction: Readonly<Record<'phosphorus' | 'potassium' | 'sodium' | 'calcium', number>>;
  }[];
  readonly function: string;
  readonly legalLevel: string | null;
  /** Order of magnitude only, from memory: never shown as the content of a product. */
  readonly typicalPercentFromMemory: number | null;
  readonly note: string | null;
  /** The name covers several salts ("sodium phosphates"). */
  readonly unspecified?: boolean;
}

export const additiveTable: readonly AdditiveRow[] = rows as readonly AdditiveRow[];
