import { decidedWords, targetNames } from '#core/client/prescription/targetWords.ts';
import type { DecidedTarget, Prescription } from '#core/client/record/record.ts';

import { figureText, rangeOut } from './targetText.ts';

/** A signed prescription, target by target. */
export function describePrescription({ id, targets, signed, supersedes }: Prescription, stands: boolean) {
  return {
    id,
    stands,
    signedBy: `${signed.by}, ${signed.credentials}`,
    signedAt: signed.at,
    ...(supersedes === undefined ? {} : { supersedes }),
    targets: targets.map(target => ({
      item: target.item,
      title: targetNames[target.item],
      figure: decidedText(target),
      inShort: shortWords(target),
      kind: target.kind ?? (target.range === undefined ? ('not-told' as const) : ('bounded' as const)),
      ...(target.range === undefined ? {} : { range: rangeOut(target.range), limit: target.limit ?? ('within' as const) }),
      from: target.from,
      ...(target.line === undefined ? {} : { line: target.line }),
      says: target.says,
      ...(target.reason === undefined ? {} : { reason: target.reason }),
    })),
  };
}

function shortWords(target: DecidedTarget): string {
  return target.kind === 'withheld' ? 'withheld' : target.kind === 'no-limit' ? 'no limit' : decidedWords(target);
}

function decidedText(target: DecidedTarget): string {
  return target.range === undefined ? decidedWords(target) : figureText(target.item, target.range, target.limit ?? 'within');
}
