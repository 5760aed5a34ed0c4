import type { Companion, Plate } from '#core/plate/plate.ts';
import { portionFactor } from '#core/plate/portionFactor.ts';
import { portionText } from '#core/plate/portionText.ts';
import { smallestByScale, smallestInMeasures } from '#core/plate/wholeMeasures.ts';
import { companionLoads, type LinearTest, sharesThatFit } from './linearTest.ts';
import { addHelping, type CompanionTotals, companionTotals, helpingOf, nothing } from './served.ts';
import type { Candidate } from './wayIn.ts';

/** A plate with other companions, its sums made once for all foods. */
export interface CompanionChange {
  readonly candidate: Candidate;
  readonly companions: CompanionTotals;
  readonly loads: readonly number[];
}

/** Every change of companions that does not depend on the food: cooked without salt, another one, one more. */
export function companionChanges(plate: Plate, shelf: readonly Plate[], tests: readonly LinearTest[]): readonly CompanionChange[] {
  return [...withoutSalt(plate), ...borrowed(plate, shelf)].map(candidate => ({
    candidate,
    companions: companionTotals(candidate.plate.companions),
    loads: companionLoads(tests, candidate.plate.companions.map(helpingOf)),
  }));
}

/** Each companion that can be had without salt, and all of them together. */
function withoutSalt(plate: Plate): readonly Candidate[] {
  const salted = plate.companions.flatMap(({ withoutSalt }, index) => (withoutSalt ? [index] : []));
  const choices = salted.length > 1 ? [...salted.map(index => [index]), salted] : [salted].filter(one => one.length > 0);
  return choices.map(indices => ({
    kind: 'companion-without-salt',
    action: `${indices.map(index => plate.companions[index]!.withoutSalt!.name).join(' and ')} for the companion`,
    plate: {
      ...plate,
      companions: plate.companions.map((one, index) =>
        indices.includes(index) && one.withoutSalt ? { food: one.withoutSalt, portion: one.portion } : one,
      ),
    },
    change: 0,
  }));
}

/** Companions of the user's other plates, in the place of one of these or beside them; nearest in energy first. */
function borrowed(plate: Plate, shelf: readonly Plate[]): readonly Candidate[] {
  const own = new Set(plate.companions.map(keyOf));
  const others = new Map(
    platesAlike(plate, shelf)
      .flatMap(({ companions }) => companions)
      .map(companion => [keyOf(companion), companion]),
  );
  const energy = energyOf(plate.companions);
  return [...others]
    .filter(([key]) => !own.has(key))
    .flatMap(([, companion]) => [...exchanged(plate, companion), added(plate, companion)])
    .map(candidate => ({ candidate, distance: Math.abs(energyOf(candidate.plate.companions) - energy) }))
    .sort((a, b) => (Number.isNaN(a.distance) ? 1 : Number.isNaN(b.distance) ? -1 : a.distance - b.distance))
    .map(({ candidate }) => candidate);
}

/** Nobody eats soup on sandwich bread: where a plate says what is eaten this way, only plates for the same are looked at. */
function platesAlike({ categories }: Plate, shelf: readonly Plate[]): readonly Plate[] {
  return categories === undefined ? shelf : shelf.filter(other => other.categories?.some(category => categories.includes(category)));
}

function exchanged(plate: Plate, companion: Companion): readonly Candidate[] {
  return plate.companions.map((old, at) => ({
    kind: 'other-companion',
    action: `with ${portionText(companion.portion)} of ${companion.food.name} instead of ${old.food.name}`,
    plate: { ...plate, companions: plate.companions.map((one, index) => (index === at ? companion : one)) },
    change: 1,
  }));
}

function added(plate: Plate, companion: Companion): Candidate {
  return {
    kind: 'added-companion',
    action: `with ${portionText(companion.portion)} of ${companion.food.name} ${plate.companions.length === 0 ? 'beside it' : 'as well'}`,
    plate: { ...plate, companions: [...plate.companions, companion] },
    change: 1,
  };
}

function keyOf({ food, portion }: Companion): string {
  return `${food.id} ${portionText(portion)}`;
}

function energyOf(companions: readonly Companion[]): number {
  const total = companions.map(helpingOf).reduce((sum, helping) => addHelping(sum, helping, 'energyKcal', false), nothing);
  return total.missing.length > 0 ? Number.NaN : total.judged.hi;
}

/** More than twice a companion is another meal (own decision). */
const mostOfCompanion = 2;

/** A companion that there could be more of, with what it and the others load on each test. */
export interface Increase {
  readonly at: number;
  readonly factor: number;
  readonly own: readonly number[];
  readonly rest: readonly number[];
}

/** The companions that there could be more of, worked out once for all foods. */
export function increases(plate: Plate, tests: readonly LinearTest[]): readonly Increase[] {
  const helpings = plate.companions.map(helpingOf);
  return helpings.flatMap((helping, at) => {
    if (typeof helping.factor !== 'number') return [];
    const rest = helpings.filter((_, index) => index !== at);
    return [{ at, factor: helping.factor, own: companionLoads(tests, [helping]), rest: companionLoads(tests, rest) }];
  });
}

/** The smallest larger portion of a companion that makes room for the food: it raises total sodium and energy. */
export function moreOfCompanion(
  plate: Plate,
  increase: Increase,
  tests: readonly LinearTest[],
  food: readonly number[],
): Candidate | undefined {
  const { at, factor, own, rest } = increase;
  const { food: companion, portion: old } = plate.companions[at]!;
  const rules = tests.map(({ limit }, test) => ({ variable: own[test]!, fixed: food[test]! + rest[test]!, limit }));
  const shares = sharesThatFit(rules, mostOfCompanion);
  if (shares === undefined) return undefined;
  const rounded = 'measure' in old ? smallestInMeasures : smallestByScale;
  const portion = rounded(companion, factor * shares.least);
  const more = portion && portionFactor(portion, companion);
  if (portion === undefined || typeof more !== 'number' || more <= factor || more > mostOfCompanion * factor) return undefined;
  return {
    kind: 'more-of-companion',
    action: `${portionText(portion)} of ${companion.name} instead of ${portionText(old)}, which raises sodium and energy`,
    plate: { ...plate, companions: plate.companions.map((one, index) => (index === at ? { ...one, portion } : one)) },
    change: more / factor - 1,
  };
}
