import { z } from 'zod';
import { readAny, readDocument, readMeasures, readMime, readPublished, readSurvey } from './keptTexts.ts';
import { up as workspace } from './migrations/0001-workspace.ts';
import { up as mineralEstimates } from './migrations/0002-mineral-estimates.ts';
import { up as guides } from './migrations/0003-guides.ts';
import { up as reference } from './migrations/0004-reference.ts';
import { up as handouts } from './migrations/0005-handouts.ts';
import { up as seenVersions } from './migrations/0006-seen-versions.ts';
import { readPrinted } from './printedLabel.ts';
import { longestKeptText } from './readJson.ts';
import { digestOf, readReference } from './referenceBody.ts';
import type { TableEntry } from './tableEntry.ts';

/**
 * The registry of stored tables, in the order in which rows can be put back: what is referred to comes first. Types,
 * migrations, the check of an archive, archive, restore, purges, counts and the search for damage derive from it: a
 * further table is an entry here and its migration.
 */

const text = z.string().max(longestKeptText);
const maybeText = text.nullable();
const count = z.number().int();
const flag = z.literal([0, 1]);
const bytes = z.instanceof(Uint8Array);

const ofDemoLabel = 'label_id in (select labels.id from labels join foods on foods.id = labels.food_id where foods.is_demo = 1)';

export const tables = {
  foods: {
    migrations: { 1: workspace },
    row: z.strictObject({
      id: text,
      name: text,
      maker: maybeText,
      category: maybeText,
      gtin: maybeText,
      density_g_per_ml: z.number().nullable(),
      grams_per_measure: maybeText,
      is_demo: flag,
      version: count,
    }),
    key: 'id',
    order: 'id',
    incidental: ['version', 'is_demo'],
    texts: { grams_per_measure: readMeasures },
    demo: 'is_demo = 1',
    counts: { foods: 'all', demoFoods: 'demo' },
  },
  labels: {
    migrations: { 1: workspace },
    row: z.strictObject({
      id: text,
      food_id: text,
      kind: z.enum(['read', 'correction']),
      printed: text,
      corrects_label_id: maybeText,
      reason: maybeText,
      added_at: text,
      /** The order in which packages were read. */
      sequence: count,
      /** The sequence of the reading it belongs to: its own, or that of the label it corrects. */
      reading_sequence: count,
    }),
    key: 'id',
    order: 'sequence',
    incidental: ['sequence', 'reading_sequence'],
    texts: { printed: readPrinted },
    demo: 'food_id in (select id from foods where is_demo = 1)',
    referring: 'corrects_label_id is not null',
    counts: { labels: 'all' },
  },
  label_withdrawals: {
    migrations: { 1: workspace },
    row: z.strictObject({ label_id: text, reason: text, withdrawn_at: text }),
    key: 'label_id',
    order: 'label_id',
    demo: ofDemoLabel,
  },
  label_rechecks: {
    migrations: { 1: workspace },
    row: z.strictObject({ label_id: text, due_on: text }),
    key: 'label_id',
    order: 'label_id',
    demo: ofDemoLabel,
  },
  photos: {
    migrations: { 1: workspace },
    row: z.strictObject({ id: text, label_id: text, mime: text, sha256: text, bytes }),
    key: 'id',
    order: 'id',
    isBulky: true,
    texts: { mime: readMime },
    demo: ofDemoLabel,
    counts: { photos: 'all' },
  },
  plates: {
    migrations: { 1: workspace },
    row: z.strictObject({ id: text, plate: text, version: count, is_demo: flag }),
    key: 'id',
    order: 'id',
    incidental: ['version', 'is_demo'],
    texts: { plate: readDocument },
    demo: 'is_demo = 1',
    counts: { plates: 'all' },
    document: { noun: 'plate', missing: 'plate-not-found', damaged: 'plate-not-valid' },
  },
  yardsticks: {
    migrations: { 1: workspace },
    row: z.strictObject({ id: text, yardstick: text, version: count }),
    key: 'id',
    order: 'id',
    incidental: ['version'],
    texts: { yardstick: readDocument },
    document: { noun: 'yardstick', missing: 'yardstick-not-found', damaged: 'yardstick-not-valid' },
  },
  saved_surveys: {
    migrations: { 1: workspace, 6: seenVersions },
    row: z.strictObject({ id: text, survey: text, version: count.default(1) }),
    key: 'id',
    order: 'id',
    texts: { survey: readSurvey },
    document: { noun: 'survey' },
  },
  guides: {
    migrations: { 3: guides },
    row: z.strictObject({ id: text, guide: text, published: maybeText, version: count, is_demo: flag }),
    key: 'id',
    order: 'id',
    incidental: ['version', 'is_demo'],
    texts: { guide: readDocument, published: readPublished },
    demo: 'is_demo = 1',
    document: { noun: 'guide', missing: 'guide-not-found', damaged: 'guide-not-valid' },
  },
  handouts: {
    migrations: { 5: handouts },
    row: z.strictObject({ id: text, handout: text, version: count, is_demo: flag }),
    key: 'id',
    order: 'id',
    incidental: ['version', 'is_demo'],
    texts: { handout: readDocument },
    demo: 'is_demo = 1',
    document: { noun: 'handout', missing: 'handout-not-found', damaged: 'handout-not-valid' },
  },
  imports: {
    migrations: { 1: workspace },
    row: z.strictObject({ id: text, file_name: text, imported_at: text, added: count, joined: count, undone_at: maybeText }),
    key: 'id',
    order: 'id',
    // An import that has no label left.
    demo: 'not exists (select 1 from import_labels where import_labels.import_id = imports.id)',
  },
  import_labels: {
    migrations: { 1: workspace },
    row: z.strictObject({ import_id: text, label_id: text }),
    key: 'label_id',
    order: 'label_id',
    demo: ofDemoLabel,
  },
  reference_tables: {
    migrations: { 4: reference },
    // A file's own digest is not believed.
    row: z
      .strictObject({
        dataset: z.enum(['usda-sr', 'fdc-foundation', 'fdc-sr-legacy']),
        source: text,
        edition: text,
        foods: count,
        imported_at: text,
        digest: text,
        // A whole composition table.
        body: z.string(),
      })
      .transform(row => ({ ...row, digest: digestOf(row.body) })),
    key: 'dataset',
    order: 'dataset',
    isBulky: true,
    incidental: ['imported_at'],
    texts: { body: readReference },
  },
  mineral_estimates: {
    migrations: { 2: mineralEstimates },
    row: z.strictObject({ label_id: text, version: text, estimate: text }),
    key: 'label_id',
    order: 'label_id',
    isComputed: true,
    texts: { estimate: readAny },
    demo: ofDemoLabel,
  },
} as const satisfies Readonly<Record<string, TableEntry>>;

/** The registry as those see it who do the same with every table. */
export const tableEntries: readonly (readonly [name: string, entry: TableEntry])[] = Object.entries(tables);
