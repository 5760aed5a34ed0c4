/** How a maker prints. Real labels differ in these things and in little else. */
export interface PrintStyle {
  readonly letters: 'upper' | 'title' | 'sentence' | 'lower';
  /** The clause before the small ingredients, with its limit (21 CFR 101.4(a)(2) allows 2, 1.5, 1 and 0.5); none lists all in order. */
  readonly clause?: { readonly words: string; readonly percent: 2 | 1.5 | 1 | 0.5 };
  /** Brackets inside brackets. */
  readonly innerBrackets: 'round' | 'square';
  readonly opening: '' | 'Ingredients: ';
  readonly ending: '' | '.';
  readonly allergenWords: 'Contains' | 'Contains:' | 'CONTAINS:';
  /** Which lines carry a %DV: none, or the vitamins and minerals. */
  readonly percents: 'none' | 'minerals';
  readonly lessThan: '<' | 'less than ';
}

interface Maker {
  readonly name: string;
  /** Five digits of the GTIN. */
  readonly number: number;
  readonly style: PrintStyle;
}

const twoPercentOrLess = { words: 'contains 2% or less of:', percent: 2 } as const;
const lessThanTwo = { words: 'contains less than 2% of', percent: 2 } as const;
const twoPercentEach = { words: 'contains 2% or less of each of the following:', percent: 2 } as const;

const plain: PrintStyle = {
  letters: 'sentence',
  clause: twoPercentOrLess,
  innerBrackets: 'round',
  opening: '',
  ending: '.',
  allergenWords: 'Contains:',
  percents: 'minerals',
  lessThan: '<',
};

/** Invented makers. None of the names is one that we know from a shelf. */
export const makers = {
  osterby: {
    name: 'Osterby & Vane',
    number: 10117,
    style: { ...plain, letters: 'upper', allergenWords: 'CONTAINS:' },
  },
  marrowgate: {
    name: 'Marrowgate Provisions',
    number: 10224,
    style: { ...plain, letters: 'title', clause: lessThanTwo, innerBrackets: 'square' },
  },
  brindlecote: { name: 'Brindlecote', number: 10331, style: { ...plain, percents: 'none', lessThan: 'less than ' } },
  hobbinfield: {
    name: 'Hobbinfield Smokehouse',
    number: 10438,
    style: { ...plain, letters: 'upper', clause: twoPercentEach, ending: '', allergenWords: 'CONTAINS:' },
  },
  quillhaven: {
    name: 'Quillhaven',
    number: 20119,
    style: {
      ...plain,
      letters: 'lower',
      opening: 'Ingredients: ',
      allergenWords: 'Contains',
      clause: { words: 'less than 2% of', percent: 2 },
    },
  },
  sorrelwick: { name: 'Sorrelwick Kitchen', number: 20226, style: { ...plain, opening: 'Ingredients: ', innerBrackets: 'square' } },
  larkspindle: {
    name: 'Larkspindle',
    number: 20333,
    style: { ...plain, letters: 'title', clause: { words: 'contains 1% or less of:', percent: 1 }, percents: 'none' },
  },
  wicklethorpe: {
    name: 'Wicklethorpe Dairy',
    number: 30121,
    style: { ...plain, letters: 'upper', clause: lessThanTwo, allergenWords: 'CONTAINS:', lessThan: 'less than ' },
  },
  pellam: { name: 'Pellam Creamery', number: 30228, style: { ...plain, percents: 'none' } },
  dunnock: {
    name: 'Dunnock Lane Mill',
    number: 40123,
    style: { ...plain, letters: 'upper', clause: twoPercentOrLess, innerBrackets: 'square', allergenWords: 'CONTAINS:' },
  },
  thrumble: {
    name: 'Thrumbleby Oats',
    number: 40230,
    style: { ...plain, letters: 'lower', opening: 'Ingredients: ', allergenWords: 'Contains' },
  },
  corviston: {
    name: 'Corviston Cereals',
    number: 40337,
    style: { ...plain, letters: 'title', clause: { words: 'contains 0.5% or less of:', percent: 0.5 }, innerBrackets: 'square' },
  },
  yarrowmead: { name: 'Yarrowmead', number: 40444, style: { ...plain, innerBrackets: 'square', percents: 'none', lessThan: 'less than ' } },
  ottermere: {
    name: 'Ottermere Soup Works',
    number: 50125,
    style: { ...plain, letters: 'upper', clause: lessThanTwo, allergenWords: 'CONTAINS:' },
  },
  cobblewick: { name: 'Cobblewick Pots', number: 50232, style: { ...plain, clause: { words: 'contains 1.5% or less of:', percent: 1.5 } } },
  vantry: {
    name: 'Vantry & Daughters',
    number: 50339,
    style: { ...plain, letters: 'title', clause: twoPercentEach, percents: 'none', lessThan: 'less than ' },
  },
  gribley: { name: 'Gribley Bakers', number: 60127, style: { ...plain, letters: 'upper', allergenWords: 'CONTAINS:' } },
} as const satisfies Record<string, Maker>;

export type MakerKey = keyof typeof makers;
