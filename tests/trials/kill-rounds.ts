import { once } from 'node:events';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { encodeWav } from '../../server/store/encode-wav.ts';
import type { NumberedEvent } from '../../shared/event.ts';
import type { Command } from '../../shared/wire.ts';
import { spawnServer } from '../server/start-server.ts';
import { packServer } from './pack-server.ts';

/** Pictures and recordings are compared after each kill for the rounds just gone, and all of them every so many rounds. */
const ALL_EVERY = 25;
const RECORDINGS_A_ROUND = 3;
/** So small that every round closes segments and writes snapshots, and is killed in the midst of it. */
const SMALL = { segmentBytes: 30_000, snapshotEvery: 25 };

/** Each is another; small, for it is the keeping that is tried. */
const pictureOf = (round: number, n: number): Promise<Buffer> =>
  sharp(Buffer.alloc(40 * 40 * 3, round + n * 31), { raw: { width: 40, height: 40, channels: 3 } })
    .png()
    .toBuffer();
const pixelsOf = (picture: Buffer): Promise<Buffer> => sharp(picture).removeAlpha().raw().toBuffer();

export type KillReport = {
  rounds: number;
  acknowledged: number;
  /** Of these: files. */
  photos: number;
  recordings: number;
  unacknowledgedKept: number;
  lost: string[];
};

/**
 * Kills a real server with SIGKILL at random moments under a load of notes, edits, photographs,
 * recordings and settings, starts it again on the same folder, and looks for each thing that had been acknowledged. The
 * server has the queue of recordings but no model: what is tried is that a recording taken in is there, not its words.
 */
