import { lookForClients } from './markedClients.ts';
import { Home, Program } from './program.ts';
import type { Scenario } from './scenario.ts';
import { Work } from './work.ts';

const rows = 5_000;
/** Imports that went through, after which a fresh workspace is taken. */
const importsAWorkspace = 4;

/** A long table is imported and the program killed: all of its rows are there, or none. */
export const imports: Scenario = async (tally, kills, workspace) => {
  const home = new Home();
  home.take(workspace.home);
  let program = await Program.start(home);
  const work = new Work(tally);
  await work.measured(() => send(program, 'measured'));
  let kept = 1;
  while (tally.wants(kills)) {
    if (kept >= importsAWorkspace) {
      await program.stop();
      home.take(workspace.home);
      program = await Program.start(home);
      kept = 0;
    }
    const before = await counted(program);
    const name = `round ${tally.kills}`;
    const answer = await work.killed(program, () => send(program, name));
    lookForClients(home, workspace.clients, tally, program.said());
    program = await Program.start(home);
    const after = await counted(program);
    const added = after.foods - before.foods;
    const listed = (await program.done('GET', '/imports')).filter((one: { fileName: string }) => one.fileName === `${name}.csv`);
    if (added !== 0 && added !== rows) tally.miss('half', `${added} of ${rows} rows`);
    if (after.labels - before.labels !== added) tally.miss('half', `${added} foods, ${after.labels - before.labels} labels`);
    if (listed.length !== added / rows) tally.miss('half', `${added} rows, and the import is listed ${listed.length} times`);
    if (answer !== undefined && added !== rows) tally.miss('lost', `an import of ${rows} rows was acknowledged, ${added} are there`);
    tally.seen(added === rows ? 'all there' : 'none there');
    if (added > 0) kept += 1;
  }
  await program.stop();
  home.remove();
};

async function counted(program: Program): Promise<{ foods: number; labels: number }> {
  return program.done('GET', '/workspace');
}

function send(program: Program, name: string) {
  const lines = Array.from(
    { length: rows },
    (_, at) => `${name} slices ${at},Gribley Bakers,many slices,28,80,${at % 500},"water, starch"`,
  );
  const form = new FormData();
  form.set('file', new File([`name,maker,category,servingGrams,energyKcal,sodiumMg,statement\n${lines.join('\n')}\n`], `${name}.csv`));
  return program.call('POST', '/imports', form);
}
