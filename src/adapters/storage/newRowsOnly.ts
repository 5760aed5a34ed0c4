import { sql, type Transaction } from 'kysely';
import type { LeftOutReason, RestoredRows } from '#app/store.ts';
import { foodNameKey } from '#core/label/foodNameKey.ts';
import { archivedEntry } from './checkRow.ts';
import { isObject, readJson } from './readJson.ts';
import { insertRows } from './rowsOfTable.ts';
import type { RowTaker } from './rowTaker.ts';
import type { Tables } from './schema.ts';
import type { Session } from './session.ts';
import type { AnyRow } from './tableEntry.ts';

/** Examples that a person can look through. */
const mostExamples = 200;

/**
 * For a workspace that holds something: rows whose key is new are added, those that stand already are left as they are. Of
 * a food that stands here, only readings newer than all of its own are added: an older one would take their place, since
 * the order of labels is the order in which they were read and never changes.
 */
export class NewRows implements RowTaker {
  private readonly trx: Transaction<Tables>;
  private readonly session: Session;
  private readonly added: Record<string, number> = {};
  private same = 0;
  private readonly leftOut: Partial<Record<LeftOutReason, number>> = {};
  private readonly examples: RestoredRows['examples'][number][] = [];
  /** Keys of foods, labels and imports that were not put: what belongs to them is not put either. */
  private readonly without = new Map<string, Map<string, LeftOutReason>>();
  private readonly newFoods = new Set<string>();
  /** Of the foods that stood here. */
  private identities: Awaited<ReturnType<typeof identitiesOf>> | undefined;
  /** Labels that were put: what is said of another label stands here already, and is left as it is. */
  private readonly newLabels = new Set<string>();
  /** Of labels that stand here and are corrected: when the newest word on their reading came in. */
  private readonly newestWordOn = new Map<string, string>();
  /** Of labels that were put: the place of their reading among the others. */
  private readonly readingOf = new Map<string, number>();
  /** Of foods that stood here: when their newest reading came in. */
  private readonly newestOf = new Map<string, string>();

  constructor(trx: Transaction<Tables>, session: Session) {
    this.trx = trx;
    this.session = session;
  }

  get result(): RestoredRows {
    return { added: this.added, same: this.same, leftOut: this.leftOut, examples: this.examples };
  }

  async take(table: string, given: readonly AnyRow[]): Promise<void> {
    const { key } = archivedEntry(table);
    const standing = await this.standing(table, key, given);
    const news: AnyRow[] = [];
    for (const row of given) {
      const here = standing.get(String(row[key]));
      if (here !== undefined && this.isSame(table, here, row)) this.same += 1;
      else if (row.is_demo === 1) this.leave(table, row, 'demo');
      else if (here !== undefined) this.leave(table, row, 'differs', false);
      else {
        const whole = this.wholeLeftOut(row);
        if (whole === undefined && this.isSaidOfStanding(table, row)) this.leave(table, row, 'differs', false);
        else if (whole === undefined) news.push(row);
        else this.leave(table, row, whole === 'demo' ? 'demo' : 'part-left-out');
      }
    }
    const put = table === 'foods' ? await this.foods(news) : table === 'labels' ? await this.labels(news) : news;
    if (put.length === 0) return;
    await insertRows(this.trx, table, put);
    this.added[table] = (this.added[table] ?? 0) + put.length;
  }

  /** Two foods of one bar code, or of one maker and name, would be one in the next import. */
  private async foods(news: readonly AnyRow[]): Promise<readonly AnyRow[]> {
    this.identities ??= await identitiesOf(this.trx);
    const { codes, codesByName } = this.identities;
    return news.filter(row => {
      const code = typeof row.gtin === 'string' ? row.gtin : undefined;
      if (code !== undefined && codes.has(code)) return this.leave('foods', row, 'bar-code-taken');
      const namesakes = codesByName.get(nameOf(row)) ?? [];
      // Two that have a number each are two sizes of one food.
      if (namesakes.some(other => other === undefined || code === undefined)) return this.leave('foods', row, 'name-taken');
      this.newFoods.add(String(row.id));
      return true;
    });
  }

  /** Labels get their places behind those that stand here, in the order that they had. */
  private async labels(news: readonly AnyRow[]): Promise<readonly AnyRow[]> {
    await this.lookUpNewest(news);
    await this.lookUpCorrected(news);
    const accepted = news.filter(row => {
      const corrected = row.corrects_label_id;
      if (corrected !== null && this.isWithout('labels', corrected)) return this.leave('labels', row, 'part-left-out');
      const newestWord = this.newestWordOn.get(String(corrected));
      if (newestWord !== undefined && String(row.added_at) <= newestWord) return this.leave('labels', row, 'older-reading');
      const newest = this.newestOf.get(String(row.food_id));
      if (corrected === null && newest !== undefined && String(row.added_at) <= newest) return this.leave('labels', row, 'older-reading');
      return true;
    });
    if (accepted.length === 0) return [];
    let sequence = await this.session.takeSequence(this.trx, accepted.length);
    return accepted.map(row => {
      const reading = row.corrects_label_id === null ? sequence : (this.readingOf.get(String(row.corrects_label_id)) ?? sequence);
      this.readingOf.set(String(row.id), reading);
      this.newLabels.add(String(row.id));
      return { ...row, sequence: sequence++, reading_sequence: reading };
    });
  }

