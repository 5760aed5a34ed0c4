import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Store } from '#app/store.ts';
import { documentTables } from '../documents.ts';
import { tables } from '../tables.ts';
import { type EngineUnderTest, everyRow, fault, plate, restoreAll } from './samples.ts';

/** Plates, yardsticks, surveys, guides, handouts: what holds for every table of documents is asked of the registry. */
export function documentsContract(engine: EngineUnderTest): void {
  describe.each(documentTables.filter(table => table !== 'saved_surveys'))('the documents of %s', table => {
    let store: Store;
    beforeEach(async () => {
      store = await engine.open();
    });
    afterEach(() => store.close());
    const mine = { id: 'mine', title: 'Mine' };
    const hasDemo = tables[table].row.shape !== undefined && 'is_demo' in tables[table].row.shape;

    test('[STO-5] are put, got, listed and removed with the version that was seen', async () => {
      const documents = store[table];
      expect(await documents.put(mine, null)).toEqual({ value: mine, version: 1, isDemo: false });
      expect(await fault(documents.put(mine, null))).toBe('changed-meanwhile');
      const renamed = { ...mine, title: 'Another title' };
      expect(await documents.put(renamed, 1)).toEqual({ value: renamed, version: 2, isDemo: false });
      expect(await documents.get('mine')).toEqual({ value: renamed, version: 2, isDemo: false });
      expect(await documents.get('yours')).toBeUndefined();
      expect(await documents.list()).toEqual([{ value: renamed, version: 2, isDemo: false }]);
      expect(await fault(documents.remove('mine', 1))).toBe('changed-meanwhile');
      await documents.remove('mine', 2);
      expect(await documents.list()).toEqual([]);
      expect(await fault(documents.remove('mine', 2))).toMatch(/-not-found$/);
    });

    test('[STO-8] stand in the workspace file, and go back into an empty workspace', async () => {
      await store[table].put(mine, null);
      const file = await everyRow(store);
      expect(file[table]).toHaveLength(1);
      await store.purgeAll();
      expect(await store[table].list()).toEqual([]);
      await restoreAll(store, file);
      expect(await store[table].list()).toEqual([{ value: mine, version: 1, isDemo: false }]);
    });

    test('[STO-9] go with the demo where they came with it, and only then', async () => {
      await store[table].put(mine, null);
      await store[table].put({ id: 'invented' }, null, { isDemo: true });
      await store.purgeDemo();
      expect((await store[table].list()).map(({ value }) => value.id)).toEqual(hasDemo ? ['mine'] : ['invented', 'mine']);
    });
  });

  describe('plates, yardsticks, surveys', () => {
    let store: Store;
    beforeEach(async () => {
      store = await engine.open();
    });
    afterEach(() => store.close());
    test('[STO-5] are put and removed with the version that was seen', async () => {
      expect(await store.plates.put(plate, null)).toEqual({ value: plate, version: 1, isDemo: false });
      expect(await fault(store.plates.put(plate, null))).toBe('changed-meanwhile');
      expect(await store.plates.put({ ...plate, title: 'toast' }, 1)).toMatchObject({ version: 2 });
      expect(await fault(store.plates.remove(plate.id, 1))).toBe('changed-meanwhile');
      expect(await store.plates.list()).toEqual([{ value: { ...plate, title: 'toast' }, version: 2, isDemo: false }]);
      await store.plates.remove(plate.id, 2);
      expect(await fault(store.plates.remove(plate.id, 2))).toBe('plate-not-found');
      const yardstick = { id: 'mine', title: 'mine', purpose: 'p', tests: [], classScales: [], settings: 'any' as const, cautions: [] };
      await store.yardsticks.put(yardstick, null);
      expect(await store.yardsticks.list()).toEqual([{ value: yardstick, version: 1, isDemo: false }]);
      await store.yardsticks.remove('mine', 1);
      expect(await fault(store.yardsticks.remove('mine', 1))).toBe('yardstick-not-found');
    });
    test('[STO-5] a guide keeps what was published until it is published again or taken off', async () => {
      const guide = { id: 'slices', title: 'Slices' };
      const published = { guide, labels: [{ foodId: 'f', labelId: 'l' }] };
      expect(await store.guides.put(guide, null)).toEqual({ value: guide, version: 1, isDemo: false });
      expect(await store.guides.put(guide, 1, { published })).toMatchObject({ version: 2, published });
      expect(await fault(store.guides.put(guide, 1))).toBe('changed-meanwhile');
      const renamed = { ...guide, title: 'Slices on bread' };
      expect(await store.guides.put(renamed, 2)).toEqual({ value: renamed, version: 3, isDemo: false, published });
      expect(await store.guides.get('slices')).toEqual((await store.guides.list())[0]);
      expect(await store.guides.put(renamed, 3, { published: null })).toEqual({ value: renamed, version: 4, isDemo: false });
      expect(await fault(store.guides.remove('slices', 3))).toBe('changed-meanwhile');
      await store.guides.remove('slices', 4);
      expect(await fault(store.guides.remove('slices', 4))).toBe('guide-not-found');
      expect(await store.guides.get('slices')).toBeUndefined();
    });
    test('[STO-5] handouts on a topic are put and removed with the version that was seen', async () => {
      const handout = { id: 'sandwich', title: 'A sandwich' };
      expect(await store.handouts.put(handout, null, { isDemo: true })).toEqual({ value: handout, version: 1, isDemo: true });
      expect(await fault(store.handouts.put(handout, null))).toBe('changed-meanwhile');
      const renamed = { ...handout, title: 'A better sandwich' };
      expect(await store.handouts.put(renamed, 1)).toEqual({ value: renamed, version: 2, isDemo: true });
      expect(await store.handouts.list()).toEqual([{ value: renamed, version: 2, isDemo: true }]);
      const file = await everyRow(store);
      expect(file.handouts).toHaveLength(1);
      expect(await fault(store.handouts.remove('sandwich', 1))).toBe('changed-meanwhile');
      await store.purgeDemo();
      expect(await store.handouts.list()).toEqual([]);
      expect(await fault(store.handouts.remove('sandwich', 2))).toBe('handout-not-found');
    });
    test("[STO-9] what came with the demo stays the demo's when it is changed; a copy is the user's own", async () => {
      await store.plates.put(plate, null, { isDemo: true });
      expect(await store.plates.put({ ...plate, title: 'toast' }, 1)).toMatchObject({ version: 2, isDemo: true });
      await store.plates.put({ ...plate, id: 'copy' }, null);
      await store.guides.put({ id: 'slices' }, null, { isDemo: true });
      expect(await store.guides.put({ id: 'slices', title: 'Mine' }, 1)).toMatchObject({ isDemo: true });
      await store.purgeDemo();
      expect((await store.plates.list()).map(({ value }) => value.id)).toEqual(['copy']);
      expect(await store.guides.list()).toEqual([]);
    });
    test('[STO-8] a workspace file holds guides; a file of a program that knew none is still restored', async () => {
      await store.guides.put({ id: 'slices', title: 'Slices' }, null, { published: { guide: { id: 'slices' }, labels: [] } });
      const file = await everyRow(store);
      await store.purgeAll();
      expect(await store.guides.list()).toEqual([]);
      await restoreAll(store, file);
      expect(await everyRow(store)).toEqual(file);
      await store.purgeAll();
      const { guides: _, ...earlier } = file;
      await restoreAll(store, earlier);
      expect(await store.guides.list()).toEqual([]);
    });
    test('[STO-5] saved surveys are put and removed with the version that was seen', async () => {
      const survey = { id: 's', title: 'Slices', category: 'sandwich slices', plateId: 'p', yardstickId: 'y', switchedOn: ['t'] };
      const renamed = { ...survey, title: 'Slices on bread' };
      expect(await store.surveys.put(survey, null)).toEqual({ value: survey, version: 1, isDemo: false });
      expect(await fault(store.surveys.put(renamed, null))).toBe('changed-meanwhile');
      await store.surveys.put(renamed, 1);
      expect(await fault(store.surveys.put(survey, 1))).toBe('changed-meanwhile');
      expect(await store.surveys.list()).toEqual([{ value: renamed, version: 2, isDemo: false }]);
      const file = await everyRow(store);
      expect(await fault(store.surveys.remove('s', 1))).toBe('changed-meanwhile');
      await store.surveys.remove('s', 2);
      expect(await fault(store.surveys.remove('s', 2))).toBe('document-not-found');
      expect(await store.surveys.list()).toEqual([]);
      await restoreAll(store, file);
      expect(await store.surveys.list()).toEqual([{ value: renamed, version: 2, isDemo: false }]);
    });
    test('[STO-5] of two windows that save the same survey at once, one is told', async () => {
      const survey = { id: 's', title: 'Slices', category: 'c', plateId: 'p', yardstickId: 'y', switchedOn: [] };
      const other = await engine.openAgain();
      try {
        await store.surveys.put(survey, null);
        const titles = Array.from({ length: 12 }, (_, index) => `Window ${index}`);
        const outcomes = await Promise.allSettled(
          titles.map((title, index) => (index % 2 === 0 ? store : other).surveys.put({ ...survey, title }, 1)),
        );
        const saved = outcomes.flatMap((outcome, index) => (outcome.status === 'fulfilled' ? [titles[index]] : []));
        expect(saved).toHaveLength(1);
        expect((await store.surveys.list()).map(({ value, version }) => [value.title, version])).toEqual([[saved[0], 2]]);
      } finally {
        await other.close();
      }
    });
  });
}
