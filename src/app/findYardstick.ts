import { Fault } from '#core/errors.ts';
import { builtInYardsticks } from '#core/yardstick/builtInYardsticks.ts';
import type { Yardstick } from '#core/yardstick/yardstick.ts';
import { yardstickFromJson } from '#core/yardstick/yardstickFromJson.ts';
import type { Store } from './store.ts';
import { wholeOr } from './wholeOr.ts';

/** A yardstick by id, built in or kept, or one that is being tried. @throws Fault yardstick-not-found, yardstick-not-valid */
export async function findYardstick(given: unknown, store: Store): Promise<Yardstick> {
  if (typeof given !== 'string') return readYardstick(given);
  const builtIn = builtInYardsticks.find(({ id }) => id === given);
  if (builtIn !== undefined) return builtIn;
  const kept = await store.yardsticks.get(given);
  if (kept === undefined) throw new Fault('yardstick-not-found', 'There is no yardstick of this name any more.');
  return readYardstick(kept.value);
}

/** @throws Fault yardstick-not-valid, which names every place */
export function readYardstick(json: unknown): Yardstick {
  return wholeOr(yardstickFromJson(json), 'yardstick-not-valid', 'the yardstick');
}
