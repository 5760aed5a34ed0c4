import { OpenAPIHono } from '@hono/zod-openapi';
import { Fault } from '#core/errors.ts';
import { problem } from './problem.ts';

/** An empty set of routes: a body that does not fit its schema is a problem that names the places. */
export function newApi(log: (line: string) => void): OpenAPIHono {
  const api = new OpenAPIHono({
    defaultHook: (result, context) => {
      if (result.success) return undefined;
      const places = result.error.issues.slice(0, 5).map(({ path, message }) => `${path.join('.') || 'the body'}: ${message}`);
      return problem(new Fault('request-not-valid', `${places.join('; ')}.`), context, log);
    },
  });
  api.onError((error, context) => problem(error, context, log));
  return api;
}
