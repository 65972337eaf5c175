import { isLetIn } from './let-in.ts';

/** What the server answered where it did not agree, in words for the page. */
export class Refusal extends Error {
  constructor(
    message: string,
    readonly status: number,
    /** Field name -> what is wrong with it, where the server named fields. */
    readonly fields: Record<string, string> = {},
  ) {
    super(message);
  }
}

/** Calls the server's HTTP side; throws `Refusal` with its words, or status 0 where it is away. */
export async function api<T>(
  path: string,
  init: { method?: string; json?: unknown; body?: BodyInit } = {},
): Promise<T> {
  let response: Response;
  try {
    response = await fetch(path, {
      method: init.method ?? (init.json === undefined && init.body === undefined ? 'GET' : 'POST'),
      headers: init.json === undefined ? {} : { 'content-type': 'application/json' },
      body: init.json === undefined ? (init.body ?? null) : JSON.stringify(init.json),
    });
  } catch {
    throw new Refusal(
      'Quiltside is not answering. See that it is running on this machine, then try again.',
      0,
    );
  }
  if (response.status === 204) return undefined as T;
  const type = response.headers.get('content-type') ?? '';
  const answer: unknown = type.includes('json')
    ? await response.json().catch(() => null)
    : await response.text();
  if (response.ok) return answer as T;
  if (response.status === 401) isLetIn.value = false;
  throw refusalOf(answer, response.status);
}

function refusalOf(answer: unknown, status: number): Refusal {
  const body = (answer ?? {}) as { message?: unknown; error?: unknown; fields?: unknown; field?: unknown };
  const message =
    typeof body.message === 'string'
      ? body.message
      : typeof body.error === 'string'
        ? body.error
        : `The server said ${status}.`;
  const fields: Record<string, string> = {};
  if (Array.isArray(body.fields)) {
    for (const item of body.fields as { field?: string; path?: string; message?: string }[]) {
      const name = item.field ?? item.path;
      if (name) fields[name] = item.message ?? message;
    }
  } else if (body.fields && typeof body.fields === 'object') {
    for (const [name, text] of Object.entries(body.fields)) fields[name] = String(text);
  }
  if (typeof body.field === 'string') fields[body.field] = message;
  return new Refusal(message, status, fields);
}
