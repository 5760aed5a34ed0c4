/** Pages that were made to be looked at, the newest few; they are in no store and gone with the program. */
export class Previews {
  private readonly pages = new Map<string, string>();
  private readonly newId: () => string;
  private readonly most: number;

  constructor(newId: () => string, most = 12) {
    this.newId = newId;
    this.most = most;
  }

  keep(html: string): string {
    const id = this.newId();
    this.pages.set(id, html);
    const [oldest] = this.pages.keys();
    if (this.pages.size > this.most && oldest !== undefined) this.pages.delete(oldest);
    return id;
  }

  forget(): void {
    this.pages.clear();
  }

  page(id: string): string | undefined {
    return this.pages.get(id);
  }
}
