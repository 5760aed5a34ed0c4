import type { Language } from '../handout.ts';
import { en } from './en.ts';
import { es } from './es.ts';
import type { Words } from './words.ts';

export const wordsIn: Readonly<Record<Language, Words>> = { en, es };
