/** A text or a figure that a label holds beside its panel. */
interface LabelFieldFacts {
  /** What forms and the choice of columns call it. */
  readonly title: string;
  /** Where it stands in label JSON: "serving.grams". */
  readonly place: string;
  /** What tables call it besides its key. */
  readonly alsoCalled: readonly string[];
  /** `words`: one of a few words; `list`: several, between "|"; `figure`: a number that a spreadsheet may have as a formula. */
  readonly kind: 'text' | 'words' | 'list' | 'figure';
}

/** Every field of a label but its panel: forms, tables and their headings go by this list. */
export const labelFields = {
  id: { title: 'Number of the label', place: 'id', alsoCalled: [], kind: 'text' },
  name: { title: 'Name of the food', place: 'name', alsoCalled: ['product', 'product name', 'food', 'food name', 'item'], kind: 'text' },
  maker: { title: 'Maker', place: 'maker', alsoCalled: ['brand', 'manufacturer', 'company'], kind: 'text' },
  category: { title: 'Category', place: 'category', alsoCalled: [], kind: 'text' },
  gtin: { title: 'Bar code (GTIN)', place: 'gtin', alsoCalled: ['UPC', 'UPC code', 'EAN', 'barcode'], kind: 'figure' },
  market: { title: 'Market (us, ca, eu, uk)', place: 'market', alsoCalled: [], kind: 'words' },
  readOn: { title: 'Day read', place: 'readOn', alsoCalled: ['read on', 'date', 'date read'], kind: 'text' },
  readAt: { title: 'Shop', place: 'readAt', alsoCalled: ['read at', 'shop', 'store'], kind: 'text' },
  servingHousehold: {
    title: 'Serving, household measure',
    place: 'serving.household',
    alsoCalled: ['serving household', 'serving', 'serving size', 'household measure'],
    kind: 'text',
  },
  servingGrams: {
    title: 'Serving, grams',
    place: 'serving.grams',
    alsoCalled: ['serving grams', 'serving (g)', 'serving size (g)', 'serving size (grams)', 'serving weight (g)'],
    kind: 'figure',
  },
  servingMilliliters: {
    title: 'Serving, milliliters',
    place: 'serving.milliliters',
    alsoCalled: ['serving milliliters', 'serving (mL)', 'serving size (mL)', 'serving size (milliliters)'],
    kind: 'figure',
  },
  servingsPerContainer: {
    title: 'Servings per container',
    place: 'serving.perContainer',
    alsoCalled: ['servings per container', 'servings per package'],
    kind: 'figure',
  },
  basis: { title: 'Basis', place: 'basis', alsoCalled: [], kind: 'words' },
  state: { title: 'State', place: 'state', alsoCalled: [], kind: 'words' },
  front: { title: 'Words on the front', place: 'front', alsoCalled: ['claims'], kind: 'list' },
  statement: {
    title: 'Ingredient statement',
    place: 'statement',
    alsoCalled: ['ingredients', 'ingredient statement', 'ingredient list', 'ingredients list'],
    kind: 'text',
  },
  notSignificantSourceOf: {
    title: 'Not a significant source of',
    place: 'notSignificantSourceOf',
    alsoCalled: ['not significant source of', 'not a significant source of'],
    kind: 'text',
  },
  referenceAmount: { title: 'Reference amount', place: 'referenceAmount', alsoCalled: ['reference amount'], kind: 'text' },
  unsaltedVersionOf: { title: 'Unsalted version of', place: 'unsaltedVersionOf', alsoCalled: ['unsalted version of'], kind: 'text' },
} as const satisfies Readonly<Record<string, LabelFieldFacts>>;

export type LabelField = keyof typeof labelFields;

export const labelFieldKeys = Object.keys(labelFields) as readonly LabelField[];
