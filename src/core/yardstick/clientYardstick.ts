import { isMost } from '#core/client/aims/limitKind.ts';
import type { TargetItem } from '#core/client/prescription/target.ts';
import type { DecidedTarget } from '#core/client/record/record.ts';
import type { Nutrient } from '#core/quantity/nutrients.ts';
import { nutrients } from '#core/quantity/nutrients.ts';
import { kinKeys } from './ingredientKin.ts';
import type { Test, Yardstick } from './yardstick.ts';

/** Targets that bound a food from above. Energy, protein, fiber and calcium are met over a day, not kept by one food; fluid is counted by the cup. */
const bounded: Readonly<Partial<Record<TargetItem, Nutrient>>> = {
  sodium: 'sodiumMg',
  potassium: 'potassiumMg',
  phosphorus: 'phosphorusMg',
};

export interface ClientBounds {
  readonly targets: readonly Pick<DecidedTarget, 'item' | 'range' | 'limit'>[];
  readonly avoidedFoods: readonly string[];
  /** Part of the day that the plate may take, in percent: a meal's share, or 100 for the whole day. */
  readonly percent: number;
  /** "lunch", "the day". */
  readonly meal: string;
  /** Estimated minerals may be used, at their safe end. */
  readonly useEstimates: boolean;
}

/**
 * The yardstick of one client: none of the avoided foods, no phosphate or potassium additives where the prescription rules them
 * out, and a meal's share of the day's upper targets on the whole plate. 2,300 mg sodium a day and a lunch of 30 %: at most 690 mg.
 */
export function clientYardstick({ targets, avoidedFoods, percent, meal, useEstimates }: ClientBounds): Yardstick {
  const tests: Test[] = [];
  // What must not be eaten comes first: it is said first, and no portion stands beside it.
  for (const kin of new Set(avoidedFoods.flatMap(kinKeys))) {
    tests.push({
      id: `avoids ${kin}`,
      measure: { kind: 'ingredient', kin },
      basis: 'on-plate',
      absent: true,
      source: { kind: 'prescription', text: 'avoided by this client' },
    });
  }
  for (const [item, kind] of additivesRuledOut(targets)) {
    const isSigned = targets.some(one => one.item === item && one.range?.hi === 0);
    const text = isSigned ? 'ruled out in the prescription' : 'phosphorus is limited, and an added phosphate is taken up nearly whole';
    tests.push({
      id: item,
      measure: { kind: 'additive', class: kind },
      basis: 'on-plate',
      absent: true,
      source: { kind: 'prescription', text },
    });
  }
  for (const { item, range, limit } of targets) {
    const nutrient = bounded[item];
    if (nutrient !== undefined && range !== undefined && isMost({ item, range, limit })) {
      const bound = (range.hi * percent) / 100;
      tests.push({
        id: item,
        measure: { kind: 'nutrient', nutrient },
        basis: 'on-plate',
        ...(limit === 'below' ? { below: bound } : { atMost: bound }),
        ...(nutrient === 'sodiumMg' ? {} : { useEstimates }),
        source: {
          kind: 'prescription',
          text: `${nutrients[nutrient].name}: ${percent}% of ${range.hi} ${nutrients[nutrient].unit} a day for ${meal}`,
        },
      });
    }
  }
  return {
    id: `client-${meal}`,
    title: `this client’s ${meal}`,
    purpose: 'The upper targets of one signed prescription, as a meal’s share.',
    tests,
    classScales: [],
    settings: 'any',
    cautions: ['Shares of a day are a plan, not a rule: a light meal leaves room for another.'],
  };
}

/**
 * The additives that no food may name: as signed, and phosphates for as long as phosphorus is limited, since labels seldom print
 * phosphorus and an added phosphate is taken up by 90 to 100 % (kidney facts 6.1).
 */
export function additivesRuledOut(
  targets: ClientBounds['targets'],
): readonly (readonly [item: TargetItem, kind: 'phosphate' | 'potassium'])[] {
  const isSigned = (wanted: TargetItem): boolean => targets.some(({ item, range }) => item === wanted && range?.hi === 0);
  const isPhosphorusLimited = targets.some(({ item, range, limit }) => item === 'phosphorus' && isMost({ item, range, limit }));
  return [
    ...(isSigned('phosphateAdditives') || isPhosphorusLimited ? ([['phosphateAdditives', 'phosphate']] as const) : []),
    ...(isSigned('potassiumAdditives') ? ([['potassiumAdditives', 'potassium']] as const) : []),
  ];
}
