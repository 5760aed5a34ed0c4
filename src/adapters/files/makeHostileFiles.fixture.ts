/** Writes every hostile file into a folder, by its number: making them takes more memory than reading them may. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { hostileFiles } from './hostileFiles.fixture.ts';

const folder = process.argv[2]!;
for (const [at, { make }] of hostileFiles.entries()) writeFileSync(join(folder, String(at)), make());
