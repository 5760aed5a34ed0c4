import { setTimeout } from 'node:timers/promises';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Store } from '#app/store.ts';
import { composition, type EngineUnderTest, everyRow, fault, label, plate, restoreAll, standingSodium } from './samples.ts';

/** The workspace as a whole: file, purges, revision, migrations. */
export function workspaceContract(engine: EngineUnderTest): void {
  describe('the whole workspace', () => {
    let store: Store;
    beforeEach(async () => {
      store = await engine.open();
    });
    afterEach(() => store.close());
    const sodium = (category?: string) => standingSodium(store, category);
    async function fill(): Promise<void> {
      const { food, label: first } = await store.addFood({ name: 'Ham', isDemo: true }, label(6000));
      await store.addLabel(
        food.id,
        1,
        label(600, { kind: 'correction', correctsLabelId: first.id, reason: 'misread', recheckOn: '2027-01-01' }),
      );
      await store.addPhoto(first.id, { mime: 'image/png', bytes: new Uint8Array([0, 255]) });
      await store.withdrawLabel(first.id, 2, 'misread');
      await store.applyImport({ fileName: 'own.csv', labels: [{ begins: { name: 'Own cheese' }, label: label(400) }] });
      await store.applyImport({ fileName: 'demo.csv', isDemo: true, labels: [{ begins: { name: 'Demo soup' }, label: label(700) }] });
      await store.plates.put(plate, null, { isDemo: true });
      await store.putReferences([composition('release 28')]);
    }
    test('[STO-8] goes into a file and back, whole and in order', async () => {
      await fill();
      const file = await everyRow(store);
      expect(await fault(restoreAll(store, file))).toBe('workspace-not-empty');
      await store.purgeAll();
      await restoreAll(store, file);
      expect(await everyRow(store)).toEqual(file);
      expect((await store.addFood({ name: 'Later' }, label(1))).food.version).toBe(1);
    });
    test('[STO-8] a file that is none is refused and nothing is written', async () => {
      await fill();
      const file = await everyRow(store);
      await store.purgeAll();
      for (const wrong of [
        { ...file, labels: [{ id: 1 }] },
        { ...file, more: [{}] },
        { ...file, workspace: [{ id: 1 }] },
        { ...file, mineral_estimates: [{ label_id: 'a', version: '1', estimate: '{}' }] },
        { ...file, foods: file.foods!.map(food => ({ ...food, more: 1 })) },
        { ...file, photos: file.photos!.map(({ bytes: _, ...photo }) => photo) },
      ]) {
        expect(await fault(restoreAll(store, wrong))).toBe('archive-not-valid');
      }
      expect(await store.counts()).toMatchObject({ foods: 0, labels: 0, demoFoods: 0, plates: 0, photos: 0 });
    });
    test('[STO-8] a file of the time before composition tables goes back as well', async () => {
      await fill();
      const tables = await everyRow(store);
      const { reference_tables: _references, ...earlier } = tables;
      await store.purgeAll();
      expect(await store.listReferences()).toEqual([]);
      await restoreAll(store, earlier);
      expect((await store.counts()).foods).toBe(3);
      expect(await store.listReferences()).toEqual([]);
    });
    test("[STO-9] purging the demo leaves what is the user's own", async () => {
      await fill();
      await store.purgeDemo();
      expect(await sodium()).toEqual([['Own cheese', 400]]);
      expect(await store.counts()).toMatchObject({ foods: 1, labels: 1, demoFoods: 0, plates: 0, photos: 0 });
      expect((await store.listImports()).map(({ fileName }) => fileName)).toEqual(['own.csv']);
      await expect(engine.sql('delete from labels')).rejects.toThrow(/never changed/);
    });
    test('[STO-9] purging everything leaves nothing, and labels can be read again', async () => {
      await fill();
      await store.purgeAll();
      expect(await store.counts()).toMatchObject({ foods: 0, labels: 0, demoFoods: 0, plates: 0, photos: 0 });
      await store.addFood({ name: 'New' }, label(1));
      expect(await sodium()).toEqual([['New', 1]]);
    });
    test('[STO-12] the revision grows with writes, not with reads and refusals', async () => {
      const before = await store.revision();
      await store.listFoods();
      await fault(store.changeFood('nobody', 1, {}));
      expect(await store.revision()).toBe(before);
      await store.addFood({ name: 'Ham' }, label(600));
      expect(await store.revision()).toBe(before + 1);
    });
    test('[STO-10] opening again keeps everything; a newer database is refused', async () => {
      await store.addFood({ name: 'Ham' }, label(600));
      const again = await engine.openAgain();
      expect(await again.counts()).toMatchObject({ foods: 1, labels: 1 });
      await again.close();
      await engine.sql('update workspace set schema_version = 99');
      expect(await fault(engine.openAgain())).toBe('database-ahead');
    });
    test('[STO-5] many writes at once from two programs all arrive', async () => {
      const other = await engine.openAgain();
      await Promise.all(
        Array.from({ length: 20 }, (_, index) => (index % 2 ? store : other).addFood({ name: `Food ${index}` }, label(index))),
      );
      await other.close();
      expect(await store.counts()).toMatchObject({ foods: 20, labels: 20 });
    });
    test('[STO-19] the first contents come once; what was begun and broken off is begun anew', async () => {
      let times = 0;
      const bring = async (isBroken = false): Promise<void> => {
        times += 1;
        await store.addFood({ name: 'Demo ham', isDemo: true }, label(600));
        if (isBroken) throw new Error('broken off');
        await store.plates.put(plate, null, { isDemo: true });
      };
      await expect(store.onceWhenNew(() => bring(true))).rejects.toThrow('broken off');
      await store.onceWhenNew(bring);
      await store.onceWhenNew(bring);
      expect(times).toBe(2);
      expect(await store.counts()).toMatchObject({ foods: 1, plates: 1 });
      await store.purgeAll();
      await store.onceWhenNew(bring);
      expect(await store.counts()).toMatchObject({ foods: 0 });
    });
    test('[STO-21] reads wait for no write; they see it when it is acknowledged', async () => {
      await store.addFood({ name: 'Ham' }, label(600));
      let goOn = (): void => undefined;
      const held = new Promise<void>(done => {
        goOn = done;
      });
      let begun = (): void => undefined;
      const hasBegun = new Promise<void>(done => {
        begun = done;
      });
      const step = (): Promise<void> => {
        begun();
        return held;
      };
      const entry = { fileName: 'big', labels: [{ begins: { name: 'Soup' }, label: label(1) }] };
      const work = store.applyImport(entry, { step });
      await hasBegun;
      expect(await store.counts()).toMatchObject({ foods: 1 });
      goOn();
      await work;
      expect(await store.counts()).toMatchObject({ foods: 2 });
    });
    test('[STO-21] small reads are answered within 200 ms while many labels are imported', async () => {
      const { food } = await store.addFood({ name: 'Ham' }, label(600));
      const labels = Array.from({ length: 10_000 }, (_, index) => ({ begins: { name: `Food ${index}` }, label: label(index) }));
      let isDone = false;
      const work = store.applyImport({ fileName: 'big', labels }).finally(() => {
        isDone = true;
      });
      const waits: number[] = [];
      while (!isDone) {
        const at = performance.now();
        await setTimeout(5);
        await store.getFood(food.id);
        waits.push(performance.now() - at);
      }
      await work;
      waits.sort((a, b) => a - b);
      expect(waits.length).toBeGreaterThan(10);
      expect(waits[Math.floor(0.99 * waits.length)]).toBeLessThan(205);
    });
  });
}
