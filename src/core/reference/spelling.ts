/** Shorter words have too many neighbors. */
const shortest = 6;

/**
 * Finds the one word of a list that a misspelled word stands for: at most one letter dropped, added, changed or two
 * neighbors swapped, the first letter right, six letters at least. Two candidates are none.
 *
 * `speller(['tomato', 'potato'])('tomatto')` gives 'tomato'.
 */
export function speller(known: Iterable<string>): (word: string) => string | undefined {
  const shortened = new Map<string, Set<string>>();
  for (const word of known) if (word.length >= shortest) for (const form of shortenedForms(word)) add(shortened, form, word);
  return word => {
    if (word.length < shortest) return undefined;
    let found: string | undefined;
    for (const form of shortenedForms(word)) {
      for (const candidate of shortened.get(form) ?? []) {
        if (candidate === found || candidate[0] !== word[0] || !oneSlipApart(candidate, word)) continue;
        if (found !== undefined) return undefined;
        found = candidate;
      }
    }
    return found;
  };
}

/** The word, and the word without each one of its letters. */
function shortenedForms(word: string): string[] {
  const forms = [word];
  for (let at = 1; at < word.length; at++) forms.push(word.slice(0, at) + word.slice(at + 1));
  return forms;
}

function oneSlipApart(a: string, b: string): boolean {
  let from = 0;
  while (from < a.length && a[from] === b[from]) from++;
  let endA = a.length;
  let endB = b.length;
  while (endA > from && endB > from && a[endA - 1] === b[endB - 1]) {
    endA--;
    endB--;
  }
  if (endA - from <= 1 && endB - from <= 1) return true;
  return endA - from === 2 && endB - from === 2 && a[from] === b[from + 1] && a[from + 1] === b[from];
}

function add(map: Map<string, Set<string>>, form: string, word: string): void {
  const words = map.get(form);
  if (words === undefined) map.set(form, new Set([word]));
  else words.add(word);
}
