import type { BoundSource } from './yardstick.ts';

const said: Readonly<Partial<Record<BoundSource['kind'], string>>> = {
  'from-memory': 'from memory',
  'common-practice': 'common practice',
  'own-table': 'own table',
};

/** The source of a bound as a sentence ends with it. One that is no publication says so, whatever its text. */
export function sourceText({ kind, text }: BoundSource): string {
  const words = said[kind];
  return words === undefined || text.toLowerCase().includes(words) ? text : `${text}, ${words}`;
}
