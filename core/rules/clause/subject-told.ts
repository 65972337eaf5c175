import type { Item } from '../item.ts';
import { pointsElsewhere, tellsPlace } from '../tells-place.ts';
import { wordsBetween } from '../words-between.ts';
import { joinsPlaces } from './joints.ts';

/** "right edge still to do", "6-3 ditto tomorrow", "2-4 maybe too", "row three in hand", "the bottom one I'll do": said of a place or a part. */
const SAID =
  /^ (?:(?:is|are|'s|'re) )?(?:still to (?:do|go|come|be done|tie|quilt|bind|patch|darn|press|net)|to (?:do|follow|come)(?! (?:with|off|out|from))|(?:not )?done yet|not yet|not done|ditto|likewise|same again|the same|in hand|half done|in progress|under way|(?:for )?(?:tomorrow|tmrw|tonight)|(?:a )?job for (?:tomorrow|later|another day|\S+day)|next(?! to)|later|maybe (?:too|also|as well)|perhaps (?:too|also|as well)|(?:i|we) (?:'ll|'m|will|am|have|'ve) (?:do|doing|done|leave|leaving|left|patch|patching|patched|darn|darning|darned|net|netting|netted|replace|replacing|replaced|keep|keeping|kept|going|got|not|just|probably)) /;
const LEADS = /^(?:the|that|other|old)$/;

/** Does something begin at `k` that is told of a place or a part in short words? */
export function subjectTold(items: Item[], k: number, current: Item[]): boolean {
  let at = k;
  while (LEADS.test(items[at]?.w ?? '') && at < k + 2) at++;
  const subject = items[at];
  if (!subject || !(tellsPlace(subject) || pointsElsewhere(subject))) return false;
  const before = current.at(-1)!;
  if (/^(do|doing|did|does)$/.test(before.w)) return false;
  if (before.place || before.fabric) {
    // "interfacing behind 1-1 | 2-4 maybe too": the place before it has its own preposition or verb
    if (!current.slice(0, -1).some((x) => x.action || x.finding || x.fail)) return false;
  } else if (takesPlace(before, current)) return false;
  let end = at + 1;
  while (items[end]?.place || (joinsPlaces(items, end) && end < at + 8)) end++;
  return SAID.test(wordsBetween(items, end, end + 5));
}

/** "requilted | 5-4": the verb waits for its place; "requilted 5-4 backstitch | right edge" waits for none. */
function takesPlace(before: Item, current: Item[]): boolean {
  if (!before.action) return false;
  const own = current.slice(current.findLastIndex((x) => /^(?:,|and|&|\+|then|but|so|or)$/.test(x.w)) + 1);
  const told = own.slice(0, -1);
  return !(before.stitch !== undefined && told.some((x) => x.action)) && !told.some((x) => x.place);
}

/** "… stay as they are | seam 3-2/4-2 resewn", "… is fine | seam between 1-1 and 1-2 open": a seam with its places and what became of it. */
export function seamTold(items: Item[], k: number, current: Item[]): boolean {
  if (!items[k]!.seam || items[k]!.action || items[k]!.finding) return false;
  const before = current.at(-1)!;
  if (before.finding || before.fail || before.fabric || takesPlace(before, current)) return false;
  let at = /^(between|in|at|on)$/.test(items[k + 1]?.w ?? '') ? k + 2 : k + 1;
  if (!items[at]?.place) return false;
  while (items[at]?.place || (/^(?:and|&|,|\/|\+|to)$/.test(items[at]?.w ?? '') && items[at + 1]?.place))
    at++;
  const said = /^('s|is|are|has|all|now|had|was)$/.test(items[at]?.w ?? '') ? items[at + 1] : items[at];
  return said !== undefined && (said.fail || said.finding !== undefined || said.action?.form === 'past');
}

/** "front brushed 35 minutes | will do the back tomorrow": the deed goes on elsewhere, with no "I" before it. */
export function doneNext(items: Item[], k: number, current: Item[]): boolean {
  if (!/^(will|'ll|gonna|doing)$/.test(items[k]!.w)) return false;
  const at = items[k]!.w === 'doing' ? k : k + 1;
  if (!/^(do|doing)$/.test(items[at]?.w ?? '')) return false;
  const before = current.at(-1)!;
  if (!before.duration && !before.stitch && !before.action && !/^(now|today|done)$/.test(before.w))
    return false;
  const next = items[at + 1];
  const place = /^(the|its|all)$/.test(next?.w ?? '') ? items[at + 2] : next;
  return place !== undefined && (tellsPlace(place) || pointsElsewhere(place));
}
