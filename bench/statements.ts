import { findAdditives } from '#core/additive/findAdditives.ts';
import { parseStatement } from '#core/statement/parseStatement.ts';
import { hasOpenData, openDataFolder, realStatements } from '../test/openData.ts';
import { best, figure } from './measure.ts';

/** Tree and additives of real statements, and what one million of them leave in memory. */
export function benchStatements(): void {
  if (!hasOpenData) {
    process.stdout.write(`statements: skipped, no open data in ${openDataFolder}\n`);
    return;
  }
  const statements = realStatements();
  const read = (): number => {
    let additives = 0;
    for (const text of statements) {
      const { value, tokens } = parseStatement(text);
      additives += findAdditives(value, tokens).length;
    }
    return additives;
  };
  // What a spreadsheet does at best: split at commas, look for a handful of names in each piece.
  const names = ['phosphate', 'phosphoric acid', 'potassium chloride', 'potassium lactate', 'potassium citrate', 'salt'];
  const split = (): number => {
    let hits = 0;
    for (const text of statements)
      for (const piece of text.toLowerCase().split(',')) for (const name of names) if (piece.includes(name)) hits += 1;
    return hits;
  };
  const seconds = best(read, 8);
  figure('statements a second, tree and additives, one core', statements.length / seconds, 'at least 20,000');
  figure('  yardstick: split at commas and search six names', statements.length / best(split, 8), 'same texts, same run');

  const rounds = Math.ceil(1_000_000 / statements.length);
  const memory: number[] = [];
  for (let round = 0; round < rounds; round++) {
    read();
    if (round === 4 || round === Math.floor(rounds / 2) || round === rounds - 1) {
      globalThis.gc?.();
      memory.push(process.memoryUsage().heapUsed / 2 ** 20);
    }
  }
  figure('heap after 22,500 statements, MB', memory[0]!, '');
  figure('heap after half a million, MB', memory[1]!, 'flat');
  figure('heap after a million, MB', memory[2]!, 'flat');
}
