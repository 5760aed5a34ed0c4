import { tokenize } from '#core/statement/text/tokenize.ts';
import { type AdditiveRow, additiveTable } from './additiveTable.ts';

/** A tree of words: following the words of a spelling from the root leads to its row. */
export interface LexiconNode {
  readonly next: Map<string, LexiconNode>;
  row?: AdditiveRow;
  /** The words are known and name no additive: "emulsifying salts". */
  harmless?: boolean;
  /** The words are a slip of the pen for the row's name: "fabric pyrophosphate". */
  isSlip?: boolean;
}

/** Rows whose cation is not named: whether they bring sodium or potassium is open. */
export const cationOpen: ReadonlySet<string> = new Set(['phosphates', 'polyphosphates', 'diphosphates', 'triphosphates']);

/** Abbreviations that mean nothing else on a food label. The others need another additive beside them. */
const clearAbbreviations = new Set('sapp stpp tspp shmp ktpp tkpp stmp sktpp capp kapp salp msg kcl ssl'.split(' '));

/** Spellings that the measured statements use beyond the table's own. */
const moreSpellings: Readonly<Record<string, readonly string[]>> = {
  'phosphoric-acid': ['phosphoric'],
  'potassium-chloride': ['potassium choride'],
};

/** Slips seen in measured statements that make another true word, so that only the word behind it tells. */
const slips: Readonly<Record<string, readonly string[]>> = {
  'ferric-orthophosphate': ['tron phosphate'],
  'ferric-pyrophosphate': ['fabric pyrophosphate'],
};

/** Words that hold "salt" or "soda" and are none, beyond the table's look-alikes. */
const harmlessPhrases = [
  'emulsifying salt',
  'emulsifying salts',
  'melting salts',
  'mineral salts',
  'buffer salts',
  'epsom salt',
  'lemon lime soda',
  'salt water taffy',
];

const chemicalStem =
  /phosph|sodium|potassium|calcium|magnesium|ammonium|alumin|chlorid|citrat|lactat|acetat|tartrat|gluconat|carbonat|sul[fp]h?[aiy]|nitrit|nitrat|benzoat|sorbat|propionat|erythorb|ascorbat|glutam|inosinat|guanylat|lecithin|caseinat|alginat|iodid|iodat|bromat|lactylat|stearoyl|hydroxide|malat|fumarat|succinat|adipat|aspartat|ferrocyan|silicat|ribonucleotid/;

/** Where a word leads to from a node; a plural leads where its singular does. */
export function stepTo(node: LexiconNode, word: string): LexiconNode | undefined {
  const next = node.next.get(word);
  return next === undefined && word.length > 4 && word.endsWith('s') ? node.next.get(word.slice(0, -1)) : next;
}

/** The row that exactly these words name. */
export function rowOf(words: readonly string[]): AdditiveRow | undefined {
  let node: LexiconNode | undefined = lexicon.root;
  for (const word of words) {
    node = stepTo(node, word);
    if (node === undefined) return undefined;
  }
  return node.row;
}

export interface Lexicon {
  readonly root: LexiconNode;
  /** Every word of every spelling. */
  readonly vocabulary: ReadonlySet<string>;
  /** Words of salts and acids, long enough to be repaired when misspelled. */
  readonly chemicalWords: readonly string[];
  readonly byIns: ReadonlyMap<string, AdditiveRow>;
  readonly clear: ReadonlyMap<string, AdditiveRow>;
  readonly ambiguous: ReadonlyMap<string, AdditiveRow>;
}

export const lexicon: Lexicon = buildLexicon();

/**
 * The words of a spelling as the statement's own reader cuts them; a comma stays, brackets do not occur.
 *
 * @internal
 */
export function spellingWords(spelling: string): string[] {
  return tokenize(spelling)
    .tokens.filter(token => token.kind === 'word' || token.kind === 'number' || token.kind === 'comma')
    .map(token => (token.kind === 'comma' ? ',' : token.text));
}

function buildLexicon(): Lexicon {
  const root: LexiconNode = { next: new Map() };
  const vocabulary = new Set<string>();
  const chemical = new Set<string>();
  const byIns = new Map<string, AdditiveRow>();
  const clear = new Map<string, AdditiveRow>();
  const ambiguous = new Map<string, AdditiveRow>();

  for (const row of additiveTable) {
    const spellings = [...row.spellings, ...(moreSpellings[row.id] ?? [])];
    // The finder reads negations itself ("no phosphates added"), so that they are reported.
    if (row.id === 'negated-phosphate-phrase') continue;
    for (const spelling of spellings) {
      // "iron (ferric orthophosphate)" is found by what its bracket holds; "cocoa (processed with alkali)" only as a whole.
      if (row.kind === 'rich-ingredient' || !/[()]/.test(spelling)) plant(root, spellingWords(spelling), row, vocabulary);
    }
    for (const slip of slips[row.id] ?? []) plant(root, spellingWords(slip), row, vocabulary).isSlip = true;
    if (row.kind === 'additive')
      for (const spelling of spellings) for (const word of spellingWords(spelling)) if (isChemical(word)) chemical.add(word);
    for (const abbreviation of row.abbreviations)
      (clearAbbreviations.has(abbreviation.toLowerCase()) ? clear : ambiguous).set(abbreviation.toLowerCase(), row);
    if (row.ins !== null && row.kind !== 'look-alike') {
      const earlier = byIns.get(row.ins);
      // A number that several rows share means the widest of them.
      if (earlier === undefined || cationOpen.has(row.id) || (row.unspecified === true && !cationOpen.has(earlier.id)))
        byIns.set(row.ins, row);
    }
  }
  for (const phrase of harmlessPhrases) plant(root, spellingWords(phrase), undefined, vocabulary);
  return { root, vocabulary, chemicalWords: [...chemical], byIns, clear, ambiguous };
}

function plant(root: LexiconNode, words: readonly string[], row: AdditiveRow | undefined, vocabulary: Set<string>): LexiconNode {
  let node = root;
  for (const word of words) {
    if (word !== ',') vocabulary.add(word);
    let next = node.next.get(word);
    if (next === undefined) {
      next = { next: new Map() };
      node.next.set(word, next);
    }
    node = next;
  }
  if (row === undefined) node.harmless = true;
  else if (node.row === undefined) node.row = row;
  return node;
}

function isChemical(word: string): boolean {
  return word.length >= 6 && chemicalStem.test(word);
}
