/** Chance that can be had again: the same seed and number of an input give the same input (sfc32, 128 bits of state). */
export class Chance {
  private state: [number, number, number, number];

  constructor(seed: number, input: number) {
    this.state = [seed | 0, input | 0, 0x9e3779b9, 1];
    for (let warm = 0; warm < 15; warm += 1) this.next();
  }

  /** From 0 up to, not including, 1. */
  next(): number {
    let [a, b, c, d] = this.state;
    const sum = (((a + b) | 0) + d) | 0;
    d = (d + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (((c << 21) | (c >>> 11)) + sum) | 0;
    this.state = [a, b, c, d];
    return (sum >>> 0) / 2 ** 32;
  }

  /** A whole number from 0 up to, not including, `end`. */
  below(end: number): number {
    return Math.floor(this.next() * end);
  }

  /** One time in `times`. */
  oneIn(times: number): boolean {
    return this.below(times) === 0;
  }

  of<Value>(values: readonly Value[]): Value {
    return values[this.below(values.length)]!;
  }
}
