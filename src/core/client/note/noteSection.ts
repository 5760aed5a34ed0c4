/** A note as plain data: every way of writing it says the same. */
export interface ChartNote {
  readonly title: string;
  readonly sections: readonly NoteSection[];
}

export interface NoteSection {
  readonly heading: string;
  readonly paragraphs: readonly string[];
  /** A table, its first row the headings. */
  readonly rows?: readonly (readonly string[])[];
}

/** No control character gets into a note: an Office document with one cannot be opened, and a text field would act on it. */
export function cleaned({ title, sections }: ChartNote): ChartNote {
  return {
    title: cleanLine(title),
    sections: sections.map(({ heading, paragraphs, rows }) => ({
      heading,
      paragraphs: paragraphs.map(cleanLine),
      ...(rows === undefined ? {} : { rows: rows.map(cells => cells.map(cleanLine)) }),
    })),
  };
}

/** One line. Signs that turn the order of reading around without a letter of their own (U+202A to U+202E) are left out with the others. */
export function cleanLine(text: string): string {
  return text.toWellFormed().replace(/[\p{Cc}\u202A-\u202E\uFFFE\uFFFF]/gu, ' ');
}

const rightToLeft = /[\u0590-\u08FF\uFB1D-\uFDFF\uFE70-\uFEFC\u{10800}-\u{10FFF}\u{1E800}-\u{1EFFF}]/u;

export function isRightToLeft(text: string): boolean {
  return rightToLeft.test(text);
}

/**
 * Words from outside in the middle of a sentence. What is written from right to left stands between U+2068 and U+2069, so that the day and
 * the commas behind a name are not read as part of it; what is not stays as it is.
 */
export function isolated(text: string): string {
  const plain = text.replace(/[\u202A-\u202E\u2066-\u2069]/gu, '');
  return isRightToLeft(plain) ? `\u2068${plain}\u2069` : plain;
}
