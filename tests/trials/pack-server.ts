import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

const PHOTO_PROCESS = new URL('../../server/photos/photo-process.ts', import.meta.url).href;

/**
 * Packs the child server into one file, so that a start costs half the processor time and a trial of hundreds of
 * starts ends. It lies where the dependencies are found. `run` is what Node is given; `remove` takes it away again.
 */
export async function packServer(): Promise<{ run: string[]; remove: () => Promise<void> }> {
  const folder = await mkdtemp(join(ROOT, 'node_modules', '.trial-'));
  await build({
    root: ROOT,
    configFile: false,
    logLevel: 'error',
    build: { ssr: 'tests/server/child-server.ts', outDir: folder, target: 'node20', minify: false },
  });
  // Photographs are written anew by a process that is looked for beside the one that starts it.
  await writeFile(join(folder, 'photo-process.ts'), `import ${JSON.stringify(PHOTO_PROCESS)};\n`);
  return {
    run: [join(folder, 'child-server.js')],
    remove: () => rm(folder, { recursive: true, force: true }),
  };
}
