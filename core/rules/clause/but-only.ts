import type { Item } from '../item.ts';

/** What may stand behind the place for it to end there. */
const ENDS_THERE = /^(?:[,.;:!?\n]|--|and|so|which|though|then)$/;

/**
 * "the needlecord's thin but only the bottom one", "column two stained but just the top three": which of them it is. The "but"
 * falls out, so that the place stays with what it narrows and begins no statement of its own.
 */
export function withButOnly(items: Item[]): Item[] {
  const at = items.findIndex((x, k) => x.w === 'but' && narrowsAt(items, k));
  return at < 0 ? items : [...items.slice(0, at), ...withButOnly(items.slice(at + 1))];
}

function narrowsAt(items: Item[], k: number): boolean {
  if (!/^(?:only|just)$/.test(items[k + 1]?.w ?? '')) return false;
  let at = k + 2;
  while (/^(?:the|in|on|at|along)$/.test(items[at]?.w ?? '')) at++;
  if (!items[at]?.place?.places.length) return false;
  const behind = items[at + 1];
  if (behind && !ENDS_THERE.test(behind.w)) return false;
  const from = items.slice(0, k).findLastIndex((x) => /^[.;!?\n]$/.test(x.w)) + 1;
  return items.slice(from, k).some((x) => x.finding && x.finding !== 'sound');
}
