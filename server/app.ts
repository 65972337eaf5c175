import { fileURLToPath } from 'node:url';
import helmet from '@fastify/helmet';
import rateLimit from '@fastify/rate-limit';
import serveStatic from '@fastify/static';
import Fastify, { type FastifyInstance } from 'fastify';
import { LiveSocket } from './live/live-socket.ts';
import { answerErrors, answerUnknown } from './plugins/answer-errors.ts';
import { guard } from './plugins/guard.ts';
import { quiltRoutes } from './routes/quilt-routes.ts';
import type { FileSystem } from './store/file-system.ts';
import { nodeFileSystem } from './store/file-system.ts';
import { Library } from './store/library.ts';

const PAGE = fileURLToPath(new URL('../client/dist', import.meta.url));
/** A note of 100,000 characters, each up to six bytes as JSON escapes it, and room for the rest. */
const BODY_BYTES = 2 * 1024 * 1024;

export type AppOptions = {
  /** Folder for all data. */
  dataFolder: string;
  fs?: FileSystem;
  /** Names besides the loopback's by which the server may be called. */
  hosts?: readonly string[];
  /** False in tests; else warnings and errors go to standard error. */
  logging?: boolean;
};

declare module 'fastify' {
  interface FastifyInstance {
    library: Library;
  }
}

/** Builds the server without listening. Opens the data folder; `close` gives it free again. */
export async function buildApp(options: AppOptions): Promise<FastifyInstance> {
  const hosts = options.hosts ?? [];
  const library = await Library.open(options.dataFolder, options.fs ?? nodeFileSystem);
  const app = Fastify({
    logger: options.logging === false ? false : { level: 'warn', stream: process.stderr },
    bodyLimit: BODY_BYTES,
    // A request that trickles in for longer than this is ended; uploads of hours of audio fit in it.
    requestTimeout: 15 * 60_000,
    keepAliveTimeout: 10_000,
    forceCloseConnections: true,
  });
  app.decorate('library', library);
  app.removeContentTypeParser('text/plain');
  answerErrors(app);
  guard(app, hosts);
  await app.register(helmet, {
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'none'"],
        scriptSrc: ["'self'"],
        styleSrc: ["'self'"],
        imgSrc: ["'self'", 'blob:', 'data:'],
        mediaSrc: ["'self'", 'blob:'],
        fontSrc: ["'self'"],
        connectSrc: ["'self'"],
        workerSrc: ["'self'"],
        manifestSrc: ["'self'"],
        baseUri: ["'none'"],
        formAction: ["'self'"],
        frameAncestors: ["'none'"],
      },
    },
    strictTransportSecurity: false,
    crossOriginEmbedderPolicy: false,
    referrerPolicy: { policy: 'no-referrer' },
  });
  await app.register(rateLimit, { max: 6_000, timeWindow: '1 minute' });

  app.get('/api/health', async () => ({ ok: true, troubles: library.troubles }));
  quiltRoutes(app, library);

  await app.register(serveStatic, { root: PAGE, maxAge: 0 });
  answerUnknown(app);

  const live = new LiveSocket({ library, hosts });
  live.attach(app.server);
  app.addHook('preClose', async () => live.close());
  app.addHook('onClose', async () => library.close());
  return app;
}
