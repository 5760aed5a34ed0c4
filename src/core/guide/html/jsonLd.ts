import type { GuidePage } from '../guidePage.ts';

/** The page in the vocabulary of schema.org, for search engines: an article with its author, days, corrections and the foods it lists. */
export function jsonLd(page: GuidePage): Readonly<Record<string, unknown>> {
  const foods = page.sections.flatMap(({ entries }) => entries).flatMap(({ varieties }) => varieties);
  const { name, credentials } = page.author;
  const modified = page.corrections[0]?.on;
  return {
    '@context': 'https://schema.org',
    '@type': 'Article',
    headline: page.title,
    description: page.purpose,
    inLanguage: page.language,
    datePublished: page.publishedOn,
    dateModified: modified !== undefined && modified > page.publishedOn ? modified : page.publishedOn,
    isAccessibleForFree: true,
    author: { '@type': 'Person', name, ...(credentials === undefined ? {} : { honorificSuffix: credentials }) },
    audience: { '@type': 'Audience', audienceType: page.whoItIsFor },
    ...(page.corrections.length === 0
      ? {}
      : { correction: page.corrections.map(({ on, text }) => ({ '@type': 'CorrectionComment', datePublished: on, text })) }),
    mainEntity: {
      '@type': 'ItemList',
      name: page.category,
      numberOfItems: foods.length,
      // Names alone, as schema.org allows: a ListItem each would cost 40 bytes a food.
      itemListElement: foods.map(({ name }) => name),
    },
  };
}
