/** Numbers that look random and are the same for the same seed, so that an estimate can be reproduced. */
export interface RandomNumbers {
  /** In [0, 1). */
  readonly uniform: () => number;
  readonly normal: () => number;
  /** From the density exp(pull × t − precision × t² / 2) cut to [from, to]. */
  readonly cutNormal: (precision: number, pull: number, from: number, to: number) => number;
}

export function randomNumbers(seed: number): RandomNumbers {
  let state = seed >>> 0;
  // Mulberry32 (Tommy Ettinger, public domain): 32 bits of state are enough for some ten thousand draws.
  const uniform = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
  const normal = (): number => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
  const cutNormal = (precision: number, pull: number, from: number, to: number): number => {
    const width = to - from;
    if (precision * width * width < 1e-6) return cutExponential(pull - (precision * (from + to)) / 2, from, to, uniform());
    const sd = 1 / Math.sqrt(precision);
    const mean = pull / precision;
    const [a, b] = [(from - mean) / sd, (to - mean) / sd];
    return Math.min(to, Math.max(from, mean + sd * cutStandard(a, b, uniform, normal)));
  };
  return { uniform, normal, cutNormal };
}

/** Density exp(rate × t) on [from, to]. */
function cutExponential(rate: number, from: number, to: number, u: number): number {
  const span = rate * (to - from);
  if (Math.abs(span) < 1e-9) return from + u * (to - from);
  // Written from the heavier end, so that no exponential overflows.
  return span < 0 ? from + Math.log(1 - u * (1 - Math.exp(span))) / rate : to + Math.log(1 - u * (1 - Math.exp(-span))) / rate;
}

/** A standard normal cut to [a, b]: plain rejection where the bulk is inside, an exponential envelope in a tail (Robert 1995). */
function cutStandard(a: number, b: number, uniform: () => number, normal: () => number): number {
  if (a > 0) return cutTail(a, b, uniform);
  if (b < 0) return -cutTail(-b, -a, uniform);
  if (b - a < 2.5) {
    for (;;) {
      const t = a + uniform() * (b - a);
      if (uniform() <= Math.exp(-0.5 * t * t)) return t;
    }
  }
  for (;;) {
    const t = normal();
    if (t >= a && t <= b) return t;
  }
}

function cutTail(a: number, b: number, uniform: () => number): number {
  const rate = (a + Math.sqrt(a * a + 4)) / 2;
  for (;;) {
    const t = cutExponential(-rate, a, b, uniform());
    if (uniform() <= Math.exp(-0.5 * (t - rate) * (t - rate))) return t;
  }
}
