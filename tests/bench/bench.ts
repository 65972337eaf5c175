import { cpus, totalmem } from 'node:os';
import { pathToFileURL } from 'node:url';

export type Measured = { name: string; value: string; target: string };

/** The measured parts, each in its own module; `npm run bench -- reader log` runs only those named. */
const PARTS: Record<string, () => Promise<() => Promise<Measured[]>>> = {
  reader: async () => (await import('./reader-bench.ts')).benchReader,
  log: async () => (await import('./log-bench.ts')).benchLog,
  load: async () => (await import('./load-bench.ts')).benchLoad,
  estimate: async () => (await import('./estimate-bench.ts')).benchEstimate,
  record: async () => (await import('./record-bench.ts')).benchRecord,
  speech: async () => (await import('./speech-bench.ts')).benchSpeech,
};

async function bench(names: string[]): Promise<void> {
  const cpu = cpus();
  console.log(
    `Measured on ${cpu.length} × ${cpu[0]?.model.trim() ?? 'unknown processor'}, ${Math.round(totalmem() / 2 ** 30)} GiB, Node ${process.version}, ${process.platform}.`,
  );
  for (const name of names.length ? names : Object.keys(PARTS)) {
    const part = PARTS[name];
    if (!part) throw new Error(`bench: no part "${name}"; expected ${Object.keys(PARTS).join(', ')}`);
    console.log(`\n${name}`);
    const rows = await (await part())();
    const wide = Math.max(...rows.map((r) => r.name.length));
    for (const row of rows)
      console.log(`  ${row.name.padEnd(wide)}  ${row.value.padEnd(28)} target ${row.target}`);
  }
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  await bench(process.argv.slice(2));
  process.exit(0);
}
