import { type ClientResponse, hc, type InferResponseType } from 'hono/client';
import { isObject } from '#core/json/presentForm.ts';
import type { AppType } from '../server/app.ts';
import { hearOfPart } from './program/renewed.ts';

/** The server's calls with the server's types; only types are taken from it. */
export const { api } = hc<AppType>(location.origin, {
  fetch: async (...call: Parameters<typeof fetch>) => {
    const response = await fetch(...call);
    hearOfPart(response.headers);
    return response;
  },
});

export type Survey = InferResponseType<typeof api.survey.$post, 200>;
export type SurveyRow = Survey['rows'][number];
export type KeptSurvey = InferResponseType<typeof api.surveys.$get, 200>[number];
export type SurveyFood = InferResponseType<(typeof api.survey)['foods']['$post'], 200>[number];
export type FoodShort = InferResponseType<typeof api.foods.$get, 200>[number];
export type Food = InferResponseType<(typeof api.foods)[':id']['$get'], 200>;
export type Label = Food['history'][number];
export type ReadLabel = InferResponseType<(typeof api.labels.read)['$post'], 200>;
export type ImportLook = InferResponseType<(typeof api.imports.look)['$post'], 200>;
export type KeptPlate = InferResponseType<typeof api.plates.$get, 200>[number];
export type KeptYardstick = InferResponseType<typeof api.yardsticks.$get, 200>[number];
export type ArchiveShort = InferResponseType<typeof api.archives.$post, 200>;
export type Restored = InferResponseType<(typeof api.archives)[':id']['restore']['$post'], 200>;
export type Client = InferResponseType<(typeof api.clients)[':id']['$get'], 200>;
export type ClientShort = InferResponseType<typeof api.clients.$get, 200>[number];
export type NoteToWrite = InferResponseType<(typeof api.clients)[':id']['note-to-write']['$get'], 200>;
export type KeptNote = InferResponseType<(typeof api.clients)[':id']['notes'][':noteId']['$get'], 200>;
export type KeptNoteShort = InferResponseType<(typeof api.clients)[':id']['notes']['$get'], 200>[number];
export type Proposal = InferResponseType<(typeof api.clients.propose)['$post'], 200>;
export type Guide = InferResponseType<(typeof api.guides)[':id']['$get'], 200>;
export type GuideShort = InferResponseType<typeof api.guides.$get, 200>[number];
export type GuidePreview = InferResponseType<(typeof api)['guide-previews']['$post'], 200>;
export type HandoutPreview = InferResponseType<(typeof api)['handout-previews']['$post'], 200>;
export type KeptHandout = InferResponseType<typeof api.handouts.$get, 200>[number];
export type Formula = InferResponseType<typeof api.formulas.$get, 200>[number];
export type FormulaWorked = InferResponseType<(typeof api.formulas)[':name']['$post'], 200>;

/** A fault as the server tells it: what it is, what happened, what to do next. */
export class Problem extends Error {
  readonly title: string;
  readonly nextStep: string;
  readonly code: string;

  constructor(title: string, detail: string, nextStep: string, code: string) {
    super(detail);
    this.name = 'Problem';
    this.title = title;
    this.nextStep = nextStep;
    this.code = code;
  }
}

/** What a call answers when it goes well; its type comes from the route, so that nobody can hope for another one. */
type AnswerOf<Call> = Call extends ClientResponse<infer Body, infer Status, 'json'> ? (Status extends 200 ? Body : never) : never;

/** The JSON of an answer, or the problem it carries. @throws Problem */
export async function answer<Call extends ClientResponse<unknown>>(call: Promise<Call>): Promise<AnswerOf<Call>> {
  const response = await arrived(call);
  // Only the status of success carries the body that the route describes.
  if (response.ok) return (await arrived(response.json())) as AnswerOf<Call>;
  throw await problemOf(response);
}

/** What was sent beside the typed routes, as a photo is, has arrived. @throws Problem */
export async function sent(call: Promise<Response>): Promise<void> {
  const response = await arrived(call);
  if (!response.ok) throw await problemOf(response);
}

/** @throws Problem when nothing answers, what answers is not the program, or the work was stopped */
async function arrived<Answer>(call: Promise<Answer>): Promise<Answer> {
  try {
    return await call;
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError')
      throw new Problem(
        'Cancelled',
        'The work was stopped before its end.',
        'Nothing was kept. Begin again when you like.',
        'work-cancelled',
      );
    if (error instanceof SyntaxError) throw notRead();
    throw new Problem(
      'The program does not answer',
      'Platewright seems to have been stopped.',
      'Start it again with npm start and open the address it prints. What was saved is kept.',
      'no-answer',
    );
  }
}

/** The problem that an answer carries. Never throws: what stands in the way may answer with a page, or with nothing. */
export async function problemOf(response: { json: () => Promise<unknown> }): Promise<Problem> {
  const body = await response.json().catch(() => undefined);
  if (!isObject(body)) return notRead();
  const said = (key: string, otherwise: string): string => (typeof body[key] === 'string' ? body[key] : otherwise);
  return new Problem(said('title', 'It did not work'), said('detail', ''), said('nextStep', 'Try again.'), said('code', 'unknown'));
}

function notRead(): Problem {
  return new Problem(
    'The answer cannot be read',
    'It was cut off, or something other than Platewright answered.',
    'Look whether what you did is there, and try again if not. If it stays like this, stop the program, start it again with npm start and open the address it prints.',
    'answer-not-read',
  );
}
