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
    title: clean(title),
    sections: sections.map(({ heading, paragraphs, rows }) => ({
      heading,
      paragraphs: paragraphs.map(clean),
      ...(rows === undefined ? {} : { rows: rows.map(cells => cells.map(clean)) }),
    })),
  };
}

function clean(text: string): string {
  return text.toWellFormed().replace(/[\p{Cc}\uFFFE\uFFFF]/gu, ' ');
}
