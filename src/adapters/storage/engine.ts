/** What SQLite and PostgreSQL say differently. Everything else is one SQL. */
export interface Engine {
  readonly name: 'sqlite' | 'postgresql';
  readonly types: { readonly bytes: string; readonly double: string; readonly integer: string; readonly strict: string };
  /** Triggers that refuse updates of a table, and deletes unless the workspace is being purged. */
  readonly neverChanged: (table: string) => readonly string[];
  /** Locks the tables that are being migrated, or nothing where the transaction does so by itself. */
  readonly migrationLock: string | undefined;
}

const refusal = 'what a package said is never changed';

export const sqlite: Engine = {
  name: 'sqlite',
  types: { bytes: 'blob', double: 'real', integer: 'integer', strict: ' strict' },
  neverChanged: table => [
    `create trigger ${table}_never_updated before update on ${table} begin select raise(abort, '${refusal}'); end`,
    `create trigger ${table}_never_deleted before delete on ${table} when (select is_purging from workspace) = 0 begin select raise(abort, '${refusal}'); end`,
  ],
  migrationLock: undefined,
};

export const postgresql: Engine = {
  name: 'postgresql',
  types: { bytes: 'bytea', double: 'double precision', integer: 'integer', strict: '' },
  neverChanged: table => [
    `create or replace function ${table}_never_changed() returns trigger language plpgsql as $$ begin
       if tg_op = 'DELETE' and (select is_purging from workspace) = 1 then return old; end if;
       raise exception '${refusal}'; end $$`,
    `create trigger ${table}_never_changed before update or delete on ${table} for each row execute function ${table}_never_changed()`,
  ],
  // Any number serves, as long as every Platewright uses the same.
  migrationLock: 'select pg_advisory_xact_lock(7036411)',
};
