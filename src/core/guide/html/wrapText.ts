/** Text in lines of at most `width` letters, for pictures that cannot break lines themselves; the last line ends in "…" where there is more. */
export function wrapText(text: string, width: number, most: number): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).flatMap(one => pieces(one, width))) {
    if (line !== '' && [...line].length + 1 + [...word].length > width) {
      lines.push(line);
      line = '';
    }
    line = line === '' ? word : `${line} ${word}`;
  }
  if (line !== '') lines.push(line);
  if (lines.length <= most) return lines;
  return [...lines.slice(0, most - 1), `${[...lines[most - 1]!].slice(0, width - 1).join('')}…`];
}

function pieces(word: string, width: number): readonly string[] {
  const letters = [...word];
  return Array.from({ length: Math.max(1, Math.ceil(letters.length / width)) }, (_, at) =>
    letters.slice(at * width, (at + 1) * width).join(''),
  );
}
