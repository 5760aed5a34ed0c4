import { describe, expect, test } from 'vitest';
import { migrationsOf } from './migrate.ts';
import type { TableEntry } from './tableEntry.ts';
import { tables } from './tables.ts';

describe('the migrations of the registry', () => {
  const migration = () => Promise.resolve();
  const entry = (...numbers: number[]): TableEntry => ({
    ...tables.import_labels,
    migrations: Object.fromEntries(numbers.map(number => [number, migration])),
  });

  test('[STO-10] are run once each, in the order of their numbers', () => {
    expect(migrationsOf([entry(1, 3), entry(1), entry(2)])).toEqual([migration, migration, migration]);
  });
  test('[STO-10] a gap, and one number for two migrations, do not start', () => {
    expect(() => migrationsOf([entry(1), entry(3)])).toThrow('no migration 2');
    const other: TableEntry = { ...tables.import_labels, migrations: { 1: () => Promise.resolve() } };
    expect(() => migrationsOf([entry(1), other])).toThrow('number 1');
  });
});
