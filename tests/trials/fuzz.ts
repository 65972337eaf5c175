import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { readNote, SILENCE } from '../../core/conversation/read-note.ts';
import { ArchiveRefused, importArchive } from '../../server/export/archive/import-archive.ts';
import { writeArchive } from '../../server/export/archive/write-archive.ts';
import { AudioFileError, decodeAudio } from '../../server/speech/decode-audio.ts';
import { Reading } from '../../shared/note.ts';
import { readBody } from '../export/read-body.ts';
import { demoLog } from '../record/demo-log.ts';
import { spawnServer } from '../server/start-server.ts';
import { AUDIO } from '../speech/support/places.ts';

export type FuzzCounts = { notes: number; messages: number; sounds: number; archives: number };
/** Processor time that one case may take, ms: a hang shows on a busy machine as on an idle one. */
const MOST_MS = 1_000;
/** Below the 400 messages in a second at which a page is let go. */
const MESSAGES_A_TURN = 100;

/**
 * Notes, socket messages, recordings and archives that nobody would send. None may crash or take a second of processor
 * time, be taken wrongly, or be refused in other than our own words. Returns what went wrong; `seed` has it again.
 */
export async function fuzz(
  counts: FuzzCounts,
  seed: number,
  say: (line: string) => void = () => undefined,
): Promise<string[]> {
  const wrong: string[] = [];
  const folder = mkdtempSync(join(tmpdir(), 'quiltside-fuzz-'));
  const timed = async (what: string, work: () => unknown): Promise<void> => {
    const before = process.cpuUsage();
    try {
      await work();
    } catch (error) {
      wrong.push(`${what}: ${(error as Error).stack?.slice(0, 300)}`);
    }
    const { user } = process.cpuUsage(before);
    if (user / 1000 > MOST_MS) wrong.push(`${what}: ${Math.round(user / 1000)} ms`);
  };
  try {
    say(`seed ${seed}`);
    for (const [i, text] of fc.sample(note, { seed, numRuns: counts.notes }).entries()) {
      await timed(`note ${i} ${JSON.stringify(text)}`, () =>
        Reading.parse(
          readNote(text, { at: AT, quilt: { rows: 5, blocks: 6 }, conversation: SILENCE }).reading,
        ),
      );
    }
    say(`${counts.notes} notes, ${wrong.length} wrong`);

    const files = readdirSync(AUDIO).filter((name) => name.startsWith('short'));
    const sounds = files.map((name) => readFileSync(join(AUDIO, name)));
    for (const [i, { which, ...damage }] of fc.sample(damaging, { seed, numRuns: counts.sounds }).entries()) {
      const path = join(folder, 'sound');
      writeFileSync(path, damaged(sounds[which % sounds.length]!, damage));
      await timed(`sound ${i} of ${files[which % files.length]}`, async () => {
        try {
          for await (const { pcm } of decodeAudio(path)) void pcm;
        } catch (error) {
          if (!(error instanceof AudioFileError)) throw error;
        }
      });
    }
    say(`${counts.sounds} damaged recordings, ${wrong.length} wrong`);

    const { log, events } = demoLog();
    const source = join(folder, 'quilt');
    mkdirSync(join(source, 'audio'), { recursive: true });
    mkdirSync(join(source, 'photos'));
    writeFileSync(join(source, 'audio/n4.flac'), sounds[0]!.subarray(0, 20_000));
    const parts = [{ path: 'README.txt', content: async () => 'A quilt.' }];
    const madeAt = new Date('2026-03-14T13:00:00Z');
    const whole = await readBody(writeArchive({ quilt: log.quilt, events, folder: source, parts, madeAt }));
    for (const [i, { which: _, ...damage }] of fc
      .sample(damaging, { seed, numRuns: counts.archives })
      .entries()) {
      const path = join(folder, 'a.zip');
      const into = join(folder, 'in', `${i}`);
      writeFileSync(path, damaged(whole, damage));
      await timed(`archive ${i}`, async () => {
        try {
          const taken = await importArchive(path, into);
          if (JSON.stringify(taken.events) !== JSON.stringify(events)) throw new Error('other events');
        } catch (error) {
          if (!(error instanceof ArchiveRefused)) throw error;
        }
      });
      rmSync(into, { recursive: true, force: true });
    }
    say(`${counts.archives} damaged archives, ${wrong.length} wrong`);

    wrong.push(...(await fuzzSocket(join(folder, 'data'), counts.messages, seed)));
    say(`${counts.messages} messages, ${wrong.length} wrong`);
    return wrong;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** After each turn the server has to answer, and every note acknowledged has to be in the log. */
async function fuzzSocket(folder: string, count: number, seed: number): Promise<string[]> {
  const wrong: string[] = [];
  const server = await spawnServer(folder);
  try {
    const id = await server.makeQuilt();
    const acknowledged = new Set<string>();
    const messages = fc.sample(message(id), { seed, numRuns: count });
    for (let from = 0; from < messages.length; from += MESSAGES_A_TURN) {
      const client = await server.live();
      client.send({ type: 'hello', quiltId: id, sinceSeq: 0 });
      for (const text of messages.slice(from, from + MESSAGES_A_TURN)) client.socket.send(text);
      client.send({ type: 'ping' });
      await client.until('pong', () => true, 60_000).catch((error: Error) => wrong.push(error.message));
      for (const answer of client.messages)
        if (answer.type === 'done' && answer.noteId) acknowledged.add(answer.noteId);
      client.socket.terminate();
    }
    const { events } = (await (await server.get(`/api/quilts/${id}/events`)).json()) as {
      events: { event: { type: string; note?: { id: string } } }[];
    };
    const kept = new Set(events.map(({ event }) => event.note?.id));
    for (const one of acknowledged) if (!kept.has(one)) wrong.push(`note ${one} acknowledged and not there`);
  } finally {
    server.child.kill('SIGKILL');
  }
  return wrong;
}

const AT = '2026-03-14T10:30:00-05:00';
const WORDS =
  'row block two three 3-2 the that it them last next bottom corner border binding seam patched darned took off sewed torn tear stained worn gone is was will maybe and but not , . ; - ( & started stopped half past twenty minutes until yards £3 inches by undecided leave same again scratch um gingham except'.split(
    ' ',
  );
const note = fc.oneof(
  fc.array(fc.constantFrom(...WORDS), { maxLength: 30 }).map((words) => words.join(' ')),
  fc.string({ maxLength: 200 }),
  fc.string({ unit: 'grapheme', maxLength: 80 }),
);

const place = fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true });
const damaging = fc.record({
  which: fc.nat(1000),
  flips: fc.array(fc.record({ place, to: fc.nat(255) }), { minLength: 1, maxLength: 8 }),
  /** Share of the file that is left. */
  left: fc.oneof(fc.constant(1), place),
});
function damaged(
  whole: Uint8Array,
  { flips, left }: { flips: { place: number; to: number }[]; left: number },
): Uint8Array {
  const bytes = Uint8Array.from(whole.subarray(0, Math.ceil(whole.length * left)));
  // The square of a share lies near the start, where the heads are.
  for (const { place, to } of flips) bytes[Math.floor(place * place * bytes.length)] = to;
  return bytes;
}

const message = (quiltId: string): fc.Arbitrary<string> => {
  const command = fc.oneof(
    fc.record({ type: fc.constant('take-note'), clientId: fc.string({ maxLength: 90 }), text: note }),
    fc.record({ type: fc.constant('undo-change'), seq: fc.integer() }),
    fc.record({ type: fc.constant('set-estimate'), path: fc.string(), value: fc.jsonValue() }),
    fc.record({ type: fc.constant('correct-entry'), entryId: fc.string(), entry: fc.jsonValue() }),
    fc.record({ type: fc.string(), text: fc.jsonValue() }),
  );
  return fc.oneof(
    fc
      .record({ type: fc.constant('command'), ref: fc.string({ maxLength: 90 }), command })
      .map((one) => JSON.stringify(one)),
    fc
      .record({
        type: fc.constantFrom('hello', 'microphone-on', 'microphone-off', 'cancel-job', 'speaking'),
        quiltId: fc.constantFrom(quiltId, '../..', ''),
        sinceSeq: fc.integer(),
        streamId: fc.string(),
        jobId: fc.string(),
        on: fc.boolean(),
      })
      .map((one) => JSON.stringify(one)),
    fc.json(),
    fc.string(),
  );
};
