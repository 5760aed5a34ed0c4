import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Store } from '#app/store.ts';
import { type EngineUnderTest, fault, plate } from './samples.ts';

/** Plates, yardsticks, surveys, guides, handouts. */
export function documentsContract(engine: EngineUnderTest): void {
  describe('plates, yardsticks, surveys', () => {
    let store: Store;
    beforeEach(async () => {
      store = await engine.open();
    });
    afterEach(() => store.close());
    test('[STO-5] are put and removed with the version that was seen', async () => {
      expect(await store.putPlate(plate, null)).toEqual({ value: plate, version: 1, isDemo: false });
      expect(await fault(store.putPlate(plate, null))).toBe('changed-meanwhile');
      expect(await store.putPlate({ ...plate, title: 'toast' }, 1)).toMatchObject({ version: 2 });
      expect(await fault(store.removePlate(plate.id, 1))).toBe('changed-meanwhile');
      expect(await store.listPlates()).toEqual([{ value: { ...plate, title: 'toast' }, version: 2, isDemo: false }]);
      await store.removePlate(plate.id, 2);
      expect(await fault(store.removePlate(plate.id, 2))).toBe('plate-not-found');
      const yardstick = { id: 'mine', title: 'mine', purpose: 'p', tests: [], classScales: [], settings: 'any' as const, cautions: [] };
      await store.putYardstick(yardstick, null);
      expect(await store.listYardsticks()).toEqual([{ value: yardstick, version: 1, isDemo: false }]);
      await store.removeYardstick('mine', 1);
      expect(await fault(store.removeYardstick('mine', 1))).toBe('yardstick-not-found');
    });
    test('[STO-5] a guide keeps what was published until it is published again or taken off', async () => {
      const guide = { id: 'slices', title: 'Slices' };
      const published = { guide, labels: [{ foodId: 'f', labelId: 'l' }] };
      expect(await store.putGuide(guide, null)).toEqual({ value: guide, version: 1, isDemo: false });
      expect(await store.putGuide(guide, 1, { published })).toMatchObject({ version: 2, published });
      expect(await fault(store.putGuide(guide, 1))).toBe('changed-meanwhile');
      const renamed = { ...guide, title: 'Slices on bread' };
      expect(await store.putGuide(renamed, 2)).toEqual({ value: renamed, version: 3, isDemo: false, published });
      expect(await store.getGuide('slices')).toEqual((await store.listGuides())[0]);
      expect(await store.putGuide(renamed, 3, { published: null })).toEqual({ value: renamed, version: 4, isDemo: false });
      expect(await fault(store.removeGuide('slices', 3))).toBe('changed-meanwhile');
      await store.removeGuide('slices', 4);
      expect(await fault(store.removeGuide('slices', 4))).toBe('guide-not-found');
      expect(await store.getGuide('slices')).toBeUndefined();
    });
    test('[STO-5] handouts on a topic are put and removed with the version that was seen', async () => {
      const handout = { id: 'sandwich', title: 'A sandwich' };
      expect(await store.putHandout(handout, null, true)).toEqual({ value: handout, version: 1, isDemo: true });
      expect(await fault(store.putHandout(handout, null))).toBe('changed-meanwhile');
      const renamed = { ...handout, title: 'A better sandwich' };
      expect(await store.putHandout(renamed, 1)).toEqual({ value: renamed, version: 2, isDemo: true });
      expect(await store.listHandouts()).toEqual([{ value: renamed, version: 2, isDemo: true }]);
      const file = await store.exportAll();
      expect(file.tables.handouts).toHaveLength(1);
      expect(await fault(store.removeHandout('sandwich', 1))).toBe('changed-meanwhile');
      await store.purgeDemo();
      expect(await store.listHandouts()).toEqual([]);
      expect(await fault(store.removeHandout('sandwich', 2))).toBe('handout-not-found');
    });
    test("[STO-9] what came with the demo stays the demo's when it is changed; a copy is the user's own", async () => {
      await store.putPlate(plate, null, true);
      expect(await store.putPlate({ ...plate, title: 'toast' }, 1)).toMatchObject({ version: 2, isDemo: true });
      await store.putPlate({ ...plate, id: 'copy' }, null);
      await store.putGuide({ id: 'slices' }, null, { isDemo: true });
      expect(await store.putGuide({ id: 'slices', title: 'Mine' }, 1)).toMatchObject({ isDemo: true });
      await store.purgeDemo();
      expect((await store.listPlates()).map(({ value }) => value.id)).toEqual(['copy']);
      expect(await store.listGuides()).toEqual([]);
    });
    test('[STO-8] a workspace file holds guides; a file of a program that knew none is still restored', async () => {
      await store.putGuide({ id: 'slices', title: 'Slices' }, null, { published: { guide: { id: 'slices' }, labels: [] } });
      const file = await store.exportAll();
      await store.purgeAll();
      expect(await store.listGuides()).toEqual([]);
      await store.restore(file);
      expect(await store.exportAll()).toEqual(file);
      await store.purgeAll();
      const { guides: _, ...earlier } = file.tables;
      await store.restore({ ...file, tables: earlier });
      expect(await store.listGuides()).toEqual([]);
    });
    test('saved surveys are put, put again and removed', async () => {
      const survey = { id: 's', title: 'Slices', category: 'sandwich slices', plateId: 'p', yardstickId: 'y', switchedOn: ['t'] };
      await store.putSurvey(survey);
      await store.putSurvey({ ...survey, title: 'Slices on bread' });
      expect(await store.listSurveys()).toEqual([{ ...survey, title: 'Slices on bread' }]);
      await store.removeSurvey('s');
      expect(await store.listSurveys()).toEqual([]);
    });
  });
}
