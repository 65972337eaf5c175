/** The words of items or tokens from `from` up to but without `to`, padded with spaces; all of them where neither is given. */
export const wordsBetween = (items: readonly { w: string }[], from = 0, to = items.length): string =>
  ` ${items
    .slice(Math.max(0, from), Math.max(0, to))
    .map((x) => x.w)
    .join(' ')} `;
