import type { QueryExecutorProvider } from 'kysely';
import type { Engine } from '../engine.ts';

/** One step of the tables, in SQL that both engines understand. Once released it is never changed. */
export type Migration = (db: QueryExecutorProvider, engine: Engine) => Promise<void>;
