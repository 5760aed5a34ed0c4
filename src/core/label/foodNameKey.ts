/** What foods without a number are told apart by: maker and name, letter case and blanks aside. */
export function foodNameKey(maker: string | undefined, name: string): string {
  return `${maker ?? ''}\u0000${name}`.toLowerCase().replace(/\s+/g, ' ').trim();
}
