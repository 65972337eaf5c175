import { fileURLToPath } from 'node:url';
import helmet from '@fastify/helmet';
import rateLimit from '@fastify/rate-limit';
import serveStatic from '@fastify/static';
import Fastify, { type FastifyInstance } from 'fastify';
import { Hearing } from './hearing.ts';
import { LanDoor } from './lan/lan-door.ts';
import { PairedDevices } from './lan/paired-devices.ts';
import { LeftOverSound } from './live/left-over-sound.ts';
import { LiveSocket } from './live/live-socket.ts';
import { answerErrors, answerUnknown } from './plugins/answer-errors.ts';
import { guard } from './plugins/guard.ts';
import { RecordingQueue } from './recordings/recording-queue.ts';
import { deviceRoutes } from './routes/device-routes.ts';
import { exportRoutes } from './routes/export-routes.ts';
import { mediaRoutes } from './routes/media-routes.ts';
import { openapiRoute } from './routes/openapi-route.ts';
import { quiltRoutes } from './routes/quilt-routes.ts';
import { retentionRoutes } from './routes/retention-routes.ts';
import { loadReader } from './run-command.ts';
import { BackupRounds } from './store/backup-rounds.ts';
import type { FileSystem } from './store/file-system.ts';
import { nodeFileSystem } from './store/file-system.ts';
import { Library } from './store/library.ts';
import type { StoreOptions } from './store/quilt-store.ts';

const PAGE = fileURLToPath(new URL('../client/dist', import.meta.url));
/** A note of 100,000 characters, each up to six bytes as JSON escapes it, and room for the rest. */
const BODY_BYTES = 2 * 1024 * 1024;

/** Long enough for a browser that was waiting to have its page. */
const LOAD_AFTER_MS = 300;

/** What a client may take of the server. */
export type Limits = {
  /** A request has told its head by then, or is ended. */
  headMs: number;
  /** A request that trickles in for longer than this is ended; uploads of hours of audio fit in it. */
  requestMs: number;
  /** How often the two above are looked after. */
  checkMs: number;
  requestsAMinute: number;
  /** Beats of the live socket; a page that has answered none since the last is let go. */
  heartbeatMs: number;
};
const LIMITS: Limits = {
  headMs: 20_000,
  requestMs: 15 * 60_000,
  checkMs: 10_000,
  requestsAMinute: 6_000,
  heartbeatMs: 20_000,
};

export type AppOptions = {
  /** Folder for all data. */
  dataFolder: string;
  fs?: FileSystem;
  /** Other sizes of segments and snapshots than the usual ones: for trials. */
  sizes?: StoreOptions;
  /** Folder of the speech models; left out, the server has no ears and takes typed notes only. */
  modelsDir?: string;
  /** Names besides the loopback's by which the server may be called. */
  hosts?: readonly string[];
  /** Addresses of this machine on the network, where other devices are to be let in. */
  lan?: readonly string[];
  /** Others than the usual ones: for tests that wait for their end. */
  limits?: Partial<Limits>;
  /** False in tests; else warnings and errors go to standard error. */
  logging?: boolean;
};

declare module 'fastify' {
  interface FastifyInstance {
    library: Library;
    hearing: Hearing | undefined;
    door: LanDoor | undefined;
  }
}

/** Builds the server without listening. Opens the data folder; `close` gives it free again. */
export async function buildApp(options: AppOptions): Promise<FastifyInstance> {
  const hosts = [...(options.hosts ?? []), ...(options.lan ? LanDoor.hosts(options.lan) : [])];
  const library = await Library.open(options.dataFolder, options.fs ?? nodeFileSystem, options.sizes);
  const limits = { ...LIMITS, ...options.limits };
  const app = Fastify({
    logger: options.logging === false ? false : { level: 'warn', stream: process.stderr },
    bodyLimit: BODY_BYTES,
    requestTimeout: limits.requestMs,
    http: { headersTimeout: limits.headMs, connectionsCheckingInterval: limits.checkMs },
    keepAliveTimeout: 10_000,
    forceCloseConnections: true,
  });
  const hearing = options.modelsDir ? new Hearing(options.modelsDir, library.settings.data.model) : undefined;
  const queue = hearing && new RecordingQueue(library, hearing);
  const leftOver = hearing && new LeftOverSound(library, hearing);
  app.decorate('library', library);
  app.decorate('hearing', hearing);
  const devices = await PairedDevices.open(library.fs, library.folder);
  const door =
    options.lan &&
    (await LanDoor.open(library.folder, options.lan, devices, (request, response) =>
      app.routing(request, response),
    ));
  app.decorate('door', door);
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
  await app.register(rateLimit, { max: limits.requestsAMinute, timeWindow: '1 minute' });

  const backups = new BackupRounds(library);
  app.get('/api/health', async () => ({
    ok: true,
    troubles: library.troubles,
    recogniser: hearing?.status,
    backups: backups.state,
  }));
  openapiRoute(app);
  deviceRoutes(app, devices, door, (id) => live.sendAway(id));
  quiltRoutes(app, library, backups);
  await mediaRoutes(app, library, queue);
  retentionRoutes(app, library, queue);
  exportRoutes(app, library);

  await app.register(serveStatic, { root: PAGE, maxAge: 0 });
  answerUnknown(app);

  const { heartbeatMs } = limits;
  const live = new LiveSocket({ library, hosts, hearing, queue, leftOver, door, heartbeatMs });
  live.attach(app.server);
  if (door) live.attach(door.server);
  app.addHook('preClose', async () => {
    live.close();
    await door?.close();
  });
  app.addHook('onListen', async () => {
    // After the first page is served: each of these takes all the processor there is.
    setTimeout(() => void library.index().then(() => backups.start()), LOAD_AFTER_MS).unref();
    setTimeout(() => void loadReader(), LOAD_AFTER_MS).unref();
    if (hearing && leftOver) setTimeout(() => void wakeUp(hearing, leftOver, queue), LOAD_AFTER_MS).unref();
  });
  app.addHook('onClose', async () => {
    await queue?.close();
    await backups.close();
    await hearing?.close();
    await library.close();
  });
  return app;
}

/** Gets the recogniser ready, then hears what was left over when the server stopped. */
async function wakeUp(
  hearing: Hearing,
  leftOver: LeftOverSound,
  queue: RecordingQueue | undefined,
): Promise<void> {
  if (!(await hearing.start())) return;
  await leftOver.hearAll();
  await queue?.resume();
}
