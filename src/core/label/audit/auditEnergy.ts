import { spanText } from '#core/label/figure/spanText.ts';
import { type Interval, interval, scale, zero } from '#core/quantity/interval.ts';
import type { Finding } from '../label.ts';
import { mostGramsOf, type PanelView } from './panelView.ts';

/** Grams that give energy. Left out: not printed. */
export interface EnergyGrams {
  readonly protein: Interval;
  /** US: with fiber. EU: without. */
  readonly carbohydrate: Interval;
  readonly fat: Interval;
  readonly fiber?: Interval | undefined;
  readonly totalSugars?: Interval | undefined;
  readonly sugarAlcohol?: Interval | undefined;
  readonly alcohol?: Interval | undefined;
  /** Sugar alcohols or other sweeteners of little energy may be in the food without a line of their own. */
  readonly mayHideSweeteners: boolean;
}

/**
 * Every energy in kcal that 21 CFR 101.9(c)(1)(i)(B), (C) and (F) can give: 4-4-9, fiber and sugar alcohols counted from
 * nothing to 4 kcal per g. Protein 3, carbohydrate 27, fiber 2 and fat 2.5 g as printed: 126.25 up to 148.75 kcal.
 *
 * @internal
 */
export function usEnergyEnvelope(grams: EnergyGrams): Interval {
  const { protein, carbohydrate, fat } = grams;
  const alcohol = grams.alcohol ?? zero;
  const withoutFullEnergy = (grams.fiber ?? carbohydrate).hi + sweetenersUpTo(grams);
  const fullEnergy = Math.max(carbohydrate.lo - withoutFullEnergy, Math.min(grams.totalSugars?.lo ?? 0, carbohydrate.lo), 0);
  return interval(
    4 * protein.lo + 4 * fullEnergy + 9 * fat.lo + 7 * alcohol.lo,
    4 * protein.hi + 4 * carbohydrate.hi + 9 * fat.hi + 7 * alcohol.hi,
  );
}

/**
 * Every energy in kcal that the factors of Regulation (EU) 1169/2011, Annex XIV, can give: carbohydrate and protein 4,
 * fat 9, fiber 2, polyols 2.4 but erythritol 0. What is not printed (fiber, organic acids) gives 3 kcal per g at most.
 *
 * @param mostGrams the most that the food weighs.
 *
 * @internal
 */
export function euEnergyEnvelope(grams: EnergyGrams, mostGrams: number): Interval {
  const { protein, carbohydrate, fat } = grams;
  const alcohol = grams.alcohol ?? zero;
  const fiber = grams.fiber ?? zero;
  const fullEnergy = Math.max(carbohydrate.lo - sweetenersUpTo(grams), Math.min(grams.totalSugars?.lo ?? 0, carbohydrate.lo), 0);
  const notPrinted = Math.max(0, mostGrams - protein.lo - carbohydrate.lo - fat.lo - fiber.lo - alcohol.lo);
  return interval(
    4 * protein.lo + 4 * fullEnergy + 9 * fat.lo + 2 * fiber.lo + 7 * alcohol.lo,
    4 * protein.hi + 4 * carbohydrate.hi + 9 * fat.hi + 2 * fiber.hi + 7 * alcohol.hi + 3 * notPrinted,
  );
}

function sweetenersUpTo({ sugarAlcohol, mayHideSweeteners, carbohydrate }: EnergyGrams): number {
  return sugarAlcohol?.hi ?? (mayHideSweeteners ? carbohydrate.hi : 0);
}

/** Specific Atwater factors move plant foods by 5 to 15 % (from memory), so only more than this is told. */
const tolerance = 0.2;

/** What the energy check has to know beyond the panel. */
export interface EnergyClues {
  readonly statement: string | undefined;
  /** Name and category: alcohol is not on the panel, so drinks that may hold it are not checked upward. */
  readonly description: string;
}

/** Printed energy that no energy factor of the law gives from the printed grams. */
export function auditEnergy(view: PanelView, clues: EnergyClues): readonly Finding[] {
  const energy = energyOf(view);
  const protein = view.ranges.proteinG;
  const carbohydrate = view.ranges.carbohydrateG;
  const fat = view.ranges.fatG;
  if (!energy || !protein || !carbohydrate || !fat) return [];
  const alcohol = view.ranges.alcoholG;
  const grams: EnergyGrams = {
    protein,
    carbohydrate,
    fat,
    fiber: view.ranges.fiberG,
    totalSugars: view.ranges.totalSugarsG,
    sugarAlcohol: view.ranges.sugarAlcoholG,
    alcohol,
    mayHideSweeteners: clues.statement === undefined || hasWord(clues.statement, sweetenerWords),
  };
  const european = view.market === 'eu' || view.market === 'uk';
  const envelope = european ? euEnergyEnvelope(grams, mostGramsOf(view)) : usEnergyEnvelope(grams);
  const tooLittle = energy.hi < (1 - tolerance) * envelope.lo;
  const tooMuch = energy.lo > (1 + tolerance) * envelope.hi && (alcohol !== undefined || !hasWord(clues.description, alcoholWords));
  if (!tooLittle && !tooMuch) return [];
  return [
    {
      code: 'energy-does-not-add-up',
      about: `${view.prefix}energyKcal`,
      message: `Energy is printed as ${spanText(energy, 'kcal')} with its rounding; protein, carbohydrate and fat as printed give ${spanText(envelope, 'kcal')}.`,
      source: european ? 'Regulation (EU) 1169/2011, Annex XIV' : '21 CFR 101.9(c)(1)(i)',
    },
  ];
}

/** Kilocalories, or what kilojoules alone tell of them: EU panels compute both apart, and run from 4.0 to 4.33 kJ per kcal. */
function energyOf(view: PanelView): Interval | undefined {
  const kcal = view.ranges.energyKcal;
  if (kcal !== undefined) return kcal;
  const kj = view.ranges.energyKj;
  return kj && interval(scale(kj, 1 / 4.33).lo, scale(kj, 1 / 4).hi);
}

const sweetenerWords = [
  'itol',
  'isomalt',
  'hydrogenated starch',
  'allulose',
  'psicose',
  'tagatose',
  'polydextrose',
  'dextrin',
  'oligo',
  'polyol',
  'sugar alcohol',
];

const alcoholWords = [
  'alcohol',
  'wine',
  'beer',
  'cider',
  'sake',
  'vodka',
  'rum',
  'whisk',
  'liqueur',
  'spirit',
  'cocktail',
  'extract',
  'bitters',
];

function hasWord(text: string, words: readonly string[]): boolean {
  const lower = text.toLowerCase();
  return words.some(word => lower.includes(word));
}
