/** Plain text for a terminal: wrapping, alignment, and nothing that could steer the terminal. */

// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is taken out
const steering = /[\0-\x1f\x7f-\x9f\u200e\u200f\u202a-\u202e\u2066-\u2069]+/g;

/** Text from outside on one line; control characters and direction marks become a blank. */
export function plain(text: string): string {
  return text.replace(steering, ' ').trim();
}

/** Breaks text at blanks into lines of at most `width` characters, each behind `indent`; a longer word is cut. A number keeps its unit. */
export function wrap(text: string, width: number, indent = ''): string[] {
  const room = Math.max(width - indent.length, 10);
  const lines: string[] = [];
  let line = '';
  const bound = plain(text).replace(/(\d) (?=(?:kcal|kJ|mcg|mg|mL|g|%)(?:[^a-z]|$))/gi, '$1\u00A0');
  for (const part of bound.split(/ +/)) {
    const word = part.replaceAll('\u00A0', ' ');
    let rest = [...word];
    if (line !== '' && [...line].length + 1 + rest.length <= room) {
      line += ` ${word}`;
      continue;
    }
    if (line !== '') lines.push(line);
    for (; rest.length > room; rest = rest.slice(room)) lines.push(rest.slice(0, room).join(''));
    line = rest.join('');
  }
  if (line !== '') lines.push(line);
  return lines.map(one => indent + one);
}

/** A label with its text, the text hanging under itself: "Why: …". */
export function hanging(label: string, text: string, width: number, indent: string): string[] {
  const lines = wrap(`${label} ${text}`, width - 2, indent);
  return lines.map((line, index) => (index === 0 ? line : `  ${line}`));
}

export function padEnd(text: string, width: number): string {
  return text + ' '.repeat(Math.max(width - [...text].length, 0));
}

export function padStart(text: string, width: number): string {
  return ' '.repeat(Math.max(width - [...text].length, 0)) + text;
}
