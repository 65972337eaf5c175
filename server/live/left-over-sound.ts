import type { Hearing } from '../hearing.ts';
import type { Library } from '../store/library.ts';
import { hearLeftOver } from './hear-left-over.ts';

/** A microphone waits no longer for what was said before it: a long rest is heard beside it. */
const MOST_WAIT_MS = 10_000;

/** What was said before the last stop or crash and is not yet in its log: heard once, quilt by quilt, before what is said next. */
export class LeftOverSound {
  readonly #begun = new Map<string, Promise<unknown>>();

  constructor(
    readonly library: Library,
    readonly hearing: Hearing,
  ) {}

  /** Hears what is left over of all quilts. */
  async hearAll(): Promise<void> {
    await this.library.index();
    for (const card of this.library.list()) {
      const leftOver = await this.library.fs.list(`${this.library.folderOf(card.id)}/unheard`);
      if (leftOver.length > 0) await this.#hear(card.id);
    }
  }

  /** Returns when that of this quilt has been heard, or is taking long. Nothing of it is then mistaken for new sound. */
  async before(quiltId: string): Promise<void> {
    let timer: NodeJS.Timeout | undefined;
    const enough = new Promise<void>((done) => {
      timer = setTimeout(done, MOST_WAIT_MS);
    });
    await Promise.race([this.#hear(quiltId), enough]);
    clearTimeout(timer);
  }

  #hear(quiltId: string): Promise<unknown> {
    let hearing = this.#begun.get(quiltId);
    if (!hearing) {
      // A quilt that can't be opened says so when it is asked for.
      hearing = this.library
        .quilt(quiltId)
        .then((store) => hearLeftOver(store, this.library, this.hearing))
        .catch(() => undefined);
      this.#begun.set(quiltId, hearing);
    }
    return hearing;
  }
}
