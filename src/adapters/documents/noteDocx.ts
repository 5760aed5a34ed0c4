import { Document, HeadingLevel, Packer, Paragraph, Table, TableCell, TableRow, WidthType } from 'docx';
import type { ChartNote, NoteSection } from '#core/client/note/chartNote.ts';

/** The note as an Office Open XML document: headings a reader can walk, tables with a heading row, US English. */
export async function noteDocx({ title, sections }: ChartNote): Promise<Uint8Array> {
  const document = new Document({
    title,
    styles: { default: { document: { run: { font: 'Arial', size: 22, language: { value: 'en-US' } } } } },
    sections: [{ children: [new Paragraph({ text: title, heading: HeadingLevel.HEADING_1 }), ...sections.flatMap(sectionParts)] }],
  });
  return new Uint8Array(await Packer.toBuffer(document));
}

function sectionParts({ heading, paragraphs, rows }: NoteSection): (Paragraph | Table)[] {
  return [
    new Paragraph({ text: heading, heading: HeadingLevel.HEADING_2 }),
    ...paragraphs.map(text => new Paragraph({ text })),
    ...(rows === undefined ? [] : [tableOf(rows)]),
  ];
}

function tableOf(rows: readonly (readonly string[])[]): Table {
  return new Table({
    width: { size: 100, type: WidthType.PERCENTAGE },
    rows: rows.map(
      (cells, index) =>
        new TableRow({
          tableHeader: index === 0,
          cantSplit: true,
          children: cells.map(text => new TableCell({ children: [new Paragraph({ text })] })),
        }),
    ),
  });
}
