import type { Source } from '#core/client/rules/source.ts';
import type { CautionRule } from './caution.ts';

/** Holds for everybody of whom it is met. */
export function on(id: string, told: string, source: Source, when: CautionRule['when']): CautionRule {
  return { id, told, source, when };
}

/** From this client's own values or record. */
export function own(id: string, told: string, source: Source, when: CautionRule['when']): CautionRule {
  return { ...on(id, told, source, when), isOwn: true };
}

export function always(id: string, told: string, source: Source): CautionRule {
  return on(id, told, source, () => 'kidney disease');
}
