/** What stands in JSON, short enough for a sentence: `"soon"`, `[1,2]`, "nothing". Whatever it is, this never throws. */
export function shownJson(value: unknown): string {
  if (value === undefined) return 'nothing';
  const text = written(value);
  return text.length > 60 ? `${text.slice(0, 57)}…` : text;
}

function written(value: unknown): string {
  try {
    return JSON.stringify(value) ?? typeof value;
  } catch {
    // Nested deeper than can be written, or a value that JSON has no words for.
    return `a ${typeof value}`;
  }
}
