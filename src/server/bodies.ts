import { z } from '@hono/zod-openapi';
import { settings } from '#core/client/setting.ts';
import { nutrientKeys } from '#core/quantity/nutrients.ts';

/**
 * The shapes that travel between the server and the browser. Labels, plates and yardsticks travel in the formats of
 * docs/formats.md and are read by the core; here they are objects whose inside the core checks.
 */
export const labelJson = z.record(z.string(), z.unknown()).openapi('LabelJson');
export const plateJson = z.record(z.string(), z.unknown()).openapi('PlateJson');
export const yardstickJson = z.record(z.string(), z.unknown()).openapi('YardstickJson');
export const setting = z.enum(settings);
export const portion = z.union([
  z.object({ servings: z.number().positive() }),
  z.object({ grams: z.number().positive() }),
  z.object({ milliliters: z.number().positive() }),
  z.object({ measure: z.string(), count: z.number().positive() }),
]);
export const verdictWord = z.enum(['fits', 'nearly', 'over', "can't tell"]);
/** [lo, hi]; an end without limit is null. */
export const range = z.tuple([z.number().nullable(), z.number().nullable()]);

export const workspaceBody = z
  .object({
    foods: z.number(),
    labels: z.number(),
    demoFoods: z.number(),
    photos: z.number(),
    revision: z.number(),
    categories: z.array(z.object({ name: z.string(), foods: z.number() })),
    database: z.string(),
  })
  .openapi('Workspace');

/** An additive that a label names, in short. */
export const additiveShort = z.object({
  class: z.enum(['phosphate', 'potassium', 'sodium']),
  name: z.string(),
  counts: z.boolean(),
  certainty: z.string(),
});

export const foodShort = z
  .object({
    id: z.string(),
    name: z.string(),
    maker: z.string().optional(),
    category: z.string().optional(),
    gtin: z.string().optional(),
    isDemo: z.boolean(),
    version: z.number(),
    labels: z.number(),
    readOn: z.string().optional(),
    readAt: z.string().optional(),
    recheckOn: z.string().optional(),
    servingText: z.string().optional(),
    energyKcal: z.number().nullable(),
    sodiumMg: z.number().nullable(),
    additives: z.array(additiveShort),
    statementRead: z.boolean(),
    findings: z.number(),
  })
  .openapi('FoodShort');

export const additiveFull = additiveShort.extend({
  id: z.string(),
  ins: z.string().nullable(),
  found: z.string(),
  start: z.number(),
  end: z.number(),
  path: z.array(z.string()),
  why: z.string(),
});
export const findingBody = z.object({ code: z.string(), about: z.string(), message: z.string(), source: z.string() });
export const issueBody = z.object({
  code: z.string(),
  place: z
    .object({
      file: z.string(),
      line: z.number(),
      column: z.number(),
      row: z.number(),
      heading: z.string(),
      start: z.number(),
      end: z.number(),
    })
    .partial(),
  found: z.string(),
  expected: z.string(),
});

/** One nutrient as a screen shows it: figures are rounded outward already, words are ready to print. */
export const amountShown = z.object({
  nutrient: z.string(),
  name: z.string(),
  unit: z.string(),
  /** The words on the package. */
  asPrinted: z.string().optional(),
  printed: z.number().optional(),
  range: range.optional(),
  source: z.enum(['printed', 'computed', 'reference', 'estimated']).optional(),
  /** "225 – 235 mg", "not on the label". */
  text: z.string(),
  dailyValuePercent: z.number().optional(),
});

export const readLabelBody = z
  .object({
    servingText: z.string().optional(),
    amounts: z.array(amountShown),
    per100G: z.array(amountShown),
    additives: z.array(additiveFull),
    statementRead: z.boolean(),
    findings: z.array(findingBody),
    issues: z.array(issueBody),
  })
  .openapi('ReadLabel');

export const labelBody = z
  .object({
    id: z.string(),
    kind: z.enum(['read', 'correction']),
    correctsLabelId: z.string().optional(),
    correctedBy: z.string().optional(),
    reason: z.string().optional(),
    withdrawn: z.object({ reason: z.string(), at: z.string() }).optional(),
    addedAt: z.string(),
    recheckOn: z.string().optional(),
    photoIds: z.array(z.string()),
    printed: labelJson,
    read: readLabelBody,
    /** Against the label before it; absent for the first. Sentences ready to show. */
    changes: z.object({ outcome: z.enum(['same', 'reprinted', 'changed']), sentences: z.array(z.string()) }).optional(),
    stands: z.boolean(),
  })
  .openapi('Label');

const mineralShown = z.object({
  /** Between which ends it surely lies. */
  sureMg: z.tuple([z.number(), z.number()]),
  /** 5 %, 50 % and 95 % of the recipes drawn. */
  likelyMg: z.tuple([z.number(), z.number(), z.number()]),
});
export const mineralsBody = z
  .union([
    z.object({ kind: z.literal('cannot-be-bounded'), because: z.string() }),
    z.object({
      kind: z.literal('estimate'),
      servingText: z.string(),
      /** Per serving; `added` is the part that additives bring. */
      minerals: z.array(mineralShown.extend({ name: z.string(), isPrinted: z.boolean(), per100G: mineralShown, added: mineralShown })),
      absorbedPhosphorusMg: z.tuple([z.number(), z.number()]),
      sentences: z.array(z.string()),
      question: z.string(),
      caution: z.string(),
      checked: z.string(),
    }),
  ])
  .openapi('Minerals');

export const foodBody = foodShort
  .extend({
    densityGPerMl: z.number().optional(),
    gramsPerMeasure: z.record(z.string(), z.number()).optional(),
    history: z.array(labelBody),
    plates: z.array(z.string()),
  })
  .openapi('Food');

