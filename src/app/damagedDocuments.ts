import { plateFromJson } from '#core/plate/plateFromJson.ts';
import { yardstickFromJson } from '#core/yardstick/yardstickFromJson.ts';
import type { DamagedRow, Store } from './store.ts';

/** What cannot be read: rows that are damaged, and plates and yardsticks that are whole JSON and none for their codec (a newer program's, too). */
export async function whatCannotBeRead(store: Store): Promise<readonly DamagedRow[]> {
  const plates = (await store.plates.list()).filter(({ value }) => plateFromJson(value).value === undefined);
  const yardsticks = (await store.yardsticks.list()).filter(({ value }) => yardstickFromJson(value).value === undefined);
  return [
    ...(await store.damagedRows()),
    ...plates.map(({ value }) => ({ table: 'plates', id: value.id, column: 'plate' })),
    ...yardsticks.map(({ value }) => ({ table: 'yardsticks', id: value.id, column: 'yardstick' })),
  ];
}
