/**
 * Builds the demo's handouts into a folder that opens from disk: `node data/demo/buildHandouts.ts FOLDER [--pdf]`. The day is fixed, so
 * that every run gives the same pages.
 */
import { buildPages } from './buildPages.ts';

buildPages('handout', 'buildHandouts.ts');
