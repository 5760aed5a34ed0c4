import type { Day } from '#core/quantity/calendarDay.ts';

/** What a file says of whose results it holds; nothing where it says nothing. */
export interface LabPerson {
  readonly name?: string;
  readonly bornOn?: Day;
}

/** The client whose record the results are for; the name is a code or initials as a rule. */
export interface LabClient {
  readonly name: string;
  readonly bornOn?: Day;
}

/**
 * What speaks against the results being the client's: another day of birth, or a name that is neither the client's nor has these initials. Empty where nothing does.
 * "Orla, Ines" born 1958-03-02 for "I. O.", born 1958-03-02: []. For "L. O.": ["name"].
 */
export function differencesOf(person: LabPerson, client: LabClient): readonly ('name' | 'bornOn')[] {
  const isNamed = person.name === undefined || isNameOf(person.name, client.name);
  const isBorn = person.bornOn === undefined || client.bornOn === undefined || person.bornOn === client.bornOn;
  return [...(isNamed ? [] : (['name'] as const)), ...(isBorn ? [] : (['bornOn'] as const))];
}

/** In any order and case, in full or by initials: "Orla, Ines M." is "I. O." and "ines orla". */
function isNameOf(full: string, short: string): boolean {
  const known = wordsOf(short.replace(/\([^)]*\)/gu, ' '));
  const all = wordsOf(full);
  if (known.length === 0) return false;
  const left = [...all];
  return known.every(word => {
    const at = left.findIndex(one => (word.length === 1 ? one.startsWith(word) : one === word));
    if (at < 0) return false;
    left.splice(at, 1);
    return true;
  });
}

function wordsOf(name: string): readonly string[] {
  return (
    name
      .normalize('NFKC')
      .toLowerCase()
      .match(/[\p{L}\p{N}]+/gu) ?? []
  );
}
