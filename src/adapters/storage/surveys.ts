import type { Surveys } from '#app/documents.ts';
import { savedSurveyFromJson } from '#core/yardstick/savedSurvey.ts';
import { documentsWith } from './documents.ts';
import type { Session } from './session.ts';

/** Saved surveys, each with the version that was seen, read by their codec. */
export function savedSurveys(session: Session): Surveys {
  return documentsWith(session, 'saved_surveys', {
    columns: () => ({}),
    read: kept => {
      const { value } = savedSurveyFromJson(kept.value);
      return value === undefined ? undefined : { ...kept, value };
    },
  });
}
