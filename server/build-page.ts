import { readdir, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = fileURLToPath(new URL('..', import.meta.url));

/** Builds the page into client/dist where that is missing or older than what it is made from. */
export async function buildPage(): Promise<'built' | 'fresh'> {
  const made = await stat(join(ROOT, 'client/dist/index.html')).then(
    (s) => s.mtimeMs,
    () => 0,
  );
  const changed = await Promise.all(
    ['client', 'core', 'shared', 'vite.config.ts', 'package-lock.json'].map((part) =>
      newest(join(ROOT, part)),
    ),
  );
  if (made > Math.max(...changed)) return 'fresh';
  const { build } = await import('vite');
  await build({ root: join(ROOT, 'client'), configFile: join(ROOT, 'vite.config.ts'), logLevel: 'error' });
  return 'built';
}

async function newest(path: string): Promise<number> {
  const found = await stat(path).catch(() => undefined);
  if (!found) return 0;
  if (!found.isDirectory()) return found.mtimeMs;
  const inside = (await readdir(path)).filter((name) => name !== 'dist' && name !== 'node_modules');
  // The folder's own time too: a file taken away changes it.
  return Math.max(found.mtimeMs, ...(await Promise.all(inside.map((name) => newest(join(path, name))))));
}
