import type { Surveys } from '#app/documents.ts';
import { readSurvey } from './keptTexts.ts';
import type { Session } from './session.ts';

/** Saved surveys: the last one that was put stands, without a version. */
export function savedSurveys(session: Session): Surveys {
  return {
    list: async () => {
      const rows = await session.read(db => db.selectFrom('saved_surveys').select('survey').orderBy('id').execute());
      return rows.map(({ survey }) => readSurvey(survey)).filter(survey => survey !== undefined);
    },
    put: survey =>
      session.write(async trx => {
        await trx.deleteFrom('saved_surveys').where('id', '=', survey.id).execute();
        await trx
          .insertInto('saved_surveys')
          .values({ id: survey.id, survey: JSON.stringify(survey) })
          .execute();
        return survey;
      }),
    remove: async id => {
      await session.write(trx => trx.deleteFrom('saved_surveys').where('id', '=', id).execute());
    },
  };
}
