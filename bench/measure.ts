/** Seconds of the fastest of some runs: what the work takes when nothing else disturbs it. */
export function best(work: () => unknown, runs: number): number {
  let fastest = Number.POSITIVE_INFINITY;
  for (let run = 0; run < runs; run++) {
    const start = performance.now();
    work();
    fastest = Math.min(fastest, performance.now() - start);
  }
  return fastest / 1000;
}

/** One line: what, how much, and what it is held against. */
export function figure(name: string, value: number, aim: string): void {
  const shown = value >= 100 ? Math.round(value).toLocaleString('en-US') : value.toPrecision(3);
  process.stdout.write(`${name.padEnd(66)} ${shown.padStart(12)}   ${aim}\n`);
}
