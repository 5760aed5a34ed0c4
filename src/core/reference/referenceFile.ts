import { z } from 'zod';
import { Fault } from '#core/errors.ts';
import type { LargerTable } from './largerTable.ts';
import type { ReferenceFood } from './referenceFood.ts';
import { referenceNutrients } from './referenceFood.ts';

/** docs/formats.md, "Reference file". A food is a row: number, description, group, figures of 100 g, household measures. */
const foodShape = z.tuple([
  z.string(),
  z.string(),
  z.string().nullable(),
  z.array(z.number().nonnegative().nullable()).length(referenceNutrients.length),
  z.array(z.tuple([z.string(), z.number().positive()])),
]);
const tableShape = z.object({
  dataset: z.enum(['usda-sr', 'fdc-foundation', 'fdc-sr-legacy']),
  source: z.string(),
  edition: z.string(),
  foods: z.array(foodShape),
});
const fileShape = z.object({
  platewrightReference: z.literal(1),
  nutrients: z.tuple(referenceNutrients.map(key => z.literal(key)) as [z.ZodLiteral, ...z.ZodLiteral[]]),
  tables: z.array(tableShape),
});

/** The text of a reference file: one food a line, so that two files can be compared. */
export function referenceFileText(tables: readonly LargerTable[]): string {
  const head = JSON.stringify({ platewrightReference: 1, nutrients: referenceNutrients }).slice(0, -1);
  return `${head},"tables":[${tables.map(tableText).join(',')}]}\n`;
}

/** @throws Fault reference-not-valid with the place. */
export function referenceFileFromJson(text: string, name: string): readonly LargerTable[] {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    throw new Fault('reference-not-valid', `"${name}" is not JSON.`);
  }
  const read = fileShape.safeParse(json);
  if (!read.success) {
    const [problem] = read.error.issues;
    throw new Fault('reference-not-valid', `"${name}", at ${problem?.path.join('.') || 'the top'}: ${problem?.message ?? 'not readable'}.`);
  }
  return read.data.tables.map(tableOf);
}

function tableText({ dataset, source, edition, foods }: LargerTable): string {
  const head = JSON.stringify({ dataset, source, edition }).slice(0, -1);
  const rows = foods.map(({ number, description, group, per100G, household }) =>
    JSON.stringify([
      number,
      description,
      group,
      referenceNutrients.map(key => per100G[key]),
      household.map(({ text, grams }) => [text, grams]),
    ]),
  );
  return `${head},"foods":[\n${rows.join(',\n')}\n]}`;
}

function tableOf({ dataset, source, edition, foods }: z.output<typeof tableShape>): LargerTable {
  return {
    dataset,
    source,
    edition,
    foods: foods.map(([number, description, group, figures, household]) => ({
      number,
      description,
      group,
      per100G: Object.fromEntries(referenceNutrients.map((key, at) => [key, figures[at]!])) as ReferenceFood['per100G'],
      household: household.map(([text, grams]) => ({ text, grams })),
    })),
  };
}
