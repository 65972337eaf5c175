import type { MicrophoneStream } from './microphone-stream.ts';

/** How long a page that dropped away in mid-sentence has to come back before its half sentence is a note. */
const GRACE_MS = 20_000;
const REMEMBERED = 50;

type Orphan = { stream: MicrophoneStream; timer: NodeJS.Timeout };
type Heard = { quiltId: string; stretchId: string; toMs: number };

/**
 * Sound whose page dropped away while it was being said. A page that comes back sends the same stretch on from what it
 * knew to be safe, so the sentence is heard whole from there; where none comes back in time, what was received is heard
 * after all, and left out should the page still send it again later.
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
        const { quiltId, stretchId, receivedUntilMs: toMs } = stream;
        const heard = { quiltId, stretchId, toMs };
        this.#heard = [...this.#heard.slice(1 - REMEMBERED), heard];
        stream
          .end()
          .catch(() => undefined)
          .finally(() => {
            // What could not be kept is still the page's.
            if (stream.isBroken) heard.toMs = stream.keptUntilMs;
            stream.drop();
          });
      }, GRACE_MS).unref(),
    };
    this.#orphans.add(orphan);
  }

  /** A new stream: is it one that dropped away, sent again? */
  adopt(stream: MicrophoneStream): void {
    const isAgain = ({ quiltId, stretchId }: { quiltId: string; stretchId: string }): boolean =>
      quiltId === stream.quiltId && stretchId === stream.stretchId;
    for (const orphan of this.#orphans) {
      if (!isAgain(orphan.stream)) continue;
      clearTimeout(orphan.timer);
      this.#orphans.delete(orphan);
      stream.skipUntil(orphan.stream.keptUntilMs);
      void orphan.stream.finishKept().catch(() => undefined);
    }
    for (const heard of this.#heard) if (isAgain(heard)) stream.skipUntil(heard.toMs);
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
