type Node = { next: Map<number, Node> };

/**
 * Which tokens would carry on a known term that the text so far has begun. Only continuing tokens are ever listed: a first or
 * single token is never favoured, because a favoured first token invents trade words that nobody said.
 */
export class BoostContinuations {
  readonly #root: Node = { next: new Map() };
  #deepest = 0;

  /** Adds one term as the recogniser's own tokens. Terms of one token have nothing to continue and are left out. */
  add(tokens: readonly number[]): void {
    if (tokens.length < 2) return;
    let node = this.#root;
    for (const token of tokens) {
      let next = node.next.get(token);
      if (!next) {
        next = { next: new Map() };
        node.next.set(token, next);
      }
      node = next;
    }
    this.#deepest = Math.max(this.#deepest, tokens.length);
  }

  /** Token ids that continue a term begun at the end of `tokens`. */
  after(tokens: readonly number[]): number[] {
    const found: number[] = [];
    const longest = Math.min(this.#deepest - 1, tokens.length);
    for (let length = 1; length <= longest; length++) {
      let node: Node | undefined = this.#root;
      for (let i = tokens.length - length; node && i < tokens.length; i++) node = node.next.get(tokens[i]!);
      if (node) found.push(...node.next.keys());
    }
    return found;
  }
}
