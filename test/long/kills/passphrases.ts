import { setTimeout } from 'node:timers/promises';
import { lookForClients, mark } from './markedClients.ts';
import { Home, Program } from './program.ts';
import type { Scenario } from './scenario.ts';

/** A passphrase, or none. */
type Words = string | undefined;

/** The passphrase is set, changed and taken off, and the program killed: exactly one state holds, and every record is there. */
export const passphrases: Scenario = async (tally, kills, workspace) => {
  const home = new Home();
  home.take(workspace.home);
  let program = await Program.start(home);
  const wanted = JSON.stringify(await records(program));
  const begun = performance.now();
  let now: Words = `${mark} to begin with`;
  await program.done('PUT', '/clients/passphrase', { next: now });
  const milliseconds = performance.now() - begun;
  while (tally.wants(kills)) {
    let next: Words = now;
    let isOver = false;
    const changing = (async () => {
      for (let at = 0; !isOver; at += 1) {
        next = now !== undefined && tally.random() < 0.5 ? undefined : `${mark} number ${tally.kills} ${at}`;
        const body = {
          ...(now === undefined ? {} : { current: now }),
          ...(next === undefined ? { confirm: 'take the passphrase off' } : { next }),
        };
        const answer = await program.call('PUT', '/clients/passphrase', body).catch(() => undefined);
        if (answer === undefined) return;
        if (answer.status !== 200) return tally.miss('crashed', `a change was answered by ${JSON.stringify(answer.body)}`);
        now = next;
        tally.acknowledged += 1;
      }
    })();
    await setTimeout(3 * milliseconds * tally.random());
    isOver = true;
    await program.kill();
    tally.kills += 1;
    await changing;
    lookForClients(home, workspace.clients, tally, program.said());
    program = await Program.start(home);
    const opening: Words[] = [];
    for (const words of new Set([next, now])) if (await opens(program, words)) opening.push(words);
    if (opening.length !== 1) tally.miss(opening.length === 0 ? 'lost' : 'doubled', `${opening.length} of the two passphrases open`);
    tally.seen(opening[0] === now ? 'as acknowledged' : 'as the one under way');
    now = opening[0];
    if (now !== undefined) await program.done('POST', '/clients/lock', { open: true, passphrase: now });
    if (JSON.stringify(await records(program)) !== wanted) tally.miss('lost', 'the records are not what they were');
    lookForClients(home, workspace.clients, tally, program.said());
  }
  await program.stop();
  home.remove();
};

async function opens(program: Program, words: Words): Promise<boolean> {
  const { hasPassphrase } = await program.done('GET', '/clients/lock');
  if (words === undefined || !hasPassphrase) return words === undefined && !hasPassphrase;
  const { status } = await program.call('POST', '/clients/lock', { open: true, passphrase: words });
  await program.call('POST', '/clients/lock', { open: false });
  return status === 200;
}

async function records(program: Program): Promise<readonly unknown[]> {
  const all: readonly { id: string }[] = await program.done('GET', '/clients/export');
  const drafts = async ({ id }: { id: string }): Promise<unknown> => (await program.done('GET', `/clients/${id}/drafts/assessment`)).draft;
  const records = all.toSorted((one, other) => (one.id < other.id ? -1 : 1));
  return [...records, ...(await Promise.all(records.filter(({ id }) => id !== 'clinic-figures').map(drafts)))];
}
