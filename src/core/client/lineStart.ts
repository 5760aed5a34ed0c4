/** A name at the head of a line: "potassium" is "Potassium", "eGFR" stays as it is. */
export function lineStart(name: string): string {
  return /^\S*[A-Z]/.test(name) ? name : name.charAt(0).toUpperCase() + name.slice(1);
}
