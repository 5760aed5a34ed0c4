import { type ClientRecord, foodsToAvoid } from '#core/client/record/record.ts';
import { isKnownKin, kinKeys } from '#core/yardstick/ingredientKin.ts';

/** What to look at before a client's handout is given. */
export function handoutCautions(record: ClientRecord): readonly string[] {
  return [...olderPrescription(record), ...unknownFoods(record)];
}

/** A prescription that is older than what is known of the client. */
function olderPrescription({ assessments, prescriptions, addedResults = [] }: ClientRecord): readonly string[] {
  const [newest] = assessments;
  const signedFor = assessments.find(({ id }) => id === prescriptions[0]?.assessmentId);
  const [latest] = addedResults;
  const signedOn = prescriptions[0]?.signed.at.slice(0, 10);
  if (newest === undefined) return [];
  if (signedFor === newest) {
    if (latest === undefined || signedOn === undefined || latest.on < signedOn) return [];
    return [`Results were added on ${latest.on}, and the prescription was signed on ${signedOn}: look whether its numbers still hold.`];
  }
  const [before, now] = [signedFor?.assessment.treatment.setting, newest.assessment.treatment.setting];
  return [
    `The prescription was signed for the assessment of ${signedFor?.assessment.on ?? 'an unknown day'}, and there is one of ${newest.assessment.on}: look whether its numbers still hold.`,
    ...(before === now ? [] : [`The treatment is another one since: this handout is for ${before?.replaceAll('-', ' ')}.`]),
  ];
}

/** Words of the client's that nothing can be told about. */
function unknownFoods(record: ClientRecord): readonly string[] {
  const words = foodsToAvoid(record).flatMap(kinKeys);
  const told = 'is no food that the program knows: no label can be told as free of it. Write it as an ingredient, as on a label.';
  return words.filter(key => !isKnownKin(key)).map(key => `“${key}”, which this client avoids, ${told}`);
}
