import type { Token } from './tokenise.ts';

type Node<P> = { next: Map<string, Node<P>>; hits: P[] };

/**
 * Finds fixed phrases in a list of tokens by walking a tree of words: time is linear in the words,
 * whatever the number of phrases. In a pattern `a|b` gives alternatives of one word, `x?` a word that may be missing.
 */
export class PhraseTrie<P> {
  private root: Node<P> = { next: new Map(), hits: [] };

  add(pattern: string, payload: P): void {
    let ends: Node<P>[] = [this.root];
    for (const part of pattern.split(' ')) {
      const optional = part.endsWith('?');
      const words = (optional ? part.slice(0, -1) : part).split('|');
      const reached: Node<P>[] = optional ? [...ends] : [];
      for (const end of ends) {
        for (const word of words) {
          // "binding's" and "somebody's" are two tokens.
          const pieces =
            word.endsWith("'s") && word.length > 2
              ? [word.slice(0, -2), "'s"]
              : word.startsWith("n't")
                ? [word]
                : [word];
          let node = end;
          for (const piece of pieces) {
            let child = node.next.get(piece);
            if (!child) {
              child = { next: new Map(), hits: [] };
              node.next.set(piece, child);
            }
            node = child;
          }
          reached.push(node);
        }
      }
      ends = reached;
    }
    for (const end of new Set(ends)) if (end !== this.root) end.hits.push(payload);
  }

  /** The longest phrase that begins at token `i`: its payloads and the index after it. */
  longestAt(tokens: readonly Pick<Token, 'w'>[], i: number): { payloads: P[]; next: number } | undefined {
    let node = this.root;
    let best: { payloads: P[]; next: number } | undefined;
    for (let j = i; j < tokens.length; j++) {
      const child = node.next.get(tokens[j]!.w);
      if (!child) break;
      node = child;
      if (node.hits.length) best = { payloads: node.hits, next: j + 1 };
    }
    return best;
  }
}
