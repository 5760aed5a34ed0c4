import type { Source } from '#core/client/rules/source.ts';
import { bunMgPerDlInput, type Computed, computed, type FormulaFacts, firstImpossible, weightKgInput } from './computed.ts';

export const sessionRateSource: Source = { kind: 'paper', text: 'Depner, Daugirdas, J Am Soc Nephrol 1996;7:780' };
export const betweenSessionsRateSource: Source = { kind: 'paper', text: 'nephrology teaching note 2009 (between two sessions)' };

export const proteinCatabolicRateFacts: FormulaFacts = {
  title: 'nPCR',
  unit: 'g/kg/day',
  sources: [sessionRateSource, betweenSessionsRateSource],
  cautions: [
    'Steady state only: not in illness, weight change, on steroids or with bleeding.',
    'Equals intake only at nitrogen balance; under 0.8 suggests low intake on dialysis.',
  ],
};

/**
 * nPCR in g/kg/day from the rise of BUN between two sessions: 0.22 + 0.864 × rise / hours; urine adds 150 × urea nitrogen g in the
 * gap / (hours × kg). 18 to 70 mg/dL in 44 h: 1.24; with 3 g in urine at 70 kg: 1.39.
 * Source: teaching note 2009 and formula page. A fall in BUN is refused.
 */
export function nPcrGPerKgFromRise(input: {
  bunAfterMgPerDl: number;
  bunBeforeNextMgPerDl: number;
  gapHours: number;
  urine?: { ureaNitrogenG: number; weightKg: number };
}): Computed {
  const { bunAfterMgPerDl, bunBeforeNextMgPerDl, gapHours, urine } = input;
  const refused = firstImpossible(
    bunMgPerDlInput(bunAfterMgPerDl, 'bunAfterMgPerDl'),
    bunMgPerDlInput(bunBeforeNextMgPerDl, 'bunBeforeNextMgPerDl'),
    ['bunBeforeNextMgPerDl', bunBeforeNextMgPerDl, bunAfterMgPerDl, 300, 'mg/dL'],
    ['gapHours', gapHours, 12, 120, 'h'],
  );
  if (refused) return refused;
  const fromBlood = 0.22 + (0.864 * (bunBeforeNextMgPerDl - bunAfterMgPerDl)) / gapHours;
  if (urine === undefined) return computed(fromBlood);
  const refusedUrine = firstImpossible(['ureaNitrogenG', urine.ureaNitrogenG, 0, 60, 'g'], weightKgInput(urine.weightKg));
  return refusedUrine ?? computed(fromBlood + (150 * urine.ureaNitrogenG) / (gapHours * urine.weightKg));
}

/** Which of three sessions a week the sample is from: after the long gap, in the middle, or the last. */
export type SessionDay = 'first' | 'midweek' | 'last';

/** Day labels of first and last from memory. Public code often calls the first-of-week set midweek: it then reads about 15 % low. */
const byDay: Readonly<Record<SessionDay, readonly [a: number, b: number, c: number]>> = {
  first: [36.3, 5.48, 53.5],
  midweek: [25.8, 1.15, 56.4],
  last: [16.3, 4.3, 56.6],
};

/**
 * nPCR in g/kg/day from the BUN before one of three weekly sessions without urine, K = spKt/V: BUN / (a + b·K + c/K) + 0.168.
 * Midweek, 60 mg/dL, 1.4: 1.05. First of the week, 70: 1.02. Last, 60: 1.12. Source: Depner, Daugirdas 1996.
 */
export function nPcrGPerKgFromSession(day: SessionDay, bunBeforeMgPerDl: number, spKtV: number): Computed {
  const [a, b, c] = byDay[day];
  return (
    firstImpossible(bunMgPerDlInput(bunBeforeMgPerDl, 'bunBeforeMgPerDl'), ['spKtV', spKtV, 0.3, 4, '']) ??
    computed(bunBeforeMgPerDl / (a + b * spKtV + c / spKtV) + 0.168)
  );
}
