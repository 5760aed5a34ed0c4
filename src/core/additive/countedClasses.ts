import type { AdditiveClass, AdditiveFinding } from './additive.ts';

/** A class of additives that a label names or may name. */
export interface CountedClass {
  readonly class: Exclude<AdditiveClass, 'sodium'>;
  /** False where every mention is one of several, may be in it, or is a guess. */
  readonly isCertain: boolean;
}

/** The phosphates and potassium salts that count, or may; what is told of a food in one look. */
export function countedClasses(findings: readonly Pick<AdditiveFinding, 'class' | 'counts' | 'certainty'>[]): readonly CountedClass[] {
  return (['phosphate', 'potassium'] as const).flatMap(kind => {
    const ofClass = findings.filter(finding => finding.class === kind && (finding.counts || finding.certainty === 'possible'));
    if (ofClass.length === 0) return [];
    return [{ class: kind, isCertain: ofClass.some(({ counts, certainty }) => counts && isNamed(certainty)) }];
  });
}

function isNamed(certainty: AdditiveFinding['certainty']): boolean {
  return certainty === 'named' || certainty === 'misspelled';
}
