import { describe, expect, test } from 'vitest';
import type { Assessment, LabResult } from '#core/client/assessment/assessment.ts';
import { checkAssessment } from '#core/client/assessment/checkAssessment.ts';
import { clientWith, lab, today } from '#core/client/assessment/clientFixture.ts';
import type { Symptom } from '#core/client/assessment/vocabularies.ts';
import { actedOn } from './caution.ts';
import { cautionsFor } from './cautions.ts';

const hemodialysis = { treatment: { setting: 'hemodialysis', place: 'in-center' } } as const;
const potassium = (value: number, on: string, more: Partial<LabResult> = {}) => lab('potassium', value, 'mmol/L', on, more);
const cautionsOf = (more: Partial<Assessment>) => cautionsFor(checkAssessment(clientWith(more), today).facts);
const find = (id: string, more: Partial<Assessment>) => cautionsOf(more).find(one => one.id === id);
const idsOf = (more: Partial<Assessment>) => cautionsOf(more).map(({ id }) => id);

describe('which reading an alarm tells first (care rules 2)', () => {
  const hemolyzed = potassium(7, '2026-06-14', { hemolyzed: true });

  test('[CLT-30] a clean one before a hemolyzed one while both are of now, for 7 days; then the one of now', () => {
    const beside = (on: string) => find('potassium-6.5', { labs: [potassium(6.6, on), hemolyzed] })!;
    expect(beside('2026-06-08')).toMatchObject({ since: '2026-06-08', told: expect.stringMatching(/^Emergency/) });
    expect(beside('2026-06-07')).toMatchObject({ since: '2026-06-14', told: expect.stringContaining('repeat it now') });
    expect(beside('2026-06-07').sameDay).toBe(true);
  });

  test('[CLT-30] for a glucose 2 days, and one in question stands behind a clean one', () => {
    // 40 mmol/L is asked about: mg/dL meant? As typed it is 721 mg/dL.
    const asked = lab('glucose', 40, 'mmol/L', '2026-06-14');
    const beside = (on: string) => find('glucose-high', { labs: [lab('glucose', 400, 'mg/dL', on), asked] })!;
    expect(beside('2026-06-13').because).toMatch(/^glucose 400 mg\/dL.*in question/);
    expect(beside('2026-06-12')).toMatchObject({ because: expect.stringMatching(/^glucose 40 mmol\/L/), sameDay: true });
  });

  test('[CLT-30] the highest of the high ones, the lowest of the low ones, each once', () => {
    const high = find('potassium-6.5', {
      labs: [potassium(6.6, '2026-06-14', { hemolyzed: true }), potassium(7.2, '2026-06-13', { hemolyzed: true })],
    });
    expect(high?.because).toMatch(/^potassium 7\.2.*; potassium 6\.6/);
    const low = find('potassium-2.5', { labs: [potassium(2.4, '2026-06-14'), potassium(2.2, '2026-06-14')] });
    expect(low?.because).toMatch(/^potassium 2\.2.*; potassium 2\.4/);
    const twice = find('potassium-6.5', {
      labs: ['08:00', '10:00'].map(takenAt => potassium(6.6, '2026-06-14', { takenAt })),
    });
    expect(twice?.because).toBe('potassium 6.6 mmol/L (on 2026-06-14, 1 day old)');
  });

  test('[CLT-30] after dialysis a potassium never counts as low; another analyte does', () => {
    const after = { drawn: 'after-dialysis' } as const;
    expect(idsOf({ ...hemodialysis, labs: [potassium(2.4, '2026-06-14', after)] })).not.toContain('potassium-2.5');
    expect(idsOf({ ...hemodialysis, labs: [lab('sodium', 118, 'mmol/L', '2026-06-14', after)] })).toContain('sodium-120');
  });

  test('[CLT-30] of two tiers the worse one speaks, unless it is old and the milder one is of now', () => {
    const ids = (...labs: readonly LabResult[]) => idsOf({ labs }).filter(id => id.startsWith('potassium'));
    expect(ids(potassium(6.7, '2026-06-14'), potassium(6.2, '2026-06-14'))).toEqual(['potassium-6.5']);
    expect(ids(potassium(6.7, '2026-05-20'), potassium(6.2, '2026-05-20'))).toEqual(['potassium-6.5']);
    expect(ids(potassium(2.4, '2026-06-14'), potassium(2.8, '2026-06-14'))).toEqual(['potassium-2.5']);
    expect(ids(potassium(2.4, '2026-05-20'), potassium(2.8, '2026-05-20'))).toEqual(['potassium-2.5']);
    // A hemolyzed one lifts nothing, and is told beside what is older.
    const marked = { hemolyzed: true } as const;
    expect(ids(potassium(6.7, '2026-05-20'), potassium(6.2, '2026-06-14', marked)).sort()).toEqual(['potassium-6.0', 'potassium-6.5']);
    expect(ids(potassium(2.4, '2026-05-20'), potassium(2.8, '2026-06-14', marked)).sort()).toEqual(['potassium-2.5', 'potassium-3.0']);
    expect(ids(potassium(6.5, '2026-06-14', marked))).toEqual(['potassium-6.5']);
    // Only a clean one of the worse tier silences the milder one.
    expect(ids(potassium(6.7, '2026-06-14', marked), potassium(6.2, '2026-06-14')).sort()).toEqual(['potassium-6.0', 'potassium-6.5']);
  });
});

