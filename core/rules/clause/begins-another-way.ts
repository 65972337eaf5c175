import { WORK_THINGS } from '../../lexicon/deed-frames.ts';
import type { Item } from '../item.ts';
import { itemsIn, wordsBetween } from '../words-between.ts';
import { joinsPlaces } from './joints.ts';

/** A thing that is put on, behind or into a block. */
export const isStuff = (x: Item | undefined): boolean =>
  x !== undefined &&
  (x.material === 'net' ||
    x.material === 'fabric' ||
    x.material === 'interfacing' ||
    x.fabric !== undefined ||
    /^(patch|patches|darn|support|new piece|overlay)$/.test(x.w));
const PUT = /^(on|over|at|behind|in|for|across|under)$/;
const LIGHT = /^(a|an|some|the|bit|piece|of|little|small|fine|new|fresh|scrap|another)$/;

/** "net on 2-2 and a patch on 2-4", "tulle at 3-3, muslin behind 4-4": does the "and" at `k` lead to another thing at another place? */
export function beginsAnotherWay(items: Item[], k: number, current: Item[]): boolean {
  if (givenAnother(items, k, current)) return true;
  const at = current.findIndex(isStuff);
  if (at < 0 || !stuffAtPlace(current, at)) return false;
  let m = k + 1;
  while (
    items[m] &&
    (LIGHT.test(items[m]!.w) || items[m]!.quantity) &&
    !isStuff(items[m]) &&
    !isNewPiece(items, m) &&
    m < k + 5
  )
    m++;
  // "the linen in 5-5 and the check in 4-4 are thin": cloths of the quilt, by the blocks that they are in
  if (liesIn(current, at) && liesIn(items, m) && !current.slice(0, at).some((x) => PUT_IN.test(x.w)))
    return false;
  return (isStuff(items[m]) || isNewPiece(items, m)) && stuffAtPlace(items, m);
}

const PUT_IN =
  /^(put|set|let|pieced|piece|sewed|sewn|sew|new|fresh|insert|inserted|worked|use|used|slipped|bit|scrap)$/;
const liesIn = (items: Item[], at: number): boolean =>
  items[at]?.fabric !== undefined &&
  items[at + 1]?.w === 'in' &&
  items[at + 2]?.place?.kind === 'blocks' &&
  !/^(new|fresh|some|a|an|of)$/.test(items[at - 1]?.w ?? '');

/** "(net on 4-2,) new piece in 3-4" */
const isNewPiece = (items: Item[], m: number): boolean =>
  /^(piece|pieces|bit|square|block)$/.test(items[m]?.w ?? '') &&
  /^(new|fresh|replacement)$/.test(items[m - 1]?.w ?? '');

const isGiven = (x: Item | undefined): boolean =>
  isStuff(x) || (x !== undefined && (x.w === 'nothing' || Object.hasOwn(WORK_THINGS, x.w)));
export const GIVES = /^(needs?|wants?|gets?|getting|has|have|'s|gave|given|requires?|awaits?)$/;

/** Does the clause give its place or cloth something, or some work: "6-1 gets the patch", "the calico ones want pressing after"? */
function givesSubject(current: Item[]): boolean {
  const subject = current.findIndex((x) => x.place ?? x.fabric);
  if (subject < 0) return false;
  const verb = current.findIndex((x, m) => m > subject && GIVES.test(x.w));
  return current.some(
    (x, m) => m > subject && (isGiven(x) || (verb > 0 && m > verb && x.action && x.action.form !== 'past')),
  );
}

/** "… in", "… cut in", "… sewn on": how the thing goes there. */
const HOW_IT_GOES =
  /^ (?:(?:cut|set|let|put|sewn|stitched|pieced|fused|laid|stuck) )?(?:on top|in|on|over|behind|underneath) /;

/** "6-1 gets the patch, 6-2 the darn", "the gingham ones want pressing and 6-1 a new piece cut in", "row two a press, row three nothing": another place, and what it is given. */
function givenAnother(items: Item[], k: number, current: Item[]): boolean {
  if (!givesSubject(current)) return false;
  let m = k + 1;
  while (/^(and|then|the|all|both)$/.test(items[m]?.w ?? '') && m < k + 4) m++;
  const from = m;
  while (items[m]?.place || items[m]?.fabric || (m > from && joinsPlaces(items, m))) m++;
  if (m === from) return false;
  while (/^(ones|blocks|pieces|squares)$/.test(items[m]?.w ?? '')) m++;
  while (
    /^(the|just|only|definitely|certainly|probably|maybe|perhaps|possibly)$/.test(items[m]?.w ?? '') ||
    (items[m] && LIGHT.test(items[m]!.w) && !isNewPiece(items, m))
  )
    m++;
  const given = items[m];
  const work = given?.action && given.action.form !== 'past';
  if (!(isGiven(given) || work || isNewPiece(items, m)) || given!.place?.kind === 'blocks') return false;
  const how = HOW_IT_GOES.exec(wordsBetween(items, m + 1, m + 4));
  const end = how ? m + 1 + itemsIn(items, m + 1, how[0]) : m + 1;
  return /^(|[.,;!]|and|&|but|then|too|instead)$/.test(items[end]?.w ?? '');
}

export function stuffAtPlace(items: Item[], at: number): boolean {
  const put = items.findIndex((x, m) => m > at && m <= at + 3 && PUT.test(x.w));
  if (put < 0) return false;
  const place = items.slice(put + 1, put + 3).find((x) => x.place);
  return (
    place?.place !== undefined &&
    place.place.places.length > 0 &&
    !/^place\.(it|them|that-one)$/.test(place.place.rule)
  );
}

const PUTTING =
  /^(put|laid|slipped|tucked|slid|ironed|fused|stuck|placed|popped|eased|set|glued|put in|slide|slip|tuck|lay)$/;
const BEFORE_PUTTING =
  /^(then|also|now|i|we|'ve|have|after|that|um|uh|er|just|even|'ll|will|gonna|going|to)$/;

/** "darned 1-2 and put a bit of net over 1-3 and 1-4": does a putting of stuff somewhere begin at `from`? */
export function putsStuff(items: Item[], from: number): boolean {
  let k = from;
  while (BEFORE_PUTTING.test(items[k]?.w ?? '') && k < from + 4) k++;
  if (!PUTTING.test(items[k]?.w ?? '')) return false;
  let m = k + 1;
  while (items[m] && (LIGHT.test(items[m]!.w) || items[m]!.quantity) && !isStuff(items[m]) && m < k + 6) m++;
  return isStuff(items[m]) && stuffAtPlace(items, m);
}
