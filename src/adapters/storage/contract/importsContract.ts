import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Store } from '#app/store.ts';
import { Fault } from '#core/errors.ts';
import { type EngineUnderTest, everyRow, fault, label, standingSodium } from './samples.ts';

/** Many labels at once, and what is computed of them. */
export function importsContract(engine: EngineUnderTest): void {
  describe('imports', () => {
    let store: Store;
    beforeEach(async () => {
      store = await engine.open();
    });
    afterEach(() => store.close());
    const sodium = (category?: string) => standingSodium(store, category);
    test('[STO-6] many labels at once, some of them joining foods; undone by withdrawals', async () => {
      const { food } = await store.addFood({ name: 'Ham' }, label(600));
      const done = await store.applyImport({
        fileName: 'shelf.csv',
        labels: [
          { joins: food.id, label: label(500) },
          { begins: { name: 'Cheese', category: 'c' }, label: label(400, { recheckOn: '2027-01-01' }) },
        ],
      });
      expect(done).toMatchObject({ added: 1, joined: 1 });
      expect(await sodium()).toEqual([
        ['Cheese', 400],
        ['Ham', 500],
      ]);
      expect((await store.getFood(food.id))?.version).toBe(2);
      expect(await store.undoImport(done.importId)).toEqual({ withdrawn: 2 });
      expect(await store.undoImport(done.importId)).toEqual({ withdrawn: 0 });
      expect(await sodium()).toEqual([['Ham', 600]]);
      expect(await store.listImports()).toMatchObject([{ fileName: 'shelf.csv', added: 1, joined: 1, undoneAt: expect.any(String) }]);
      expect(await fault(store.undoImport('nobody'))).toBe('not-found');
    });
    test('[STO-6] one bad row and nothing is kept', async () => {
      const before = await store.revision();
      const entry = {
        fileName: 'shelf.csv',
        labels: [
          { begins: { name: 'Cheese' }, label: label(400) },
          { joins: 'nobody', label: label(500) },
        ],
      };
      expect(await fault(store.applyImport(entry))).toBe('food-not-found');
      expect(await store.counts()).toMatchObject({ foods: 0, labels: 0 });
      expect(await store.listImports()).toEqual([]);
      expect(await store.revision()).toBe(before);
    });
    test('[STO-13] estimates are kept by version, without a new revision, and go with their label', async () => {
      const { label: kept } = await store.addFood({ name: 'Demo soup', isDemo: true }, label(400));
      const before = await store.revision();
      await store.putEstimates('1', [
        { labelId: kept.id, estimate: { phosphorusMg: [10, 20] } },
        { labelId: 'gone-meanwhile', estimate: {} },
      ]);
      expect(await store.estimates('1')).toEqual([{ labelId: kept.id, estimate: { phosphorusMg: [10, 20] } }]);
      expect(await store.estimates('2')).toEqual([]);
      await store.putEstimates('2', [{ labelId: kept.id, estimate: { phosphorusMg: [12, 18] } }]);
      expect(await store.estimates('1')).toEqual([]);
      expect(await store.revision()).toBe(before);
      expect(Object.keys(await everyRow(store))).not.toContain('mineral_estimates');
      await store.purgeDemo();
      expect(await store.estimates('2')).toEqual([]);
    });
    test('[STO-6] more rows than one insert takes', async () => {
      const labels = Array.from({ length: 2_500 }, (_, index) => ({
        begins: { name: `Food ${index}`, category: 'many' },
        label: label(index),
      }));
      let steps = 0;
      const watch = (last: number) => ({
        step: async () => {
          steps += 1;
          if (steps > last) throw new Fault('work-cancelled', 'The work was stopped before its end.');
        },
      });
      // The seventh step lies after the first thousand labels were sent to the database.
      expect(await fault(store.applyImport({ fileName: 'many.csv', labels }, watch(6)))).toBe('work-cancelled');
      expect(await store.counts()).toMatchObject({ foods: 0, labels: 0 });
      expect(await store.applyImport({ fileName: 'many.csv', labels }, watch(1_000))).toMatchObject({ added: 2_500, joined: 0 });
      expect(await store.standingLabels('many')).toHaveLength(2_500);
    });
  });
}
