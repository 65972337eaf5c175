import { randomInt, timingSafeEqual } from 'node:crypto';

export const CODE_LASTS_MS = 10 * 60_000;
export const CODE_TRIES = 5;

export type CodeState = 'open' | 'used' | 'locked' | 'expired';

/**
 * The code that lets one more device in: six digits, good once, for ten minutes and five tries in all, whoever makes them.
 * Only the machine itself can ask for another.
 */
export class PairingCode {
  #code = '';
  #triesLeft = 0;
  #expiresMs = 0;
  #used = false;

  constructor(readonly now: () => number = Date.now) {
    this.renew();
  }

  get state(): CodeState {
    if (this.#used) return 'used';
    if (this.#triesLeft === 0) return 'locked';
    return this.now() >= this.#expiresMs ? 'expired' : 'open';
  }

  /** For the eyes of whoever sits at the machine; undefined when it opens nothing any more. */
  get shown(): { code: string; expiresAt: string } | undefined {
    if (this.state !== 'open') return undefined;
    return { code: this.#code, expiresAt: new Date(this.#expiresMs).toISOString() };
  }

  renew(): void {
    this.#code = String(randomInt(1_000_000)).padStart(6, '0');
    this.#triesLeft = CODE_TRIES;
    this.#expiresMs = this.now() + CODE_LASTS_MS;
    this.#used = false;
  }

  /** Undefined when the code was right, which uses it up; else why not. */
  whyNot(given: string): string | undefined {
    const { state } = this;
    if (state !== 'open') return CLOSED[state];
    const right =
      given.length === this.#code.length && timingSafeEqual(Buffer.from(given), Buffer.from(this.#code));
    if (right) {
      this.#used = true;
      return undefined;
    }
    this.#triesLeft--;
    if (this.#triesLeft === 0) return CLOSED.locked;
    return `That is not the code. ${this.#triesLeft} ${this.#triesLeft === 1 ? 'try is' : 'tries are'} left.`;
  }
}

const ANOTHER = 'Ask for a new code on the computer: Settings, Phones and tablets.';
const CLOSED = {
  used: `This code has let a device in already and works once only. ${ANOTHER}`,
  locked: `A wrong code was given ${CODE_TRIES} times, so this code is locked. ${ANOTHER}`,
  expired: `This code has run out. ${ANOTHER}`,
};
