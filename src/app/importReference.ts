import type { Issue } from '#core/errors.ts';
import type { DatasetFile, ReadDatasets } from './ports.ts';
import type { ReferenceRow, Store } from './store.ts';
import type { Watch } from './watch.ts';

/**
 * Reads the composition tables that some files hold and keeps them in the workspace. Estimates that rest on an earlier
 * edition are made anew when somebody looks at them.
 *
 * @throws Fault reference-not-recognized, reference-not-valid, work-cancelled: then nothing is kept.
 */
export async function importReference(
  files: readonly DatasetFile[],
  readDatasets: ReadDatasets,
  store: Store,
  watch: Watch,
): Promise<{ readonly kept: readonly ReferenceRow[]; readonly report: readonly Issue[] }> {
  const { value: tables, issues: report } = await readDatasets(files, '', watch);
  const foods = tables.reduce((sum, table) => sum + table.foods.length, 0);
  await watch.step('Keeping foods', 0, foods);
  await store.putReferences(tables);
  const datasets = new Set<string>(tables.map(({ dataset }) => dataset));
  return { kept: (await store.listReferences()).filter(({ dataset }) => datasets.has(dataset)), report };
}
