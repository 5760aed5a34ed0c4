import { type ClientFacts, type Lab, latest, stageOf } from './clientFacts.ts';
import type { GfrCategory } from './formulas/gfrCategory.ts';

/** Where the newest phosphate stands. */
export type PhosphateState =
  | { readonly kind: 'missing'; readonly atMostDays: number }
  | { readonly kind: 'low' | 'in-range' | 'above-normal' | 'high'; readonly lab: Lab; readonly pthHigh: boolean };

/** mg/dL. Not on dialysis and after transplant: CJASN 2010;5:519. On dialysis the old 5.5 of KDOQI 2003 (from memory); KDIGO 2017 says "toward normal". */
const normal = { lo: 2.5, hi: 4.5 };
const highOnDialysis = 5.5;
/** Nine times an upper normal of 65 pg/mL (KDIGO CKD-MBD 2017, as quoted). */
const highPthPgPerMl = 585;
const pthFreshDays = 183;

/** A result older than the longest interval of its schedule (section 9.2) bounds nothing (own rule); without a stage the shortest holds. */
const freshDaysByStage: Readonly<Partial<Record<GfrCategory, number>>> = { G1: 366, G2: 366, G3a: 366, G3b: 366, G4: 183 };
const shortest = 92;

/** High is over 4.5 mg/dL, on dialysis over 5.5; between the two the guidelines differ, and nothing is bounded. */
export function phosphateState(facts: ClientFacts): PhosphateState {
  const stage = facts.setting === 'ckd-not-on-dialysis' ? stageOf(facts) : undefined;
  const atMostDays = (stage && freshDaysByStage[stage]) ?? shortest;
  const lab = latest(facts, 'phosphate', atMostDays);
  if (lab === undefined) return { kind: 'missing', atMostDays };
  const onDialysis = facts.setting === 'hemodialysis' || facts.setting === 'peritoneal-dialysis';
  const kind = stateOf(lab.value, onDialysis);
  const pth = latest(facts, 'pth', pthFreshDays);
  return { kind, lab, pthHigh: pth !== undefined && pth.value > highPthPgPerMl };
}

function stateOf(mgPerDl: number, onDialysis: boolean): 'low' | 'in-range' | 'above-normal' | 'high' {
  if (mgPerDl < normal.lo) return 'low';
  if (mgPerDl <= normal.hi) return 'in-range';
  return onDialysis && mgPerDl <= highOnDialysis ? 'above-normal' : 'high';
}
