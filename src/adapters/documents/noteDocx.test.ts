import { unzipSync } from 'fflate';
import { expect, test } from 'vitest';
import { noteDocx } from './noteDocx.ts';

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
  const xml = new TextDecoder().decode(unzipSync(bytes)['word/document.xml']);
  const text = xml.replace(/<\/w:p>/g, '\n').replace(/<[^>]+>/g, '');
  expect(text.split('\n')).toEqual(
    expect.arrayContaining(['Nutrition note, A.B., 2026-06-15', 'Potassium &lt; 5 &amp; &quot;rising&quot;.', 'at most 2000 mg']),
  );
  expect(xml).toContain('w:val="Heading1"');
  expect(xml).toContain('<w:tblHeader');
});
