import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Store } from '#app/store.ts';
import { type EngineUnderTest, fault, label, printed, standingSodium } from './samples.ts';

/** Foods and what their packages say. */
export function labelsContract(engine: EngineUnderTest): void {
  describe('foods and labels', () => {
    let store: Store;
    beforeEach(async () => {
      store = await engine.open();
    });
    afterEach(() => store.close());
    const sodium = (category?: string) => standingSodium(store, category);
    test('[STO-1] what was written comes back as it was', async () => {
      const words = printed(0.1 + 0.2, {
        statement: "SALT, “é” 😀 \u0001 \\ ' ;--",
        panel: { sodiumMg: '<5 mg', potassiumMg: 1e-7, fatG: 123456789.125 },
      });
      const { food, label: first } = await store.addFood(
        { name: 'Ham', maker: 'Österby', gtin: '00012345678905', densityGPerMl: 1.03, gramsPerMeasure: { slice: 14 } },
        { kind: 'read', printed: words, recheckOn: '2027-04-14' },
      );
      expect(await store.getFood(food.id)).toEqual({
        id: food.id,
        name: 'Ham',
        maker: 'Österby',
        gtin: '00012345678905',
        densityGPerMl: 1.03,
        gramsPerMeasure: { slice: 14 },
        isDemo: false,
        version: 1,
      });
      expect(await store.labelsOf(food.id)).toEqual([{ ...first, photoIds: [] }]);
      expect(first.printed).toEqual(words);
      expect(first.recheckOn).toBe('2027-04-14');
      expect(await store.getFood('nobody')).toBeUndefined();
    });
    test('[STO-4] the newest reading stands', async () => {
      const { food } = await store.addFood({ name: 'Ham', category: 'Sandwich slices' }, label(600));
      await store.addLabel(food.id, 1, label(500));
      expect(await sodium('sandwich SLICES')).toEqual([['Ham', 500]]);
      expect(await sodium('soups')).toEqual([]);
      expect((await store.labelsOf(food.id)).map(({ printed: print }) => print.panel.sodiumMg)).toEqual([500, 600]);
    });
    test('[STO-3] [STO-4] a correction takes the place of what it corrects, also behind a newer reading', async () => {
      const { food, label: old } = await store.addFood({ name: 'Ham' }, label(6000));
      const correction = label(600, { kind: 'correction', correctsLabelId: old.id, reason: 'a zero too many' });
      await store.addLabel(food.id, 1, correction);
      expect(await sodium()).toEqual([['Ham', 600]]);
      await store.addLabel(food.id, 2, label(500));
      expect(await sodium()).toEqual([['Ham', 500]]);
      const again = await store.addLabel(food.id, 3, label(610, { kind: 'correction', correctsLabelId: old.id, reason: 'looked again' }));
      expect(await sodium()).toEqual([['Ham', 500]]);
      const all = await store.labelsOf(food.id);
      expect(all.map(({ printed: print }) => print.panel.sodiumMg)).toEqual([500, 610, 600, 6000]);
      expect(all.at(-1)).toMatchObject({ id: old.id, correctedBy: again.label.id });
      expect(all[1]).toMatchObject({ kind: 'correction', correctsLabelId: old.id, reason: 'looked again' });
    });
    test('[STO-3] [STO-4] a withdrawn label no longer stands, a withdrawn correction gives the place back', async () => {
      const { food, label: first } = await store.addFood({ name: 'Ham' }, label(600));
      const { label: correction } = await store.addLabel(
        food.id,
        1,
        label(60, { kind: 'correction', correctsLabelId: first.id, reason: 'misread' }),
      );
      await store.withdrawLabel(correction.id, 2, 'the first was right');
      expect(await sodium()).toEqual([['Ham', 600]]);
      await store.withdrawLabel(first.id, 3, 'another food');
      expect(await sodium()).toEqual([]);
      expect((await store.labelsOf(food.id)).map(({ withdrawn }) => withdrawn?.reason)).toEqual(['the first was right', 'another food']);
      expect(await fault(store.withdrawLabel('nobody', 1, 'x'))).toBe('label-not-found');
    });
    test('[STO-3] a correction must name a label of its own food', async () => {
      const { label: other } = await store.addFood({ name: 'Cheese' }, label(400));
      const { food } = await store.addFood({ name: 'Ham' }, label(600));
      expect(await fault(store.addLabel(food.id, 1, label(60, { kind: 'correction', correctsLabelId: other.id })))).toBe('label-not-found');
      expect((await store.getFood(food.id))?.version).toBe(1);
    });
    test('[STO-2] SQL by hand cannot change or delete a label, a withdrawal or a photo', async () => {
      const { food, label: first } = await store.addFood({ name: 'Ham' }, label(600));
      await store.addPhoto(first.id, { mime: 'image/png', bytes: new Uint8Array([1, 2]) });
      await store.withdrawLabel(first.id, 1, 'gone');
      for (const table of ['labels', 'label_withdrawals', 'photos']) {
        const key = table === 'photos' || table === 'labels' ? 'id' : 'label_id';
        await expect(engine.sql(`update ${table} set ${key} = ${key}`), table).rejects.toThrow(/never changed/);
        await expect(engine.sql(`delete from ${table}`), table).rejects.toThrow(/never changed/);
      }
      expect((await store.labelsOf(food.id))[0]).toMatchObject({ photoIds: [expect.any(String)], withdrawn: { reason: 'gone' } });
    });
    test('[STO-5] a version that is no longer there writes nothing and is told', async () => {
      const { food } = await store.addFood({ name: 'Ham' }, label(600));
      const other = await engine.openAgain();
      await other.changeFood(food.id, 1, { name: 'Honey ham', maker: 'Osterby & Vane' });
      await other.close();
      expect(await fault(store.changeFood(food.id, 1, { name: 'Ham, sliced' }))).toBe('changed-meanwhile');
      expect(await fault(store.addLabel(food.id, 1, label(500)))).toBe('changed-meanwhile');
      expect(await fault(store.changeFood('nobody', 1, {}))).toBe('food-not-found');
      expect(await store.getFood(food.id)).toMatchObject({ name: 'Honey ham', maker: 'Osterby & Vane', version: 2 });
      expect(await store.labelsOf(food.id)).toHaveLength(1);
    });
    test('foods are found by words of their name, maker and number, whatever signs they hold', async () => {
      await store.addFood({ name: '100% rye', maker: 'Tarnhollow' }, label(1));
      await store.addFood({ name: '100 rye', maker: 'Tarnhollow' }, label(2));
      const names = async (search: string) => (await store.listFoods({ search })).map(({ name }) => name);
      expect(await names('RYE tarn')).toEqual(['100 rye', '100% rye']);
      expect(await names('100%')).toEqual(['100% rye']);
      expect(await names('_')).toEqual([]);
    });
    test('[STO-5] a recheck date is set, moved and cleared in the place of the one that was seen', async () => {
      const { food, label: first } = await store.addFood({ name: 'Ham' }, label(600));
      await store.setRecheck(first.id, null, '2027-01-01');
      expect(await fault(store.setRecheck(first.id, null, '2027-03-03'))).toBe('changed-meanwhile');
      await store.setRecheck(first.id, '2027-01-01', '2027-02-02');
      expect(await fault(store.setRecheck(first.id, '2027-01-01', null))).toBe('changed-meanwhile');
      expect((await store.labelsOf(food.id))[0]?.recheckOn).toBe('2027-02-02');
      await store.setRecheck(first.id, '2027-02-02', null);
      expect((await store.labelsOf(food.id))[0]).not.toHaveProperty('recheckOn');
      expect(await fault(store.setRecheck('nobody', null, null))).toBe('label-not-found');
    });
    test('photos keep their bytes', async () => {
      const { label: first } = await store.addFood({ name: 'Ham' }, label(600));
      const bytes = Uint8Array.from({ length: 300 }, (_, index) => index % 256);
      const photo = await store.addPhoto(first.id, { mime: 'image/jpeg', bytes });
      expect(await store.getPhoto(photo.id)).toEqual({ ...photo, bytes });
      expect(await store.getPhoto('nobody')).toBeUndefined();
    });
  });
}
