import type { IncomingMessage } from 'node:http';
import type { FastifyInstance } from 'fastify';
import { Refusal } from '../store/quilt-store.ts';

/** Names by which this machine is reached over the loopback. */
const LOOPBACK = ['localhost', '127.0.0.1', '[::1]'];

/**
 * Whether a request comes from this product's own page. `hosts`: names besides the loopback's by which
 * the server may be called. A foreign name in `Host` is a page that points its own name at this machine
 * (DNS rebinding); a foreign `Origin` is another page in her browser. Returns why not, or undefined.
 */
export function whyForeign(request: IncomingMessage, hosts: readonly string[]): string | undefined {
  const host = request.headers.host ?? '';
  const name = /^(\[[0-9a-f:]+\]|[^:]+)(:\d+)?$/i.exec(host)?.[1]?.toLowerCase();
  if (name === undefined || !(LOOPBACK.includes(name) || hosts.includes(name))) {
    return `This server answers to ${LOOPBACK[0]} only, not to "${host.slice(0, 100)}". Open it by the address it printed when it started.`;
  }
  const { origin } = request.headers;
  if (origin !== undefined && !/^https?:\/\//i.test(origin))
    return 'Requests from other pages are not answered.';
  if (origin !== undefined && origin.replace(/^https?:\/\//i, '').toLowerCase() !== host.toLowerCase()) {
    return 'Requests from other pages are not answered.';
  }
  const site = request.headers['sec-fetch-site'];
  const changes = request.method !== 'GET' && request.method !== 'HEAD';
  if (changes && site !== undefined && site !== 'same-origin' && site !== 'none') {
    return 'Requests from other pages are not answered.';
  }
  return undefined;
}

/** Checks every request before anything of it is read. */
export function guard(app: FastifyInstance, hosts: readonly string[]): void {
  app.addHook('onRequest', async (request, reply) => {
    const why = whyForeign(request.raw, hosts);
    if (why !== undefined) {
      reply.code(403);
      throw new Refusal(why, 403);
    }
    reply.header('permissions-policy', 'microphone=(self), camera=(self), geolocation=()');
  });
}
