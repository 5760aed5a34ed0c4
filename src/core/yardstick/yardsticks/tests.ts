import type { ClassScale, Test } from '#core/yardstick/yardstick.ts';
import { phosphorusClassSource, phosphorusSource, potassiumAdditiveSource, potassiumClassSource, sodiumEnergyPractice } from './sources.ts';

/** Tests and scales that stand in more than one built-in yardstick. */

/** Sodium mg no more than energy kcal on the whole plate, as a difference, so that it works at 0 kcal. */
export const sodiumAgainstEnergy: Test = {
  id: 'sodium-against-energy',
  measure: { kind: 'difference', nutrient: 'sodiumMg', minus: 'energyKcal' },
  basis: 'on-plate',
  atMost: 0,
  slack: 10,
  source: sodiumEnergyPractice,
};

export const noPhosphateAdditive: Test = {
  id: 'no-phosphate-additive',
  measure: { kind: 'additive', class: 'phosphate' },
  basis: 'as-eaten',
  absent: true,
  source: phosphorusSource,
};

export const noPotassiumSalt: Test = {
  id: 'no-potassium-salt',
  measure: { kind: 'additive', class: 'potassium' },
  basis: 'as-eaten',
  absent: true,
  source: potassiumAdditiveSource,
};

/** Judged only when switched on: potassium is bounded by labs and a prescription, never by setting. */
export const potassiumBound: Test = {
  id: 'potassium-at-most',
  measure: { kind: 'nutrient', nutrient: 'potassiumMg' },
  basis: 'as-eaten',
  atMost: 200,
  off: true,
  source: potassiumClassSource,
};

export const phosphorusBound: Test = {
  id: 'phosphorus-at-most',
  measure: { kind: 'nutrient', nutrient: 'phosphorusMg' },
  basis: 'as-eaten',
  atMost: 150,
  off: true,
  source: phosphorusClassSource,
};

/** Of the eaten portion: a large portion makes a low food high. Up to and including 100, 200, 300 mg. */
export const potassiumClasses: ClassScale = {
  id: 'potassium-class',
  nutrient: 'potassiumMg',
  basis: 'as-eaten',
  classes: [{ name: 'low', upTo: 100 }, { name: 'medium', upTo: 200 }, { name: 'high', upTo: 300 }, { name: 'very high' }],
  source: potassiumClassSource,
};

export const phosphorusClasses: ClassScale = {
  id: 'phosphorus-class',
  nutrient: 'phosphorusMg',
  basis: 'as-eaten',
  classes: [{ name: 'low', upTo: 100 }, { name: 'medium', upTo: 150 }, { name: 'high' }],
  source: phosphorusClassSource,
};

export const noStarFruit: Test = {
  id: 'no-star-fruit',
  measure: { kind: 'ingredient', kin: 'star-fruit' },
  basis: 'as-eaten',
  absent: true,
  source: { kind: 'paper', text: 'Saudi J Kidney Dis Transpl 2017, 123 cases of carambola poisoning' },
};

export const noGrapefruit: Test = {
  id: 'no-grapefruit',
  measure: { kind: 'ingredient', kin: 'grapefruit' },
  basis: 'as-eaten',
  absent: true,
  off: true,
  source: { kind: 'paper', text: 'Transplantation 2003;75:1057; Seville orange from memory' },
};
