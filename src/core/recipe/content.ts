import type { AdditiveRow } from '#core/additive/additiveTable.ts';
import { recordOf } from '#core/json/recordOf.ts';
import type { Interval } from '#core/quantity/interval.ts';
import type { ReferenceFood } from '#core/reference/referenceFood.ts';

/** What the model balances, per gram of an ingredient: grams for the macros, milligrams for the rest. */
export const traced = [
  'proteinG',
  'fatG',
  'saturatedFatG',
  'cholesterolMg',
  'sodiumMg',
  'carbohydrateG',
  'fiberG',
  'totalSugarsG',
  'calciumMg',
  'ironMg',
  'phosphorusMg',
  'potassiumMg',
] as const;
export type Traced = (typeof traced)[number];

/** A figure with its spread: what it most likely is, and between which ends it surely lies. */
export interface Figure extends Interval {
  readonly mid: number;
}

/** How the body takes up the phosphorus of an ingredient (kidney facts 6.1). */
export type PhosphorusKind = 'plant' | 'animal' | 'inorganic' | 'none' | 'unknown';

/** What one gram of an ingredient holds. */
export interface Content {
  readonly per1G: Readonly<Record<Traced, Figure>>;
  /** Grams of water in a gram. */
  readonly water: Figure;
  readonly phosphorusKind: PhosphorusKind;
  /** Milligrams for a gram of protein, where the two go together: phosphorus nearly everywhere, potassium in flesh. */
  readonly perProtein?: Readonly<Partial<Record<'phosphorusMg' | 'potassiumMg', Figure>>>;
  /** Milligrams of potassium for a gram of carbohydrate, where the two go together: in milk with its sugar, in plants. */
  readonly potassiumPerCarbohydrate?: Figure;
}

const nothing: Figure = { lo: 0, mid: 0, hi: 0 };
const perGram = (mid: number, lo: number, hi: number): Figure => ({ lo, mid, hi });

/**
 * How far the figures of one kind of ingredient spread between rows of SR28 that one name covers, as a share of the
 * figure, and at least this much in a gram. The shares lie between the median and the upper quarter of the spread
 * measured over the reference foods that have several rows (docs/minerals.md).
 */
const spreads: Readonly<Record<Traced, readonly [share: number, least: number]>> = {
  proteinG: [0.081, 0.0027],
  fatG: [0.108, 0.0027],
  saturatedFatG: [0.135, 0.0027],
  cholesterolMg: [0.18, 0.018],
  sodiumMg: [0.135, 0.045],
  carbohydrateG: [0.072, 0.0054],
  fiberG: [0.18, 0.0045],
  totalSugarsG: [0.18, 0.009],
  calciumMg: [0.18, 0.054],
  ironMg: [0.6, 0.012],
  phosphorusMg: [0.11, 0.015],
  potassiumMg: [0.14, 0.03],
};
const phosphorusTieSpread = 0.1;
const potassiumTieSpread = 0.14;

/** Milk and nuts are alike the world over; leaves, roots and fruits are not (same measurement, by group). */
const groupSpread: Readonly<Record<string, number>> = {
  dairy: 0.7,
  nut: 0.8,
  egg: 0.8,
  vegetable: 1.8,
  fruit: 1.6,
  grain: 1.5,
  legume: 1.7,
  fish: 1.8,
  poultry: 1.4,
  spice: 1.5,
};
const followsCarbohydrate: ReadonlySet<string> = new Set(['dairy', 'vegetable', 'fruit', 'legume']);
const flesh: ReadonlySet<string> = new Set(['meat', 'poultry', 'fish']);

