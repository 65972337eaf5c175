import type { MicrophoneStream } from './microphone-stream.ts';

/** How long a page that dropped away in mid-sentence has to come back before its half sentence is a note. */
const GRACE_MS = 20_000;
/** A page that sends again begins at the sample after the last that it knew to be safe. */
const SLACK_MS = 100;
const REMEMBERED = 50;

type Orphan = { stream: MicrophoneStream; timer: NodeJS.Timeout };
type Heard = { quiltId: string; fromMs: number; toMs: number };

/**
 * Sound whose page dropped away while it was being said. A page that comes back sends again what it
 * did not know to be safe, so the sentence is heard whole from there; where none comes back in time,
 * what was received is heard after all, and left out should the page still send it again later.
 */
export class OrphanedSound {
  readonly #orphans = new Set<Orphan>();
  #heard: Heard[] = [];
  #isClosed = false;

  leave(stream: MicrophoneStream): void {
    if (this.#isClosed) {
      stream.drop();
      return;
    }
    const orphan: Orphan = {
      stream,
      timer: setTimeout(() => {
        this.#orphans.delete(orphan);
        const { fromMs, toMs } = stream.unsafe;
        this.#heard = [...this.#heard.slice(1 - REMEMBERED), { quiltId: stream.quiltId, fromMs, toMs }];
        stream
          .end()
          .catch(() => undefined)
          .finally(() => stream.drop());
      }, GRACE_MS).unref(),
    };
    this.#orphans.add(orphan);
  }

  /** A new stream: is it one that dropped away, sent again? */
  adopt(stream: MicrophoneStream): void {
    const isAgain = ({ fromMs, toMs }: { fromMs: number; toMs: number }): boolean =>
      stream.startMs >= fromMs - 60_000 && stream.startMs <= fromMs + SLACK_MS && stream.startMs < toMs;
    for (const orphan of this.#orphans) {
      if (orphan.stream.quiltId !== stream.quiltId || !isAgain(orphan.stream.unsafe)) continue;
      clearTimeout(orphan.timer);
      this.#orphans.delete(orphan);
      orphan.stream.drop();
    }
    const heard = this.#heard.find((one) => one.quiltId === stream.quiltId && isAgain(one));
    if (heard) stream.skipUntil(heard.toMs);
  }

  /** It ended in order after all: its last message was still on the way when its page fell away. */
  forget(stream: MicrophoneStream): void {
    for (const orphan of this.#orphans) {
      if (orphan.stream !== stream) continue;
      clearTimeout(orphan.timer);
      this.#orphans.delete(orphan);
    }
  }

  /** The server stops: pages send again, to the next one, what was not safe. */
  close(): void {
    this.#isClosed = true;
    for (const { stream, timer } of this.#orphans) {
      clearTimeout(timer);
      stream.drop();
    }
    this.#orphans.clear();
  }
}
