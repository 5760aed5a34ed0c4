import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { NewLabel, Store } from '#app/store.ts';
import { Fault } from '#core/errors.ts';
import type { PrintedLabel } from '#core/label/label.ts';
import { type LargerTable, nothingKnown } from '#core/reference/largerTable.ts';

/** An engine under the contract: empty stores, and a way to say SQL to one behind its back. */
export interface EngineUnderTest {
  readonly open: () => Promise<Store>;
  /** Another store on the same data as the last one opened. */
  readonly openAgain: () => Promise<Store>;
  readonly sql: (statement: string) => Promise<void>;
}

const printed = (sodiumMg: number, more: Partial<PrintedLabel> = {}): PrintedLabel => ({
  market: 'us',
  serving: { household: '4 slices', grams: 56 },
  basis: 'per-serving',
  state: 'as-packaged',
  front: [],
  panel: { sodiumMg, energyKcal: 80 },
  otherColumns: [],
  ...more,
});
const label = (sodiumMg: number, more: Partial<NewLabel> = {}): NewLabel => ({ kind: 'read', printed: printed(sodiumMg), ...more });
/** SR28 11241: 46 mg of phosphorus in 100 g. */
const composition = (edition: string, more: Partial<LargerTable> = {}): LargerTable => ({
  dataset: 'usda-sr',
  source: 'USDA SR',
  edition,
  foods: [
    {
      number: '11241',
      description: 'Kohlrabi “raw” \u0001',
      group: '1100',
      per100G: { ...nothingKnown, phosphorusMg: 46, fatG: 0.1 },
      household: [{ text: '1 cup', grams: 135 }],
    },
  ],
  ...more,
});
const plate = { id: 'on-bread', title: 'two slices of bread', portion: { servings: 1 }, companions: [] };

async function fault(work: Promise<unknown>): Promise<string> {
  const error = await work.then(
    () => undefined,
    thrown => thrown,
  );
  expect(error).toBeInstanceOf(Fault);
  return (error as Fault).code;
}

/** The behaviours of docs/rules/storage.md, on a real engine. */
export function storeContract(engine: EngineUnderTest): void {
  let store: Store;
  beforeEach(async () => {
    store = await engine.open();
  });
  afterEach(() => store.close());
  const sodium = async (category?: string) =>
    (await store.standingLabels(category)).map(({ food, label: { printed: print } }) => [food.name, print.panel.sodiumMg]);

  describe('foods and labels', () => {
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
    test('a recheck date is set, moved and cleared', async () => {
      const { food, label: first } = await store.addFood({ name: 'Ham' }, label(600));
      await store.setRecheck(first.id, '2027-01-01');
      await store.setRecheck(first.id, '2027-02-02');
      expect((await store.labelsOf(food.id))[0]?.recheckOn).toBe('2027-02-02');
      await store.setRecheck(first.id, null);
      expect((await store.labelsOf(food.id))[0]).not.toHaveProperty('recheckOn');
      expect(await fault(store.setRecheck('nobody', null))).toBe('label-not-found');
    });
    test('photos keep their bytes', async () => {
      const { label: first } = await store.addFood({ name: 'Ham' }, label(600));
      const bytes = Uint8Array.from({ length: 300 }, (_, index) => index % 256);
      const photo = await store.addPhoto(first.id, { mime: 'image/jpeg', bytes });
      expect(await store.getPhoto(photo.id)).toEqual({ ...photo, bytes });
      expect(await store.getPhoto('nobody')).toBeUndefined();
    });
  });

  describe('imports', () => {
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
      expect(Object.keys((await store.exportAll()).tables)).not.toContain('mineral_estimates');
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

  describe('plates, yardsticks, surveys', () => {
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

  describe('composition tables', () => {
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
      const file = await store.exportAll();
      await store.purgeAll();
      await store.restore(JSON.parse(JSON.stringify(file)));
      expect(await store.listReferences()).toEqual([before]);
    });
  });

  describe('the whole workspace', () => {
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
      await store.putPlate(plate, null, true);
      await store.putReferences([composition('release 28')]);
    }
    test('[STO-8] goes into a file and back, whole and in order', async () => {
      await fill();
      const file = await store.exportAll();
      expect(await fault(store.restore(file))).toBe('workspace-not-empty');
      await store.purgeAll();
      await store.restore(JSON.parse(JSON.stringify(file)));
      expect(await store.exportAll()).toEqual(file);
      expect((await store.addFood({ name: 'Later' }, label(1))).food.version).toBe(1);
    });
    test('[STO-8] a file that is none is refused and nothing is written', async () => {
      await fill();
      const file = await store.exportAll();
      await store.purgeAll();
      for (const wrong of [
        {},
        { platewrightWorkspace: 2, tables: {} },
        { ...file, tables: { ...file.tables, labels: [{ id: 1 }] } },
        { ...file, tables: { ...file.tables, more: [] } },
        { ...file, tables: { ...file.tables, reference_tables: [{ ...file.tables.reference_tables![0], body: '{}' }] } },
      ]) {
        expect(await fault(store.restore(wrong as never))).toBe('workspace-file-not-valid');
      }
      expect(await store.counts()).toEqual({ foods: 0, labels: 0, demoFoods: 0, plates: 0, photos: 0 });
    });
    test('[STO-8] a file of the time before composition tables goes back as well', async () => {
      await fill();
      const { platewrightWorkspace, tables } = await store.exportAll();
      const { reference_tables: _references, ...earlier } = tables;
      await store.purgeAll();
      expect(await store.listReferences()).toEqual([]);
      await store.restore({ platewrightWorkspace, tables: earlier });
      expect((await store.counts()).foods).toBe(3);
      expect(await store.listReferences()).toEqual([]);
    });
    test("[STO-9] purging the demo leaves what is the user's own", async () => {
      await fill();
      await store.purgeDemo();
      expect(await sodium()).toEqual([['Own cheese', 400]]);
      expect(await store.counts()).toEqual({ foods: 1, labels: 1, demoFoods: 0, plates: 0, photos: 0 });
      expect((await store.listImports()).map(({ fileName }) => fileName)).toEqual(['own.csv']);
      await expect(engine.sql('delete from labels')).rejects.toThrow(/never changed/);
    });
    test('[STO-9] purging everything leaves nothing, and labels can be read again', async () => {
      await fill();
      await store.purgeAll();
      expect(await store.counts()).toEqual({ foods: 0, labels: 0, demoFoods: 0, plates: 0, photos: 0 });
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
  });
}