export async function killRounds(
  rounds: number,
  say: (line: string) => void = () => undefined,
): Promise<KillReport> {
  const folder = await mkdtemp(join(tmpdir(), 'quiltside-kill-'));
  const report: KillReport = {
    rounds,
    acknowledged: 0,
    photos: 0,
    recordings: 0,
    unacknowledgedKept: 0,
    lost: [],
  };
  const notes = new Map<string, string>();
  const photos = new Map<string, { bytes: Buffer; round: number }>();
  /** By the job that each got. */
  const recordings = new Map<string, { bytes: Buffer; round: number }>();
  const edits = new Map<string, string>();
  let idleMin = 30;
  let unsureIdle: number | undefined;
  let quiltId: string | undefined;
  const { run, remove } = await packServer();
  const modelsDir = join(folder, 'no-models');
  try {
    for (let round = 0; round <= rounds; round++) {
      const server = await spawnServer(join(folder, 'data'), { run, modelsDir, sizes: SMALL });
      try {
        if (quiltId === undefined) {
          quiltId = await server.makeQuilt();
          if (!quiltId) throw new Error('no quilt was made');
        }
        const id = quiltId;
        // What was acknowledged before the last kill has to be here.
        const { events } = (await (await server.get(`/api/quilts/${id}/events`)).json()) as {
          events: NumberedEvent[];
        };
        const texts = new Map(
          events.flatMap(({ event }) =>
            event.type === 'note-taken' ? [[event.note.id, event.note.text]] : [],
          ),
        );
        for (const [noteId, text] of notes)
          if (texts.get(noteId) !== text) report.lost.push(`note ${noteId}`);
        report.unacknowledgedKept += texts.size - notes.size;
        for (const [noteId, text] of texts) notes.set(noteId, text);
        const set = new Map(
          events.flatMap(({ event }) =>
            event.type === 'record-edited' ? [[event.passage, event.text]] : [],
          ),
        );
        for (const [passage, text] of edits)
          if (set.get(passage) !== text) report.lost.push(`edit ${passage}`);
        const since = round % ALL_EVERY === 0 || round === rounds ? 0 : round - 2;
        const isThere = async (address: string, bytes: Buffer): Promise<boolean> => {
          const got = await server.get(`/api/quilts/${id}/${address}`);
          return Buffer.from(await got.arrayBuffer()).equals(bytes);
        };
        for (const [file, { bytes, round: taken }] of photos) {
          if (taken < since) continue;
          const got = await server.get(`/api/quilts/${id}/photos/${file}`);
          const kept = await pixelsOf(Buffer.from(await got.arrayBuffer())).catch(() => undefined);
          // Written anew, so its pixels are compared: PNG keeps them as they are.
          if (!kept?.equals(await pixelsOf(bytes))) report.lost.push(`photograph ${file}`);
        }
        const jobs = (await (await server.get(`/api/quilts/${id}/jobs`)).json()) as { id: string }[];
        const queued = new Set(jobs.map((job) => job.id));
        for (const [job, { bytes, round: taken }] of recordings) {
          if (!queued.has(job)) report.lost.push(`recording ${job} from the queue`);
          if (taken < since || !queued.has(job)) continue;
          const kept = await readFile(join(folder, 'data', 'quilts', id, 'jobs', `${job}.json`), 'utf8');
          const { file } = JSON.parse(kept) as { file: string };
          if (!(await isThere(`audio/${file}`, bytes))) report.lost.push(`recording ${job}`);
        }
        const settings = (await (await server.get('/api/settings')).json()) as { idleMin: number };
        if (settings.idleMin !== idleMin && settings.idleMin !== unsureIdle) report.lost.push('a setting');
        idleMin = settings.idleMin;
        const whole = (await (await server.get(`/api/quilts/${id}`)).json()) as {
          damage: { kind: string }[];
        };
        for (const damage of whole.damage)
          if (damage.kind !== 'tail') report.lost.push(`damage: ${damage.kind}`);
        if (round === rounds) break;

        let running = true;
        const load = async (work: (n: number) => Promise<void>): Promise<void> => {
          for (let n = 0; running; n++) {
            try {
              await work(n);
            } catch {
              return;
            }
          }
        };
        const acknowledged = async (command: Command): Promise<boolean> =>
          (await server.command(id, command)).ok;
        const loads = [
          ...[0, 1, 2, 3].map((lane) =>
            load(async (n) => {
              const clientId = `r${round}l${lane}n${n}`;
              const text = `Row ${(n % 7) + 1}, block ${(n % 5) + 1} has a tear. ${'x'.repeat((n * 97) % 700)}`;
              if (!(await acknowledged({ type: 'take-note', clientId, text }))) throw new Error('refused');
              notes.set(clientId, text);
              report.acknowledged++;
            }),
          ),
          load(async (n) => {
            const passage = `r${round}n${n}`;
            const edit = {
              type: 'edit-record',
              document: 'letter',
              passage,
              text: `${n}`,
              facts: '',
            } as const;
            if (!(await acknowledged(edit))) throw new Error('refused');
            edits.set(passage, `${n}`);
            report.acknowledged++;
          }),
          load(async (n) => {
            const bytes = await pictureOf(round, n);
            const form = new FormData();
            form.append('file', new Blob([new Uint8Array(bytes)]), 'a.png');
            const sent = await server.get(`/api/quilts/${id}/photos`, { method: 'POST', body: form });
            if (!sent.ok) throw new Error('refused');
            photos.set(((await sent.json()) as { file: string }).file, { bytes, round });
            report.acknowledged++;
          }),
          load(async (n) => {
            if (n === RECORDINGS_A_ROUND) throw new Error('enough');
            const bytes = Buffer.from(encodeWav(Float32Array.from({ length: 4_000 }, Math.random)));
            const form = new FormData();
            form.append('startAt', '2026-03-14T10:00:00Z');
            form.append('file', new Blob([new Uint8Array(bytes)]), `r${round}n${n}.wav`);
            const sent = await server.get(`/api/quilts/${id}/recordings`, { method: 'POST', body: form });
            if (!sent.ok) throw new Error('refused');
            recordings.set(((await sent.json()) as { id: string }).id, { bytes, round });
            report.acknowledged++;
          }),
          load(async (n) => {
            unsureIdle = 10 + ((round + n) % 200);
            const sent = await server.get('/api/settings', {
              method: 'PUT',
              headers: { 'content-type': 'application/json' },
              body: JSON.stringify({ idleMin: unsureIdle }),
            });
            if (!sent.ok) throw new Error('refused');
            idleMin = unsureIdle;
            report.acknowledged++;
          }),
        ];
        // At a random moment, but not before something was acknowledged: a slow machine must not make this easy.
        const enough = report.acknowledged + 1 + Math.floor(Math.random() * 60);
        while (report.acknowledged < enough && running)
          await new Promise((done) => setTimeout(done, Math.random() * 10));
        server.child.kill('SIGKILL');
        running = false;
        await Promise.all([once(server.child, 'exit'), ...loads]);
        say(
          `round ${round + 1} of ${rounds}: ${report.acknowledged} acknowledged, ${report.lost.length} lost`,
        );
      } finally {
        server.child.kill('SIGKILL');
      }
    }
    report.photos = photos.size;
    report.recordings = recordings.size;
    return report;
  } finally {
    await remove();
    await rm(folder, { recursive: true, force: true });
  }
}
