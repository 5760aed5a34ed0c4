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

test('[NOTE-26] what is read from right to left is a run or a paragraph of that direction, and the day behind a name is not', async () => {
  const bytes = await noteDocx({
    title: 'Nutrition note, \u2068דנה לוי\u2069, 2026-06-15',
    sections: [{ heading: 'Assessment', paragraphs: ['אוכלת טוב.', 'Eats well.'] }],
  });
  const xml = new TextDecoder().decode(unzipSync(bytes)['word/document.xml']);
  const runs = [...xml.matchAll(/<w:r>(.*?)<\/w:r>/gu)].map(([, run]) => [
    run!.replace(/<[^>]+>/gu, ''),
    /<w:rtl(?: w:val="true")?\/>/u.test(run!),
  ]);
  expect(runs).toEqual(
    expect.arrayContaining([
      ['Nutrition note, ', false],
      ['דנה לוי', true],
      [', 2026-06-15', false],
    ]),
  );
  const paragraphs = [...xml.matchAll(/<w:p>(.*?)<\/w:p>/gu)].map(([, one]) => [
    one!.replace(/<[^>]+>/gu, ''),
    /<w:bidi(?: w:val="true")?\/>/u.test(one!),
  ]);
  expect(paragraphs).toEqual(
    expect.arrayContaining([
      ['אוכלת טוב.', true],
      ['Eats well.', false],
    ]),
  );
  expect(xml).not.toMatch(/[\u2068\u2069]/u);
});
