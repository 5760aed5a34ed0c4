import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Store } from '#app/store.ts';
import { composition, type EngineUnderTest, everyRow, fault, label, plate, restoreAll, standingSodium } from './samples.ts';

/** No JSON at all, or JSON of another thing. */
const notJson = ['', '{', 'é'];
const otherJson = ['null', '[]', '5', '"words"', '{}', '{"id":5}', '{"id":null,"panel":{}}'];

const survey = { id: 'a', title: 'Slices', category: 'c', plateId: 'p', yardstickId: 'y', switchedOn: [] };

/** Values that were damaged behind the program's back. */
export function damageContract(engine: EngineUnderTest): void {
  describe('damaged rows', () => {
    let store: Store;
    beforeEach(async () => {
      store = await engine.open();
    });
    afterEach(() => store.close());

    /** What is damaged goes into a workspace file with the rest, and comes back as it was. */
    async function losesNothing(): Promise<void> {
      const file = await everyRow(store);
      const damaged = await store.damagedRows();
      await store.purgeAll();
      await restoreAll(store, file);
      expect(await everyRow(store)).toEqual(file);
      expect(await store.damagedRows()).toEqual(damaged.filter(({ table }) => table !== 'mineral_estimates'));
    }

    test('[STO-15] a damaged document is left out of its list, told when it is asked for, and neither lost nor written over', async () => {
      await store.plates.put(plate, null);
      await store.plates.put({ id: 'other' }, null);
      await store.guides.put({ id: 'a' }, null);
      await store.guides.put({ id: 'b' }, null, { published: { guide: { id: 'b' }, labels: [] } });
      await store.guides.put({ id: 'c' }, null);
      await store.handouts.put({ id: 'a' }, null);
      await store.handouts.put({ id: 'b' }, null);
      await store.surveys.put(survey, null);
      await store.surveys.put({ ...survey, id: 'b' }, null);
      for (const broken of [...notJson, ...otherJson]) {
        await engine.sql(`update plates set plate = '${broken}' where id = 'other'`);
        await engine.sql(`update guides set guide = '${broken}' where id = 'a'`);
        await engine.sql(`update guides set published = '${broken}' where id = 'b'`);
        await engine.sql(`update handouts set handout = '${broken}' where id = 'b'`);
        await engine.sql(`update saved_surveys set survey = '${broken}' where id = 'b'`);
        expect(
          (await store.plates.list()).map(({ value }) => value.id),
          broken,
        ).toEqual([plate.id]);
        expect(
          (await store.guides.list()).map(({ value }) => value.id),
          broken,
        ).toEqual(['c']);
        expect(
          (await store.handouts.list()).map(({ value }) => value.id),
          broken,
        ).toEqual(['a']);
        expect(
          (await store.surveys.list()).map(({ value }) => value.id),
          broken,
        ).toEqual(['a']);
        expect(await fault(store.guides.get('a'))).toBe('guide-not-valid');
        expect(await fault(store.guides.get('b'))).toBe('guide-not-valid');
        expect(await fault(store.plates.put({ id: 'other' }, null))).toBe('changed-meanwhile');
        expect(await store.damagedRows(), broken).toEqual([
          { table: 'plates', id: 'other', column: 'plate' },
          { table: 'saved_surveys', id: 'b', column: 'survey' },
          { table: 'guides', id: 'a', column: 'guide' },
          { table: 'guides', id: 'b', column: 'published' },
          { table: 'handouts', id: 'b', column: 'handout' },
        ]);
      }
      await losesNothing();
      await store.plates.remove('other', 1);
      expect(await store.damagedRows()).toHaveLength(4);
    });

    test('[STO-15] a yardstick that is none is left out', async () => {
      await store.yardsticks.put({ id: 'a', title: 'a', purpose: '', tests: [], classScales: [], settings: 'any', cautions: [] }, null);
      await engine.sql(`insert into yardsticks (id, yardstick, version) values ('b', '{', 1)`);
      expect((await store.yardsticks.list()).map(({ value }) => value.id)).toEqual(['a']);
      expect(await store.damagedRows()).toEqual([{ table: 'yardsticks', id: 'b', column: 'yardstick' }]);
      await losesNothing();
    });

    test('[STO-15] a damaged label is left out; an earlier one does not take its place, and other foods are as before', async () => {
      const { food, label: first } = await store.addFood({ name: 'Ham', gramsPerMeasure: { slice: 14 } }, label(600));
      await store.addFood({ name: 'Cheese' }, label(400));
      const whole = JSON.stringify(first.printed);
      const broken = [
        ...notJson,
        ...otherJson,
        whole.replace('"panel":{', '"panel":{"fatG":null,'),
        whole.replace('"panel":{', '"panel":[],"x":{'),
        whole.replace('"front":[]', '"front":[5]'),
        whole.replace('"serving"', '"x"'),
        whole.replace('"otherColumns":[]', '"otherColumns":[null]'),
        whole.replace('"market":"us"', '"market":1,"statement":[]'),
      ];
      for (const [at, printed] of broken.entries()) {
        expect(printed).not.toBe(whole);
        await engine.sql(
          `insert into labels (id, food_id, kind, printed, added_at, sequence, reading_sequence)
           values ('broken-${at}', '${food.id}', 'read', '${printed}', '2026-11-25T00:00:00.000Z', ${100 + at}, ${100 + at})`,
        );
        expect(await standingSodium(store), printed).toEqual([['Cheese', 400]]);
        expect(
          (await store.labelsOf(food.id)).map(({ id }) => id),
          printed,
        ).toEqual([first.id]);
        expect(await store.damagedRows(), printed).toHaveLength(at + 1);
      }
      expect(await store.listFoods()).toHaveLength(2);
      await losesNothing();
      await store.addLabel(food.id, 1, label(500));
      expect(await standingSodium(store)).toEqual([
        ['Cheese', 400],
        ['Ham', 500],
      ]);
    });

    test('[STO-15] damaged measures, estimates, photos and composition tables are as good as missing', async () => {
      const { food, label: first } = await store.addFood({ name: 'Ham', gramsPerMeasure: { slice: 14 } }, label(600));
      await store.putEstimates('1', [{ labelId: first.id, estimate: { phosphorusMg: [10, 20] } }]);
      await store.putReferences([composition('release 28'), composition('2019-04-01', { dataset: 'fdc-sr-legacy', source: 'FDC' })]);
      const tables = await everyRow(store);
      await engine.sql(`update foods set grams_per_measure = '{"slice":"14 g"}'`);
      await engine.sql(`update mineral_estimates set estimate = '{'`);
      await engine.sql(`update reference_tables set body = '{"platewrightReference":1}' where dataset = 'usda-sr'`);
      await engine.sql(
        `insert into photos (id, label_id, mime, sha256, bytes) select 'p', id, 'text/html', '', cast('' as ${engine.bytesType}) from labels`,
      );
      expect(await store.getFood(food.id)).not.toHaveProperty('gramsPerMeasure');
      expect(await store.listFoods()).toHaveLength(1);
      expect(await store.estimates('1')).toEqual([]);
      expect(await store.getPhoto('p')).toBeUndefined();
      expect((await store.referenceTables()).map(({ dataset }) => dataset)).toEqual(['fdc-sr-legacy']);
      expect(await store.listReferences()).toHaveLength(2);
      expect(await store.damagedRows()).toEqual([
        { table: 'foods', id: food.id, column: 'grams_per_measure' },
        { table: 'photos', id: 'p', column: 'mime' },
        { table: 'reference_tables', id: 'usda-sr', column: 'body' },
        { table: 'mineral_estimates', id: first.id, column: 'estimate' },
      ]);
      const file = await everyRow(store);
      expect(file.reference_tables).toMatchObject([tables.reference_tables![0], { body: '{"platewrightReference":1}' }]);
      await store.purgeAll();
      await restoreAll(store, file);
      expect((await store.referenceTables()).map(({ dataset }) => dataset)).toEqual(['fdc-sr-legacy']);
      expect(await store.damagedRows()).toHaveLength(3);
    });

    test('[STO-8] a workspace file whose rows do not belong together is refused, and nothing is written', async () => {
      await store.addFood({ name: 'Ham' }, label(600));
      const tables = await everyRow(store);
      await store.purgeAll();
      const [food] = tables.foods!;
      for (const wrong of [{ foods: [] }, { foods: [food!, food!] }, { labels: [{ ...tables.labels![0], corrects_label_id: 'nobody' }] }]) {
        expect(await fault(restoreAll(store, { ...tables, ...wrong }))).toBe('archive-not-valid');
      }
      expect(await store.counts()).toMatchObject({ foods: 0, labels: 0 });
      await restoreAll(store, tables);
    });

    test('[STO-1] a label that could not be read again is not written', async () => {
      const { printed, ...rest } = label(600);
      const { panel: _, ...without } = printed;
      const given = JSON.parse(JSON.stringify({ ...rest, printed: without }));
      expect(await fault(store.addFood({ name: 'Ham' }, given))).toBe('label-not-readable');
      expect(await store.counts()).toMatchObject({ foods: 0, labels: 0 });
    });
  });
}
