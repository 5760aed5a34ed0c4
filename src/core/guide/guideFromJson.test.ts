import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { draftJson } from './guideFixture.ts';
import { guideFromJson } from './guideFromJson.ts';

describe('the file of a guide', () => {
  it('[GDE-11] takes what is missing as docs/formats.md says', () => {
    expect(guideFromJson(draftJson)).toMatchObject({
      issues: [],
      value: { language: 'en', arrangement: 'shelf', recheckAfterDays: 180, aisles: [], disclosures: [] },
    });
  });

  it.each([
    [{ id: '../slices' }, 'id'],
    [{ id: 'con' }, 'id'],
    [{ id: 'Slices' }, 'id'],
    [{ title: ' ' }, 'title'],
    [{ publishedOn: '2026-02-30' }, 'publishedOn'],
    [{ language: 'es' }, 'language'],
    [{ survey: { ...draftJson.survey, servings: 0 } }, 'survey.servings'],
    [{ settingsNotes: { pregnancy: 'x' } }, 'settingsNotes'],
    [{ recheckAfterDays: 0.5 }, 'recheckAfterDays'],
  ])('[GDE-11] refuses %j and names the place', (more, place) => {
    const { value, issues } = guideFromJson({ ...draftJson, ...more });
    expect(value).toBeUndefined();
    expect(issues.map(issue => issue.place?.heading).join()).toContain(place);
  });

  it.each(['javascript:alert(1)', 'data:text/html,x', 'ftp://a.example/', '//a.example/', '/shop', 'https://user@a.example/', 'https://'])(
    '[GDE-12] the link %s is reported and taken out',
    url => {
      const { value, issues } = guideFromJson({ ...draftJson, whereToBuy: { mild: [{ shop: 'Shop', url }] } });
      expect(issues.map(({ code }) => code)).toEqual(['link-not-http']);
      expect(value!.whereToBuy).toEqual({ mild: [{ shop: 'Shop' }] });
    },
  );

  it('[GDE-9] links without any disclosure are reported (16 CFR 255.5)', () => {
    const whereToBuy = { mild: [{ shop: 'Shop', url: 'https://a.example/' }] };
    expect(guideFromJson({ ...draftJson, whereToBuy }).issues.map(({ code }) => code)).toEqual(['disclosure-missing']);
  });

  it('[GDE-11] no JSON makes it throw', () => {
    fc.assert(
      fc.property(fc.jsonValue(), value => {
        const { value: draft, issues } = guideFromJson(value);
        expect(draft !== undefined || issues.length > 0).toBe(true);
      }),
    );
  });
});
