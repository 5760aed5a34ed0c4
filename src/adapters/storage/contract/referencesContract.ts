import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Store } from '#app/store.ts';
import { composition, type EngineUnderTest, everyRow, fault, restoreAll } from './samples.ts';

/** Imported composition tables. */
export function referencesContract(engine: EngineUnderTest): void {
  describe('composition tables', () => {
    let store: Store;
    beforeEach(async () => {
      store = await engine.open();
    });
    afterEach(() => store.close());
    test('[STO-14] come back as they were; an edition gives way to the next of its dataset', async () => {
      const legacy = composition('2019-04-01', { dataset: 'fdc-sr-legacy', source: 'FDC' });
      await store.putReferences([composition('release 27'), legacy]);
      const [, before] = await store.listReferences();
      await store.putReferences([composition('release 28')]);
      expect(await store.referenceTables()).toEqual([legacy, composition('release 28')]);
      const [kept, now] = await store.listReferences();
      expect(kept).toMatchObject({ dataset: 'fdc-sr-legacy', edition: '2019-04-01', foods: 1 });
      expect(now).toMatchObject({ dataset: 'usda-sr', edition: 'release 28', source: 'USDA SR', foods: 1 });
      expect(now!.digest).not.toBe(before!.digest);
      expect(Date.parse(now!.importedAt)).not.toBeNaN();
    });
    test('[STO-14] are removed one by one; one that is not there is told', async () => {
      await store.putReferences([composition('release 28')]);
      const before = await store.revision();
      expect(await fault(store.removeReference('fdc-foundation'))).toBe('reference-not-found');
      expect(await store.revision()).toBe(before);
      await store.removeReference('usda-sr');
      expect(await store.referenceTables()).toEqual([]);
      expect(await store.revision()).toBeGreaterThan(before);
    });
    test('[STO-14] the same content has the same mark after it went into a file and back', async () => {
      await store.putReferences([composition('release 28')]);
      const [before] = await store.listReferences();
      const file = await everyRow(store);
      await store.purgeAll();
      await restoreAll(store, file);
      expect(await store.listReferences()).toEqual([before]);
    });
    test('[STO-14] the mark that a file gives itself is not believed: another content with this one’s mark has its own', async () => {
      await store.putReferences([composition('release 27')]);
      const [earlier] = await store.listReferences();
      await store.putReferences([composition('release 28')]);
      const [before] = await store.listReferences();
      const { reference_tables: [row] = [], ...file } = await everyRow(store);
      await store.purgeAll();
      await restoreAll(store, { ...file, reference_tables: [{ ...row, digest: earlier!.digest }] });
      expect(await store.listReferences()).toEqual([before]);
    });
  });
}
