/**
 * Every nutrient the workbench knows, one canonical unit each. The key is the same word in TypeScript,
 * JSON, CSV headings and flags: nutrient first, unit last.
 *
 * Daily Values for adults and children of 4 years and more:
 * - `dailyValue`: 21 CFR 101.9(c)(8)(iv) and (c)(9) as amended in 2016. Phosphorus from memory.
 * - `dailyValueBefore2016`: the base that USDA-FSIS panels may still print (9 CFR 317.309, 381.409); vitamin D 400 IU = 10 mcg.
 */
export const nutrients = {
  energyKcal: {
    name: 'energy',
    printedName: 'Calories',
    unit: 'kcal',
    decimals: 0,
    dailyValue: null,
    dailyValueBefore2016: null,
    usPrint: 'energy',
    onUsPanel: true,
    alsoCalled: ['energy', 'energy (kcal)', 'kcal'],
  },
  fatG: {
    name: 'total fat',
    printedName: 'Total Fat',
    unit: 'g',
    decimals: 1,
    dailyValue: 78,
    dailyValueBefore2016: 65,
    usPrint: 'fat',
    onUsPanel: true,
    alsoCalled: ['fat', 'fat (g)'],
  },
  saturatedFatG: {
    name: 'saturated fat',
    printedName: 'Saturated Fat',
    unit: 'g',
    decimals: 1,
    dailyValue: 20,
    dailyValueBefore2016: 20,
    usPrint: 'fat',
    onUsPanel: true,
    alsoCalled: ['sat fat', 'sat fat (g)', 'saturates', 'saturates (g)'],
  },
  transFatG: {
    name: 'trans fat',
    printedName: 'Trans Fat',
    unit: 'g',
    decimals: 1,
    dailyValue: null,
    dailyValueBefore2016: null,
    usPrint: 'fat',
    onUsPanel: true,
  },
  cholesterolMg: {
    name: 'cholesterol',
    printedName: 'Cholesterol',
    unit: 'mg',
    decimals: 0,
    dailyValue: 300,
    dailyValueBefore2016: 300,
    usPrint: 'cholesterol',
    onUsPanel: true,
  },
  sodiumMg: {
    name: 'sodium',
    printedName: 'Sodium',
    unit: 'mg',
    decimals: 0,
    dailyValue: 2300,
    dailyValueBefore2016: 2400,
    usPrint: 'sodium',
    onUsPanel: true,
  },
  carbohydrateG: {
    name: 'total carbohydrate',
    printedName: 'Total Carbohydrate',
    unit: 'g',
    decimals: 0,
    dailyValue: 275,
    dailyValueBefore2016: 300,
    usPrint: 'gram',
    onUsPanel: true,
    alsoCalled: [
      'carbohydrate',
      'carbohydrates',
      'total carbohydrates',
      'total carb',
      'total carb.',
      'total carbs',
      'carbs',
      'carbohydrate (g)',
      'carbs (g)',
    ],
  },
  fiberG: {
    name: 'dietary fiber',
    printedName: 'Dietary Fiber',
    unit: 'g',
    decimals: 0,
    dailyValue: 28,
    dailyValueBefore2016: 25,
    usPrint: 'gram',
    onUsPanel: true,
    alsoCalled: ['fiber', 'fibre', 'dietary fibre', 'fiber (g)', 'fibre (g)'],
  },
  totalSugarsG: {
    name: 'total sugars',
    printedName: 'Total Sugars',
    unit: 'g',
    decimals: 0,
    dailyValue: null,
    dailyValueBefore2016: null,
    usPrint: 'gram',
    onUsPanel: true,
    alsoCalled: ['sugars', 'sugars (g)'],
  },
  addedSugarsG: {
    name: 'added sugars',
    printedName: 'Added Sugars',
    unit: 'g',
    decimals: 0,
    dailyValue: 50,
    dailyValueBefore2016: null,
    usPrint: 'gram',
    onUsPanel: true,
  },
  sugarAlcoholG: {
    name: 'sugar alcohol',
    printedName: 'Sugar Alcohol',
    unit: 'g',
    decimals: 0,
    dailyValue: null,
    dailyValueBefore2016: null,
    usPrint: 'gram',
    onUsPanel: false,
    alsoCalled: ['sugar alcohols'],
  },
  alcoholG: {
    name: 'alcohol',
    printedName: 'Alcohol',
    unit: 'g',
    decimals: 1,
    dailyValue: null,
    dailyValueBefore2016: null,
    usPrint: 'none',
    onUsPanel: false,
  },
  proteinG: {
    name: 'protein',
    printedName: 'Protein',
    unit: 'g',
    decimals: 0,
    dailyValue: 50,
    dailyValueBefore2016: 50,
    usPrint: 'gram',
    onUsPanel: true,
  },
  waterMl: {
    name: 'water',
    printedName: 'Water',
    unit: 'mL',
    decimals: 0,
    dailyValue: null,
    dailyValueBefore2016: null,
    usPrint: 'none',
    onUsPanel: false,
  },
  vitaminDMcg: {
    name: 'vitamin D',
    printedName: 'Vitamin D',
    unit: 'mcg',
    decimals: 1,
    dailyValue: 20,
    dailyValueBefore2016: 10,
    usPrint: 'tenth',
    onUsPanel: true,
  },
  calciumMg: {
    name: 'calcium',
    printedName: 'Calcium',
    unit: 'mg',
    decimals: 0,
    dailyValue: 1300,
    dailyValueBefore2016: 1000,
    usPrint: 'ten',
    onUsPanel: true,
  },
  ironMg: {
    name: 'iron',
    printedName: 'Iron',
    unit: 'mg',
    decimals: 1,
    dailyValue: 18,
    dailyValueBefore2016: 18,
    usPrint: 'tenth',
    onUsPanel: true,
  },
  potassiumMg: {
    name: 'potassium',
    printedName: 'Potassium',
    unit: 'mg',
    decimals: 0,
    dailyValue: 4700,
    dailyValueBefore2016: 3500,
    usPrint: 'ten',
    onUsPanel: true,
  },
  phosphorusMg: {
    name: 'phosphorus',
    printedName: 'Phosphorus',
    unit: 'mg',
    decimals: 0,
    dailyValue: 1250,
    dailyValueBefore2016: 1000,
    usPrint: 'ten',
    onUsPanel: true,
  },
  magnesiumMg: {
    name: 'magnesium',
    printedName: 'Magnesium',
    unit: 'mg',
    decimals: 0,
    dailyValue: 420,
    dailyValueBefore2016: 400,
    usPrint: 'ten',
    onUsPanel: false,
  },
} as const satisfies Record<string, NutrientFacts>;

