import { afterAll, describe, expect, it, vi } from 'vitest';

// The page's own address, which the calls begin with.
vi.stubGlobal('location', { origin: 'http://127.0.0.1:4173' });
const { answer, api, problemOf } = await import('./api.ts');
// The files that come after it in this thread ask real servers.
afterAll(() => {
  vi.unstubAllGlobals();
});

/** The answer of whatever stands at the address, to a call as screens make it. */
async function told(response: Response | Error): Promise<unknown> {
  vi.stubGlobal('fetch', async () => {
    if (response instanceof Error) throw response;
    return response;
  });
  return answer(api.plates.$get()).then(
    value => ({ value }),
    ({ title, code, nextStep }) => ({ title, code, nextStep }),
  );
}
const notRead = { title: 'The answer cannot be read', code: 'answer-not-read', nextStep: expect.stringContaining('npm start') };

describe('an answer', () => {
  it('[WEB-23] is what the route says when it is whole', async () => {
    expect(await told(Response.json([]))).toEqual({ value: [] });
  });

  it.each([
    ['a page of HTML', new Response('<h1>Bad gateway</h1>', { status: 502, headers: { 'content-type': 'text/html' } })],
    ['a page of HTML that passes for a success', new Response('<h1>Sign in</h1>', { headers: { 'content-type': 'text/html' } })],
    ['nothing, as a fault', new Response(null, { status: 500 })],
    ['nothing, as a success', new Response('')],
    ['half of the JSON', new Response('[{"plate": {"id"')],
    ['JSON that is no problem', Response.json(['no'], { status: 500 })],
    ['null', new Response('null', { status: 500 })],
  ])('[WEB-23] that is %s is told with the next step', async (_, response) => {
    expect(await told(response)).toEqual(notRead);
  });

  it('[WEB-23] that does not come, or breaks off, is the program that does not answer', async () => {
    const broken = new Response(new ReadableStream({ pull: stream => stream.error(new TypeError('network error')) }));
    for (const response of [new TypeError('Failed to fetch'), broken])
      expect(await told(response)).toMatchObject({ code: 'no-answer', nextStep: expect.stringContaining('npm start') });
  });

  it('[WEB-23] that carries a fault says what the program says, and something where it says nothing', async () => {
    const fault = { title: 'The disk is full', detail: 'Nothing was saved.', nextStep: 'Make room.', code: 'database-full' };
    expect(await told(Response.json(fault, { status: 507 }))).toEqual({
      title: 'The disk is full',
      code: 'database-full',
      nextStep: 'Make room.',
    });
    expect(await problemOf(Response.json({ title: 7 }))).toMatchObject({ title: 'It did not work', message: '', nextStep: 'Try again.' });
  });
});
