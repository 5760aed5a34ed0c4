import type { Kysely } from 'kysely';
import type { Store } from '#app/store.ts';
import { yardstickFromJson } from '#core/yardstick/yardstickFromJson.ts';
import { archive } from './archive.ts';
import { counts } from './counts.ts';
import { damage } from './damage.ts';
import { versionedDocuments } from './documents.ts';
import { estimates } from './estimates.ts';
import { foods } from './foods.ts';
import { guideDocuments } from './guides.ts';
import { imports } from './imports.ts';
import { labels } from './labels.ts';
import { photos } from './photos.ts';
import { purge } from './purge.ts';
import { references } from './references.ts';
import type { Tables } from './schema.ts';
import { Session } from './session.ts';
import { savedSurveys } from './surveys.ts';
import { writeLabels } from './writeLabels.ts';

/** The store on any engine that Kysely speaks to. */
export function sqlStore(db: Kysely<Tables>, now: () => Date, close: () => Promise<void>): Store {
  const session = new Session(db, now);
  const plates = versionedDocuments(session, 'plates');
  const yardsticks = versionedDocuments(session, 'yardsticks');
  const guides = guideDocuments(session);
  const handouts = versionedDocuments(session, 'handouts');
  const surveys = savedSurveys(session);
  return {
    ...foods(session),
    ...labels(session),
    ...writeLabels(session),
    ...imports(session),
    listPlates: plates.list,
    putPlate: (plate, seenVersion, isDemo) => plates.put(plate, seenVersion, isDemo === undefined ? {} : { isDemo }),
    removePlate: plates.remove,
    listYardsticks: async () =>
      (await yardsticks.list()).flatMap(kept => {
        const { value } = yardstickFromJson(kept.value);
        return value === undefined ? [] : [{ ...kept, value }];
      }),
    putYardstick: async (yardstick, seenVersion) => ({ ...(await yardsticks.put({ ...yardstick }, seenVersion)), value: yardstick }),
    removeYardstick: yardsticks.remove,
    listGuides: guides.list,
    getGuide: guides.get,
    putGuide: guides.put,
    removeGuide: guides.remove,
    listHandouts: handouts.list,
    putHandout: (handout, seenVersion, isDemo) => handouts.put(handout, seenVersion, isDemo === undefined ? {} : { isDemo }),
    removeHandout: handouts.remove,
    listSurveys: surveys.list,
    putSurvey: surveys.put,
    removeSurvey: surveys.remove,
    ...photos(session),
    ...estimates(session),
    ...references(session),
    ...archive(session),
    ...purge(session),
    ...counts(session),
    ...damage(session),
    close,
  };
}
