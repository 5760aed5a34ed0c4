import type { AdditiveClass } from '#core/additive/additive.ts';
import type { Test, Verdict, Yardstick } from './yardstick.ts';

/** Minerals that labels often do not print: phosphorus never has to be, potassium only since 2020 (21 CFR 101.9(c)(8)). */
export const seldomPrinted = ['phosphorus', 'potassium'] as const;

export type SeldomPrinted = (typeof seldomPrinted)[number];

const additivesOf = { phosphorus: 'phosphate', potassium: 'potassium' } as const satisfies Record<SeldomPrinted, AdditiveClass>;

/** The signed minerals that a client's verdict could not tell. Over stays over: a known part above the bound is told. */
export function notToldIn({ tests }: Verdict): readonly SeldomPrinted[] {
  return seldomPrinted.filter(item => tests.some(({ testId, verdict }) => testId === item && verdict === "can't tell"));
}

/**
 * A client's yardstick for a food whose label tells nothing of these minerals: everything else stays, and the additives of the
 * mineral are looked for in its place. What fits by it fits by what the label tells, and nothing is said of the mineral.
 */
export function byWhatIsTold(yardstick: Yardstick, notTold: readonly SeldomPrinted[]): Yardstick {
  if (notTold.length === 0) return yardstick;
  const kept = yardstick.tests.filter(({ id }) => !notTold.some(item => item === id));
  const looksFor = (kind: AdditiveClass): boolean => kept.some(({ measure }) => measure.kind === 'additive' && measure.class === kind);
  const added = notTold.filter(item => !looksFor(additivesOf[item])).map(item => absence(item, yardstick));
  return { ...yardstick, tests: [...kept.filter(isAbsence), ...added, ...kept.filter(test => !isAbsence(test))] };
}

function absence(item: SeldomPrinted, { tests }: Yardstick): Test {
  const source = tests.find(({ id }) => id === item)?.source ?? { kind: 'prescription', text: item };
  return { id: `${item}Additives`, measure: { kind: 'additive', class: additivesOf[item] }, basis: 'on-plate', absent: true, source };
}

function isAbsence({ absent }: Test): boolean {
  return absent === true;
}
