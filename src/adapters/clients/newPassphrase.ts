import { Fault } from '#core/errors.ts';
import { sameText } from './passphrase.ts';

/** NIST SP 800-63B-4, section 3.1.1.2: 15 characters where a passphrase is all that is asked for. */
const leastCharacters = 15;

/** Runs that hands type without thinking: the alphabet, the digits, the rows of a keyboard. */
const runs = ['abcdefghijklmnopqrstuvwxyz', '01234567890', 'qwertyuiop', 'qwertzuiop', 'azertyuiop', 'asdfghjkl', 'zxcvbnm', 'yxcvbnm'];

/** What anybody would try first on this program, and the commonest words of passphrases. */
const expected = ['platewright', 'passphrase', 'password', 'dietitian', 'kidney', 'nutrition', 'letmein', 'welcome', 'secret', 'admin'];

/**
 * Length is what counts; no signs of any sort are asked for. Refused besides is what is guessed first: what is made of repeats, of runs
 * of a keyboard, or of nothing but expected words and digits.
 * @throws Fault passphrase-too-short, passphrase-too-common
 */
export function refuseWeak(passphrase: string): void {
  const text = sameText(passphrase);
  if ([...text].length < leastCharacters) throw new Fault('passphrase-too-short', `It needs ${leastCharacters} characters or more.`);
  if (isGuessedFirst(text))
    throw new Fault('passphrase-too-common', 'It is made of what is guessed first: repeats, runs of keys or expected words.');
}

function isGuessedFirst(text: string): boolean {
  // Blanks and signs between do not make it harder to guess.
  const bare = [...text.toLowerCase()].filter(sign => /[\p{L}\p{N}]/u.test(sign)).join('') || text;
  if (isRepeated(bare)) return true;
  const left = [...runs, ...runs.map(run => [...run].reverse().join(''))].reduce(withoutRun, bare);
  return expected.reduce((rest, word) => rest.replaceAll(word, ''), left).replace(/\p{N}/gu, '').length < 4;
}

/** "aaaa…", "abab…", "treetreetree". */
function isRepeated(text: string): boolean {
  return Array.from({ length: 8 }, (_, at) => text.slice(0, at + 1)).some(part => part.repeat(text.length).startsWith(text));
}

/** Takes out every piece of four or more signs that stand side by side in `run`. */
function withoutRun(text: string, run: string): string {
  let left = text;
  for (let length = run.length; length >= 4; length--)
    for (let from = 0; from + length <= run.length; from++) left = left.replaceAll(run.slice(from, from + length), '');
  return left;
}
