import type { Log } from '../core/log/log.ts';
import type { RecogniserStatus } from '../shared/wire.ts';
import { buildPrompt } from './speech/build-prompt.ts';
import { ModelFileError } from './speech/model-files.ts';
import { createRecogniser, type Recogniser, type RecognitionContext } from './speech/recogniser.ts';
import { createVoiceActivity, type VoiceActivity } from './speech/voice-activity.ts';

const STATES = {
  asleep: ['absent', 'The recogniser has not been started; typed notes are taken as ever.'],
  loading: ['loading', 'The recogniser is getting ready; what is said meanwhile is kept and heard then.'],
  ready: ['ready', 'Ready to hear.'],
} as const;

/** The ears of the server: one recogniser and one voice-activity process for all microphones and recordings. */
export class Hearing {
  readonly recogniser: Recogniser;
  readonly voiceActivity: VoiceActivity;
  #status: RecogniserStatus = { state: STATES.asleep[0], message: STATES.asleep[1] };
  readonly #listeners = new Set<(status: RecogniserStatus) => void>();
  #starting: Promise<boolean> | undefined;

  /** `modelsDir`: the folder that holds the recogniser `model` and the voice-activity network. */
  constructor(
    readonly modelsDir: string,
    model: string,
  ) {
    this.recogniser = createRecogniser({ modelsDir, model });
    this.voiceActivity = createVoiceActivity({ modelsDir });
  }

  get status(): RecogniserStatus {
    return this.#status;
  }

  onStatus(listener: (status: RecogniserStatus) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Gets ready, once; later calls wait for the same. False where there is no hearing: `status` says why. */
  start(): Promise<boolean> {
    this.#starting ??= this.#start().then((ok) => {
      // A model put back in its place is found with the next try.
      if (!ok) this.#starting = undefined;
      return ok;
    });
    return this.#starting;
  }

  async close(): Promise<void> {
    this.#listeners.clear();
    await Promise.all([this.recogniser.close(), this.voiceActivity.close()]);
  }

  async #start(): Promise<boolean> {
    this.#tell({ state: STATES.loading[0], message: STATES.loading[1] });
    try {
      await Promise.all([this.recogniser.ready(), this.voiceActivity.ready()]);
      this.#tell({ state: STATES.ready[0], message: STATES.ready[1] });
      return true;
    } catch (error) {
      const missing = error instanceof ModelFileError;
      this.#tell({
        state: missing ? 'absent' : 'failed',
        message: `${(error as Error).message} Typed notes are taken as ever.`,
      });
      return false;
    }
  }

  #tell(status: RecogniserStatus): void {
    this.#status = status;
    for (const listener of this.#listeners) listener(status);
  }
}

/** What the recogniser should know of a quilt before it listens: its fabrics, and the last note of the thread. */
export function contextOf(log: Log, lastNote: string | undefined): RecognitionContext {
  return buildPrompt(log.quilt, lastNote);
}

/** The words of the last note said live or typed. */
export function lastWords(log: Log): string | undefined {
  const id = log.parts.lastOfThread.get('');
  return id === undefined ? undefined : log.note(id)?.note.text;
}
