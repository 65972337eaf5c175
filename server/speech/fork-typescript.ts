import { type ChildProcess, fork } from 'node:child_process';
import { createRequire } from 'node:module';
import { fileURLToPath, pathToFileURL } from 'node:url';

/** The loader that lets Node run TypeScript, by its full address: a bare name would be looked up in the working folder. */
const LOADER = pathToFileURL(createRequire(import.meta.url).resolve('tsx')).href;

/**
 * Starts a TypeScript file as a process with a message channel that carries typed arrays. Its standard error is piped, so
 * that the last words of a crash can be told. Garbage collection can be called: the tensors that the runtime hands over lie outside
 * the heap, where the engine is slow to see them.
 */
export function forkTypeScript(file: URL, args: string[]): ChildProcess {
  return fork(fileURLToPath(file), args, {
    serialization: 'advanced',
    execArgv: ['--expose-gc', '--import', LOADER],
    stdio: ['ignore', 'ignore', 'pipe', 'ipc'],
  });
}
