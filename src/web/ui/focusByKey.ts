import type { KeyboardEvent } from 'react';

/** Moves focus among the entries of a list: arrow keys around it, Home and End, and letters to the next entry whose words begin with them. */
export function focusByKey(event: KeyboardEvent, entries: readonly HTMLElement[]): void {
  const open = entries.filter(entry => !entry.matches(':disabled'));
  const at = open.findIndex(entry => entry.matches(':focus'));
  const to = entryByKey(event, open, at);
  if (to === undefined) return;
  event.preventDefault();
  to.focus();
}

function entryByKey({ key, ctrlKey, altKey, metaKey }: KeyboardEvent, open: readonly HTMLElement[], at: number): HTMLElement | undefined {
  if (key === 'ArrowDown') return open[(at + 1) % open.length];
  if (key === 'ArrowUp') return open.at(at <= 0 ? -1 : at - 1);
  if (key === 'Home') return open[0];
  if (key === 'End') return open.at(-1);
  if (key.length !== 1 || key === ' ' || ctrlKey || altKey || metaKey) return undefined;
  const letters = lettersSoFar(key);
  // The same letter again goes on to the next; more letters stay on an entry that has them.
  const from = letters.length === 1 ? at + 1 : at;
  const inTurn = [...open.slice(from), ...open.slice(0, from)];
  return inTurn.find(entry => wordsOf(entry).startsWith(letters));
}

const pauseMs = 700;
let typed = { letters: '', when: 0 };

/** What was typed without a pause; one letter over and over counts as that letter. */
function lettersSoFar(key: string): string {
  const now = performance.now();
  const letters = (now - typed.when < pauseMs ? typed.letters : '') + key.toLowerCase();
  typed = { letters, when: now };
  return [...letters].every(letter => letter === letters[0]) ? letters[0]! : letters;
}

function wordsOf(entry: HTMLElement): string {
  return (entry.closest('label') ?? entry).textContent.trim().toLowerCase();
}
