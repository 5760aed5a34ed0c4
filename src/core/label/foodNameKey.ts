/** What foods without a number are told apart by: maker and name, letter case and blanks aside. */
export function foodNameKey(maker: string | undefined, name: string): string {
  return [maker ?? '', name].map(words => words.toLowerCase().replace(/\s+/g, ' ').trim()).join('\0');
}
