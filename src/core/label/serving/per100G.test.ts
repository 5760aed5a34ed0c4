import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { PrintedLabel, PrintedPanel } from '../label.ts';
import { readLabel } from '../readLabel.ts';
import { per100G, per100Ml } from './per100G.ts';

function read(panel: PrintedPanel, more: Partial<PrintedLabel> = {}) {
  return readLabel({ market: 'us', serving: {}, basis: 'per-serving', state: 'as-packaged', front: [], otherColumns: [], panel, ...more });
}

describe('amounts per 100 g and per 100 mL', () => {
  // 21 CFR 101.9(b)(7)(ii), derived: 100·137.5/30.5 and 100·145/29.5.
  test('[LBL-12] 140 mg of sodium in 30 g is 450.8 to 491.5 mg in 100 g', () => {
    const { sodiumMg } = per100G(read({ sodiumMg: 140 }, { serving: { grams: 30 } }));
    expect(sodiumMg).toEqual({
      kind: 'known',
      printed: expect.closeTo(466.667, 3),
      range: { lo: expect.closeTo(450.82, 2), hi: expect.closeTo(491.53, 2) },
      source: 'printed',
    });
  });

  test('[LBL-12] a panel per 100 g is taken as it stands', () => {
    const label = read({ sodiumMg: 480 }, { market: 'eu', basis: 'per-100-g', serving: { grams: 30 } });
    expect(per100G(label)).toBe(label.amounts);
  });

  test('[LBL-12] what the label does not weigh stays unknown, with the reason', () => {
    expect(per100G(read({ sodiumMg: 140 })).sodiumMg).toEqual({ kind: 'unknown', reason: 'no-serving-mass' });
    expect(per100G(read({ sodiumMg: 140 }, { serving: { milliliters: 240 } })).sodiumMg).toEqual({ kind: 'unknown', reason: 'no-density' });
    expect(per100Ml(read({ sodiumMg: 140 }, { serving: { grams: 30 } })).sodiumMg).toEqual({ kind: 'unknown', reason: 'no-density' });
    expect(per100G(read({}, { serving: { grams: 30 } })).sodiumMg).toEqual({ kind: 'unknown', reason: 'not-printed' });
  });

  test('[LBL-12] where the serving is printed in grams and milliliters, one gives the other', () => {
    const label = read({ sodiumMg: 100 }, { market: 'eu', basis: 'per-100-ml', serving: { milliliters: 250, grams: 260 } });
    const { sodiumMg } = per100G(label);
    expect(sodiumMg).toMatchObject({ printed: expect.closeTo(96.15, 2) });
    expect(per100Ml(label)).toBe(label.amounts);
  });

  // 30 g in 25 mL: 480 mg in 100 g are 576 mg in 100 mL; 479.5 × 29.5 / 25.5 up to 480.5 × 30.5 / 24.5.
  test('[LBL-12] and milliliters from a panel per 100 g', () => {
    const label = read({ sodiumMg: 480 }, { market: 'eu', basis: 'per-100-g', serving: { milliliters: 25, grams: 30 } });
    expect(per100Ml(label).sodiumMg).toMatchObject({
      printed: expect.closeTo(576, 6),
      range: { lo: expect.closeTo(554.716, 2), hi: expect.closeTo(598.173, 2) },
    });
    expect(per100Ml(read({ sodiumMg: 480 }, { basis: 'per-100-g' })).sodiumMg).toEqual({ kind: 'unknown', reason: 'no-density' });
    expect(per100Ml(read({ sodiumMg: 480 })).sodiumMg).toEqual({ kind: 'unknown', reason: 'no-serving-mass' });
    expect(per100Ml(read({ sodiumMg: 480 }, { serving: { milliliters: 50 } })).sodiumMg).toMatchObject({ printed: 960 });
  });

  test('[LBL-12] the range per 100 g holds every true amount over every true mass', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 200 }).map(n => n * 10),
        fc.integer({ min: 1, max: 400 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (sodiumMg, grams, a, b) => {
          const label = read({ sodiumMg }, { serving: { grams } });
          const { sodiumMg: serving } = label.amounts;
          const { sodiumMg: hundred } = per100G(label);
          if (serving.kind === 'unknown' || hundred.kind === 'unknown' || !label.servingGrams) throw new Error('known by construction');
          const amount = serving.range.lo + a * (serving.range.hi - serving.range.lo);
          const mass = label.servingGrams.lo + b * (label.servingGrams.hi - label.servingGrams.lo);
          expect(hundred.range.lo).toBeLessThanOrEqual((amount / mass) * 100 + 1e-9);
          expect(hundred.range.hi).toBeGreaterThanOrEqual((amount / mass) * 100 - 1e-9);
        },
      ),
    );
  });
});