/** A matched food of the composition table. What the table does not know stays within what any food can hold. */
export function referenceContent(
  { per100G, spread, phosphorusKind, group }: ReferenceFood,
  certainty: 'named' | 'near' = 'named',
): Content {
  const isFlesh = flesh.has(group);
  const wider = (certainty === 'near' ? 1.8 : 1) * (groupSpread[group] ?? 1);
  const figures = Object.fromEntries(
    traced.map(key => {
      const value = per100G[key];
      if (value === null) return [key, group === 'starch' ? (starch[key] ?? anyFood.per1G[key]) : anyFood.per1G[key]];
      const mid = value / 100;
      // How fat a cut is, and with it how much else it holds, is the butcher's choice.
      if (isFlesh && (key === 'fatG' || key === 'saturatedFatG')) return [key, perGram(mid, mid * 0.1, Math.max(mid * 2, mid + 0.12))];
      // How salty a cheese, stock or canned bean is, is its maker's choice as well; the table has the usual one.
      if (key === 'sodiumMg' && mid > 1) return [key, perGram(mid, 0, mid * 1.5)];
      const [ownShare, least] = spreads[key];
      const share = Math.min(0.9, ownShare * wider * (isFlesh ? 1.4 : 1));
      const [low, high] = spread[key] ?? [value, value];
      const lo = Math.max(0, Math.min(mid * (1 - share), low / 100) - least);
      return [key, perGram(mid, lo, Math.max(mid * (1 + share), high / 100) + least)];
    }),
  ) as Record<Traced, Figure>;
  const water = (per100G.waterG ?? 50) / 100;
  const wet = perGram(water, Math.max(0, water * 0.9 - 0.02), Math.min(1, water * 1.1 + 0.02));
  const { proteinG } = per100G;
  const tie = (key: 'phosphorusMg' | 'potassiumMg', spread: number) => {
    const mineral = per100G[key];
    if (proteinG === null || mineral === null || proteinG < 2 || mineral <= 0) return {};
    const ratio = mineral / proteinG;
    return { [key]: perGram(ratio, ratio * (1 - spread * wider), ratio * (1 + spread * wider)) };
  };
  const perProtein = {
    ...(phosphorusKind === 'inorganic' ? {} : tie('phosphorusMg', phosphorusTieSpread)),
    ...(isFlesh ? tie('potassiumMg', potassiumTieSpread) : {}),
  };
  const { carbohydrateG, potassiumMg } = per100G;
  const goesWithCarbohydrate = followsCarbohydrate.has(group) && carbohydrateG !== null && carbohydrateG >= 3 && potassiumMg !== null;
  const ratio = goesWithCarbohydrate ? potassiumMg / carbohydrateG : 0;
  const share = potassiumTieSpread * wider;
  const potassiumPerCarbohydrate = perGram(ratio, ratio * (1 - share), ratio * (1 + share));
  return { per1G: figures, water: wet, phosphorusKind, perProtein, ...(ratio > 0 ? { potassiumPerCarbohydrate } : {}) };
}

/** An additive by its mass fractions; what a name leaves open (hydrates, which of several salts) is a range. */
export function additiveContent(row: AdditiveRow, others: readonly AdditiveRow[]): Content {
  const rows = [row, ...others];
  const fraction = (element: keyof AdditiveRow['massFraction'], unknownUpTo: number): Figure => {
    const known = rows.flatMap(one => [one.massFraction[element], ...one.hydrates.map(({ massFraction }) => massFraction[element])]);
    const sure = known.filter(value => value !== null);
    const own = row.massFraction[element];
    if (own === null || sure.length === 0) return perGram(unknownUpTo * 250, 0, unknownUpTo * 1000);
    return perGram(own * 1000, Math.min(...sure) * 1000, Math.max(...sure) * 1000);
  };
  const isOrganic = row.formula !== null && /C\d*H/.test(row.formula);
  return {
    per1G: {
      ...emptyFigures,
      // Carbohydrate is told by difference, and the organic acids of salts count in it.
      carbohydrateG: isOrganic ? perGram(0.5, 0, 1) : nothing,
      phosphorusMg: fraction('phosphorus', row.phosphate === 'none' ? 0 : 0.25),
      potassiumMg: fraction('potassium', row.potassium === 'none' ? 0 : 0.4),
      sodiumMg: fraction('sodium', row.sodium === 'none' ? 0 : 0.35),
      calciumMg: fraction('calcium', 0.2),
    },
    water: perGram(0.05, 0, 0.6),
    phosphorusKind: row.phosphate === 'inorganic' || row.phosphate === 'possible' ? 'inorganic' : 'unknown',
  };
}

