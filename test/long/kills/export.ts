import { existsSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { lookForClients, passphrase } from './markedClients.ts';
import { Home, Program } from './program.ts';
import type { Scenario } from './scenario.ts';
import { Work } from './work.ts';

/** An archive or the copy of the day is made and the program killed: nothing half made is offered, and what stands reads back whole. */
export const archives: Scenario = async (tally, kills, workspace) => {
  const home = new Home();
  home.take(workspace.home);
  let program = await Program.start(home);
  const ways = {
    archive: { work: new Work(tally), make: () => program.call('POST', '/archives', { withClients: true, passphrase }) },
    copy: { work: new Work(tally), make: () => program.call('POST', '/copies', {}) },
  };
  for (const { work, make } of Object.values(ways)) await work.measured(make);
  while (tally.wants(kills)) {
    const isCopy = tally.kills % 2 === 1;
    const folder = join(home.data, 'copies');
    // With a copy of today and without.
    if (isCopy && tally.random() < 0.5) rmSync(folder, { recursive: true, force: true });
    const { work, make } = isCopy ? ways.copy : ways.archive;
    const answer = await work.killed(program, make);
    lookForClients(home, workspace.clients, tally, program.said());
    const standing = copiesIn(folder);
    if (isCopy && answer !== undefined && standing.length === 0) tally.miss('lost', 'a copy was acknowledged and is not there');
    program = await Program.start(home);
    const waiting = join(home.data, 'waiting');
    if (existsSync(waiting) && readdirSync(waiting).length > 0) tally.miss('leftBehind', 'the next start left what waited');
    const { copies } = await program.done('GET', '/copies');
    for (const { day } of copies) {
      const { status, body } = await program.call('POST', `/copies/${day}/look`, {});
      if (status !== 200) tally.miss('half', `the copy of ${day} does not read: ${JSON.stringify(body)}`);
      else if (body.rows.foods === 0 || body.clients?.records === undefined) tally.miss('half', `the copy of ${day} is not everything`);
      tally.seen('a copy reads back whole');
    }
    const made = await program.done('POST', '/archives', { withClients: true, passphrase });
    if (made.rows.foods === 0) tally.miss('half', 'an archive made after the kill is empty');
  }
  await program.stop();
  home.remove();
};

function copiesIn(folder: string): readonly string[] {
  return existsSync(folder) ? readdirSync(folder).filter(name => name.startsWith('platewright-copy-')) : [];
}
