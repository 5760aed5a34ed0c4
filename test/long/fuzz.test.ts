import { describe, expect, test } from 'vitest';
import { fuzz } from './fuzz.ts';

describe('inputs that a machine makes up', () => {
  test('[SRV-20] readers and routes answer in words of their own, and keep nothing that cannot be read', { timeout: 240_000 }, async () => {
    const { crashes, fivexx, hangs, unreadable, examples } = await fuzz(4_000, 20_260_615);
    expect(examples).toEqual([]);
    expect([crashes, fivexx, hangs, unreadable]).toEqual([0, 0, 0, 0]);
  });
});
