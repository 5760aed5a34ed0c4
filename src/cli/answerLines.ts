import { faultCatalogue } from '#core/faultCatalogue.ts';
import type { World } from './command.ts';
import { progress } from './progress.ts';

export type JsonObject = Readonly<Record<string, unknown>>;

/** Characters that are written at once: few writes, and little in memory. */
const chunkLength = 64 * 1024;

/**
 * Answers a stream of JSON lines with one JSON line each, block by block: memory stays flat and a reader gets what is ready.
 * A line that cannot be answered gives `{"id":…,"issues":[…]}` in its place.
 */
export async function answerLines(world: World, answer: (value: JsonObject, line: number) => JsonObject): Promise<void> {
  const tell = progress(world, 'lines');
  let done = 0;
  for await (const block of world.inputLines()) {
    let out = '';
    for (const read of block) {
      out += `${JSON.stringify('text' in read ? answerLine(read.text, read.line, answer) : { id: null, issues: [read.issue] })}\n`;
      if (out.length < chunkLength) continue;
      await world.write(out);
      out = '';
    }
    await world.write(out);
    done += block.length;
    tell(done);
  }
}

function answerLine(text: string, line: number, answer: (value: JsonObject, line: number) => JsonObject): JsonObject {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return notAnObject(text, line);
  }
  return isObject(value) ? answer(value, line) : notAnObject(text, line);
}

function notAnObject(text: string, line: number): JsonObject {
  const found = text === '' ? 'an empty line' : text.length > 60 ? `${text.slice(0, 59)}…` : text;
  return { id: null, issues: [{ code: 'line-not-json', place: { line }, found, expected: faultCatalogue['line-not-json'].nextStep }] };
}

function isObject(value: unknown): value is JsonObject {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** The id of a line as it was given: text or a number, else null. */
export function idOf(value: JsonObject): string | number | null {
  const { id } = value;
  return typeof id === 'string' || typeof id === 'number' ? id : null;
}
