/** No thing of ours is nested deeper than a few dozen levels; what is, is an attack or an accident, and overflows whoever walks it. */
const mostLevels = 200;

/** Whether JSON is nested too deep to be worked with. Walks by hand: the value may be deeper than the stack. */
export function isNestedTooDeep(json: unknown): boolean {
  let level: readonly unknown[] = [json];
  for (let depth = 0; depth <= mostLevels; depth++) {
    const next: unknown[] = [];
    for (const value of level) if (typeof value === 'object' && value !== null) for (const part of Object.values(value)) next.push(part);
    if (next.length === 0) return false;
    level = next;
  }
  return true;
}
