import type { FastifyInstance } from 'fastify';
import type { z } from 'zod';
import { Refusal } from '../store/quilt-store.ts';

/** What the page gets where something was not done. `fields`: name of a field -> what is wrong with it. */
export type Trouble = { message: string; fields?: Record<string, string> };

/** Input that is not what was expected: 422 with the field's name. Throws `InvalidInput`. */
export function parseInput<T>(schema: z.ZodType<T>, input: unknown): T {
  const parsed = schema.safeParse(input);
  if (parsed.success) return parsed.data;
  throw new InvalidInput(parsed.error);
}

export class InvalidInput extends Error {
  readonly statusCode = 422;
  readonly fields: Record<string, string>;
  constructor(error: z.ZodError) {
    const fields: Record<string, string> = {};
    for (const issue of error.issues) fields[issue.path.join('.') || 'body'] ??= issue.message;
    super(
      `This can't be taken as it is: ${Object.entries(fields)
        .map(([field, why]) => `${field}: ${why}`)
        .join('; ')
        .slice(0, 1000)}.`,
    );
    this.fields = fields;
  }
}

/** Every error becomes one clear message with a proper status. What was said is never written to the log. */
export function answerErrors(app: FastifyInstance): void {
  app.setErrorHandler((error: Error & { statusCode?: number; code?: string }, request, reply) => {
    const status = error.statusCode ?? 500;
    const trouble: Trouble = { message: messageOf(error, status) };
    if (error instanceof InvalidInput) trouble.fields = error.fields;
    if (error instanceof Refusal && error.field !== undefined)
      trouble.fields = { [error.field]: error.message };
    if (status >= 500)
      request.log.error({ err: { message: error.message, stack: error.stack } }, 'request failed');
    return reply.code(status).send(trouble);
  });
}

/** The page has addresses of its own below /: whatever asks for a page gets it. All else is a 404. */
export function answerUnknown(app: FastifyInstance): void {
  app.setNotFoundHandler((request, reply) => {
    const wantsPage = request.method === 'GET' && (request.headers.accept ?? '').includes('text/html');
    if (wantsPage && !request.url.startsWith('/api/') && request.url !== '/index.html') {
      return reply.sendFile('index.html');
    }
    if (request.url === '/index.html') {
      return reply
        .code(503)
        .send({ message: 'The page is not built yet. Start again with npm start, or run npm run build.' });
    }
    return reply.code(404).send({ message: `There is nothing at ${request.url.slice(0, 200)}.` });
  });
}

function messageOf(error: Error & { code?: string }, status: number): string {
  switch (error.code) {
    case 'FST_ERR_CTP_BODY_TOO_LARGE':
      return 'That is more than one request may carry. A note may have 100,000 characters.';
    case 'FST_ERR_CTP_INVALID_MEDIA_TYPE':
      return 'The body has to be JSON (content-type application/json).';
    case 'FST_ERR_CTP_INVALID_JSON_BODY':
    case 'FST_ERR_CTP_EMPTY_JSON_BODY':
      return 'The body is not valid JSON. Nothing was changed.';
    case 'FST_REQ_FILE_TOO_LARGE':
      return 'The file is larger than this can take.';
    default:
      if (status === 400 && error instanceof SyntaxError)
        return 'The body is not valid JSON. Nothing was changed.';
      return status === 500
        ? `Something went wrong here: ${error.message}. What was acknowledged is safe.`
        : error.message;
  }
}
