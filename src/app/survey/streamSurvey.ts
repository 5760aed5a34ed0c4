import { Fault, type Issue } from '#core/errors.ts';
import { readLabel } from '#core/label/readLabel.ts';
import type { PlateFood } from '#core/plate/plate.ts';
import type { JudgeInput } from '#core/yardstick/judgePlate.ts';
import { foodsOf, labelReader } from '../importLabels.ts';
import { type JudgedShelf, judgeShelf, type TellableWays, tellable } from '../judgeShelf.ts';
import type { TableBlocks } from '../ports.ts';

/** Some foods of a survey, judged, and what was noticed in their rows. */
export interface SurveyPart {
  readonly survey: JudgedShelf<TellableWays>;
  readonly report: readonly Issue[];
}

/**
 * Judges the foods of a table too long to be held, block after block. Ways in need the unsalted versions of the whole table, so it is gone
 * through twice; those alone are held. With `category` the foods of that one.
 *
 * @throws Fault unknown-option when no food is of the category; table-heading-missing, table-heading-twice, table-without-headings, table-too-large.
 */
export async function* streamSurvey(question: JudgeInput, blocks: () => TableBlocks, category?: string): AsyncGenerator<SurveyPart> {
  const unsalted: PlateFood[] = [];
  const known = new Set<string>();
  const isWanted = isOfCategory(category);
  let isFound = category === undefined;
  for await (const { foods } of foodBlocks(blocks())) {
    for (const food of foods) {
      if (food.label.printed.category !== undefined && known.size < mostNamed) known.add(food.label.printed.category.toLowerCase());
      if (!isWanted(food)) continue;
      isFound = true;
      if (food.label.printed.unsaltedVersionOf) unsalted.push(ownCopy(food));
    }
  }
  if (!isFound) throw noSuchCategory(category ?? '', known);
  const ways = { shelf: { foods: unsalted, plates: [question.plate] }, keep: tellable };
  for await (const { foods, report } of foodBlocks(blocks()))
    yield { survey: judgeShelf({ ...question, foods: foods.filter(isWanted), ways }), report };
}

/** A food by itself: words cut out of the text of a block would hold all of that text in memory. */
function ownCopy({ id, name, label }: PlateFood): PlateFood {
  return { ...structuredClone({ id, name }), label: readLabel(structuredClone(label.printed)) };
}

/** Categories that are named to somebody who asked for another. */
const mostNamed = 50;

/** Without regard to letter case; every food where none is asked for. */
export function isOfCategory(category?: string): (food: PlateFood) => boolean {
  if (category === undefined) return () => true;
  const wanted = category.trim().toLowerCase();
  return ({ label }) => label.printed.category?.toLowerCase() === wanted;
}

export function noSuchCategory(category: string, known: ReadonlySet<string>): Fault {
  return new Fault('unknown-option', `No food is in the category "${category}". Found: ${[...known].join(', ') || 'no categories'}.`);
}

/** The foods of each block; what the file itself was noticed for comes at the end. */
async function* foodBlocks(
  blocks: TableBlocks,
): AsyncGenerator<{ readonly foods: readonly PlateFood[]; readonly report: readonly Issue[] }> {
  let reader: ReturnType<typeof labelReader> | undefined;
  for (;;) {
    const next = await blocks.next();
    if (next.done) {
      yield { foods: [], report: next.value };
      return;
    }
    const [head] = next.value;
    const rows = reader === undefined ? next.value.slice(1) : next.value;
    if (reader === undefined && head === undefined) continue;
    reader ??= labelReader({ headings: head!.cells, rows: [], issues: [] });
    const foods = foodsOf(rows.map(reader.read).filter(label => label !== undefined));
    yield { foods, report: reader.takeIssues() };
  }
}
