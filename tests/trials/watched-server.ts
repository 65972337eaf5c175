import { createHook } from 'node:async_hooks';

/** What a server holds: bytes of its heap after collection, and its timers, counted by where they were set. */
export type Held = { heapBytes: number; timers: Record<string, number> };

/**
 * The child server with its timers counted, also those that keep no process alive. Asked by any message it answers with
 * `Held`; run it with `--expose-gc`.
 */
const timers = new Map<number, string>();
createHook({
  init(id, type) {
    if (type !== 'Timeout') return;
    const stack = new Error('set here').stack?.split('\n').slice(2) ?? [];
    const ours = stack.find((line) => /\/(server|node_modules)\//.test(line)) ?? stack.at(-1) ?? '';
    timers.set(id, ours.trim().replace(/^.*\/(?=[^/]+\/[^/]+$)/, ''));
  },
  destroy(id) {
    timers.delete(id);
  },
}).enable();

process.on('message', async () => {
  for (let i = 0; i < 3; i++) {
    globalThis.gc?.();
    await new Promise((done) => setImmediate(done));
  }
  const counted: Record<string, number> = {};
  for (const where of timers.values()) counted[where] = (counted[where] ?? 0) + 1;
  const held: Held = { heapBytes: process.memoryUsage().heapUsed, timers: counted };
  process.send?.(held);
});

await import('../server/child-server.ts');
