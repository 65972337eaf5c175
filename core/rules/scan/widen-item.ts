import type { Token } from '../../text/tokenise.ts';
import type { Item } from '../item.ts';

/** A finder that looks past the last word ("both of", "£3 /") ends where the note ends. */
export function widenItem(item: Item, tokens: Token[], reached: number): void {
  const next = Math.min(reached, tokens.length);
  item.j = next;
  item.w = tokens
    .slice(item.i, next)
    .map((t) => t.w)
    .join(' ');
  item.end = tokens[next - 1]!.to;
}
