import type { Workbench } from '#app/workbench.ts';

/** What the routes work with: the workbench, and what only the server tells or writes. */
export interface World extends Workbench {
  /** "SQLite", "PostgreSQL". */
  readonly database: string;
  /** Tells the browser part that is served from one of before: an open page asks whether it is still the one that it came with. */
  readonly browserPart: string;
  /** Of this start: who does not know it is let in nowhere. */
  readonly secret: string;
  readonly log: (line: string) => void;
}
