import { blendProblem } from './blendModels.fixture.ts';
import { openHighsSolver } from './highsSolver.ts';

/** Prints the megabytes that stay after each of three rounds of solving; run with --expose-gc. */
const solver = await openHighsSolver();
const collect = (globalThis as { gc?: () => void }).gc!;
const residentMb: number[] = [];
for (let round = 0; round < 3; round++) {
  for (let seed = 0; seed < 1000; seed++) {
    const { model, objective } = blendProblem(seed);
    solver.solve(model, open => open.optimize(objective));
  }
  collect();
  residentMb.push(process.memoryUsage.rss() / 2 ** 20);
}
process.stdout.write(JSON.stringify(residentMb));
