import type { RemovedObject } from '../../../shared/vocabulary.ts';
import type { Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';
import { found, type WayFound, type WordAt } from './way.ts';

/** What is sewn along a side, and what runs through rows and blocks. */
const SEWN_ON = /^(binding|border|stitching|quilting|backing|interfacing|label|old-patch)$/;
const SEWN_THROUGH = /^(ties|quilting|stitching|pins|batting|old-patch|interfacing|piece)$/;

/** Words that stand for what is being taken off: "it", "those", "both of them", "the lot". */
const STANDS_FOR =
  / (?:it|they|these|those|both|(?:both|all) of (?:it|those|them|these)|(?:the|that) lot|all) $/;
const BEING = /^('s|is|are|'re|was|were|has|have|been|all|both|now|already|finally|too|also)$/;
const LIGHT =
  /^(that|'s|me|got|there|ok|okay|right|so|and|&|,|now|um|uh|well|the|both|all|of|other|two|three|last|then|also|sides?|ones?)$/;
/** What may follow, so that "it's off to the shop" and "it's out on the line" tell nothing. */
const ENDS =
  /^ *(?:(?:too|now|as well|already|at last|finally|altogether|completely|today|tonight) )*(?: *$|[,.;!)(-]|and |so |but |that |took |in |by |, |after |um |uh )/;

/**
 * "it's off the top edge", "those are out, and row four", "other two sides are off too", "left and bottom off, 30 min": the thing that is
 * being taken off, told by a pronoun or only by where.
 */
export function offByNow({ items, k, item, after, thing }: WordAt): WayFound {
  if (!/^(off|out)$/.test(item.w)) return undefined;
  const failed = failedAndOff(items, k, after);
  if (failed) return failed;
  if (!thing || thing === 'seam') return undefined;
  let m = k - 1;
  while (m >= 0 && BEING.test(items[m]!.w)) m--;
  const being = items.slice(m + 1, k).some((x) => /^('s|is|are|'re|was|were)$/.test(x.w));
  const toldThus = /^ (?:\S+ ){0,2}that 's (?:me (?:got )?)?(?:the )?(?:\S+ )?$/.test(
    wordsBetween(items, 0, m),
  );
  const lead = wordsBetween(items, m - 4, m + 1);
  // "the edge has frayed, trimmed them off": what hung loose, and not what it hung from
  if (items.slice(Math.max(0, k - 4), k).some((x) => x.action?.v === 'trim')) return undefined;
  const side = isSideAt(items, m);
  const block = items[m]?.place?.kind === 'blocks' && items[m]!.place!.places.length > 0;
  // "an old patch on 2-3, and that's off now"; a plan that is off ("was going to wash it, but that's off") has nothing glued on
  const patch = /^(?:old-patch|interfacing)$/.test(thing) && / that $/.test(lead);
  const standsFor =
    (STANDS_FOR.test(lead) || patch) &&
    !items.slice(0, m + 1).some((x) => x.object || x.material || x.action);
  if (!(side ? SEWN_ON : block ? SEWN_THROUGH : /./).test(thing)) return undefined;
  if (!side && !block && !standsFor) return undefined;
  // a bare "both of those out" begins the note, and "3-2 out" may be out of square
  if (!being && !toldThus && (block || !items.slice(0, m).every((x) => x.place || LIGHT.test(x.w))))
    return undefined;
  if (items.slice(m + 1, k).some((x) => /^(be|to)$/.test(x.w))) return undefined;
  const where = placeBehind(items, k);
  if (!where && !ENDS.test(after)) return undefined;
  // "label off. Left and bottom borders off too": a border comes off itself, where nothing was sewn through it
  const border = side && /\bborders?\b/.test(items[m]!.w) && !/^(?:quilting|ties|stitching)$/.test(thing);
  return found(
    {
      action: 'remove',
      object: border ? 'border' : (thing as RemovedObject),
      form: 'past',
      at: k,
      items: [item],
      rule: 'treatment.off-by-now',
    },
    k,
  );
}

/** "old batting lumpy, out too": the layer that damage is told of right before, in the same clause. */
function failedAndOff(items: Item[], k: number, after: string): WayFound {
  if (!/^[,&]$|^and$/.test(items[k - 1]?.w ?? '') || !/^ *(?:too|as well|also)\b/.test(after))
    return undefined;
  const at = items.findLastIndex((x, m) => m < k && /^(?:batting|border)$/.test(x.object ?? ''));
  if (at < 0 || k - at > 6 || !items.slice(at + 1, k - 1).some((x) => x.finding || x.fail)) return undefined;
  const object = items[at]!.object!;
  return found(
    { action: 'remove', object, form: 'past', at: k, items: [items[k]!], rule: 'treatment.off-by-now' },
    k,
  );
}

const isSideAt = (items: Item[], m: number): boolean =>
  /^(edge|border)-/.test(items[m]?.place?.places[0] ?? '') ||
  (/^sides?$/.test(items[m]?.w ?? '') && m > 0) ||
  // "the right one's off too"
  (/^ones?$/.test(items[m]?.w ?? '') && /^(edge|border)-/.test(items[m - 1]?.place?.places[0] ?? ''));

/** "off the top edge", "out of rows one and two". */
function placeBehind(items: Item[], k: number): boolean {
  let m = k + 1;
  while (/^(of|from|all|the|along|on)$/.test(items[m]?.w ?? '') && m < k + 4) m++;
  const place = items[m]?.place;
  return place !== undefined && (place.kind === 'blocks' || /^(edge|border)-/.test(place.places[0] ?? ''));
}
