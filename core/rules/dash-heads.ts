import type { Item } from './item.ts';

/** What may stand beside the heading word: "all torn", "still to press". */
const WITH_HEAD = /^(?:to|still|also|all|badly|a|bit|some|now|done|planned|doing|and|slightly|very|quite)$/;
const DAY_OR_STATE =
  /^(?:done|todo|planned|doing|tomorrow|tmrw|tmw|today|later|next|mon|tue|tues|wed|thu|thur|thurs|fri|sat|sun|ok)$/;
const JOINS = /^(?:,|and|&|\+|\/|bar|except|exc)$/;

/**
 * "thin - 2-2, 2-3; torn - 4-4", "patch - 3-1, darn - 3-2": a word that heads a list of places by a dash is read as if it did so by a
 * colon, and a comma before the next such word as the end of the list.
 */
export function withDashHeads(items: Item[]): Item[] {
  const heads = items.flatMap((_x, k) => {
    const from = headingBefore(items, k);
    return from === undefined ? [] : [{ dash: k, from }];
  });
  if (!heads.length) return items;
  return items.map((x, k) => {
    if (heads.some((h) => h.dash === k)) return { ...x, w: ':', token: { ...x.token, w: ':' } };
    if (x.w === ',' && heads.some((h) => h.from === k + 1))
      return { ...x, w: ';', token: { ...x.token, w: ';' } };
    return x;
  });
}

/** Where the heading begins that the dash at `k` ends, if it is one. */
function headingBefore(items: Item[], k: number): number | undefined {
  const dash = items[k]!;
  if (
    !/^(?:-|=)$/.test(dash.w) ||
    dash.token.kind !== 'mark' ||
    (dash.token.glued && items[k + 1]?.token.glued)
  )
    return undefined;
  let from = k;
  while (from > 0 && items[from - 1]!.token.kind !== 'mark' && k - from < 4) from--;
  const head = items.slice(from, k);
  if (!head.length || head.length > 3 || (from > 0 && !/^[,.;!\n]$/.test(items[from - 1]!.w)))
    return undefined;
  const heads = head.filter((x) => isHead(x));
  if (heads.length !== 1 || !head.every((x) => isHead(x) || WITH_HEAD.test(x.w))) return undefined;
  return listsPlaces(items, k + 1) ? from : undefined;
}

/** A finding, or a deed without its object. */
const isHead = (x: Item): boolean =>
  !x.place &&
  !x.part &&
  (x.finding !== undefined ||
    x.fail === true ||
    x.action !== undefined ||
    x.material === 'net' ||
    DAY_OR_STATE.test(x.w));

/** Do nothing but places follow, up to the end of the list? */
function listsPlaces(items: Item[], from: number, whole = false): boolean {
  let places = 0;
  for (let k = from; k < items.length; k++) {
    const x = items[k]!;
    if (x.place && x.place.how === 'said') places++;
    else if (/^[.;!\n]$/.test(x.w)) break;
    else if (x.w === ',' && items[k + 1] && !items[k + 1]!.place) {
      if (whole) return false;
      break;
    } else if (!JOINS.test(x.w)) return false;
  }
  return places > 0;
}

/**
 * "darned: 2-2, 2-3, grey wool", "stained: 2-2, brown": a deed or what was found heads the places by a colon, with more told behind them.
 * Read as if no mark stood there; where nothing but places follow the colon does no harm and stays.
 */
export function withoutHeadColon(items: Item[]): Item[] {
  if (!items.some((x) => x.w === ':')) return items;
  return items.filter((x, k) => x.w !== ':' || x.token.kind !== 'mark' || !headsMore(items, k));
}

function headsMore(items: Item[], k: number): boolean {
  let from = k;
  while (from > 0 && items[from - 1]!.token.kind !== 'mark' && k - from < 5) from--;
  const head = items.slice(from, k);
  if (!head.length || head.length > 4 || (from > 0 && !/^[.;!\n]$/.test(items[from - 1]!.w))) return false;
  // "ties: rows 2-3 half gone"
  if (
    head.some(
      (x) => x.object && x.action?.form !== 'past' && !x.finding && !(x.task && head.some((y) => y.stitch)),
    )
  )
    return false;
  const heads = head.filter((x) => isHead(x));
  // "in the ditch quilting: rows 1-3 done", "quilting in the ditch: …": with how it is sewn
  const manner = head.find((x) => x.stitch && !x.action);
  const inDitch = head.length === 1 && manner?.stitch === 'in-the-ditch';
  if (
    (heads.length !== 1 && !inDitch) ||
    !head.every((x) => isHead(x) || x === manner || WITH_HEAD.test(x.w) || OF_NET.test(x.w))
  )
    return false;
  const at = items[k + 1]?.seam && !items[k + 1]!.place ? k + 2 : k + 1;
  const next = items[at];
  if (next?.place?.how !== 'said' || next.place.kind !== 'blocks') return false;
  // "net over: 2-2, 2-3", "whipstitched: seam 2-2/2-3"
  return at > k + 1 || /^(?:over|on)$/.test(head.at(-1)!.w) || !listsPlaces(items, at, true);
}
const OF_NET = /^(?:the|over|on|'s|is|are)$/;
