import { findListeningOrder, type ListeningOrder } from '../../core/conversation/listening-order.ts';
import { localInstant } from '../../core/log/local-instant.ts';
import type { ClientMessage, ListeningPause, ServerMessage } from '../../shared/wire.ts';
import { contextOf, type Hearing, lastWords } from '../hearing.ts';
import { createLiveListener, type LiveEvent, type LiveListener } from '../speech/live-utterance.ts';
import type { Library } from '../store/library.ts';
import { newId } from '../store/new-id.ts';
import type { QuiltStore } from '../store/quilt-store.ts';
import { type Unheard, UnheardSound } from '../store/unheard-sound.ts';
import { heedCallPhrase } from './call-phrase.ts';
import { takeSpokenNote } from './take-spoken-note.ts';

const RATE = 16_000;
/** Sound kept from before speech starts: not acknowledged while it may still become part of an utterance. */
const PRE_ROLL_S = 1;
/** Sound that waits to be looked at, beyond which a page is sending faster than anyone speaks. */
const MOST_BEHIND_S = 700;

type Begin = Extract<ClientMessage, { type: 'microphone-on' }>;
/** `pcm` while its sound is not on the disk: what is said while nobody should listen is not written. */
type Said = Unheard & { pcm?: Float32Array };
/** A time in which nothing is taken down, ms since 1970. */
type Pause = { fromMs: number; untilMs: number };

export type MicrophoneOptions = {
  store: QuiltStore;
  library: Library;
  hearing: Hearing;
  begin: Begin;
  send: (message: ServerMessage) => void;
  /** What was said could not be kept: the page has it still, and is to send it again later. */
  onTrouble: (error: Error) => void;
};

/** One stretch of sound from one page: cut into utterances, each on the disk before it is recognised, each a note. */
export class MicrophoneStream {
  readonly id: string;
  readonly #startMs: number;
  readonly #listener: LiveListener;
  readonly #unheard: UnheardSound;
  #received = 0;
  #skip = 0;
  /** Start of the utterance that is open, s. */
  #openS: number | undefined;
  #awake: boolean;
  /** The tool itself is speaking: what is heard meanwhile is its own voice. */
  #deaf = false;
  #ownVoiceFrom = Number.POSITIVE_INFINITY;
  /** Stretches of the tool's own voice, s. */
  readonly #ownVoice: [number, number][] = [];
  /** Utterances are written and logged one after the other, in the order they were said. */
  #line: Promise<void> = Promise.resolve();
  readonly #kept = new Map<number, { said: Promise<Said>; settle: () => void }>();
  /** Starts of utterances that are neither on the disk nor done with, s. */
  readonly #unsafe = new Set<number>();
  /** Ends with the last write that was begun: an utterance is on the disk only when all before it are safe. */
  #writing: Promise<unknown> = Promise.resolve();
  /** The disk took no more; what was said since stays with the page. */
  #broken: Error | undefined;
  readonly #pauses: Pause[] = [];
  /** Whether the page was told of a pause and not yet of its end. */
  #isPaused = false;
  /** Everything up to here that was speech is on the disk, s. */
  #safeS = 0;
  /** End of the last utterance that was cut out, s. */
  #keptS = 0;

