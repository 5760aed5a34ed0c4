import { has } from '#core/client/assessment/clientFacts.ts';
import type { Source } from '#core/client/rules/source.ts';
import { commonPractice, fromMemory, ownRule } from '#core/client/rules/sources.ts';
import { foodWords, hasAdded, isAddedOpen } from '#core/client/states/eaten.ts';
import { fastRemoval } from '#core/client/states/sessions.ts';
import type { CautionRule } from './caution.ts';
import { own } from './cautionRule.ts';
import { goutWords } from './medicineRules.ts';

const memory = fromMemory(commonPractice);
const eatingOnDialysis: Source = { kind: 'paper', text: 'ISRNM consensus, J Ren Nutr 2018;28:4' };

/** From how the client eats, swallows, digests and gets food, and from single treatments. */
export const eatingRules: readonly CautionRule[] = [
  own(
    'gout',
    'No food is limited here for gout. Loop and thiazide diuretics raise uric acid, and NSAIDs for an attack can harm the kidneys: ask what is taken, tell the prescriber.',
    memory,
    goutWords,
  ),
  own(
    'bariatric-surgery',
    'Protein, vitamins, iron and calcium are for the surgical team to follow; a bypass takes more oxalate in: calcium with meals, no high-dose vitamin C.',
    memory,
    facts => (has(facts, 'bariatric-surgery') ? 'bariatric surgery' : undefined),
  ),
  own('gastroparesis', 'Small meals, little fat, fiber by what is tolerated; with insulin ask the team about its timing.', memory, facts =>
    has(facts, 'gastroparesis') ? 'gastroparesis' : undefined,
  ),
  own(
    'swallowing',
    'The speech-language pathologist sets textures and thickness: change neither here. Thickened drinks count as fluid.',
    ownRule,
    facts => (has(facts, 'swallowing-difficulty') ? 'swallowing difficulty' : undefined),
  ),
  own('vegan-b12', 'Vitamin B12 does not come from plants: ask for a fortified food or a supplement.', memory, facts =>
    has(facts, 'vegan-eating') ? 'vegan eating' : undefined,
  ),
  own(
    'short-of-food',
    'Ask first what there is to eat and cook with: no figure that takes cheap food away before that. Name help with food where there is some.',
    ownRule,
    facts => (has(facts, 'short-of-food') ? ['short of food', facts.assessment.foodAccess].filter(Boolean).join(': ') : undefined),
  ),
  own(
    'added-in-intake',
    'Ask: do the energy and protein that were told have these in them already? Until then the total lies between both.',
    ownRule,
    facts => (isAddedOpen(facts) ? [...new Set((facts.assessment.addedFoods ?? []).map(foodWords))].toSorted().join(', ') : undefined),
  ),
  own(
    'meal-on-dialysis',
    'Eating during the treatment: not with drops of blood pressure, swallowing trouble or vomiting; the clinic’s policy first.',
    eatingOnDialysis,
    facts => {
      if (facts.setting !== 'hemodialysis' || !hasAdded(facts, 'meal-on-dialysis')) return undefined;
      const against = [
        ...(has(facts, 'hypotension') ? ['low blood pressure'] : []),
        ...(has(facts, 'swallowing-difficulty') ? ['swallowing difficulty'] : []),
        ...(facts.assessment.symptoms.includes('vomiting') ? ['vomiting'] : []),
      ];
      return ['meal on dialysis', ...against].join('; ');
    },
  ),
  own(
    'fluid-removal',
    'Fluid was taken off fast, which is linked to harm: tell the team; look at salt and fluid. Hours and extra treatments are theirs to decide.',
    memory,
    fastRemoval,
  ),
];
