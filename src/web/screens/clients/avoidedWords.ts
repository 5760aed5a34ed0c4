/** What a food says in the place of a verdict that it does not need: it is not for this client, whatever its figures. */
export const avoidedWords = { allergen: 'allergy', avoided: 'avoided' } as const;
