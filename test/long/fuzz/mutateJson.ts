import type { Chance } from './chance.ts';
import { mutateText, oddNumbers, oddTexts } from './mutate.ts';

/** A value that JSON may hold and nobody expects. */
export function oddValue(chance: Chance, depth = 2): unknown {
  switch (chance.below(depth === 0 ? 4 : 8)) {
    case 0:
      return chance.of(oddTexts);
    case 1:
      return chance.of(oddNumbers);
    case 2:
      return chance.of([null, true, false, [], {}]);
    case 3:
      return chance.next() * 10 ** chance.below(12);
    case 4:
      return Array.from({ length: chance.below(5) }, () => oddValue(chance, depth - 1));
    case 5:
      return Object.fromEntries(Array.from({ length: chance.below(4) }, () => [chance.of(oddTexts), oddValue(chance, depth - 1)]));
    case 6:
      return deep(chance.of([3, 150, 199, 200, 201, 400]));
    default:
      return JSON.parse('{"__proto__":{"id":"x"},"constructor":{"prototype":1}}');
  }
}

function deep(levels: number): unknown {
  let value: unknown = 'the end';
  for (let level = 0; level < levels; level += 1) value = level % 2 === 0 ? [value] : { deep: value };
  return value;
}

/** What grew too deep to be copied gives way. */
function cloned(value: unknown): unknown {
  try {
    return structuredClone(value);
  } catch {
    return [];
  }
}

type Parts = [place: readonly (string | number)[], value: unknown][];

/** A copy of a value that is changed in a few places: types, missing and more keys, numbers, texts, parts exchanged. */
export function mutateJson(chance: Chance, value: unknown): unknown {
  let now = cloned(value);
  for (let times = 1 + chance.below(3); times > 0; times -= 1) now = changedOnce(chance, now);
  return now;
}

function changedOnce(chance: Chance, root: unknown): unknown {
  const parts: Parts = [];
  const walk = (place: readonly (string | number)[], value: unknown): void => {
    parts.push([place, value]);
    if (place.length > 12 || parts.length > 2_000 || typeof value !== 'object' || value === null) return;
    if (Array.isArray(value)) for (const [at, one] of value.entries()) walk([...place, at], one);
    else for (const [key, one] of Object.entries(value)) walk([...place, key], one);
  };
  walk([], root);
  const [place, value] = chance.of(parts);
  const changed = changedValue(chance, value, parts);
  if (place.length === 0) return changed;
  let holder: unknown = root;
  for (const key of place.slice(0, -1)) holder = member(holder, key);
  const last = place.at(-1)!;
  if (typeof holder !== 'object' || holder === null) return root;
  if (chance.oneIn(8)) Reflect.deleteProperty(holder, last);
  else Object.defineProperty(holder, last, { value: changed, enumerable: true, configurable: true, writable: true });
  if (!Array.isArray(holder) && chance.oneIn(10))
    Object.defineProperty(holder, chance.of(oddTexts), { value: oddValue(chance), enumerable: true, configurable: true, writable: true });
  return root;
}

function member(holder: unknown, key: string | number): unknown {
  return typeof holder === 'object' && holder !== null ? Object.getOwnPropertyDescriptor(holder, key)?.value : undefined;
}

function changedValue(chance: Chance, value: unknown, parts: Parts): unknown {
  const kind = chance.below(6);
  if (kind === 0) return oddValue(chance);
  if (kind === 1) return cloned(chance.of(parts)[1]);
  if (typeof value === 'number')
    return chance.oneIn(2) ? chance.of(oddNumbers) : chance.of([-value, value * 1e9, value / 1e9, value + 0.5]);
  if (typeof value === 'string') return mutateText(chance, value, chance.of(oddTexts));
  if (Array.isArray(value)) {
    if (kind === 2) return [];
    const grown = [...value, ...value.slice(chance.below(value.length + 1))];
    return chance.oneIn(2) ? grown.toReversed() : grown.slice(0, 2_000);
  }
  return oddValue(chance);
}

/** JSON text of a value, now and then as no program writes it: keys twice, numbers beyond doubles, cut off, depth. */
export function writeJson(chance: Chance, value: unknown): string {
  let text: string;
  try {
    text = JSON.stringify(value) ?? 'null';
  } catch {
    return '[';
  }
  switch (chance.below(24)) {
    case 0:
      return text.slice(0, chance.below(text.length + 1));
    case 1:
      return mutateText(chance, text);
    case 2:
      return text.replace(/^\{/, '{"__proto__":{"version":1},');
    case 3:
      return text.replace(/"([^"]+)":/, (all, key) => `${all}null,"${key}":`);
    case 4:
      return text.replace(/\d+/, chance.of(['1e999', '-1e999', '1e-999', '123456789012345678901234567890', '0.1e1', '-0', '01']));
    case 5:
      return `\uFEFF${text}`;
    case 6:
      return text.replace(/"([^"\\]*)"(?!:)/, '"\\ud800\\u0000$1"');
    case 7:
      return chance.oneIn(20) ? text.replace(/:/, `:${'['.repeat(20_000)}${']'.repeat(20_000)},"x":`) : `${text}${text}`;
    default:
      return text;
  }
}
