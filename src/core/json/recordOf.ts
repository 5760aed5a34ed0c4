/** A record with one value for every key of a closed list: `recordOf(['a', 'b'], key => key.length)` is { a: 1, b: 1 }. */
export function recordOf<Key extends string, Value>(keys: readonly Key[], valueFor: (key: Key) => Value): Record<Key, Value> {
  // The one place where the compiler is told that entries of all keys make the whole record.
  return Object.fromEntries(keys.map(key => [key, valueFor(key)])) as Record<Key, Value>;
}
