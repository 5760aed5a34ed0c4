import { answer, api, Problem } from '../api.ts';

/**
 * The code of a screen, or why it is not there: the program is stopped, lets this browser in no more, or was renewed, and then the file is
 * gone. Told as a problem, since the router would load the whole page anew for a fault of the browser's own, and what is typed would be lost.
 */
export function loaded<Module>(load: () => Promise<Module>): () => Promise<Module> {
  return async () => {
    try {
      return await load();
    } catch {
      await answer(api.workspace.$get());
      throw new Problem(
        'The screen is not there any more',
        'The program was renewed while this page was open.',
        'Reload this page. What you typed is kept as a draft.',
        'screen-gone',
      );
    }
  };
}
