import { afterAll, describe, expect, test } from 'vitest';
import { hostileArchives } from '#adapters/archive/hostile/hostileArchives.fixture.ts';
import { hostileFiles } from '#adapters/files/hostileFiles.fixture.ts';
import { removeFolder, startWorkbench, type Workbench } from './e2e/workbench.ts';
import { measured, meet } from './hostileMeeting.ts';

const middle = (values: readonly number[]): number => values.toSorted((one, other) => one - other)[values.length >> 1] ?? 0;
const isLinux = process.platform === 'linux';
/** Every file, and what it costs, in the long run (`npm run test:long`) on a machine that does nothing else; else some of them. */
const isLong = process.env.PLATEWRIGHT_LONG !== undefined;
/** What one file takes is not told apart from what the ones before it left to be collected. */
const filesAProgram = isLong ? 1 : 6;
let workbench: Workbench | undefined;
let met = 0;
async function stopped(): Promise<void> {
  await workbench?.stop();
  if (workbench !== undefined) removeFolder(workbench.folder);
  workbench = undefined;
}
async function running(): Promise<Workbench> {
  if (met % filesAProgram === 0) await stopped();
  met += 1;
  workbench ??= await startWorkbench();
  return workbench;
}
afterAll(stopped);

const some = <File>(files: readonly File[], step: number): readonly File[] => (isLong ? files : files.filter((_, at) => at % step === 0));

// The limits of the aim: 5 seconds, 600 MB, and the program answers. Memory and work are told by Linux alone (proc(5)).
describe.skipIf(!isLinux)('files made to do harm, brought to the running program (skipped where there is no Linux)', () => {
  test('[ARC-11] there are forty and more archives', () => {
    expect(hostileArchives.length).toBeGreaterThanOrEqual(40);
    expect(new Set(hostileArchives.map(({ name }) => name)).size).toBe(hostileArchives.length);
  });

  test.each(some(hostileArchives, 12))('[ARC-11] $name: $gives', { timeout: 120_000 }, async archive => {
    const { gave, clients, broken, cpuSeconds, peakMb, answers } = await meet(await running(), archive);
    expect([gave, clients]).toEqual([archive.gives, archive.clients]);
    expect(broken).toEqual([]);
    if (!isLong) return;
    expect(cpuSeconds).toBeLessThan(5);
    expect(peakMb).toBeLessThan(600);
    expect(middle(answers)).toBeLessThan(200);
  });

  // Every one of them is read in src/adapters/files/hostileFiles.test.ts; here the way in is the server's.
  test.each(some(hostileFiles.filter((_, at) => at % 4 === 1).slice(0, 20), 5))(
    '[FIL-1] a table: $name',
    { timeout: 120_000 },
    async ({ make, gives }) => {
      const form = new FormData();
      form.set('file', new File([make()], 'a.xlsx'));
      const program = await running();
      const { gave, cpuSeconds, peakMb, answers } = await measured(program, async () => {
        const response = await program.fetch('/api/imports/look', { method: 'POST', body: form });
        const told = JSON.parse(await response.text());
        return response.status === 200 ? 'read' : String(told.code);
      });
      expect(gave).toBe(gives);
      if (!isLong) return;
      expect(cpuSeconds).toBeLessThan(5);
      expect(peakMb).toBeLessThan(600);
      expect(middle(answers)).toBeLessThan(200);
    },
  );
});
