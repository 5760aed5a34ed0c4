import type { ChartNote } from './chartNote.ts';

const width = 78;

/** The note as plain text, 78 characters wide: headings in capitals, rows as "name: figure" with their reason below. */
export function noteText({ title, sections }: ChartNote): string {
  const parts = sections.map(({ heading, paragraphs, rows }) => {
    const table = (rows ?? []).slice(1).map(([name, figure, why]) => [`${name}: ${figure}`, ...wrapped(why ?? '', '  ')].join('\n'));
    return [heading.toUpperCase(), ...paragraphs.flatMap(paragraph => wrapped(paragraph, '')), ...table].join('\n');
  });
  return `${title}\n\n${parts.join('\n\n')}\n`;
}

function wrapped(text: string, indent: string): string[] {
  const lines: string[] = [];
  let line = indent;
  const longest = width - indent.length;
  const words = text.split(/\s+/).flatMap(word => word.match(new RegExp(`.{1,${longest}}`, 'gu')) ?? []);
  for (const word of words) {
    if (line.trim() !== '' && line.length + 1 + word.length > width) {
      lines.push(line);
      line = indent;
    }
    line += line === indent ? word : ` ${word}`;
  }
  if (line.trim() !== '') lines.push(line);
  return lines;
}
