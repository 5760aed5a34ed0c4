import type { AdditiveFinding } from '#core/additive/additive.ts';

/** An additive that a label names, in short. */
export function additiveInShort({
  class: kind,
  name,
  counts,
  certainty,
}: AdditiveFinding): Pick<AdditiveFinding, 'class' | 'name' | 'counts' | 'certainty'> {
  return { class: kind, name, counts, certainty };
}
