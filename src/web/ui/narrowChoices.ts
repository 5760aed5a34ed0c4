/** One of a list: `note` says what else tells it from the others. */
export interface Choice {
  readonly key: string;
  readonly words: string;
  readonly note?: string;
}

/** The choices that have every word typed somewhere in theirs, in the order of the list. Capitals and accents do not matter. */
export function narrowChoices(choices: readonly Choice[], typed: string): readonly Choice[] {
  const wanted = plain(typed).split(/\s+/).filter(Boolean);
  if (wanted.length === 0) return choices;
  return choices.filter(({ words, note = '' }) => {
    const has = plain(`${words} ${note}`);
    return wanted.every(word => has.includes(word));
  });
}

function plain(words: string): string {
  return words.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();
}
