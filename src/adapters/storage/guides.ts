import type { Guides } from '#app/documents.ts';
import { documentsWith } from './documents.ts';
import { readPublished } from './keptTexts.ts';
import type { Session } from './session.ts';

/** Guides with what was published of them: without `published`, it stays as it is. */
export function guideDocuments(session: Session): Guides {
  return documentsWith(session, 'guides', {
    columns: (more, earlier) => ({
      published: more?.published === undefined ? (earlier?.published ?? null) : more.published && JSON.stringify(more.published),
    }),
    read: (kept, row) => {
      if (row.published === null) return kept;
      const published = typeof row.published === 'string' ? readPublished(row.published) : undefined;
      return published === undefined ? undefined : { ...kept, published };
    },
  });
}
