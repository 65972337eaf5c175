import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';

/** A real folder that goes when the test is over. */
export async function temporaryFolder(): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'quiltside-test-'));
  onTestFinished(() => rm(folder, { recursive: true, force: true }));
  return folder;
}
