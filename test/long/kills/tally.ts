import { randomNumbers } from '#core/recipe/randomNumbers.ts';

/** What must not happen, each counted. */
export const losses = ['lost', 'doubled', 'half', 'crashed', 'inClear', 'leftBehind'] as const;
export type Loss = (typeof losses)[number];

export interface Figures extends Record<Loss, number> {
  readonly kills: number;
  /** Writes that were answered as done, and looked for after the kill. */
  readonly acknowledged: number;
  /** Files that were read through for a client's words. */
  readonly filesRead: number;
  /** What else a scenario counts: kills that fell before, within and after the work. */
  readonly seen: Readonly<Record<string, number>>;
}

/** Ctrl-C and SIGTERM end a run after the kill that it is at; what it has found until then is kept. */
let isEnding = false;
for (const signal of ['SIGINT', 'SIGTERM'] as const) {
  process.once(signal, () => {
    isEnding = true;
  });
}

/** Counts of one scenario, and its chance, which follows from the seed alone. */
export class Tally {
  readonly scenario: string;
  readonly random: () => number;
  kills = 0;
  acknowledged = 0;
  filesRead = 0;
  readonly found: string[] = [];
  private readonly counts: Record<Loss, number> = { lost: 0, doubled: 0, half: 0, crashed: 0, inClear: 0, leftBehind: 0 };
  private readonly seenTimes = new Map<string, number>();

  constructor(scenario: string, seed: number) {
    this.scenario = scenario;
    this.random = randomNumbers(seed + [...scenario].reduce((sum, sign) => sum * 31 + sign.charCodeAt(0), 7)).uniform;
  }

  /** Whether more kills are wanted: not so many yet, and nobody has asked the run to end. */
  wants(kills: number): boolean {
    return this.kills < kills && !isEnding;
  }

  /** Something went wrong: it is counted and told at once. */
  miss(loss: Loss, what: string): void {
    this.counts[loss] += 1;
    const line = `${this.scenario}, kill ${this.kills}: ${loss}: ${what}`;
    this.found.push(line);
    process.stderr.write(`${line}\n`);
  }

  seen(what: string): void {
    this.seenTimes.set(what, (this.seenTimes.get(what) ?? 0) + 1);
  }

  figures(): Figures {
    const { kills, acknowledged, filesRead } = this;
    return { kills, acknowledged, filesRead, ...this.counts, seen: Object.fromEntries(this.seenTimes) };
  }
}
