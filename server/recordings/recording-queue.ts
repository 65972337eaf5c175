import { join } from 'node:path';
import { z } from 'zod';
import { Job } from '../../shared/wire.ts';
import { contextOf, type Hearing } from '../hearing.ts';
import { runCommand } from '../run-command.ts';
import type { Recogniser } from '../speech/recogniser.ts';
import { createRecordingReader, type RecordingReader } from '../speech/recording-reader.ts';
import { transcribeRecording } from '../speech/transcribe-recording.ts';
import { audioToDelete, deleteAudio } from '../store/audio-to-delete.ts';
import type { Library } from '../store/library.ts';
import { newId } from '../store/new-id.ts';
import { type QuiltStore, Refusal } from '../store/quilt-store.ts';
import { writeWholeFile } from '../store/write-whole-file.ts';

/** What is kept of a job, in `jobs/<id>.json` of the quilt's folder. */
const KeptJob = z.object({
  job: Job,
  /** In the quilt's audio folder. */
  file: z.string(),
  sha256: z.string(),
  startAt: z.string(),
  /** Utterances worked off: after a restart they are passed over unheard. */
  utterances: z.number().int().default(0),
});
type KeptJob = z.infer<typeof KeptJob>;

/** Files up to this size share one reading process; a longer one has its own, which gives its memory back. */
const SMALL_BYTES = 5_000_000;

const IN_HAND: readonly Job['state'][] = ['waiting', 'working', 'paused'];

/**
 * The queue of recordings: one is worked on at a time, live speech goes before it in the recogniser. Each
 * utterance becomes a note at its true time. The queue survives a restart; a note is never taken twice,
 * because its id follows from the recording and its place in it.
 */
export class RecordingQueue {
  readonly #jobs = new Map<string, KeptJob>();
  readonly #loaded = new Map<string, Promise<void>>();
  /** The last write of each job that is under way. */
  readonly #writing = new Map<string, Promise<void>>();
  readonly #listeners = new Set<(job: Job) => void>();
  #current: { id: string; abort: AbortController; done: Promise<void> } | undefined;
  #closed = false;
  /** Reads small files, while there are any. */
  #reader: RecordingReader | undefined;

  constructor(
    readonly library: Library,
    readonly hearing: Hearing,
  ) {}

  onJob(listener: (job: Job) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Takes up the jobs of all quilts that were in hand when the server stopped. */
  async resume(): Promise<void> {
    await this.library.index();
    for (const card of this.library.list()) {
      if (!(await this.#hasWork(card.id))) continue;
      await this.library.quilt(card.id).then(
        (store) => this.#load(store),
        () => undefined,
      );
    }
    this.#next();
  }

  /** Looked up in the jobs' files: two hundred quilts need not be opened to find that there is nothing to do. */
  async #hasWork(quiltId: string): Promise<boolean> {
    const folder = join(this.library.folderOf(quiltId), 'jobs');
    for (const name of await this.library.fs.list(folder)) {
      const bytes = await this.library.fs.readFile(join(folder, name)).catch(() => new Uint8Array());
      const state = /"state"\s*:\s*"(\w+)"/.exec(Buffer.from(bytes).toString('utf8'))?.[1];
      if (IN_HAND.some((one) => one === state)) return true;
    }
    return false;
  }

  async list(store: QuiltStore): Promise<Job[]> {
    await this.#load(store);
    return [...this.#jobs.values()].filter((kept) => kept.job.quiltId === store.id).map((kept) => kept.job);
  }

  /** The job or the recording of a quilt that has the same content. */
  async findTwin(store: QuiltStore, sha256: string): Promise<string | undefined> {
    await this.#load(store);
    for (const kept of this.#jobs.values()) {
      if (kept.job.quiltId === store.id && kept.sha256 === sha256 && kept.job.state !== 'failed')
        return kept.job.name;
    }
    return store.log.recordings.find((recording) => recording.sha256 === sha256)?.name;
  }

  async add(
    store: QuiltStore,
    recording: { file: string; name: string; sha256: string; startAt: string },
  ): Promise<Job> {
    await this.#load(store);
    const job: Job = {
      id: newId(),
      quiltId: store.id,
      name: recording.name,
      state: 'waiting',
      doneS: 0,
      totalS: null,
      notes: 0,
      message: 'Waiting its turn.',
    };
    const { file, sha256, startAt } = recording;
    await this.#change({ job, file, sha256, startAt, utterances: 0 });
    this.#next();
    return job;
  }

  async pause(store: QuiltStore, id: string): Promise<Job> {
    return this.#halt(store, id, 'paused', 'Paused. What was heard so far is in the log.');
  }

  async cancel(store: QuiltStore, id: string): Promise<Job> {
    return this.#halt(store, id, 'cancelled', 'Cancelled. What was heard before stays in the log.');
  }

  async carryOn(store: QuiltStore, id: string): Promise<Job> {
    const kept = await this.#find(store, id);
    if (kept.job.state !== 'paused' && kept.job.state !== 'failed') {
      throw new Refusal(
        `This recording is ${kept.job.state}; only a paused or failed one can be taken up again.`,
      );
    }
    await this.#change({ ...kept, job: { ...kept.job, state: 'waiting', message: 'Waiting its turn.' } });
    this.#next();
    return this.#jobs.get(id)!.job;
  }

  /** Stops work; what was in hand goes on with the next start. */
  async close(): Promise<void> {
    this.#closed = true;
    this.#current?.abort.abort();
    await this.#current?.done;
    await this.#reader?.close();
    this.#listeners.clear();
  }

  async #halt(store: QuiltStore, id: string, state: 'paused' | 'cancelled', message: string): Promise<Job> {
    const kept = await this.#find(store, id);
    if (!IN_HAND.includes(kept.job.state)) {
      throw new Refusal(`This recording is ${kept.job.state} already.`);
    }
    if (this.#current?.id === id) {
      this.#current.abort.abort();
      await this.#current.done;
    }
    const now = this.#jobs.get(id)!;
    // It may have come to its end while it was being stopped.
    if (!IN_HAND.includes(now.job.state)) return now.job;
    await this.#change({ ...now, job: { ...now.job, state, message } });
    if (state === 'cancelled') await this.#addToLog(store, now, now.job.doneS);
    this.#next();
    return this.#jobs.get(id)!.job;
  }

  async #find(store: QuiltStore, id: string): Promise<KeptJob> {
    await this.#load(store);
    const kept = this.#jobs.get(id);
    if (kept?.job.quiltId !== store.id) throw new Refusal('There is no such recording in the queue.', 404);
    return kept;
  }

  #load(store: QuiltStore): Promise<void> {
    let loading = this.#loaded.get(store.id);
    if (!loading) {
      loading = this.#read(store);
      this.#loaded.set(store.id, loading);
    }
    return loading;
  }

