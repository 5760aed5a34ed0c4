import { ageWords, type ClientFacts, has, transplantAge } from '#core/client/assessment/clientFacts.ts';
import { absorbedGlucose, absorbedShareByMethod } from '#core/client/formulas/dialysateGlucose.ts';
import type { Source } from '#core/client/rules/source.ts';
import { asQuoted, commonPractice, ebpg2007, fromMemory, isrnm2013, kdoqi2020, molina2021 } from '#core/client/rules/sources.ts';
import { refeedingSigns } from '#core/client/states/refeeding.ts';
import type { WastingState } from '#core/client/states/wastingState.ts';
import { otherBases, type WeightBasis } from '#core/client/states/weightBasis.ts';
import { type Interval, interval, scale } from '#core/quantity/interval.ts';
import { cleanFloat } from '#core/quantity/rounding.ts';
import { type Position, position, proposed, type Target, withheld } from '../target.ts';

/** A day's energy in kcal. Facts section 3.1; on peritoneal dialysis what the dialysate gives is taken off (3.8). */
export function energyTarget(facts: ClientFacts, weight: WeightBasis, wasting: WastingState): Target {
  const sources: readonly Source[] = [fromMemory(asQuoted(kdoqi2020('1C')))];
  if (weight.kind === 'none')
    return withheld('energy', 'no weight in date', 'There is no weight to set it on.', [weight.whatToCheck], sources);
  const { kg, id, why, on } = weight.chosen;
  const bags = dialysateEnergy(facts);
  if (typeof bags === 'string') return withheld('energy', 'dialysate not readable', 'The dialysate cannot be read.', [bags], sources);
  const isNoCeiling = wasting.blocks.length > 0;
  const per = (says: string, lo: number, most: number, from: readonly Source[]): Position & { range: Interval } => {
    const hi = isNoCeiling ? Number.POSITIVE_INFINITY : most;
    const perKg = interval(lo, hi);
    const total = scale(perKg, kg);
    const range = interval(Math.max(0, cleanFloat(total.lo - bags.kcal)), Math.max(0, cleanFloat(total.hi - bags.kcal)));
    return { ...position(says, from, { perKg, limit: hi === Number.POSITIVE_INFINITY ? 'at-least' : 'within' }), range };
  };
  const guideline = per('KDOQI 2020: 25-35 kcal/kg', 25, 35, sources);
  const reasons = [
    `${why} ${kg.toFixed(1)} kg (${ageWords(on, facts.today)}).`,
    ...otherBases(weight),
    ...(isNoCeiling ? ['Wasting, or not ruled out: this is the least, there is no ceiling.'] : []),
    ...bags.told,
    ...refeedingSigns(facts).map(sign => `Refeeding risk (${sign}): begin below this, at the pace of the medical team.`),
  ];
  const inShort =
    refeedingSigns(facts).length > 0
      ? 'refeeding risk: begin below this'
      : isNoCeiling
        ? 'wasting not ruled out: no ceiling'
        : bags.kcal > 0
          ? `for food: ${bags.kcal.toFixed(0)} kcal are dialysate`
          : 'to keep weight and muscle';
  const end = (main: typeof guideline, others: readonly Position[]) => proposed('energy', inShort, main, reasons, others, id);
  switch (facts.setting) {
    case 'ckd-not-on-dialysis':
      return end(guideline, [
        per(
          facts.ageYears < 60 ? 'Older texts: 35 kcal/kg under 60 years' : 'Older texts: 30-35 kcal/kg from 60 years',
          facts.ageYears < 60 ? 35 : 30,
          35,
          [asQuoted({ kind: 'paper', text: 'older texts' })],
        ),
      ]);
    case 'hemodialysis':
      return end(guideline, [
        per('European 2007: at least 30 kcal/kg', 30, Number.POSITIVE_INFINITY, [asQuoted(ebpg2007())]),
        per('European 2007, full range: 30-40 kcal/kg', 30, 40, [fromMemory(ebpg2007())]),
        per('ISRNM 2013: 30-35 kcal/kg', 30, 35, [isrnm2013]),
      ]);
    case 'peritoneal-dialysis':
      return end(per('KDOQI 2020: 25-35 kcal/kg, dialysate glucose included', 25, 35, [kdoqi2020()]), []);
    case 'transplant': {
      const common = per('Common: 30-35 kcal/kg', 30, 35, [commonPractice]);
      const age = transplantAge(facts);
      if (age === 'first-4-weeks') return end(per('First 4 weeks: 35-40 kcal/kg', 35, 40, [molina2021]), [common]);
      const stable = per('Stable: 25-35 kcal/kg', 25, 35, [molina2021]);
      if (age === 'to-8-weeks') return end(common, [stable]);
      return end(
        stable,
        !isNoCeiling && weight.bmi !== undefined && weight.bmi > 30 && !has(facts, 'frail')
          ? [per('Obesity: 25 kcal/kg', 25, 25, [molina2021])]
          : [],
      );
    }
  }
}

/** What the dialysate gives in kcal, and the words for it; a sentence when the bags cannot be read. */
function dialysateEnergy({ assessment: { treatment } }: ClientFacts): { kcal: number; told: readonly string[] } | string {
  if (treatment.setting !== 'peritoneal-dialysis') return { kcal: 0, told: [] };
  if (treatment.bags === undefined)
    return { kcal: 0, told: ['This is the total: dialysate glucose is part of it. Enter the bags to see what is left for food.'] };
  const share = treatment.absorbedShare ?? absorbedShareByMethod[treatment.method];
  const glucose = absorbedGlucose(treatment.bags, share);
  if (glucose.kind === 'refused') return glucose.told;
  const told = [
    `${glucose.value.energyKcal.toFixed(0)} kcal from dialysate glucose (${(share * 100).toFixed(0)} % of ${glucose.value.infusedG.toFixed(0)} g absorbed; 40 to 80 % is real) are taken off: this is for food.`,
  ];
  if (treatment.icodextrin) told.push('Icodextrin gives more (about 20-35 % absorbed, to be confirmed); it is not counted.');
  return { kcal: glucose.value.energyKcal, told };
}
