import { rm } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { buildApp } from './app.ts';
import { buildPage } from './build-page.ts';
import { dataFolder } from './data-folder.ts';
import { drawQr } from './lan/draw-qr.ts';
import { lanAddresses } from './lan/lan-addresses.ts';
import type { LanDoor } from './lan/lan-door.ts';
import { makeDemo } from './make-demo.ts';
import { FolderInUse } from './store/folder-lock.ts';

const PORT = 4173;

async function start(): Promise<void> {
  const port = Number(process.env.PORT ?? PORT);
  if (!Number.isInteger(port) || port < 0 || port > 65_535) {
    throw new StartRefused(`PORT has to be a number from 0 to 65535, not "${process.env.PORT}".`);
  }
  const host = process.env.HOST ?? '127.0.0.1';
  const isOnLan = process.argv.includes('--lan');
  if (isOnLan && host !== '127.0.0.1') {
    throw new StartRefused('--lan opens a guarded way in from the network. Leave HOST out with it.');
  }
  const lan = isOnLan ? lanAddresses() : undefined;
  if (lan?.length === 0) {
    throw new StartRefused(
      'This machine is on no network, so --lan has no address to give. Join one, or start without.',
    );
  }
  await buildPage().catch((error: Error) => {
    process.stderr.write(`The page could not be built, so the last one made is served: ${error.message}\n`);
  });
  const isDemo = process.argv.includes('--demo');
  const folder = isDemo ? await makeDemo() : dataFolder(process.env);
  const modelsDir = fileURLToPath(new URL('../models', import.meta.url));
  const app = await buildApp({
    dataFolder: folder,
    modelsDir,
    hosts: host === '127.0.0.1' ? [] : [host],
    ...(lan ? { lan } : {}),
  });
  try {
    const address = await app.listen({ port, host });
    await app.door?.listen(port === 0 ? 0 : port + 1);
    const kept = isDemo
      ? 'This is the demo: what is done in it is gone when it stops.'
      : `Everything is kept in ${folder}`;
    process.stdout.write(`Quiltside is ready at ${address}\n${kept}\n`);
    if (app.door) process.stdout.write(wayIn(app.door));
  } catch (error) {
    await app.close();
    if ((error as NodeJS.ErrnoException).code === 'EADDRINUSE') {
      throw new StartRefused(
        `Port ${isOnLan ? `${port} or ${port + 1}` : port} is taken. Start with another, for example PORT=${port + 10} npm start.`,
      );
    }
    throw error;
  }
  for (const trouble of app.library.troubles) process.stderr.write(`${trouble}\n`);
  let stopping = false;
  const stop = (): void => {
    if (stopping) process.exit(1);
    stopping = true;
    app.close().then(
      async () => {
        if (isDemo) await rm(folder, { recursive: true, force: true });
        process.exit(0);
      },
      () => process.exit(1),
    );
  };
  process.on('SIGINT', stop);
  process.on('SIGTERM', stop);
}

/** How another device comes in: the addresses, the code, and both as a QR code. */
function wayIn(door: LanDoor): string {
  const code = door.code.shown?.code ?? '';
  const picture = process.stdout.isTTY ? `${drawQr(`${door.links[0]}/#pair-${code}`)}\n` : '';
  return `
Phones and tablets on this network: ${door.links.join(' or ')}
Code that lets one in: ${code} (works once, for ten minutes; another: Settings, Phones and tablets)
The browser there will warn that it does not know the certificate: it was made on this machine. Its fingerprint (SHA-256) is
${door.certificate.fingerprint}
${picture}`;
}

class StartRefused extends Error {}

start().catch((error: unknown) => {
  const known = error instanceof FolderInUse || error instanceof StartRefused;
  process.stderr.write(`${known ? (error as Error).message : ((error as Error).stack ?? String(error))}\n`);
  process.exit(1);
});