  private async lookUpNewest(labels: readonly AnyRow[]): Promise<void> {
    const foods = [...new Set(labels.map(({ food_id }) => String(food_id)))].filter(id => !this.newFoods.has(id) && !this.newestOf.has(id));
    if (foods.length === 0) return;
    const found = await sql<{
      food_id: string;
      newest: string;
    }>`select food_id, max(added_at) as newest from labels where kind = 'read' and food_id in (${sql.join(foods)}) group by food_id`.execute(
      this.trx,
    );
    for (const { food_id, newest } of found.rows) this.newestOf.set(food_id, newest);
  }

  private async lookUpCorrected(labels: readonly AnyRow[]): Promise<void> {
    const ids = labels.map(({ corrects_label_id }) => corrects_label_id).filter(id => id !== null && !this.readingOf.has(String(id)));
    if (ids.length === 0) return;
    const found = await sql<{ id: string; reading_sequence: number; newest: string }>`
      select id, reading_sequence, (select max(added_at) from labels as words where words.reading_sequence = labels.reading_sequence) as newest
      from labels where id in (${sql.join(ids)})`.execute(this.trx);
    for (const { id, reading_sequence, newest } of found.rows) {
      this.readingOf.set(id, reading_sequence);
      this.newestWordOn.set(id, newest);
    }
  }

  private async standing(table: string, key: string, given: readonly AnyRow[]): Promise<ReadonlyMap<string, AnyRow>> {
    const keys = given.map(row => row[key]);
    const { rows } = await sql<AnyRow>`select * from ${sql.table(table)} where ${sql.ref(key)} in (${sql.join(keys)})`.execute(this.trx);
    return new Map(rows.map(row => [String(row[key]), row]));
  }

  private isSame(table: string, here: AnyRow, row: AnyRow): boolean {
    const { incidental = [] } = archivedEntry(table);
    return Object.keys(row).every(column => incidental.includes(column) || areEqual(here[column], row[column]));
  }

  /** A label of this workspace may have been withdrawn or its recheck day taken off here since: what stands is left as it is. */
  private isSaidOfStanding(table: string, row: AnyRow): boolean {
    return (table === 'label_withdrawals' || table === 'label_rechecks') && !this.newLabels.has(String(row.label_id));
  }

  /** Why the row that this one belongs to was left out; undefined when it was not. */
  private wholeLeftOut(row: AnyRow): LeftOutReason | undefined {
    return this.isWithout('foods', row.food_id) ?? this.isWithout('labels', row.label_id) ?? this.isWithout('imports', row.import_id);
  }

  private isWithout(table: string, id: unknown): LeftOutReason | undefined {
    return this.without.get(table)?.get(String(id));
  }

  /** Counts a row that is not put; `isGone` says that nothing of its key stands here. Gives false, for filters. */
  private leave(table: string, row: AnyRow, reason: LeftOutReason, isGone = true): false {
    const id = String(row[archivedEntry(table).key]);
    this.leftOut[reason] = (this.leftOut[reason] ?? 0) + 1;
    if (isGone) this.without.set(table, (this.without.get(table) ?? new Map()).set(id, reason));
    if (reason !== 'demo' && this.examples.length < mostExamples) this.examples.push({ table, id, reason, ...named(table, row) });
    return false;
  }
}

/** The bar codes of all foods, and by maker and name those of each, undefined where it has none. */
async function identitiesOf(trx: Transaction<Tables>) {
  const codes = new Set<string>();
  const codesByName = new Map<string, (string | undefined)[]>();
  for (const row of await trx.selectFrom('foods').select(['maker', 'name', 'gtin']).execute()) {
    if (row.gtin !== null) codes.add(row.gtin);
    const name = nameOf(row);
    codesByName.set(name, [...(codesByName.get(name) ?? []), row.gtin ?? undefined]);
  }
  return { codes, codesByName };
}

function nameOf({ maker, name }: AnyRow): string {
  return foodNameKey(typeof maker === 'string' ? maker : undefined, String(name));
}

function areEqual(here: unknown, there: unknown): boolean {
  return here instanceof Uint8Array && there instanceof Uint8Array ? Buffer.compare(here, there) === 0 : here === there;
}

/** What a person calls the row: the name of a food and its maker, the title of a document, the file of an import. */
function named(table: string, row: AnyRow): { readonly name?: string } {
  if (typeof row.name === 'string') return { name: typeof row.maker === 'string' ? `${row.name} (${row.maker})` : row.name };
  if (typeof row.file_name === 'string') return { name: row.file_name };
  const text = row[archivedEntry(table).document?.noun ?? 'printed'];
  const title = typeof text === 'string' ? readJson(text, json => (isObject(json) ? (json.title ?? json.name) : undefined)) : undefined;
  return typeof title === 'string' ? { name: title } : {};
}
