import { Document, HeadingLevel, Packer, Paragraph, Table, TableCell, TableRow, TextRun, WidthType } from 'docx';
import type { ChartNote, NoteSection } from '#core/client/note/chartNote.ts';
import { isRightToLeft } from '#core/client/note/noteSection.ts';

/** The note as an Office Open XML document: headings a reader can walk, tables with a heading row, US English. */
export async function noteDocx({ title, sections }: ChartNote): Promise<Uint8Array> {
  const document = new Document({
    title: title.replace(/[\u2068\u2069]/gu, ''),
    styles: { default: { document: { run: { font: 'Arial', size: 22, language: { value: 'en-US' } } } } },
    sections: [
      { children: [new Paragraph({ children: runsOf(title), heading: HeadingLevel.HEADING_1 }), ...sections.flatMap(sectionParts)] },
    ],
  });
  return new Uint8Array(await Packer.toBuffer(document));
}

function sectionParts({ heading, paragraphs, rows }: NoteSection): (Paragraph | Table)[] {
  return [
    new Paragraph({ text: heading, heading: HeadingLevel.HEADING_2 }),
    ...paragraphs.map(paragraphOf),
    ...(rows === undefined ? [] : [tableOf(rows)]),
  ];
}

/** What begins with a letter that is read from right to left is a paragraph of that direction. */
function paragraphOf(text: string): Paragraph {
  const firstLetter = /\p{L}/u.exec(text.replace(/\u2068[^\u2069]*\u2069/gu, ''))?.[0];
  return new Paragraph({ children: runsOf(text), bidirectional: firstLetter !== undefined && isRightToLeft(firstLetter) });
}

/** Word passes over U+2068 and U+2069: what stands between them is a run of its own that is read from right to left. */
function runsOf(text: string): TextRun[] {
  return text
    .split(/(\u2068[^\u2069]*\u2069)/u)
    .filter(part => part !== '')
    .map(part => new TextRun({ text: part.replace(/[\u2068\u2069]/gu, ''), rightToLeft: part.startsWith('\u2068') }));
}

function tableOf(rows: readonly (readonly string[])[]): Table {
  return new Table({
    width: { size: 100, type: WidthType.PERCENTAGE },
    rows: rows.map(
      (cells, index) =>
        new TableRow({
          tableHeader: index === 0,
          cantSplit: true,
          children: cells.map(text => new TableCell({ children: [paragraphOf(text)] })),
        }),
    ),
  });
}
