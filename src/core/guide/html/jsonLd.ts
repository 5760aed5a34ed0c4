import type { Article, Person, WithContext } from 'schema-dts';
import type { GuidePage } from '../guidePage.ts';

type GuideArticle = WithContext<Extract<Article, { '@type': 'Article' }>>;
type Author = Extract<Person, { '@type': 'Person' }>;

/**
 * The page in the vocabulary of schema.org, for search engines: an article with its author, days, corrections and the foods it lists.
 * The types are made from the published vocabulary: a term that it does not have does not compile (so nothing is spread into it here).
 */
export function jsonLd(page: GuidePage): GuideArticle {
  const foods = page.sections.flatMap(({ entries }) => entries).flatMap(({ varieties }) => varieties);
  const modified = page.corrections[0]?.on;
  const author: Author = { '@type': 'Person', name: page.author.name };
  if (page.author.credentials !== undefined) author.honorificSuffix = page.author.credentials;
  const article: GuideArticle = {
    '@context': 'https://schema.org',
    '@type': 'Article',
    headline: page.title,
    description: page.purpose,
    inLanguage: page.language,
    datePublished: page.publishedOn,
    dateModified: modified !== undefined && modified > page.publishedOn ? modified : page.publishedOn,
    isAccessibleForFree: true,
    author,
    audience: { '@type': 'Audience', audienceType: page.whoItIsFor },
    mainEntity: {
      '@type': 'ItemList',
      name: page.category,
      numberOfItems: foods.length,
      // Names alone, as schema.org allows: a ListItem each would cost 40 bytes a food.
      itemListElement: foods.map(({ name }) => name),
    },
  };
  if (page.corrections.length > 0)
    article.correction = page.corrections.map(({ on, text }) => ({ '@type': 'CorrectionComment', datePublished: on, text }));
  return article;
}
