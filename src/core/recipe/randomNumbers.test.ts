import { describe, expect, it } from 'vitest';
import { randomNumbers } from './randomNumbers.ts';

const draws = 200_000;

function momentsOf(draw: () => number): { readonly mean: number; readonly variance: number } {
  let sum = 0;
  let squares = 0;
  for (let at = 0; at < draws; at++) {
    const value = draw();
    sum += value;
    squares += value * value;
  }
  return { mean: sum / draws, variance: squares / draws - (sum / draws) ** 2 };
}

/** Density and distribution of the standard normal (any handbook's table, seven digits). */
const [phi1, phi2, phi3] = [0.2419707, 0.053991, 0.0044318];
const [above1, above2, above3] = [0.1586553, 0.0227501, 0.0013499];

describe('randomNumbers', () => {
  it('[RCP-14] uniform and normal have the moments that they should have', () => {
    const { uniform, normal } = randomNumbers(1);
    const flat = momentsOf(uniform);
    expect(flat.mean).toBeCloseTo(0.5, 2);
    expect(flat.variance).toBeCloseTo(1 / 12, 2);
    const bell = momentsOf(normal);
    expect(Math.abs(bell.mean)).toBeLessThan(0.01);
    expect(Math.abs(bell.variance - 1)).toBeLessThan(0.02);
  });

  // Mean of a normal cut to [a, b] is (φ(a) − φ(b)) / (Φ(b) − Φ(a)), its variance 1 + (a φ(a) − b φ(b)) / (Φ(b) − Φ(a)) − mean².
  it.each([
    ['whole', -9, 9, 0, 1],
    ['the upper half', 0, 9, Math.sqrt(2 / Math.PI), 1 - 2 / Math.PI],
    ['from −1 to 1', -1, 1, 0, 1 - (2 * phi1) / (1 - 2 * above1)],
    [
      'from 1 to 2',
      1,
      2,
      (phi1 - phi2) / (above1 - above2),
      1 + (phi1 - 2 * phi2) / (above1 - above2) - ((phi1 - phi2) / (above1 - above2)) ** 2,
    ],
    ['a tail from 3', 3, 20, phi3 / above3, 1 + (3 * phi3) / above3 - (phi3 / above3) ** 2],
    ['a tail to −2', -20, -2, -phi2 / above2, 1 + (2 * phi2) / above2 - (phi2 / above2) ** 2],
  ] as const)('[RCP-14] a cut normal, %s, has the mean and variance of the closed form', (_, a, b, mean, variance) => {
    const random = randomNumbers(7);
    // 50 ± 4: precision 1/16, pull 50/16.
    const drawn = momentsOf(() => (random.cutNormal(1 / 16, 50 / 16, 50 + 4 * a, 50 + 4 * b) - 50) / 4);
    expect(Math.abs(drawn.mean - mean)).toBeLessThan(0.01);
    expect(Math.abs(drawn.variance - variance)).toBeLessThan(0.02);
  });

  it.each([
    [2, 3],
    [-5, 3],
    [0, 3],
    [400, 3],
    [-400, 3],
  ])('[RCP-14] without precision it is an exponential: rate %d over a length of %d', (rate, length) => {
    const random = randomNumbers(3);
    const drawn = momentsOf(() => random.cutNormal(0, rate, 10, 10 + length) - 10);
    // ∫ t e^{rt} dt / ∫ e^{rt} dt over [0, L] = L / (1 − e^{−rL}) − 1 / r.
    const mean = rate === 0 ? length / 2 : length / (1 - Math.exp(-rate * length)) - 1 / rate;
    expect(Math.abs(drawn.mean - mean)).toBeLessThan(0.01);
  });

  it('[RCP-14] a nearly flat stretch far from zero keeps the slope that it has there', () => {
    const random = randomNumbers(5);
    // Slope −precision × t = −0.5 over a length of 1: mean 1 / (1 − e^{0.5}) + 2.
    const drawn = momentsOf(() => random.cutNormal(5e-7, 0, 1e6, 1e6 + 1) - 1e6);
    expect(Math.abs(drawn.mean - (1 / (1 - Math.exp(0.5)) + 2))).toBeLessThan(0.005);
  });

  it('[RCP-14] draws stay within their ends, also where these meet', () => {
    const random = randomNumbers(11);
    for (let at = 0; at < 10_000; at++) {
      const from = random.normal() * 10;
      const to = from + random.uniform() * (at % 3);
      const drawn = random.cutNormal(random.uniform() * 4, random.normal() * 20, from, to);
      expect(drawn).toBeGreaterThanOrEqual(from);
      expect(drawn).toBeLessThanOrEqual(to);
    }
  });

  it('[RCP-13] the same seed gives the same numbers, another one others', () => {
    const [first, again, other] = [5, 5, 6].map(seed => {
      const { uniform } = randomNumbers(seed);
      return [uniform(), uniform(), uniform()];
    });
    expect(first).toEqual(again);
    expect(first).not.toEqual(other);
  });
});
