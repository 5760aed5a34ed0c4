import type { Workbench } from '#app/workbench.ts';

/** What the routes work with: the workbench, and what only the server tells or writes. */
export interface World extends Workbench {
  /** "SQLite", "PostgreSQL". */
  readonly database: string;
  /** Of this start: who does not know it is let in nowhere. */
  readonly secret: string;
  readonly log: (line: string) => void;
}