/**
 * Which paragraph of 21 CFR 101.9(c) says how a US panel rounds a nutrient.
 * - `energy` (c)(1), `fat` (c)(2), `cholesterol` (c)(3), `sodium` (c)(4), `gram` (c)(6) and (c)(7)
 * - `tenth`, `ten`: vitamins and minerals, (c)(8)(iii). The law gives no increment; FDA's guidance on quantitative
 *   amounts does: 0.1 where the Daily Value is under 25, 10 where it is 250 or more (the latter from memory).
 * - `none`: no line on a US panel.
 */
export type UsPrintRule = 'energy' | 'fat' | 'cholesterol' | 'sodium' | 'gram' | 'tenth' | 'ten' | 'none';

export interface NutrientFacts {
  readonly name: string;
  /** The name a US panel prints (21 CFR 101.9(c), (d)). */
  readonly printedName: string;
  readonly unit: 'kcal' | 'g' | 'mg' | 'mcg' | 'mL';
  /** Decimals shown on screens and in tables. */
  readonly decimals: number;
  readonly dailyValue: number | null;
  readonly dailyValueBefore2016: number | null;
  /** How a US panel rounds it. */
  readonly usPrint: UsPrintRule;
  /** Whether the form of a label has a line for it: what US panels print, and phosphorus. */
  readonly onUsPanel: boolean;
  /** What tables call it besides its key and its printed name. */
  readonly alsoCalled?: readonly string[];
}

export type Nutrient = keyof typeof nutrients;

export const nutrientKeys = Object.keys(nutrients) as readonly Nutrient[];
