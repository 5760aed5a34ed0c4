import { randomUUID } from 'node:crypto';

/** What a page of a guide may do when it is looked at inside the workbench: be styled, and nothing else. */
export const pagePolicy =
  "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'; frame-ancestors 'self'; sandbox allow-same-origin";

/** Pages that were made to be looked at, the newest few; they are in no store and gone with the program. */
export class Previews {
  private readonly pages = new Map<string, string>();
  private readonly most: number;

  constructor(most = 12) {
    this.most = most;
  }

  keep(html: string): string {
    const id = randomUUID();
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