export const surveyRequest = z
  .object({
    category: z.string(),
    /** Id of a plate, or a plate being tried. */
    plate: z.union([z.string(), plateJson]),
    yardstick: z.union([z.string(), yardstickJson]),
    setting: setting.optional(),
    switchedOn: z.array(z.string()).default([]),
    /** In the place of the plate's own portion. */
    portion: portion.optional(),
    /** Further nutrients of the portion to show in each row. */
    columns: z.array(z.enum(nutrientKeys)).max(12).default([]),
  })
  .openapi('SurveyRequest');

export const surveyRow = z.object({
  foodId: z.string(),
  name: z.string(),
  maker: z.string().optional(),
  verdict: verdictWord,
  closeCall: z.boolean(),
  estimated: z.boolean(),
  /** Energy and sodium of the portion alone, for the plane; null when unknown. */
  energyKcal: z.number().nullable(),
  sodiumMg: z.number().nullable(),
  /** In the order of the request's columns; `low` is to sort by, null when unknown. */
  columns: z.array(z.object({ text: z.string(), low: z.number().nullable() })),
  /** "10 mg over", "20 mg to spare", "sodium is unknown (not on the label)". */
  margin: z.string(),
  /** Letters of the additive classes that count: "P", "K". */
  additives: z.string(),
  findings: z.number(),
  recheckOn: z.string().optional(),
});

export const surveyBody = z
  .object({
    counts: z.object({ fits: z.number(), nearly: z.number(), over: z.number(), "can't tell": z.number() }),
    plateTitle: z.string(),
    portionText: z.string(),
    /** What the companions bring, in one sentence. */
    companionsText: z.string(),
    yardstickTitle: z.string(),
    tests: z.array(z.object({ id: z.string(), text: z.string(), source: z.string(), isOn: z.boolean() })),
    cautions: z.array(z.string()),
    /** Labels whose unprinted minerals are estimated so far, where the survey shows or judges them. */
    estimating: z.object({ done: z.number(), of: z.number() }).nullable(),
    /**
     * The yardstick's line on the plane of energy (across) and sodium (up), for the portion alone: sodium at most
     * slope × energy + offset; null when the yardstick has no such test.
     */
    rule: z.object({ slope: z.number(), offset: z.number(), slack: z.number() }).nullable(),
    rows: z.array(surveyRow),
  })
  .openapi('Survey');

export const surveyFoodsRequest = surveyRequest.extend({ foodIds: z.array(z.string()).max(200) });
export const surveyFoodBody = z
  .object({
    foodId: z.string(),
    why: z.string(),
    tests: z.array(z.object({ testId: z.string(), verdict: verdictWord, why: z.string() })),
    classes: z.array(z.object({ name: z.string(), why: z.string() })),
    additives: z.array(additiveShort),
    waysIn: z.array(z.object({ kind: z.string(), what: z.string() })),
    noWayIn: z.string().optional(),
  })
  .openapi('SurveyFood');

export const foodPortionsRequest = surveyRequest.omit({ category: true, columns: true }).extend({ foodId: z.string() });
export const foodPortionsBody = z
  .object({
    /** The portions of the slider, smallest first. */
    steps: z.array(z.object({ grams: z.number(), text: z.string(), verdict: verdictWord, closeCall: z.boolean(), why: z.string() })),
    /** What is said in the place of any portion: a test that no portion can change. */
    noPortion: z.object({ testId: z.string(), verdict: verdictWord, why: z.string() }).optional(),
    /** The largest portion that fits. */
    tippingGrams: z.number().nullable(),
    tippingText: z.string(),
    waysIn: z.array(z.object({ kind: z.string(), what: z.string() })),
  })
  .openapi('FoodPortions');

export const versionedPlate = z
  .object({
    plate: plateJson,
    version: z.number(),
    isBuiltIn: z.boolean(),
    isDemo: z.boolean(),
    portionText: z.string(),
    companionsText: z.string(),
  })
  .openapi('VersionedPlate');
export const versionedYardstick = z
  .object({
    yardstick: yardstickJson,
    version: z.number(),
    isBuiltIn: z.boolean(),
    /** Each test in words, with why its bound is what it is. */
    tests: z.array(z.object({ id: z.string(), text: z.string(), source: z.string(), isOff: z.boolean() })),
  })
  .openapi('VersionedYardstick');

export const importLook = z
  .object({
    fileName: z.string(),
    headings: z.array(z.string()),
    /** For each heading, the column it is taken for, or null. */
    mapping: z.array(z.string().nullable()),
    columns: z.array(z.object({ key: z.string(), name: z.string() })),
    sample: z.array(z.object({ row: z.number(), cells: z.array(z.string()) })),
    rows: z.array(
      z.object({
        row: z.number(),
        name: z.string(),
        maker: z.string().optional(),
        does: z.enum(['begins-a-food', 'joins-a-food', 'already-there', 'left-out']),
        joins: z.string().optional(),
      }),
    ),
    report: z.array(issueBody),
  })
  .openapi('ImportLook');

export const importDone = z
  .object({
    importId: z.string(),
    added: z.number(),
    joined: z.number(),
    alreadyThere: z.number(),
    leftOut: z.number(),
    report: z.array(issueBody),
  })
  .openapi('ImportDone');

/** An imported composition table in short. */
export const referenceBody = z
  .object({
    dataset: z.string(),
    source: z.string(),
    edition: z.string(),
    foods: z.number(),
    importedAt: z.string(),
  })
  .openapi('Reference');

/** RFC 9457, with the code and the next step of the fault catalogue. */
export const problemBody = z
  .object({ type: z.string(), title: z.string(), status: z.number(), detail: z.string(), code: z.string(), nextStep: z.string() })
  .openapi('Problem');
