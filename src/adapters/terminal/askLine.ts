import { createInterface } from 'node:readline';
import { Writable } from 'node:stream';

/** Questions are asked on standard error: standard output is for results. */
export interface Asker {
  ask(question: string): Promise<string>;
  /** What is typed is not shown. */
  askHidden(question: string): Promise<string>;
  close(): void;
}

/** Asks the person at the terminal; where standard input comes from elsewhere, each answer is its next line. */
export function askerOf(input: NodeJS.ReadStream, say: (text: string) => void): Asker {
  let isHidden = false;
  // Readline shows what is typed by writing it here.
  const shown = new Writable({
    write(chunk, _encoding, done) {
      if (!isHidden) say(String(chunk));
      done();
    },
  });
  const lines = createInterface({ input, output: shown, terminal: input.isTTY === true });
  const answers = lines[Symbol.asyncIterator]();
  lines.on('SIGINT', () => process.exit(130));
  const next = async (question: string, hidden: boolean): Promise<string> => {
    say(question);
    isHidden = hidden;
    const { value, done } = await answers.next();
    if (hidden && input.isTTY === true) say('\n');
    isHidden = false;
    return done === true ? '' : value;
  };
  return { ask: question => next(question, false), askHidden: question => next(question, true), close: () => lines.close() };
}
