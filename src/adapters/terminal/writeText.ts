import { once } from 'node:events';

/** Writes and waits while the reader is slower than the writer, so that nothing piles up in memory. */
export async function writeText(stream: NodeJS.WritableStream, text: string): Promise<void> {
  if (text !== '' && !stream.write(text)) await once(stream, 'drain');
}
