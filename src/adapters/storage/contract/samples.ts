import { expect } from 'vitest';
import type { NewLabel, RestoredRows, RestoreInto, Store } from '#app/store.ts';
import { Fault } from '#core/errors.ts';
import type { PrintedLabel } from '#core/label/label.ts';
import { type LargerTable, nothingKnown } from '#core/reference/largerTable.ts';

/** An engine under the contract: empty stores, and a way to say SQL to one behind its back. */
export interface EngineUnderTest {
  readonly open: () => Promise<Store>;
  /** Another store on the same data as the last one opened. */
  readonly openAgain: () => Promise<Store>;
  readonly sql: (statement: string) => Promise<void>;
  /** A store on what an earlier program kept, by the number of its last migration. */
  readonly openEarlier: (version: number) => Promise<Store>;
  readonly bytesType: string;
}

export const printed = (sodiumMg: number, more: Partial<PrintedLabel> = {}): PrintedLabel => ({
  market: 'us',
  serving: { household: '4 slices', grams: 56 },
  basis: 'per-serving',
  state: 'as-packaged',
  front: [],
  panel: { sodiumMg, energyKcal: 80 },
  otherColumns: [],
  ...more,
});
export const label = (sodiumMg: number, more: Partial<NewLabel> = {}): NewLabel => ({ kind: 'read', printed: printed(sodiumMg), ...more });
/** SR28 11241: 46 mg of phosphorus in 100 g. */
export const composition = (edition: string, more: Partial<LargerTable> = {}): LargerTable => ({
  dataset: 'usda-sr',
  source: 'USDA SR',
  edition,
  foods: [
    {
      number: '11241',
      description: 'Kohlrabi “raw” \u0001',
      group: '1100',
      per100G: { ...nothingKnown, phosphorusMg: 46, fatG: 0.1 },
      household: [{ text: '1 cup', grams: 135 }],
    },
  ],
  ...more,
});
export const plate = { id: 'on-bread', title: 'two slices of bread', portion: { servings: 1 }, companions: [] };

export async function fault(work: Promise<unknown>): Promise<string> {
  const error = await work.then(
    () => undefined,
    thrown => thrown,
  );
  expect(error).toBeInstanceOf(Fault);
  return (error as Fault).code;
}

/** The foods whose label stands, with the sodium it prints. */
export async function standingSodium(store: Store, category?: string) {
  return (await store.standingLabels(category)).map(({ food, label: { printed: print } }) => [food.name, print.panel.sodiumMg]);
}

export type Tables = Readonly<Record<string, readonly Readonly<Record<string, unknown>>[]>>;

/** Every row that an archive keeps, by table. */
export function everyRow(store: Store): Promise<Tables> {
  return store.archived(async tables => {
    const rows: Record<string, readonly Readonly<Record<string, unknown>>[]> = {};
    for (const { name, rows: given } of tables) {
      const ofTable = [];
      for await (const row of given()) ofTable.push(row);
      rows[name] = ofTable;
    }
    return rows;
  });
}

export async function restoreAll(store: Store, tables: Tables, into: RestoreInto = 'empty'): Promise<RestoredRows> {
  async function* rows() {
    for (const [table, given] of Object.entries(tables)) for (const row of given) yield { table, row };
  }
  return store.restoreRows(rows, into);
}
