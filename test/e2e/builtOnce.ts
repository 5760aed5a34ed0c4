import { fileURLToPath } from 'node:url';
import { browserPart } from '#adapters/files/browserPart.ts';

/** Before the first browser test: workers that begin at once would each build it, and take it from under each other. */
export default async function builtOnce(): Promise<void> {
  await browserPart(fileURLToPath(new URL('../..', import.meta.url)), text => process.stderr.write(text));
}