  async #read(store: QuiltStore): Promise<void> {
    const folder = join(store.folder, 'jobs');
    for (const name of await store.fs.list(folder)) {
      if (!name.endsWith('.json')) continue;
      try {
        const text = Buffer.from(await store.fs.readFile(join(folder, name))).toString('utf8');
        const kept = KeptJob.parse(JSON.parse(text));
        if (kept.job.state === 'working') kept.job.state = 'waiting';
        this.#jobs.set(kept.job.id, kept);
      } catch {
        // The recording itself is in the audio folder and can be dropped in again.
      }
    }
  }

  /**
   * A job can be taken in hand while it is still being written down as waiting: its files are written one after the other, for
   * two writers of one file would leave a half one behind a crash.
   */
  async #change(kept: KeptJob): Promise<void> {
    const { id } = kept.job;
    this.#jobs.set(id, kept);
    const before = this.#writing.get(id) ?? Promise.resolve();
    const write = before.catch(() => undefined).then(() => this.#keep(kept));
    this.#writing.set(id, write);
    try {
      await write;
    } finally {
      if (this.#writing.get(id) === write) this.#writing.delete(id);
    }
    this.#tell(kept.job);
  }

  async #keep(kept: KeptJob): Promise<void> {
    const store = await this.library.quilt(kept.job.quiltId);
    await store.fs.makeFolder(join(store.folder, 'jobs'));
    await writeWholeFile(
      store.fs,
      join(store.folder, 'jobs', `${kept.job.id}.json`),
      Buffer.from(JSON.stringify(kept)),
    );
  }

  #tell(job: Job): void {
    for (const listener of this.#listeners) listener(job);
  }

  #next(): void {
    if (this.#current || this.#closed) return;
    const kept = [...this.#jobs.values()].find((one) => one.job.state === 'waiting');
    if (!kept) {
      void this.#reader?.close();
      this.#reader = undefined;
      return;
    }
    const abort = new AbortController();
    const done = this.#work(kept.job.id, abort.signal)
      .catch(() => undefined)
      .finally(() => {
        this.#current = undefined;
        this.#next();
      });
    this.#current = { id: kept.job.id, abort, done };
  }

  async #work(id: string, signal: AbortSignal): Promise<void> {
    const begun = this.#jobs.get(id)!;
    let store: QuiltStore;
    try {
      store = await this.library.quilt(begun.job.quiltId);
    } catch {
      // Its quilt was put away; the recording went with it.
      this.#jobs.delete(id);
      return;
    }
    await this.#change({ ...begun, job: { ...begun.job, state: 'working', message: 'Listening to it.' } });
    try {
      const seconds = await this.#transcribe(store, id, signal);
      const kept = this.#jobs.get(id)!;
      await this.#addToLog(store, kept, seconds);
      const message =
        kept.job.notes === 0
          ? 'Done. No words were heard in it.'
          : `Done: ${kept.job.notes} ${kept.job.notes === 1 ? 'note' : 'notes'}.`;
      await this.#change({
        ...kept,
        job: { ...kept.job, state: 'done', doneS: seconds, totalS: seconds, message },
      });
      if (this.library.settings.data.keepAudio === 'none') await this.#forgetSound(store, kept.file);
    } catch (error) {
      if (signal.aborted) return;
      const kept = this.#jobs.get(id)!;
      await this.#change({
        ...kept,
        job: { ...kept.job, state: 'failed', message: (error as Error).message },
      });
    }
  }

  async #transcribe(store: QuiltStore, id: string, signal: AbortSignal): Promise<number> {
    const { file, startAt, utterances } = this.#jobs.get(id)!;
    const startMs = Date.parse(startAt);
    let counted = 0;
    const passOver = utterances;
    // The cutting of a file is always the same, so what was worked off before a restart is known by its number.
    const recogniser: Recogniser = {
      ...this.hearing.recogniser,
      recognise: (pcm, context, options) => {
        counted++;
        return counted <= passOver
          ? Promise.resolve(NOTHING)
          : this.hearing.recogniser.recognise(pcm, context, options);
      },
    };
    const path = join(store.folder, 'audio', file);
    const isSmall = ((await store.fs.stat(path))?.size ?? 0) <= SMALL_BYTES;
    if (isSmall) this.#reader ??= createRecordingReader(this.hearing.modelsDir);
    const reading = transcribeRecording(path, {
      recogniser,
      reader: isSmall ? this.#reader : undefined,
      modelsDir: this.hearing.modelsDir,
      context: (before) => contextOf(store.log, before ?? lastOf(store, id)),
      signal,
      onProgress: ({ share, doneS }) => this.#progress(id, share, doneS),
    });
    for (;;) {
      const next = await reading.next();
      if (next.done) return next.value.seconds;
      const { startS, endS, text, confidence, words, others } = next.value;
      const at = new Date(startMs + startS * 1000).toISOString();
      await runCommand(
        store,
        { type: 'take-note', clientId: `${id}-${counted}`, text, at },
        {
          now: at,
          idleMin: this.library.settings.data.idleMin,
          heard: {
            source: 'recording',
            audio: { file, startS, endS, confidence, words, recordingId: id },
            others,
          },
        },
      );
      const kept = this.#jobs.get(id)!;
      await this.#change({ ...kept, utterances: counted, job: { ...kept.job, notes: kept.job.notes + 1 } });
    }
  }

  /** No sound is kept once it is written down; a recording that gave no word stays. */
  async #forgetSound(store: QuiltStore, file: string): Promise<void> {
    const written = await audioToDelete(store, await this.list(store));
    if (written.some((sound) => sound.file === file)) await deleteAudio(store, [file]);
  }

  #progress(id: string, share: number, doneS: number): void {
    const kept = this.#jobs.get(id)!;
    const totalS = share > 0.01 ? Math.round(doneS / share) : null;
    const job = { ...kept.job, doneS: Math.max(kept.job.doneS, doneS), totalS };
    this.#jobs.set(id, { ...kept, job });
    this.#tell(job);
  }

  /** The recording's own place in the log, once how long it is is known. */
  async #addToLog(
    store: QuiltStore,
    { job, file, sha256, startAt }: KeptJob,
    durationS: number,
  ): Promise<void> {
    await store.commit((log) =>
      log.recordings.some((recording) => recording.id === job.id)
        ? { events: [] }
        : {
            events: [
              {
                type: 'recording-added',
                recording: { id: job.id, file, name: job.name, sha256, startAt, durationS },
              },
            ],
          },
    );
  }
}

const NOTHING = {
  text: '',
  words: [],
  confidence: 0,
  noSpeech: 1,
  meanLogProb: 0,
  looped: false,
  others: [],
  ms: 0,
};

function lastOf(store: QuiltStore, recordingId: string): string | undefined {
  const noteId = store.log.parts.lastOfThread.get(recordingId);
  return noteId === undefined ? undefined : store.log.note(noteId)?.note.text;
}
