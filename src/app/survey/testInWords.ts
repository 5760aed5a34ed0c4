import { sourceText } from '#core/yardstick/sourceText.ts';
import { testText } from '#core/yardstick/testText.ts';
import type { Test } from '#core/yardstick/yardstick.ts';

/** A test of a yardstick in words, with why its bound is what it is. */
export function testInWords(test: Test): { readonly id: string; readonly text: string; readonly source: string } {
  return { id: test.id, text: testText(test), source: sourceText(test.source) };
}
