/** A stretch of time, half open, in minutes since 1970-01-01T00:00Z. */
export type Stretch = readonly [from: number, to: number];

/** Total length in minutes of stretches that don't overlap. */
export const lengthOf = (stretches: readonly Stretch[]): number =>
  stretches.reduce((sum, [from, to]) => sum + (to - from), 0);

/** Time that is spoken for: a set of stretches that grows. */
export class TakenTime {
  /** In order, without overlaps and without touching ones. */
  readonly #taken: [number, number][] = [];

  /** The parts of a stretch that are still free. */
  freeIn(from: number, to: number): Stretch[] {
    const free: Stretch[] = [];
    let at = from;
    for (let i = this.#firstEndingAfter(from); i < this.#taken.length && at < to; i++) {
      const [start, end] = this.#taken[i]!;
      if (start >= to) break;
      if (start > at) free.push([at, start]);
      at = Math.max(at, end);
    }
    if (at < to) free.push([at, to]);
    return free;
  }

  /** The last `minutes` of free time before `to`, no earlier than `limit`, in order. */
  freeBefore(to: number, minutes: number, limit: number): Stretch[] {
    const free = this.freeIn(limit, to);
    const last: Stretch[] = [];
    let left = minutes;
    for (let i = free.length - 1; i >= 0 && left > 0; i--) {
      const [start, end] = free[i]!;
      const from = Math.max(start, end - left);
      last.unshift([from, end]);
      left -= end - from;
    }
    return last;
  }

  take(from: number, to: number): void {
    if (from >= to) return;
    const first = this.#firstEndingAfter(from);
    let last = first;
    let start = from;
    let end = to;
    while (last < this.#taken.length && this.#taken[last]![0] <= to) {
      start = Math.min(start, this.#taken[last]![0]);
      end = Math.max(end, this.#taken[last]![1]);
      last++;
    }
    this.#taken.splice(first, last - first, [start, end]);
  }

  #firstEndingAfter(at: number): number {
    let low = 0;
    let high = this.#taken.length;
    while (low < high) {
      const middle = (low + high) >>> 1;
      if (this.#taken[middle]![1] <= at) low = middle + 1;
      else high = middle;
    }
    return low;
  }
}
