import { createRequire } from 'node:module';
import { expect, test } from 'vitest';
import { noteDocx } from './noteDocx.ts';

// A zip reader that comes with the workbook library: the document is opened as a reader opens it.
const JSZip = createRequire(import.meta.url)('jszip') as {
  loadAsync(bytes: Uint8Array): Promise<{ file(path: string): { async(kind: 'string'): Promise<string> } | null }>;
};

test('[NOTE-7] the document holds the note: headings, a table with a heading row, and text that cannot break it', async () => {
  const bytes = await noteDocx({
    title: 'Nutrition note, A.B., 2026-06-15',
    sections: [
      { heading: 'Assessment', paragraphs: ['Potassium < 5 & "rising".'] },
      {
        heading: 'Intervention',
        paragraphs: [],
        rows: [
          ['Target', 'A day'],
          ['Sodium', 'at most 2000 mg'],
        ],
      },
    ],
  });
  const zip = await JSZip.loadAsync(bytes);
  const xml = (await zip.file('word/document.xml')?.async('string')) ?? '';
  const text = xml.replace(/<\/w:p>/g, '\n').replace(/<[^>]+>/g, '');
  expect(text.split('\n')).toEqual(
    expect.arrayContaining(['Nutrition note, A.B., 2026-06-15', 'Potassium &lt; 5 &amp; &quot;rising&quot;.', 'at most 2000 mg']),
  );
  expect(xml).toContain('w:val="Heading1"');
  expect(xml).toContain('<w:tblHeader');
});
