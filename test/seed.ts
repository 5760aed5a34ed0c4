/** Loaded before the tests. In the long run its seed begins every generated case, so that what fails can be had again. */
import fc from 'fast-check';

const seed = process.env.PLATEWRIGHT_SEED;
if (seed !== undefined) fc.configureGlobal({ seed: Number(seed) });