describe('high potassium (facts 4.3, care rules 2)', () => {
  test.each([
    [5.4, {}, []],
    [5.5, {}, ['potassium-5.5']],
    [6, {}, ['potassium-6.0']],
    [6.5, {}, ['potassium-6.5']],
    [5.5, { conditions: ['acute-illness'] }, ['potassium-5.5-unwell']],
    [5.5, { acuteKidneyInjury: true }, ['potassium-5.5-unwell']],
    [5.4, { symptoms: ['palpitations'] }, []],
    [5.5, { symptoms: ['palpitations'] }, ['potassium-6.5', 'potassium-5.5-unwell']],
    [5.5, hemodialysis, []],
    [5.6, hemodialysis, ['potassium-hemodialysis']],
    [5.8, { ...hemodialysis, conditions: ['acute-illness'] }, ['potassium-hemodialysis']],
    [6, hemodialysis, ['potassium-6.0']],
    [5.5, { ...hemodialysis, symptoms: ['weakness'] }, []],
    [5.6, { ...hemodialysis, symptoms: ['weakness'] }, ['potassium-6.5', 'potassium-hemodialysis']],
  ] as const)('[CLT-30] %d mmol/L, %o: %j', (value, more, ids) => {
    const found = idsOf({ ...more, labs: [potassium(value, '2026-06-14')] });
    expect(found.filter(id => id.startsWith('potassium'))).toEqual(ids);
  });

  test('[CLT-30] the symptom is told beside the result, where there is one', () => {
    const labs = [potassium(6.6, '2026-06-14')];
    expect(find('potassium-6.5', { labs, symptoms: ['ecg-change'] })?.because).toMatch(/ with ECG change$/);
    expect(find('potassium-6.5', { labs })?.because).toBe('potassium 6.6 mmol/L (on 2026-06-14, 1 day old)');
  });

  test('[CLT-30] before hemodialysis: the client’s own line; after 7 days it is asked whether it was acted on, with no contact', () => {
    const of = (on: string, more: Partial<LabResult> = {}) =>
      find('potassium-hemodialysis', { ...hemodialysis, labs: [potassium(5.8, on, more)] });
    expect(of('2026-06-08')).toMatchObject({ isOwn: true, sameDay: false, told: expect.stringContaining('look for causes') });
    expect(of('2026-06-07')).toMatchObject({ isOwn: true, sameDay: false, told: actedOn });
    expect(of('2026-06-07')).not.toHaveProperty('contact');
    expect(of('2026-06-14', { drawn: 'after-dialysis' })).toBeUndefined();
  });
});

describe('a missed session of hemodialysis (facts 4.3: with swelling, breathlessness or a potassium that is not known)', () => {
  const told = (labs: readonly LabResult[], ...more: readonly Symptom[]) =>
    find('hemodialysis-missed', { ...hemodialysis, labs, symptoms: ['missed-or-shortened-session', ...more] })?.because;

  test('[CLT-30] a clean potassium of the last 7 days is known', () => {
    expect(told([potassium(5, '2026-06-08')])).toBeUndefined();
    for (const labs of [
      [],
      [potassium(5, '2026-06-07')],
      [potassium(5, '2026-06-14', { hemolyzed: true })],
      [potassium(5, '2026-06-14', { drawn: 'after-dialysis' })],
      [lab('sodium', 138, 'mmol/L', '2026-06-14')],
    ])
      expect(told(labs)).toBe('missed or shortened session with potassium not known');
    expect(told([potassium(5, '2026-06-14')], 'swelling')).toBe('missed or shortened session with swelling');
  });

  test('[CLT-30] no session was missed, or there are none: nothing is said', () => {
    expect(find('hemodialysis-missed', { ...hemodialysis, symptoms: ['swelling'] })).toBeUndefined();
    expect(find('hemodialysis-missed', { symptoms: ['missed-or-shortened-session', 'swelling'] })).toBeUndefined();
  });
});

describe('what holds in one setting alone, and for how long', () => {
  test('[CLT-30] a cloudy drain is of peritoneal dialysis, missed doses of a transplant', () => {
    expect(idsOf({ ...hemodialysis, symptoms: ['cloudy-drain', 'missed-doses', 'fever'] })).not.toContain('peritoneal-infection');
    expect(idsOf({ ...hemodialysis, symptoms: ['cloudy-drain', 'missed-doses', 'fever'] })).not.toContain('transplant-unwell');
  });

  test('[CLT-30] a symptom is as old as the assessment: after 45 days it is history', () => {
    const ketones = (on: string) => find('glucose-high', { on, symptoms: ['ketones'] });
    expect(ketones('2026-06-14')).toMatchObject({ contact: 'same-day', isOwn: true });
    expect(ketones('2026-05-01')).toMatchObject({ contact: 'within-days', told: actedOn });
    expect(ketones('2026-04-30')).toBeUndefined();
  });

  test('[CLT-30] emergencies first, whatever stands before them in the rules', () => {
    const labs = [potassium(6.1, '2026-06-14'), lab('sodium', 119, 'mmol/L', '2026-06-14')];
    expect(idsOf({ labs }).slice(0, 2)).toEqual(['sodium-120', 'potassium-6.0']);
  });
});
