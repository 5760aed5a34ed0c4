/** Phrases that say nothing about what 100 g hold, or that stand for a shorter one. Written in singular words, without hyphens. */
const phrases: readonly (readonly [string, string])[] = [
  ['gluten free|cage free|free range|fair trade|fair for life|grade a|grade aa|grass fed|pasture raised|expeller pressed|cold pressed', ''],
  ['first cold pressed|stone ground|stoneground|vine ripe|vine ripened|sun ripened|hand picked|farm raised|wild caught|wild harvested', ''],
  ['individually quick frozen|non gmo|not from concentrate|rbst free|hormone free|shade grown|single origin|all natural|eco farmed', ''],
  ['mechanically hulled|steam treated|heat treated|reverse osmosis|triple filtered|no salt added|bpa free|low acid|skin on', ''],
  ['dry roasted|dry roast', 'roasted'],
  ['non fat|fat free|non-fat', 'nonfat'],
  ['low fat', 'lowfat'],
  ['freeze dried|spray dried|air dried|vacuum dried', 'dried'],
  ['made from|prepared from|milled from', 'from'],
];

const phraseOf = new Map(phrases.flatMap(([from, to]) => from.split('|').map(phrase => [phrase, to] as const)));
const phrasePattern = new RegExp(`(?<![a-z])(?:${[...phraseOf.keys()].join('|')})(?![a-z])`, 'g');

/** Words that mean the same to a composition. */
export const sameWord: ReadonlyMap<string, string> = new Map(
  Object.entries({
    dehydrated: 'dried',
    dry: 'dried',
    powdered: 'powder',
    freshly: 'fresh',
    yoghurt: 'yogurt',
    catsup: 'ketchup',
    fibre: 'fiber',
    sulphured: 'sulfured',
    flavour: 'flavor',
    colour: 'color',
    leaves: 'leaf',
    halves: 'half',
    loaves: 'loaf',
    concentrated: 'concentrate',
    isolated: 'isolate',
    skimmed: 'skim',
    pimento: 'pimiento',
    chile: 'chili',
    chilies: 'chili',
    chiles: 'chili',
    chilli: 'chili',
  }),
);

/**
 * The words of a name in one form: lower case, no accents, brackets dropped with what they hold, hyphens as blanks, each word
 * in the singular, words that mean the same made one.
 *
 * `nameWords('Cow’s Milk, Dehydrated (organic)')` gives cow, milk, dried.
 */
export function nameWords(name: string): string[] {
  const plain = name
    .normalize('NFKD')
    .toLowerCase()
    .replace(/\([^)]*\)?|\[[^\]]*\]?|\{[^}]*\}?/g, ' ')
    .replace(/['’`´]s?\b|[\u0300-\u036f]/g, '')
    .replace(/&|\+/g, ' and ')
    .replace(/[^a-z0-9%.]+|\.(?!\d)/g, ' ')
    .trim();
  const words: string[] = [];
  for (const word of plain.replace(phrasePattern, found => phraseOf.get(found)!).split(' '))
    if (word !== '' && !silent.has(word)) words.push(oneForm(word));
  // Peppers are vegetables; pepper is a spice.
  return words.length === 1 && plain.endsWith('peppers') ? ['peppers'] : words;
}

const silent = new Set(['the', 'a', 'an', 'of', 'our', 'u', 's']);

function oneForm(word: string): string {
  const same = sameWord.get(word);
  if (same !== undefined) return same;
  const single = singular(word);
  return sameWord.get(single) ?? single;
}

/** Only as good as it must be: both sides of a comparison go through it. */
function singular(word: string): string {
  if (word.length < 4 || !word.endsWith('s') || /(?:ss|us|is)$/.test(word)) return word;
  if (word.endsWith('ies') && word.length > 5) return `${word.slice(0, -3)}y`;
  if (/(?:oes|shes|ches|xes|sses)$/.test(word)) return word.slice(0, -2);
  return word.slice(0, -1);
}
