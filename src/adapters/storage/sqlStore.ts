import type { Store } from '#app/store.ts';
import { archivedRows } from './archivedRows.ts';
import { beginning } from './beginning.ts';
import { counts } from './counts.ts';
import { damage } from './damage.ts';
import { documents } from './documents.ts';
import { estimates } from './estimates.ts';
import { foods } from './foods.ts';
import { guideDocuments } from './guides.ts';
import { imports } from './imports.ts';
import { labels } from './labels.ts';
import { photos } from './photos.ts';
import { purge } from './purge.ts';
import { references } from './references.ts';
import { restoreRows } from './restoreRows.ts';
import type { Session } from './session.ts';
import { savedSurveys } from './surveys.ts';
import { writeLabels } from './writeLabels.ts';

/** The store on any engine that Kysely speaks to. */
export function sqlStore(session: Session, close: () => Promise<void>): Store {
  return {
    ...foods(session),
    ...labels(session),
    ...writeLabels(session),
    ...imports(session),
    ...documents(session),
    guides: guideDocuments(session),
    surveys: savedSurveys(session),
    ...photos(session),
    ...estimates(session),
    ...references(session),
    ...archivedRows(session),
    ...restoreRows(session),
    ...purge(session),
    ...counts(session),
    ...damage(session),
    ...beginning(session),
    exclusively: work => session.exclusively(work),
    close,
  };
}
