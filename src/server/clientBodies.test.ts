import { hc } from 'hono/client';
import { describe, expect, test } from 'vitest';
import { clientWith } from '#core/client/assessment/clientFixture.ts';
import type { AppType } from './app.ts';
import { testServer } from './testWorld.fixture.ts';

const sent: unknown[] = [];
const { api } = hc<AppType>('http://localhost', {
  fetch: async (_: unknown, init?: RequestInit) => {
    sent.push(JSON.parse(String(init?.body)));
    return new Response('{}');
  },
});

describe('bodies of a client', () => {
  test('[CLT-42] a caller with another body does not compile', async () => {
    const assessment = clientWith();
    await api.clients.propose.$post({ json: { assessment } });
    expect(sent).toEqual([{ assessment }]);
    // @ts-expect-error a condition that no list has
    void api.clients.propose.$post({ json: { assessment: { ...assessment, conditions: ['tired'] } } });
    // @ts-expect-error a figure as text
    void api.clients.propose.$post({ json: { assessment: { ...assessment, urineMlPerDay: { value: '300', on: '2026-06-01' } } } });
    // @ts-expect-error no sex
    void api.clients.propose.$post({ json: { assessment: { ...assessment, sex: undefined } } });
    // @ts-expect-error a figure that no clinic may set
    void api['care-figures'].$put({ json: { version: 0, id: 'age.of-reason', value: 7, by: 'A' } });
    // @ts-expect-error a route that is none
    void api.clients.proposal;
  });

  test('[SRV-6] the inside of assessment, results and kept records is described', async () => {
    const server = await testServer(false);
    const { body } = await server.call('GET', '/openapi.json');
    await server.close();
    const { AssessmentJson, LabResultJson, ClientRecordJson } = body.components.schemas;
    expect(AssessmentJson.properties.conditions.items.enum).toContain('edema');
    expect(AssessmentJson.required).toContain('diabetes');
    expect(LabResultJson.properties.analyte.enum).toContain('potassium');
    expect(ClientRecordJson.required).toContain('format');
  });
});
