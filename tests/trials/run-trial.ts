import { nodeFileSystem } from '../../server/store/file-system.ts';
import { QuiltStore } from '../../server/store/quilt-store.ts';
import { cutJournals } from './cut-journals.ts';
import { compressedDay } from './day.ts';
import { fuzz } from './fuzz.ts';
import { killRounds } from './kill-rounds.ts';
import { killWhileSpeaking } from './kill-while-speaking.ts';
import { powerCuts } from './power-cuts.ts';

/**
 * The long trials: `npm run trial:kill -- ROUNDS`, `trial:kill-speaking -- ROUNDS`, `trial:day -- NOTES UTTERANCES UPLOADS`,
 * `trial:fuzz -- NOTES MESSAGES SOUNDS ARCHIVES SEED`, `trial:power`, `trial:cut`, `trial:full-disk -- FOLDER`, where
 * FOLDER lies on a small file system of its own (a tmpfs of a few MB) that may be filled. Exit 1 where
 * anything acknowledged was lost.
 */
const [name, ...rest] = process.argv.slice(2);
const say = (line: string): void => {
  process.stdout.write(`${line}\n`);
};

/** So small that the disk gets full in all kinds of writing, the beginning of a segment among them. */
const SMALL = { segmentBytes: 50_000, snapshotEvery: 5 };

/** Fills a small disk with notes until it refuses, then makes room and goes on. */
async function fullDiskTrial(folder: string): Promise<string[]> {
  const wrong: string[] = [];
  const ballast = `${folder}/ballast`;
  const file = await nodeFileSystem.open(ballast, 'w');
  await file.write(Buffer.alloc(300_000), 0);
  await file.close();
  const store = await QuiltStore.open(nodeFileSystem, 'q', `${folder}/q`, SMALL);
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
  const again = await QuiltStore.open(nodeFileSystem, 'q', `${folder}/q`, SMALL);
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
  'kill-speaking': async () => {
    const { lost, twice, ...figures } = await killWhileSpeaking(Number(rest[0] ?? 100), say);
    for (const one of twice) say(`TWICE: ${one}`);
    say(JSON.stringify({ ...figures, lost: lost.length, twice: twice.length }));
    return lost;
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
  cut: async () => {
    const report = await cutJournals(Number(rest[0] ?? 2_000), Math.random);
    say(`${report.lengths} lengths and ${report.bits} bits, ${report.segments} segments`);
    return report.wrong;
  },
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