  constructor(readonly options: MicrophoneOptions) {
    const { begin, hearing, store, library } = options;
    this.id = begin.streamId;
    this.#startMs = Date.parse(begin.at);
    this.#awake = begin.way !== 'on-call' || begin.awake === true;
    this.#unheard = new UnheardSound(store.fs, store.folder);
    if (begin.pause) this.#beginPause(begin.pause);
    const { endPauseMs } = library.settings.data;
    this.#listener = createLiveListener({
      recogniser: hearing.recogniser,
      voiceActivity: hearing.voiceActivity,
      context: () => contextOf(store.log, this.#wordsBefore()),
      onEvent: (event) => this.#heed(event),
      // Held to talk, the hand ends the utterance: a pause to think must not.
      settings:
        begin.way === 'held'
          ? { endPauseMs: 3_000, longestPauseMs: 3_000, adaptPause: false }
          : { endPauseMs, longestPauseMs: Math.max(endPauseMs, 1_400) },
    });
  }

  get quiltId(): string {
    return this.options.store.id;
  }

  get stretchId(): string {
    return this.options.begin.stretchId ?? this.id;
  }

  /** Up to where this stream has taken in sound, ms since 1970. */
  get receivedUntilMs(): number {
    return this.#startMs + (this.#received / RATE) * 1000;
  }

  /** Up to where its speech has been cut into utterances that are kept or about to be, ms since 1970. */
  get keptUntilMs(): number {
    return (
      this.#startMs + Math.min(this.#keptS, this.#broken ? this.#safeS : Number.POSITIVE_INFINITY) * 1000
    );
  }

  /** Whether the disk refused what was said. */
  get isBroken(): boolean {
    return this.#broken !== undefined;
  }

  /** Leaves out the sound before a moment: it is a note already. */
  skipUntil(ms: number): void {
    this.#skip = Math.max(this.#skip, Math.round(((ms - this.#startMs) / 1000) * RATE));
  }

  /**
   * What the recogniser is told was said before: the last note, and, where a phrase of hers may come, that phrase. Without it
   * "thimble on" said alone is heard as "symbol on" (three synthetic voices of three).
   */
  #wordsBefore(): string | undefined {
    const { store, library, begin } = this.options;
    const { callPhrase, dismissPhrase } = library.settings.data;
    const lookedAtS = this.#received / RATE - this.#listener.behindS();
    if (!this.#takesDown(lookedAtS)) return asSentence(callPhrase);
    const last = lastWords(store.log);
    return begin.way === 'on-call' ? `${last ?? ''} ${asSentence(dismissPhrase)}` : last;
  }

  /** Takes a frame of 16-bit samples. False where the page sends more than can be looked at. */
  push(bytes: Buffer): boolean {
    const samples = Math.floor(bytes.length / 2);
    const pcm = new Float32Array(samples);
    // What is skipped is silence to the listener, so that the times of what follows stay true.
    const from = Math.max(0, Math.min(samples, this.#skip - this.#received));
    for (let i = from; i < samples; i++) pcm[i] = bytes.readInt16LE(i * 2) / 32_768;
    this.#received += samples;
    this.#listener.push(pcm);
    return this.#listener.behindS() < MOST_BEHIND_S;
  }

  speaking(on: boolean): void {
    const now = this.#received / RATE;
    if (on && !this.#deaf) this.#ownVoiceFrom = now;
    if (!on && this.#deaf) {
      this.#ownVoice.push([this.#ownVoiceFrom, now]);
      this.#ownVoiceFrom = Number.POSITIVE_INFINITY;
    }
    this.#deaf = on;
  }

  /** Ends what is being said and waits until all of it is logged. */
  async end(): Promise<void> {
    await this.#listener.flush();
    await this.#line;
    this.#tellLevel(0, false, Math.floor(Math.min(this.#received, ...this.#unsafeSamples)));
  }

  /** Takes in no more and gives up what is open; the utterances that are kept become notes. */
  async finishKept(): Promise<void> {
    await this.#listener.finish();
    await this.#line;
    this.drop();
  }

  /** Gives the stream up; sound that was not acknowledged is still the page's. */
  drop(): void {
    this.#listener.close();
  }

  #heed(event: LiveEvent): void {
    switch (event.type) {
      case 'level-measured': {
        const level = Math.max(0, Math.min(1, 1 + event.db / 60));
        const lookedAtS = this.#received / RATE - this.#listener.behindS();
        // Never acknowledged before it is safe: the page keeps it, and sends it again after a crash.
        const until = Math.min(
          (this.#openS ?? Number.POSITIVE_INFINITY) * RATE,
          Math.max(this.#safeS, lookedAtS - PRE_ROLL_S) * RATE,
          ...this.#unsafeSamples,
        );
        if (this.#isPaused && !this.#pausedAt(lookedAtS)) this.#tellPause(null);
        this.#tellLevel(level, event.speaking, Math.max(0, Math.floor(until)));
        return;
      }
      case 'speech-started':
        this.#openS = event.startS;
        return;
      case 'speech-dismissed':
        this.#openS = undefined;
        return;
      case 'words-heard':
        if (this.#takesDown(event.startS) && !this.#isOwnVoice(event.startS, event.startS)) {
          this.options.send({ type: 'partial', streamId: this.id, text: event.text });
        }
        return;
      case 'utterance-ended': {
        this.#openS = undefined;
        this.#keep(event.startS, event.endS, event.utterance.pcm);
        return;
      }
      case 'utterance-recognised': {
        const { startS, endS, recognition, waitedMs, utterance } = event;
        const silenceMs = utterance.endedBy === 'pause' ? this.#pauseMs : 0;
        this.#then(startS, async (sound) => {
          await this.#log(sound, startS, endS, recognition, silenceMs, waitedMs);
        });
        return;
      }
      case 'utterance-failed':
        this.#then(event.startS, async (sound) => {
          if (!this.#takesDown(event.startS)) return;
          await this.#write(sound);
          // Its sound and its mark stay, and it is heard when the recogniser works again.
          this.options.send({
            type: 'refused',
            message: `${event.error.message} What you said at ${sound.at.slice(11, 16)} is kept and will be heard later.`,
          });
        });
        return;
      case 'listening-failed': {
        if (!this.#takesDown(event.startS)) return;
        // Nobody can tell speech from silence here, so all of it is kept, to be heard later.
        const endS = event.startS + event.pcm.length / RATE;
        this.#keep(event.startS, endS, event.pcm);
        this.#then(event.startS, async () => {
          this.options.send({
            type: 'refused',
            message: `${event.error.message} The sound is kept and will be heard later.`,
          });
        });
        return;
      }
    }
  }

  get #pauseMs(): number {
    return this.options.begin.way === 'held' ? 0 : this.options.library.settings.data.endPauseMs;
  }

  get #unsafeSamples(): number[] {
    return [...this.#unsafe].map((startS) => startS * RATE);
  }

  #keep(startS: number, endS: number, pcm: Float32Array): void {
    const said: Said = {
      id: newId(),
      at: new Date(this.#startMs + startS * 1000).toISOString(),
      seconds: Math.round((endS - startS) * 1000) / 1000,
      stretch: { id: this.stretchId, endAt: new Date(this.#startMs + endS * 1000).toISOString() },
      pcm,
    };
    this.#keptS = Math.max(this.#keptS, endS);
    this.#unsafe.add(startS);
    let settle = (): void => undefined;
    const settled = new Promise<void>((done) => {
      settle = done;
    });
    let kept = Promise.resolve(said);
    if (this.#takesDown(startS)) {
      kept = this.#writing.then(async () => {
        await this.#write(said);
        this.#unsafe.delete(startS);
        this.#safeS = Math.max(this.#safeS, endS);
        return said;
      });
      this.#writing = kept.catch(() => undefined);
    } else this.#writing = this.#writing.then(() => settled);
    this.#kept.set(startS, { said: kept, settle });
  }

  async #write(said: Said): Promise<void> {
    const { pcm, ...sound } = said;
    if (!pcm) return;
    if (this.#broken) throw this.#broken;
    try {
      await this.#unheard.keep(sound, pcm);
    } catch (error) {
      this.#broken = error as Error;
      this.options.onTrouble(this.#broken);
      throw error;
    }
    delete said.pcm;
  }

  /** Whether what is said at this moment of the stream is to be taken down, as far as is known yet. */
  #takesDown(atS: number): boolean {
    return this.#awake && !this.#pausedAt(atS);
  }

  #pausedAt(atS: number): Pause | undefined {
    const ms = this.#startMs + atS * 1000;
    return this.#pauses.find(({ fromMs, untilMs }) => fromMs <= ms && ms < untilMs);
  }

  #beginPause({ from, until }: ListeningPause): void {
    this.#pauses.push({
      fromMs: Date.parse(from),
      untilMs: until === null ? Number.POSITIVE_INFINITY : Date.parse(until),
    });
    this.#isPaused = true;
  }

  #tellPause(pause: ListeningPause | null): void {
    this.#isPaused = pause !== null;
    this.options.send({ type: 'pause', streamId: this.id, pause });
  }

  /** Does something with an utterance once its sound is on the disk, after those before it. */
  #then(startS: number, work: (sound: Said) => Promise<void>): void {
    const kept = this.#kept.get(startS);
    if (!kept) return;
    this.#line = this.#line
      .then(async () => {
        await work(await kept.said);
        this.#unsafe.delete(startS);
      })
      .catch((error: Error) => {
        if (!this.#broken) this.options.send({ type: 'refused', message: error.message });
      })
      .finally(() => {
        kept.settle();
        this.#kept.delete(startS);
      });
  }

  async #log(
    sound: Said,
    startS: number,
    endS: number,
    recognition: Parameters<typeof takeSpokenNote>[2],
    silenceMs: number,
    waitedMs: number,
  ): Promise<void> {
    const { store, library, send, begin } = this.options;
    const began = performance.now();
    const settings = library.settings.data;
    let { text } = recognition;
    if (this.#isOwnVoice(startS, endS)) text = '';
    text = await this.#heedOrder(text, startS, endS);
    if (begin.way === 'on-call') {
      const called = heedCallPhrase(text, this.#awake, {
        call: settings.callPhrase,
        dismiss: settings.dismissPhrase,
      });
      this.#awake = called.awake;
      text = called.text;
    }
    if (text.trim() === '') {
      await this.#unheard.discard(sound.id);
      send({ type: 'heard', streamId: this.id, text: '', confidence: 0 });
      return;
    }
    await this.#write(sound);
    // Where an order or the call was taken off its beginning, the other readings still have it.
    const others = text === recognition.text ? recognition.others : [];
    const outcome = await takeSpokenNote(store, sound, { ...recognition, text, others }, settings);
    send({
      type: 'heard',
      streamId: this.id,
      text: store.log.note(sound.id)?.note.text ?? text,
      confidence: recognition.confidence,
      ...(outcome.noteId === undefined ? {} : { noteId: outcome.noteId }),
      ...(outcome.reading === undefined ? {} : { reading: outcome.reading }),
      ...(outcome.answer === undefined ? {} : { answer: outcome.answer }),
      waitedMs: Math.round(silenceMs),
      workedMs: Math.round(waitedMs + performance.now() - began),
    });
  }

  /**
   * Does what she says about being listened to. During a pause all else that is said is left out.
   * Returns the words that are a note; those of an order alone are one too, kept beside the work.
   */
  async #heedOrder(text: string, startS: number, endS: number): Promise<string> {
    const { store, library, send } = this.options;
    const { settings } = library;
    const spokenAt = new Date(this.#startMs + endS * 1000).toISOString();
    const local = localInstant(spokenAt, store.log.quilt.zone);
    const found = findListeningOrder(text, local);
    const paused = this.#pausedAt(startS);
    if (paused) {
      const phrases = { call: settings.data.callPhrase, dismiss: settings.data.dismissPhrase };
      const called = heedCallPhrase(text, false, phrases);
      if (!called.awake && found?.order.order !== 'resume') return '';
      paused.untilMs = this.#startMs + startS * 1000;
      this.#tellPause(null);
      this.#awake = true;
      return called.awake ? called.text : (found?.rest ?? '');
    }
    if (!found || !this.#awake) return text;
    if (found.order.order === 'pause') {
      const pause = { from: spokenAt, until: endOfPause(found.order, spokenAt, local) };
      this.#beginPause(pause);
      this.#tellPause(pause);
    } else if (found.order.order === 'way') {
      await library.saveSettings({ listening: found.order.way });
      send({ type: 'way', streamId: this.id, way: found.order.way });
    }
    return found.rest === '' ? text : found.rest;
  }

  /** Whether more than half of a stretch was heard while the tool was speaking. */
  #isOwnVoice(fromS: number, toS: number): boolean {
    const open: [number, number][] = this.#deaf ? [[this.#ownVoiceFrom, Number.POSITIVE_INFINITY]] : [];
    let shared = 0;
    for (const [from, to] of [...this.#ownVoice, ...open]) {
      if (fromS === toS && from <= fromS && fromS <= to) return true;
      shared += Math.max(0, Math.min(to, toS) - Math.max(from, fromS));
    }
    return shared > (toS - fromS) / 2 && toS > fromS;
  }

  #tellLevel(level: number, speech: boolean, samples: number): void {
    this.options.send({ type: 'level', streamId: this.id, level, speech, samples, awake: this.#awake });
  }
}

const asSentence = (phrase: string): string =>
  phrase === '' ? '' : `${phrase[0]!.toUpperCase()}${phrase.slice(1)}.`;

/** When a pause ordered at a moment is over: an instant, or null where only she ends it. `local` is the moment with its offset. */
function endOfPause(
  order: Extract<ListeningOrder, { order: 'pause' }>,
  at: string,
  local: string,
): string | null {
  if (order.minutes !== undefined) return new Date(Date.parse(at) + order.minutes * 60_000).toISOString();
  if (order.until === undefined) return null;
  return new Date(
    Date.parse(`${order.until}:00${/(?:Z|[+-]\d\d:\d\d)$/.exec(local)?.[0] ?? 'Z'}`),
  ).toISOString();
}
