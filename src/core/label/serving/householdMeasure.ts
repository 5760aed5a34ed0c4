import { isDigit, scanNumber } from '#core/label/figure/scanNumber.ts';

/** One stretch of a serving's words: "4 slices" is { count: 4, words: 'slices' }. `place` is the worth of the last printed digit. */
export interface CountedWords {
  readonly count: number;
  readonly place: number;
  readonly words: string;
}

/**
 * Takes the words of a serving apart where brackets, semicolons and strokes part them: "2 oz (56g/about 1/2 cup dry)" is
 * 2 "oz", 56 "g", 0.5 "cup dry". A stretch that does not begin with a number gives nothing.
 */
export function countedWords(text: string, commaMarksDecimals: boolean): readonly CountedWords[] {
  const found: CountedWords[] = [];
  for (const stretch of stretches(text.toLowerCase())) {
    const counted = countedStretch(stretch, commaMarksDecimals);
    if (counted !== undefined) found.push(counted);
  }
  return found;
}

function stretches(text: string): string[] {
  const found: string[] = [];
  let start = 0;
  for (let at = 0; at <= text.length; at++) {
    const letter = text[at];
    const parts =
      at === text.length ||
      letter === '(' ||
      letter === ')' ||
      letter === ';' ||
      (letter === ',' && !isDigit(text.charCodeAt(at + 1))) ||
      ((letter === '/' || letter === '⁄') && !(isDigit(text.charCodeAt(at - 1)) && isDigit(text.charCodeAt(at + 1))));
    if (!parts) continue;
    found.push(text.slice(start, at));
    start = at + 1;
  }
  return found;
}

const openings = ['serving size', 'approximately', 'approx.', 'approx', 'about', 'ca.', '~', ':'];

function countedStretch(stretch: string, commaMarksDecimals: boolean): CountedWords | undefined {
  let text = stretch.trim();
  for (const opening of openings) if (text.startsWith(opening)) text = text.slice(opening.length).trim();
  const number = scanCount(text, commaMarksDecimals);
  if (number === undefined) return undefined;
  const words = text.slice(number.end).trim();
  return { count: number.count, place: number.place, words };
}

const fractionSigns: Readonly<Record<string, number | undefined>> = {
  '½': 1 / 2,
  '⅓': 1 / 3,
  '⅔': 2 / 3,
  '¼': 1 / 4,
  '¾': 3 / 4,
  '⅛': 1 / 8,
  '⅜': 3 / 8,
  '⅝': 5 / 8,
  '⅞': 7 / 8,
};

/** "4", "1.5", "1/2", "1 1/3", "½", "1½". The number must be above zero. */
function scanCount(text: string, commaMarksDecimals: boolean): { count: number; place: number; end: number } | undefined {
  const sign = fractionSigns[text[0] ?? ''];
  if (sign !== undefined) return { count: sign, place: 0, end: 1 };
  const first = scanNumber(text, 0, commaMarksDecimals);
  if (first === undefined || first.value === 0 || first.ambiguous) return undefined;
  const simple = scanFraction(text, 0);
  if (simple !== undefined) return { count: simple.value, place: 0, end: simple.end };
  let next = first.end;
  while (text[next] === ' ' || text[next] === '-') next++;
  const added = fractionSigns[text[next] ?? ''];
  if (added !== undefined) return { count: first.value + added, place: 0, end: next + 1 };
  const fraction = next > first.end ? scanFraction(text, next) : undefined;
  if (fraction !== undefined) return { count: first.value + fraction.value, place: 0, end: fraction.end };
  return { count: first.value, place: first.place, end: first.end };
}

function scanFraction(text: string, at: number): { value: number; end: number } | undefined {
  const above = scanNumber(text, at, false);
  if (above === undefined || (text[above.end] !== '/' && text[above.end] !== '⁄')) return undefined;
  const below = scanNumber(text, above.end + 1, false);
  if (below === undefined || below.value === 0 || above.value === 0) return undefined;
  return { value: above.value / below.value, end: below.end };
}

/**
 * The name of a household measure in the singular: "slices" is "slice", "Tbsp." is "tablespoon", "thin slices of bread" is
 * "slice", "mini pretzels" is "mini pretzel". Undefined where the words hold a further number or sum ("cup + 2 tbsp"):
 * such a measure is more than a count and a name.
 */
export function measureIn(words: string): string | undefined {
  const list: string[] = [];
  for (const word of words.split(/[\s.]/u)) if (word !== '') list.push(word);
  while (list[0] === 'of' || list[0] === 'a' || list[0] === 'the') list.shift();
  const until = list.indexOf('of');
  if (until > 0) list.length = until;
  if (list.length === 0) return undefined;
  for (const word of list) for (const letter of word) if (letter === '+' || isDigit(letter.charCodeAt(0))) return undefined;
  if ((list[0] === 'fl' || list[0] === 'fluid') && list[1] !== undefined && spoons[list[1]] === 'ounce') return 'fluid ounce';
  for (const word of list) {
    const spoon = spoons[word];
    if (spoon !== undefined) return spoon;
    const one = singular(word);
    if (pieces.has(one)) return one;
  }
  list[list.length - 1] = singular(list[list.length - 1]!);
  return list.join(' ');
}

const spoons: Readonly<Record<string, string | undefined>> = Object.assign(Object.create(null), {
  cup: 'cup',
  cups: 'cup',
  tbsp: 'tablespoon',
  tbs: 'tablespoon',
  tbsps: 'tablespoon',
  tablespoon: 'tablespoon',
  tablespoons: 'tablespoon',
  tsp: 'teaspoon',
  tsps: 'teaspoon',
  teaspoon: 'teaspoon',
  teaspoons: 'teaspoon',
  oz: 'ounce',
  ounce: 'ounce',
  ounces: 'ounce',
});

/** Measures that are one whatever stands before or after them: "2 thick slices", "1 frozen patty". */
const pieces: ReadonlySet<string> = new Set(
  'slice piece package container packet pouch bag box can bottle jar bar stick scoop link patty wedge sheet tray bowl'.split(' '),
);

const irregular: Readonly<Record<string, string | undefined>> = Object.assign(Object.create(null), {
  halves: 'half',
  loaves: 'loaf',
  leaves: 'leaf',
  cookies: 'cookie',
  brownies: 'brownie',
  pies: 'pie',
  smoothies: 'smoothie',
  potatoes: 'potato',
  tomatoes: 'tomato',
});

/** English singular of a word as servings use it. */
function singular(word: string): string {
  const known = irregular[word];
  if (known !== undefined) return known;
  if (word.endsWith('ies') && word.length > 4) return `${word.slice(0, -3)}y`;
  if (word.endsWith('ches') || word.endsWith('shes') || word.endsWith('xes') || word.endsWith('sses')) return word.slice(0, -2);
  if (word.endsWith('s') && !word.endsWith('ss') && !word.endsWith('us') && word.length > 2) return word.slice(0, -1);
  return word;
}
