import { nodeFileSystem } from '../../server/store/file-system.ts';
import { readJournal } from '../../server/store/journal.ts';
import { writeLine } from '../../server/store/journal-line.ts';
import { QuiltStore } from '../../server/store/quilt-store.ts';
import type { NumberedEvent } from '../../shared/event.ts';
import { compressedDay } from './day.ts';
import { fuzz } from './fuzz.ts';
import { killRounds } from './kill-rounds.ts';
import { powerCuts } from './power-cuts.ts';

/**
 * The long trials: `npm run trial:kill`, `trial:day -- NOTES UTTERANCES UPLOADS`,
 * `trial:fuzz -- NOTES MESSAGES SOUNDS ARCHIVES SEED`, `trial:power`, `trial:cut`, `trial:full-disk -- FOLDER`, where
 * FOLDER lies on a small file system of its own (a tmpfs of a few MB) that may be filled. Exit 1 where
 * anything acknowledged was lost.
 */
const [name, ...rest] = process.argv.slice(2);
const say = (line: string): void => {
  process.stdout.write(`${line}\n`);
};

const journalOf = (count: number): NumberedEvent[] =>
  Array.from({ length: count }, (_, i) => ({
    seq: i + 1,
    at: '2026-03-14T10:00:00.000Z',
    event: { type: 'estimate-set', path: `p${i}`, value: 'x'.repeat((i * 37) % 200) },
  }));

/** Every length of a cut tail, and single bits turned over at random places. */
function cutTrial(places: number): string[] {
  const wrong: string[] = [];
  const events = journalOf(200);
  const lines = events.map(writeLine);
  const whole = Buffer.from(lines.join(''));
  const isAsWritten = (read: NumberedEvent): boolean => writeLine(read) === lines[read.seq - 1];
  const tail = whole.length - Buffer.byteLength(lines.slice(-20).join(''));
  for (let length = tail; length <= whole.length; length++) {
    const read = readJournal(whole.subarray(0, length)).events;
    if (read.length < 180 || !read.every(isAsWritten)) wrong.push(`cut at ${length}`);
  }
  for (let i = 0; i < places; i++) {
    const at = Math.floor(Math.random() * whole.length);
    const bit = Math.floor(Math.random() * 8);
    const damaged = Buffer.from(whole);
    damaged[at]! ^= 1 << bit;
    const { events: read, damage } = readJournal(damaged);
    if (read.length < 198 || !read.every(isAsWritten) || damage.length === 0)
      wrong.push(`byte ${at}, bit ${bit}`);
  }
  say(`${whole.length - tail + 1} lengths and ${places} bits`);
  return wrong;
}

/** Fills a small disk with notes until it refuses, then makes room and goes on. */
async function fullDiskTrial(folder: string): Promise<string[]> {
  const wrong: string[] = [];
  const ballast = `${folder}/ballast`;
  const file = await nodeFileSystem.open(ballast, 'w');
  await file.write(Buffer.alloc(300_000), 0);
  await file.close();
  const store = await QuiltStore.open(nodeFileSystem, 'q', `${folder}/q`);
  let kept = 0;
  let refused = '';
  const set = (n: number) =>
    store.commit(() => ({ events: [{ type: 'estimate-set', path: `p${n}`, value: 'x'.repeat(20_000) }] }));
  while (refused === '' && kept < 100_000) {
    await set(kept).then(
      () => kept++,
      (error: Error) => {
        refused = error.message;
      },
    );
  }
  say(`${kept} events until: ${refused}`);
  if (!/disk is full/.test(refused))
    wrong.push(`expected to be told that the disk is full, got: ${refused || 'nothing'}`);
  await nodeFileSystem.remove(ballast);
  await set(kept).then(
    () => kept++,
    (error: Error) => wrong.push(`with room again: ${error.message}`),
  );
  await store.close();
  const again = await QuiltStore.open(nodeFileSystem, 'q', `${folder}/q`);
  if (again.log.seq !== kept) wrong.push(`${kept} acknowledged, ${again.log.seq} there`);
  if (again.damage.length > 0) wrong.push(`damage: ${again.damage[0]?.message}`);
  await again.close();
  return wrong;
}

const TRIALS: Record<string, () => Promise<string[]> | string[]> = {
  kill: async () => {
    const report = await killRounds(Number(rest[0] ?? 300), say);
    say(
      `${report.rounds} kills, ${report.acknowledged} acknowledged (${report.photos} photographs, ${report.recordings} recordings), ${report.unacknowledgedKept} more kept, ${report.lost.length} lost`,
    );
    return report.lost;
  },
  day: async () => {
    const [notes = 5_000, utterances = 600, uploads = 50] = rest.map(Number);
    const { wrong, ...figures } = await compressedDay({ notes, utterances, uploads }, say);
    say(JSON.stringify(figures));
    return wrong;
  },
  fuzz: () => {
    const [notes = 200_000, messages = 20_000, sounds = 5_000, archives = 5_000, seed = Date.now() % 1e9] =
      rest.map(Number);
    return fuzz({ notes, messages, sounds, archives }, seed, say);
  },
  power: async () => {
    const report = await powerCuts(Number(rest[0] ?? 20), Math.random);
    say(`${report.cuts} power cuts, ${report.acknowledged} promises, ${report.lost.length} broken`);
    return report.lost;
  },
  cut: () => cutTrial(Number(rest[0] ?? 2_000)),
  'full-disk': () => fullDiskTrial(rest[0] ?? ''),
};

const trial = TRIALS[name ?? ''];
if (!trial || (name === 'full-disk' && !rest[0])) {
  process.stderr.write(
    `Expected one of ${Object.keys(TRIALS).join(', ')}; full-disk needs a folder on a small file system.\n`,
  );
  process.exit(2);
}
const lost = await trial();
for (const one of lost.slice(0, 50)) say(`LOST: ${one}`);
process.exit(lost.length > 0 ? 1 : 0);
