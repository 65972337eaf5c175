import { type ChildProcess, spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { writeLine } from '../../server/store/journal-line.ts';
import type { NumberedEvent } from '../../shared/event.ts';

export type Served = {
  address: string;
  port: number;
  folder: string;
  output: () => string;
  stop: () => Promise<void>;
};

/** A fresh data folder, with the journals given already in it. */
export function dataFolder(journals: Record<string, NumberedEvent[]> = {}): string {
  const folder = mkdtempSync(join(tmpdir(), 'quiltside-e2e-'));
  for (const [id, events] of Object.entries(journals)) {
    mkdirSync(join(folder, 'quilts', id), { recursive: true });
    writeFileSync(join(folder, 'quilts', id, 'journal.jsonl'), events.map(writeLine).join(''));
  }
  return folder;
}

export const removeFolder = (folder: string): void => rmSync(folder, { recursive: true, force: true });

/** The real server in a process of its own; resolves once it has printed its address. */
export function serve(folder: string, port = 0, flags: readonly string[] = []): Promise<Served> {
  const child: ChildProcess = spawn(process.execPath, ['--import', 'tsx', 'server/start.ts', ...flags], {
    env: { ...process.env, QUILTSIDE_DATA: folder, PORT: String(port), HOST: '127.0.0.1' },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let output = '';
  const stop = () =>
    new Promise<void>((done) => {
      if (child.exitCode !== null) return done();
      child.once('exit', () => done());
      child.kill('SIGTERM');
      setTimeout(() => child.kill('SIGKILL'), 5000).unref();
    });
  return new Promise((resolve, reject) => {
    const look = (chunk: Buffer) => {
      output += chunk.toString();
      const found = /ready at (http:\/\/[\d.]+:(\d+))/.exec(output);
      if (found) resolve({ address: found[1]!, port: Number(found[2]), folder, output: () => output, stop });
    };
    child.stdout?.on('data', look);
    child.stderr?.on('data', look);
    child.once('exit', (code) => reject(new Error(`the server ended with ${code}: ${output}`)));
    setTimeout(() => reject(new Error(`the server said no address in 90 s: ${output}`)), 90_000).unref();
  });
}
