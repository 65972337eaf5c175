/** The words of items or tokens from `from` up to but without `to`, padded with spaces; all of them where neither is given. */
export const wordsBetween = (items: readonly { w: string }[], from = 0, to = items.length): string =>
  ` ${items
    .slice(Math.max(0, from), Math.max(0, to))
    .map((x) => x.w)
    .join(' ')} `;

/** How many items from `from` on take up the words at the head of their `wordsBetween`, or that many letters of them. */
export function itemsIn(items: readonly { w: string }[], from: number, words: string | number): number {
  const length = typeof words === 'number' ? words : words.trimEnd().length - 1;
  let n = 0;
  for (let at = 0; from + n < items.length && at < length; n++) at += items[from + n]!.w.length + 1;
  return n;
}