const emptyFigures = recordOf(traced, () => nothing);

/** An ingredient nobody knows: within what any food holds (wheat bran, dried spices and instant coffee bound the minerals; own decision). */
export const anyFood: Content = {
  per1G: {
    proteinG: perGram(0.1, 0, 0.95),
    fatG: perGram(0.1, 0, 1),
    saturatedFatG: perGram(0.03, 0, 0.9),
    cholesterolMg: perGram(0.1, 0, 12),
    sodiumMg: perGram(1, 0, 390),
    carbohydrateG: perGram(0.3, 0, 1),
    fiberG: perGram(0.04, 0, 0.9),
    totalSugarsG: perGram(0.1, 0, 1),
    calciumMg: perGram(0.5, 0, 20),
    ironMg: perGram(0.03, 0, 1.5),
    phosphorusMg: perGram(1.2, 0, 13),
    potassiumMg: perGram(2.5, 0, 36),
  },
  water: perGram(0.4, 0, 0.95),
  phosphorusKind: 'unknown',
};

/** What modified starches may carry: 0.4 % phosphorus (21 CFR 172.892), and the sodium of their treatment (own decision). */
const starch: Partial<Readonly<Record<Traced, Figure>>> = {
  phosphorusMg: perGram(0.4, 0, 4),
  sodiumMg: perGram(1, 0, 6),
  potassiumMg: perGram(0.1, 0, 0.5),
};

/** "Spices": dried herbs and seeds of every kind (SR28 02001 to 02066: from cloves and turmeric to basil and celery seed). */
export const spices: Content = {
  per1G: {
    ...anyFood.per1G,
    proteinG: perGram(0.11, 0.04, 0.26),
    fatG: perGram(0.08, 0.01, 0.42),
    saturatedFatG: perGram(0.02, 0, 0.08),
    cholesterolMg: nothing,
    sodiumMg: perGram(0.5, 0, 4),
    carbohydrateG: perGram(0.6, 0.25, 0.85),
    calciumMg: perGram(6, 0.3, 24),
    phosphorusMg: perGram(2, 0.6, 9),
    potassiumMg: perGram(15, 4, 36),
  },
  water: perGram(0.09, 0.04, 0.14),
  phosphorusKind: 'plant',
};

/** Flavors, colors, cultures, enzymes, gums, vitamins: little of them, and carriers with few minerals (own decision). */
export const trifle: Content = {
  per1G: {
    ...anyFood.per1G,
    sodiumMg: perGram(5, 0, 150),
    calciumMg: perGram(1, 0, 250),
    ironMg: perGram(5, 0, 1000),
    cholesterolMg: nothing,
    phosphorusMg: perGram(0.3, 0, 3),
    potassiumMg: perGram(1, 0, 12),
  },
  water: perGram(0.2, 0, 0.9),
  phosphorusKind: 'unknown',
};

export const water: Content = { per1G: emptyFigures, water: { lo: 1, mid: 1, hi: 1 }, phosphorusKind: 'none' };

/** Salts and acids that bring calcium or nothing that is traced: calcium carbonate, citric acid. */
export function salt(calciumShare: number): Content {
  return {
    per1G: { ...emptyFigures, carbohydrateG: perGram(0.5, 0, 1), calciumMg: perGram(calciumShare * 600, 0, calciumShare * 1000) },
    water: perGram(0.02, 0, 0.3),
    phosphorusKind: 'none',
  };
}
