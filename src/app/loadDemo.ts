import type { GuideFile, HandoutFile, PlateFile } from './documents.ts';
import { guideForStore } from './guides/guideForStore.ts';
import { handoutForStore } from './handouts/handoutForStore.ts';
import { importEntry, lookAtImport, proposedMapping } from './lookAtImport.ts';
import type { Table } from './ports.ts';
import { Shelf } from './shelf.ts';
import type { Store } from './store.ts';

export interface Demo {
  readonly table: Table;
  readonly plates: readonly PlateFile[];
  readonly guides: readonly GuideFile[];
  /** Those on a topic; a client's are made from the client's record. */
  readonly handouts: readonly HandoutFile[];
}

/**
 * Loads the invented scenario: its table of labels, its plates, guides and handouts, all marked as demo. A food that the table holds twice
 * was reformulated: its later label joins the food that the earlier one began, so the table goes in by rounds.
 */
export async function loadDemo({ table, plates, guides, handouts }: Demo, store: Store): Promise<void> {
  let rest = table;
  for (let _round = 0; rest.rows.length > 0; _round++) {
    const look = await lookAtImport(rest, proposedMapping(rest.headings), new Shelf(store), store);
    const seen = new Set<string>();
    const now = look.rows.filter(({ printed }) => {
      const key = printed.gtin ?? `${printed.maker} ${printed.name}`;
      if (seen.has(key)) return false;
      seen.add(key);
      return true;
    });
    await store.applyImport(importEntry({ ...look, rows: now }, 'demo scenario', true));
    const done = new Set(now.map(({ row }) => row));
    const later = rest.rows.filter(({ row }) => !done.has(row) && look.rows.some(looked => looked.row === row));
    rest = { ...rest, rows: later };
  }
  const known = new Map((await store.plates.list()).map(({ value, version }) => [value.id, version]));
  for (const plate of plates) await store.plates.put(plate, known.get(plate.id) ?? null, { isDemo: true });
  const kept = new Map((await store.guides.list()).map(({ value, version }) => [value.id, version]));
  for (const one of guides) {
    const { guide, published } = await guideForStore(one, store);
    await store.guides.put(guide, kept.get(guide.id) ?? null, { published, isDemo: true });
  }
  const versions = new Map((await store.handouts.list()).map(({ value, version }) => [value.id, version]));
  for (const one of handouts) await store.handouts.put(await handoutForStore(one, store), versions.get(one.id) ?? null, { isDemo: true });
}
