/**
 * Whether what was kept can be filled into a form as it is now: the same fields with the same kinds of values. An entry of a list is compared
 * with the first one that the form begins with, where it begins with any. A form changes with the program; its drafts do not.
 */
export function isSameShape<Shape>(now: Shape, kept: unknown): kept is Shape {
  if (Array.isArray(now)) return Array.isArray(kept) && (now.length === 0 || kept.every(entry => isSameShape(now[0], entry)));
  if (typeof now !== 'object' || now === null) return typeof now === typeof kept && (now === null) === (kept === null);
  if (typeof kept !== 'object' || kept === null || Array.isArray(kept)) return false;
  const ofKept = new Map(Object.entries(kept));
  const entries = Object.entries(now);
  return entries.length === ofKept.size && entries.every(([name, value]) => ofKept.has(name) && isSameShape(value, ofKept.get(name)));
}
