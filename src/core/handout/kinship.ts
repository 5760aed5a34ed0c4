import type { PlateFood } from '#core/plate/plate.ts';

/** Words of a name that say how salty or how sold a food is, not what it is. */
const beside = new Set(
  'sodium salt salted low lower less reduced no added lightly unsalted percent with and in of the style slice slices soup flavored lighter light plain water'.split(
    ' ',
  ),
);

/**
 * How near two foods of one category are in kind: a version that says it is the other's unsalted one 10, each word of the name 2, the
 * same first ingredient 2, the same reference amount (21 CFR 101.12(b)) 1. Ham and lower-sodium ham share a word, an ingredient and the
 * reference amount: 5. 0 means of no kin (weights: own decision).
 */
export function kinship(a: PlateFood, b: PlateFood): number {
  const version = isUnsaltedVersion(a, b) || isUnsaltedVersion(b, a) ? 10 : 0;
  const names = wordsOf(a.name);
  const shared = [...wordsOf(b.name)].filter(word => names.has(word)).length;
  const first = firstIngredient(a);
  const ingredient = first !== undefined && first === firstIngredient(b) ? 2 : 0;
  const amount = a.label.printed.referenceAmount;
  return version + 2 * shared + ingredient + (amount !== undefined && amount === b.label.printed.referenceAmount ? 1 : 0);
}

function isUnsaltedVersion(version: PlateFood, salted: PlateFood): boolean {
  const named = version.label.printed.unsaltedVersionOf;
  return named !== undefined && [salted.id, salted.name, salted.label.printed.id, salted.label.printed.name].includes(named);
}

function wordsOf(name: string): ReadonlySet<string> {
  const all = name.toLowerCase().match(/\p{L}+/gu) ?? [];
  return new Set(all.filter(word => word.length > 2 && !beside.has(word)).map(word => word.replace(/(?<=\p{L}{3})s$/u, '')));
}

function firstIngredient({ label }: PlateFood): string | undefined {
  return label.statement?.ingredients[0]?.name.trim().toLowerCase();
}

/** Energy per 100 g, to tell apart foods that are equally near; undefined where it is not known. */
export function energyDensity({ label }: PlateFood): number | undefined {
  const { energyKcal } = label.amounts;
  const { grams } = label.amountsFor;
  return energyKcal.kind === 'known' && grams ? (100 * energyKcal.range.hi) / grams : undefined;
}
