/**
 * Builds the demo's guides into a folder that opens from disk: `node data/demo/buildGuides.ts FOLDER [--pdf]`. The day is fixed, so that
 * every run gives the same pages.
 */
import { buildPages } from './buildPages.ts';

buildPages('guide', 'buildGuides.ts');
