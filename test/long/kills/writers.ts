import { Ledger } from './ledger.ts';
import { mark } from './markedClients.ts';
import type { Program } from './program.ts';
import type { Tally } from './tally.ts';

type Forever = (work: (at: number) => Promise<void>) => Promise<void>;

/** Writes everything that the workbench keeps, one after the other as it is acknowledged, several at once. */
export class Writers {
  private readonly ledger: Ledger;
  private round = 0;

  constructor(tally: Tally) {
    this.ledger = new Ledger(tally);
  }

  /** Until the signal; while the program is away it tries again. */
  async write(program: Program, until: AbortSignal): Promise<void> {
    this.round += 1;
    const name = (what: string, at: number): string => `kill ${what} ${this.round} ${at}`;
    const forever: Forever = async work => {
      for (let at = 0; !until.aborted; at += 1) await work(at);
    };
    const documents = (noun: 'plates' | 'surveys' | 'guides', body: (title: string) => unknown) =>
      forever(async at => {
        const id = name(noun, at).replaceAll(' ', '-');
        const put = (title: string, version: number | null) =>
          this.ledger.write(id, title, () => program.call('PUT', `/${noun}/${id}`, { version, [noun.slice(0, -1)]: body(title) }));
        if ((await put('first', null)) !== undefined) await put('second', 1);
      });
    await Promise.all([
      forever(async at => {
        const food = name('food', at);
        await this.ledger.write(food, '1', () => program.call('POST', '/foods', { label: label(food, 1) }));
      }),
      this.labels(program, at => name('labels', at), forever),
      documents('plates', title => ({ title, portion: { servings: 2 } })),
      documents('surveys', title => ({ title, category: 'crackers', plateId: 'as-sold', yardstickId: 'sodium', switchedOn: [] })),
      documents('guides', title => ({ title, purpose: 'kill' })),
      forever(async at => {
        const client = `${mark} ${name('client', at)}`;
        const added = await this.ledger.write(client, 'none', () => program.call('POST', '/clients', { name: client }));
        if (added === undefined) return;
        const pattern = [{ name: `${mark} supper`, percent: 100 }];
        const { id, version } = added.body;
        await this.ledger.write(client, JSON.stringify(pattern), () => program.call('PUT', `/clients/${id}/meals`, { version, pattern }));
        const type = (words: string, revision: number | null) =>
          this.ledger.write(`${client} half typed`, words, () =>
            program.call('PUT', `/clients/${id}/drafts/assessment`, { revision, value: { goals: `${mark} ${words}` } }),
          );
        if ((await type('first', null)) !== undefined) await type('second', 1);
      }),
    ]);
  }

  /** A food with more and more labels; where it is not known whether the last one is there, another food follows. */
  private async labels(program: Program, name: (at: number) => string, forever: Forever): Promise<void> {
    let kept: { id: string; version: number; figures: readonly number[] } | undefined;
    let food = '';
    await forever(async at => {
      if (kept === undefined) food = name(at);
      const figures = [...(kept?.figures ?? []), at + 1];
      const sent = label(food, at + 1);
      const [path, body] = kept === undefined ? ['', { label: sent }] : [`/${kept.id}/labels`, { version: kept.version, label: sent }];
      const answer = await this.ledger.write(food, figures.join(), () => program.call('POST', `/foods${path}`, body));
      kept = answer === undefined ? undefined : { id: answer.body.id, version: answer.body.version, figures };
    });
  }

  /** Reads all of it back from a program and holds it against what was acknowledged. */
  async compare(program: Program, tally: Tally): Promise<void> {
    const foods: { id: string; name: string; labels: number; sodiumMg: number }[] = await program.done('GET', '/foods?search=kill');
    const found: [string, string][] = [];
    for (const { id, name, sodiumMg } of foods) {
      if (name.startsWith('kill food')) found.push([name, String(sodiumMg)]);
      if (!name.startsWith('kill labels')) continue;
      const { history } = await program.done('GET', `/foods/${id}`);
      const figures = history.map(({ printed }: { printed: { panel: { sodiumMg: number } } }) => printed.panel.sodiumMg);
      found.push([name, figures.toSorted((one: number, other: number) => one - other).join()]);
    }
    for (const noun of ['plates', 'surveys', 'guides'] as const) {
      const kept: readonly Record<string, { id: string; title: string }>[] = await program.done('GET', `/${noun}`);
      for (const one of kept) {
        const { id, title } = one[noun.slice(0, -1)] ?? (one as unknown as { id: string; title: string });
        if (id.startsWith('kill-')) found.push([id, title]);
      }
    }
    const clients: readonly { id: string; name: string; mealPattern?: unknown }[] = await program.done('GET', '/clients/export');
    for (const { name, mealPattern } of clients)
      if (name?.startsWith(`${mark} kill`)) found.push([name, mealPattern === undefined ? 'none' : JSON.stringify(mealPattern)]);
    for (const { clientId } of (await program.done('GET', '/clients/drafts')) as readonly { clientId: string }[]) {
      const about = clients.find(({ id, name }) => id === clientId && name.startsWith(`${mark} kill`));
      if (about === undefined) continue;
      const { draft } = await program.done('GET', `/clients/${clientId}/drafts/assessment`);
      found.push([`${about.name} half typed`, draft.value.goals.slice(mark.length + 1)]);
    }
    this.ledger.compare(found);
    const { foods: kept } = await program.done('GET', '/workspace');
    const listed = (await program.done('GET', '/foods')).length;
    if (kept !== listed) tally.miss('half', `${kept} foods are kept and ${listed} have a label`);
  }
}

function label(name: string, sodiumMg: number): unknown {
  const serving = { grams: 28 };
  return { name, market: 'us', serving, basis: 'per-serving', state: 'as-packaged', front: [], panel: { sodiumMg }, otherColumns: [] };
}
