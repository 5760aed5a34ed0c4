/** The thread that estimates: labels come in as printed, estimates go out in the same order. */
import { parentPort } from 'node:worker_threads';
import type { PrintedLabel } from '#core/label/label.ts';
import { readLabel } from '#core/label/readLabel.ts';
import { estimateMinerals } from '#core/recipe/estimateMinerals.ts';
import { type LargerReference, largerReference } from '#core/reference/largerReference.ts';
import type { LargerTable } from '#core/reference/largerTable.ts';
import { openHighsSolver } from './highsSolver.ts';

const solver = await openHighsSolver();
let larger: LargerReference | undefined;

type Message = { readonly tables: readonly LargerTable[] } | { readonly id: number; readonly labels: readonly PrintedLabel[] };

parentPort!.on('message', (message: Message) => {
  if ('tables' in message) {
    larger = message.tables.length === 0 ? undefined : largerReference(message.tables);
    return;
  }
  const { id, labels } = message;
  try {
    parentPort!.postMessage({ id, estimates: labels.map(label => estimateMinerals(readLabel(label), solver, larger)) });
  } catch (error) {
    // Only what it is: a message may hold the words of a label.
    parentPort!.postMessage({ id, failed: error instanceof Error ? error.name : typeof error });
  }
});
