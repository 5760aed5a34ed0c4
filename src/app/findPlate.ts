import { Fault } from '#core/errors.ts';
import { builtInPlates } from '#core/plate/builtInPlates.ts';
import type { Plate } from '#core/plate/plate.ts';
import { plateFromJson } from '#core/plate/plateFromJson.ts';
import type { Store } from './store.ts';
import { wholeOr } from './wholeOr.ts';

/** A plate by id, built in or kept, or one that is being tried. @throws Fault plate-not-found, plate-not-valid */
export async function findPlate(given: unknown, store: Store): Promise<Plate> {
  if (typeof given !== 'string') return readPlate(given);
  const builtIn = builtInPlates.find(({ id }) => id === given);
  if (builtIn !== undefined) return builtIn;
  const kept = await store.plates.get(given);
  if (kept === undefined) throw new Fault('plate-not-found', 'There is no plate of this name any more.');
  return readPlate(kept.value);
}

/** @throws Fault plate-not-valid, which names every place */
export function readPlate(json: unknown): Plate {
  return wholeOr(plateFromJson(json), 'plate-not-valid', 'the plate');
}

/** Every plate there is: the built-in ones and the kept ones that can be read. */
export async function allPlates(store: Store): Promise<readonly Plate[]> {
  const kept = (await store.plates.list()).map(({ value }) => plateFromJson(value).value);
  return [...builtInPlates, ...kept.filter(plate => plate !== undefined)];
}

/** The plates on which a food is a companion, with salt or without. */
export function platesWith(foodId: string, plates: readonly Plate[]): readonly Plate[] {
  return plates.filter(({ companions }) => companions.some(({ food, withoutSalt }) => food.id === foodId || withoutSalt?.id === foodId));
}
