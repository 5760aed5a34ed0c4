import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

export interface ReadPdf {
  readonly language: string | undefined;
  readonly isMarked: boolean;
  /** In points, 1/72 inch. */
  readonly pages: readonly { readonly width: number; readonly height: number; readonly text: string }[];
  /** The kinds of tags in the structure tree, with how many there are. */
  readonly tags: ReadonlyMap<string, number>;
}

interface TreeNode {
  readonly role?: string;
  readonly children?: readonly TreeNode[];
}

/** A PDF read back with a general reader: language, tags, pages with their text. */
export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  const reading = getDocument({ data: new Uint8Array(bytes), verbosity: 0 });
  const document = await reading.promise;
  const { info } = (await document.getMetadata()) as { info: { Language?: string } };
  const tags = new Map<string, number>();
  const pages = [];
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    const { width, height } = page.getViewport({ scale: 1 });
    const { items } = await page.getTextContent();
    pages.push({ width, height, text: items.map(item => ('str' in item ? item.str + (item.hasEOL ? '\n' : '') : '')).join('') });
    const count = (node: TreeNode | null): void => {
      if (node?.role !== undefined) tags.set(node.role, (tags.get(node.role) ?? 0) + 1);
      for (const child of node?.children ?? []) count(child);
    };
    count((await page.getStructTree()) as TreeNode | null);
  }
  const marks: unknown = await document.getMarkInfo();
  await reading.destroy();
  return {
    language: info.Language,
    isMarked: marks instanceof Map ? marks.get('Marked') === true : (marks as { Marked?: boolean } | null)?.Marked === true,
    pages,
    tags,
  };
}
