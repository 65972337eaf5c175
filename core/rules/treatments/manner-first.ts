import type { Item } from '../item.ts';
import { TAKES_STITCH } from './stitch-of.ts';

const ENDS = /^[.;!?\n]$/;
/** What leads to a stitch: "with a ladder stitch", "all in running stitch". */
const LEADS_STITCH = /^(?:with|in|using|by|a|an|all|some|small|tiny|so|right|ok|then|and)$/;
/** Behind these what follows is a statement beside the one before, of which the stitch was told. */
const GOES_ON = /^(?:and|&|then|also|but|so|as|because|\+|not|no)$/;

/**
 * "by hand, a patch of calico on 2-3", "ladder stitch: the tear in 2-3 sewn up", "with herringbone, I'll back 2-3": how it is sewn is told
 * first, and a mark parts it from the deed. It is read as if no mark stood there; an answer ("by hand, and pressed 2-2") goes on otherwise.
 */
export function withMannerFirst(items: Item[]): Item[] {
  if (!items.some((x) => x.stitch)) return items;
  const out: Item[] = [];
  for (let k = 0; k < items.length; k++) {
    const mark = k === 0 || ENDS.test(items[k - 1]!.w) ? markBehindManner(items, k) : undefined;
    if (mark === undefined) {
      out.push(items[k]!);
      continue;
    }
    const stitch = items[mark - 1]!;
    out.push(...items.slice(k, mark - 1), { ...stitch, weakStitch: undefined, action: undefined });
    k = mark;
  }
  return out;
}

/** Where the mark stands behind a stitch that begins the sentence at `k` and belongs to the one deed of it. */
function markBehindManner(items: Item[], k: number): number | undefined {
  let at = k;
  while (at < k + 3 && LEADS_STITCH.test(items[at]?.w ?? '')) at++;
  const stitch = items[at];
  // "in the ditch: rows 1-3 quilted" is read as a heading, "whipped, …" as a deed of its own
  if (!stitch?.stitch || stitch.place || stitch.stitch === 'in-the-ditch') return undefined;
  if (stitch.action && !/^(?:with|in|using|an?)$/.test(items[at - 1]?.w ?? '')) return undefined;
  const mark = at + 1;
  if (!/^(?:,|:|--|-|–|—)$/.test(items[mark]?.w ?? '') || GOES_ON.test(items[mark + 1]?.w ?? ''))
    return undefined;
  let end = mark + 1;
  while (end < items.length && !ENDS.test(items[end]!.w)) end++;
  const told = items.slice(mark + 1, end);
  // the deed tells its own stitch, or there is none that could be sewn so
  if (told.some((x) => x.stitch)) return undefined;
  const sewn = told.some((x) => x.action && TAKES_STITCH.has(x.action.v));
  const laid = told.some(
    (x, n) => (x.material ?? x.fabric) && /^(?:over|behind|under|on)$/.test(told[n + 1]?.w ?? ''),
  );
  const placed = told.some((x) => x.place || x.finding || x.seam || /^(?:it|that|them)$/.test(x.w));
  return placed &&
    (sewn ||
      laid ||
      told.some((x) => /^(?:sew|sewed|sewn|stitch|stitched|cut|piece|put|closed|cover|covered)$/.test(x.w)))
    ? mark
    : undefined;
}
