import { isObject } from './presentForm.ts';

/** Whether two pieces of JSON say the same; the order of keys says nothing, that of a list does. */
export function isSameJson(a: unknown, b: unknown): boolean {
  if (Array.isArray(a) && Array.isArray(b)) return a.length === b.length && a.every((one, at) => isSameJson(one, b[at]));
  if (!isObject(a) || !isObject(b)) return a === b;
  const keys = Object.keys(a);
  return keys.length === Object.keys(b).length && keys.every(key => Object.hasOwn(b, key) && isSameJson(a[key], b[key]));
}
