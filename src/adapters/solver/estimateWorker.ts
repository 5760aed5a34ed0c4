/** The thread that estimates: labels come in as printed, estimates go out in the same order. */
import { parentPort } from 'node:worker_threads';
import type { PrintedLabel } from '#core/label/label.ts';
import { readLabel } from '#core/label/readLabel.ts';
import { estimateMinerals } from '#core/recipe/estimateMinerals.ts';
import { openHighsSolver } from './highsSolver.ts';

const solver = await openHighsSolver();
parentPort!.on('message', ({ id, labels }: { readonly id: number; readonly labels: readonly PrintedLabel[] }) => {
  try {
    parentPort!.postMessage({ id, estimates: labels.map(label => estimateMinerals(readLabel(label), solver)) });
  } catch (error) {
    // Only what it is: a message may hold the words of a label.
    parentPort!.postMessage({ id, failed: error instanceof Error ? error.name : typeof error });
  }
});
