import type { Issue } from '#core/errors.ts';
import { compareLabels } from '#core/label/compareLabels.ts';
import type { PrintedLabel, ReadLabel } from '#core/label/label.ts';
import { type ImportedLabel, labelReader } from './importLabels.ts';
import { labelHeading } from './labelHeadings.ts';
import { foodFinder, foodOf } from './matchFood.ts';
import type { Table } from './ports.ts';
import type { Shelf } from './shelf.ts';
import type { FoodRow, ImportEntry, Store } from './store.ts';
import { rowsAStep, unwatched, type Watch } from './watch.ts';

/** What a row of an import would do. */
export interface ImportRowLook {
  /** The row of the table, as a spreadsheet shows it. */
  readonly row: number;
  /** As printed alone: fifty thousand labels as they are read would fill the memory. */
  readonly printed: PrintedLabel;
  readonly does: 'begins-a-food' | 'joins-a-food' | 'already-there';
  readonly joins?: FoodRow;
}

export interface ImportLook {
  /** For each heading the column it is taken for; null is left out. */
  readonly mapping: readonly (string | null)[];
  readonly rows: readonly ImportRowLook[];
  readonly report: readonly Issue[];
  /** Rows of the table that are no label; the report says why. */
  readonly leftOut: number;
}

/** The column each heading is taken for when nobody says otherwise. */
export function proposedMapping(headings: readonly string[]): readonly (string | null)[] {
  return headings.map(heading => labelHeading(heading)?.key ?? null);
}

/**
 * Reads a table under a mapping and says what each row would do: begin a food, join one as a newer label, or nothing,
 * because the same figures and ingredients are there already. Keeps nothing.
 */
export async function lookAtImport(
  table: Table,
  mapping: readonly (string | null)[],
  shelf: Shelf,
  store: Store,
  watch: Watch = unwatched,
): Promise<ImportLook> {
  const { issues, read } = labelReader(mapped(table, mapping));
  const findFood = foodFinder(await store.listFoods());
  // As printed: an estimate in the place of what a label leaves out is no figure of the package.
  const standing = new Map((await shelf.foods()).map(({ row, label }) => [row.id, shelf.reading(label)]));
  const isSame = (label: ReadLabel, imported: ImportedLabel): boolean => compareLabels(label, imported.label).outcome === 'same';
  /** Earlier labels count as well: an old table read again must not put an old label before the newer one. */
  const isThere = async (imported: ImportedLabel, food: FoodRow): Promise<boolean> => {
    const stands = standing.get(food.id);
    if (stands !== undefined && isSame(stands, imported)) return true;
    const kept = await store.labelsOf(food.id);
    return kept.some(label => label.withdrawn === undefined && isSame(shelf.reading(label), imported));
  };
  const rows: ImportRowLook[] = [];
  for (const [at, row] of table.rows.entries()) {
    if (at % rowsAStep === 0) await watch.step('Reading rows', at, table.rows.length);
    const imported = read(row);
    if (imported === undefined) continue;
    const joins = findFood(imported.label.printed);
    const look = { row: imported.row, printed: imported.label.printed };
    if (joins === undefined) rows.push({ ...look, does: 'begins-a-food' });
    else rows.push({ ...look, does: (await isThere(imported, joins)) ? 'already-there' : 'joins-a-food', joins });
  }
  return { mapping, rows, report: issues, leftOut: table.rows.length - rows.length };
}

/** A column that is left out keeps its heading in the report, under a name that no label has. */
function mapped(table: Table, mapping: readonly (string | null)[]): Table {
  return {
    ...table,
    headings: table.headings.map((heading, at) => mapping[at] ?? (labelHeading(heading) === undefined ? heading : `(left out) ${heading}`)),
  };
}

/** What a look would keep. Two rows of one new food become one food with two labels, in the order of the table. */
export function importEntry(look: ImportLook, fileName: string, isDemo = false): ImportEntry {
  return {
    fileName,
    ...(isDemo ? { isDemo } : {}),
    labels: look.rows
      .filter(({ does }) => does !== 'already-there')
      .map(({ printed, joins }) => {
        const label = { kind: 'read' as const, printed };
        return joins === undefined ? { begins: foodOf(printed), label } : { joins: joins.id, label };
      }),
  };
}
