import { tellsMendBefore } from '../conditions/mended-before.ts';
import type { Item } from '../item.ts';
import { PICTURES } from '../treatments/shot-with-camera.ts';
import { tellsUnsaidDeed } from '../treatments/unsaid-deed.ts';
import { wordsBetween } from '../words-between.ts';
import { beginsAnotherWay, isStuff, putsStuff, stuffAtPlace } from './begins-another-way.ts';
import { beginsGapped } from './begins-gapped.ts';
import { givesUp } from './gives-up.ts';
import { goesOnTo } from './goes-on-to.ts';
import { BE, isPredicate } from './is-predicate.ts';
import { isStop, joinsPlaces, SOFT } from './joints.ts';
import {
  beginsSaying,
  endsInPlace,
  hasPredicate,
  hasWork,
  hasWorkAhead,
  newSubject,
  says,
  startsWithSubject,
  tellsLater,
  tellsWorst,
} from './new-subject.ts';
import { putsThenDoes } from './puts-then-does.ts';
import { REMOVE_VERBS } from './removal-at.ts';
import { bothStand } from './stands-alone.ts';
import { tellsOfSomebody } from './tale-begins.ts';

/** "is so weak", "ever so thin", "so's the one above": no "so" that begins a statement. */
export function isWeakSo(items: Item[], k: number): boolean {
  if (items[k]!.w !== 'so') return false;
  const before = items[k - 1]?.w ?? '';
  if (before === 'ever' || (BE.has(before) && before !== 'out')) return true;
  return (
    /^('s|is|are|has|have|was|were|did|does|do|had)$/.test(items[k + 1]?.w ?? '') &&
    (items[k + 2]?.place !== undefined ||
      /^(the|that|those|its|all|both|every|each|most|some|half|two|three|four)$/.test(items[k + 2]?.w ?? ''))
  );
}

/** "was then carried out", "were then pressed": no "then" that begins a statement. */
export const isWeakThen = (items: Item[], k: number): boolean =>
  items[k]!.w === 'then' &&
  (/^(was|were|is|are|been|has|have)$/.test(items[k - 1]?.w ?? '') || joinsInTurn(items, k));

/** "vacuumed the back first then the front", "pressed 2-2 then 3-3 and darned 4-4": one deed, done at the one and at the other. */
function joinsInTurn(items: Item[], k: number): boolean {
  const before = items[items[k - 1]?.w === 'first' ? k - 2 : k - 1];
  const at = items[k + 1]?.w === 'the' ? k + 2 : k + 1;
  return (
    Boolean(before?.place && items[at]?.place) &&
    before!.place!.kind !== 'pointer' &&
    items[at]!.place!.kind !== 'pointer' &&
    /^(|[,.;!]|and|&|but|then)$/.test(items[at + 1]?.w ?? '') &&
    items.slice(Math.max(0, k - 6), k).some((x) => x.action?.form === 'past')
  );
}

function restHasPredicate(items: Item[], from: number): boolean {
  for (let k = from; k < items.length; k++) {
    const item = items[k]!;
    if (isStop(item)) return false;
    if (SOFT.has(item.w) && !item.place && k > from + 1 && !isWeakSo(items, k)) {
      // "the seam between 1-2 and 1-3 has come undone": a list of places goes on
      if (/^(and|&|,|\+|or)$/.test(item.w) && joinsPlaces(items, k)) continue;
      return false;
    }
    if (isPredicate(items, k)) return true;
  }
  return false;
}

const ABBREVIATIONS = new Set(
  'in st sts approx betw min mins yd yds sq col cols tog acc yest c ca no whipst backst w incl ft cm r b blk blks btm bdg etc sm lg pc pcs pk pks hr hrs interf thr qlt qltg hbone zz vac'.split(
    ' ',
  ),
);

/** "whipst., 15 min", "3 in. tear": the stop belongs to the word. "press flat?? or leave" goes on. */
export function isAbbreviation(items: Item[], k: number): boolean {
  const w = items[k]!.w;
  const next = items[k + 1];
  // "same ? for r3 b1"
  if (w === '?')
    return next?.w === '?' || next?.w === 'or' || (next?.w === 'for' && items[k - 1]?.w === 'same');
  if (w !== '.' || !next) return false;
  if (/^[,;)]$/.test(next.w)) return true;
  const last = items[k - 1]?.w.split(' ').at(-1) ?? '';
  return (
    items[k]!.token.glued &&
    ABBREVIATIONS.has(last) &&
    // "bound top + R. other two sides tomorrow"
    !(items[k - 1]!.place && / [lrtb]$/.test(items[k - 1]!.w)) &&
    next.token.kind === 'word' &&
    !/^(the|i|it|this|there|and|then)$/.test(next.w) &&
    items[k - 1]!.token.kind === 'word' &&
    // "hole under the 1st. something fused on behind 3-3"
    !/\d st$/.test(items[k - 1]!.w) &&
    last !== 'in' &&
    last !== 'no' &&
    last !== 'min' &&
    last !== 'mins' &&
    last !== 'yd' &&
    last !== 'cm'
  );
}

/**
 * "moth along the top border and in 2-3 the silk is torn", "a hole in 2-2 and the one below it the velvet in it is worn": at the
 * second place something of its own is found.
 */
function findsElsewhere(items: Item[], k: number, right: number, current: Item[]): boolean {
  const led = /^(in|on|at|along|down|across|round|around|over)$/.test(items[k + 1]!.w);
  if (!led && items[k]!.w === ',') return false;
  if (!current.some((x, m) => x.fail || isPredicate(current, m))) return false;
  const next = items[right + 1];
  const cloth = items.slice(right + 2, right + 4).some((x) => x.fabric || x.material === 'fabric');
  if (!next || (!led && !(/^(the|its)$/.test(next.w) && cloth))) return false;
  if (
    !(
      /^(the|a|an|some|its|that|there|one|two|both|it|i|half|most|all|many|several|they|nearly|every|a few)$/.test(
        next.w,
      ) ||
      next.fabric ||
      next.seam ||
      next.finding
    )
  )
    return false;
  for (let m = right + 1; m < Math.min(items.length, right + 8); m++) {
    const x = items[m]!;
    if (x.token.kind === 'mark' || /^(and|but|so|or|which)$/.test(x.w)) return false;
    if (x.finding || x.fail || (x.action && isPredicate(items, m))) return true;
  }
  return false;
}

function anotherDeed(items: Item[], from: number): boolean {
  let m = from;
  while (/^(i|we|'ve|'d|have|had|then|also|just|um|uh|er)$/.test(items[m]?.w ?? '') && m < from + 4) m++;
  return (
    items[m]?.action?.form === 'past' &&
    !items[m]!.part &&
    (/^(it|them|the|all|her|every|each|my|that)$/.test(items[m + 1]?.w ?? '') ||
      items[m + 1]?.place !== undefined)
  );
}

function takenOffTogether(items: Item[], k: number): boolean {
  const thing = (x: Item | undefined): boolean =>
    x !== undefined && !x.seam && (x.object !== undefined || x.finding === 'old-repair');
  let m = k + 1;
  while (/^(the|old|its|all|both)$/.test(items[m]?.w ?? '') && m < k + 3) m++;
  return thing(items[k - 1]) && thing(items[m]) && /^(off|out|away)$/.test(items[m + 1]?.w ?? '');
}

/** "(um) the same on …", "same again for …", "did the same to …": words behind a joint that carry on to another place. */
export function sameElsewhere(items: Item[], from: number): boolean {
  let k = from;
  while (/^(um|uh|er|and|then|the|did|done|exactly|just)$/.test(items[k]?.w ?? '') && k < from + 4) k++;
  if (!/^(same|same again|ditto|likewise)$/.test(items[k]?.w ?? '')) return false;
  k++;
  while (
    /^(again|thing|treatment)$/.test(items[k]?.w ?? '') ||
    /^(net|interfacing)$/.test(items[k]?.material ?? '')
  )
    k++;
  // "…, same 3-3"
  if (items[k]?.place?.kind === 'blocks') return /^(|[.,;!?]|too|and)$/.test(items[k + 1]?.w ?? '');
  if (!/^(on|for|at|to|with|in|along|over|behind)$/.test(items[k]?.w ?? '')) return false;
  return items.slice(k + 1, k + 4).some((x) => x.place || x.fabric);
}

/** "(and) 3-2 the same", "the one above likewise": a place of which nothing is told but that. */
function placeLikewise(items: Item[], from: number): boolean {
  let k = from;
  while (/^(and|then|the|um|uh|er)$/.test(items[k]?.w ?? '') && k < from + 3) k++;
  if (!items[k]?.place || items[k]!.place!.kind === 'part') return false;
  if (items[k + 1]?.w === 'the') k++;
  return (
    /^(same|same again|likewise|ditto)$/.test(items[k + 1]?.w ?? '') &&
    (!items[k + 2] ||
      items[k + 2]!.duration !== undefined ||
      /^([.,;!?]|and|but|too|again|way)$/.test(items[k + 2]!.w))
  );
}

/** Has the clause a place and a verb of its own, that stands in no "the one that's in 3-2"? */
const hasOwnVerb = (current: Item[]): boolean =>
  current.some((x) => x.place || x.fabric) &&
  current.some(
    (x, m) =>
      m > 0 &&
      FINITE_VERB.test(x.w) &&
      !RELATIVE.test(current[m - 1]!.w) &&
      // "the first thing I noticed is that 1-1 …": what is said comes yet
      current[m + 1]?.w !== 'that',
  ) &&
  !current.some((x) => x.w === 'between');
const placeForI = (items: Item[], from: number): boolean => {
  let m = from;
  while (/^(the|and|all|both)$/.test(items[m]?.w ?? '') && m < from + 3) m++;
  // "and the hole in 2-5 I'll patch"
  if ((items[m]?.finding || items[m]?.seam) && /^(in|on|at)$/.test(items[m + 1]?.w ?? '')) m += 2;
  return items[m]?.place !== undefined && /^(i|we)$/.test(items[m + 1]?.w ?? '');
};
/** "(same on the one below it) and um there's newspaper behind 2-1" */
const thereBegins = (items: Item[], from: number): boolean => {
  let m = from;
  while (/^(um|uh|er|and|then|,)$/.test(items[m]?.w ?? '') && m < from + 4) m++;
  return items[m]?.w === 'there' && /^('s|is|are|was|were)$/.test(items[m + 1]?.w ?? '');
};
const FINITE_VERB =
  /^('s|is|are|was|were|has|have|had|gets?|got|needs?|wants?|will|'ll|looks|smells|feels|seems|came|went|stays?|go|goes|come|comes)$/;
const RELATIVE = /^(that|which|who|where|what|it|there)$/;

/** "(ditto 6-5) but by machine", "(1-3 as well) but in the green twill this time": how it was done, and no statement. */
function tellsHow(items: Item[], from: number): boolean {
  const comma = items[from - 1]!.w === ',';
  if (comma && !/^(but|only|just)$/.test(items[from]!.w)) return false;
  let m = from;
  while (/^(but|only|just|this time)$/.test(items[m]?.w ?? '')) m++;
  if (/^(in|with|using|from|by|done|of)$/.test(items[m]?.w ?? '')) m++;
  else if (!items[m]?.stitch) return false;
  let how = false;
  for (; m < items.length && m < from + 8; m++) {
    const x = items[m]!;
    if (/^[.;!?,]$/.test(x.w)) break;
    if (x.fabric || x.material || x.stitch || /^(hand|machine)$/.test(x.w)) how = true;
    else if (!/^(the|a|some|an|this|time|instead|stitch|bit|of|piece|though|only|just|by|old)$/.test(x.w))
      return false;
  }
  return how;
}

/** "lay crepeline over the shattered blocks | and darn the hole", "…, and shall whip the seam": other damage, and what is done about it. */
function mendsOther(items: Item[], from: number, current: Item[]): boolean {
  let m = from;
  while (/^(and|then|i|we|shall|will|'ll|also)$/.test(items[m]?.w ?? '') && m < from + 4) m++;
  const [deed, the, damage] = items.slice(m, m + 3);
  if (!deed?.action || deed.seam || deed.finding || !/^(the|that|this|those)$/.test(the?.w ?? ''))
    return false;
  if (!damage || damage.place || !(damage.finding || damage.seam)) return false;
  return (
    current.some((x) => x.action || /^(net|interfacing)$/.test(x.material ?? '')) &&
    current.some((x) => (x.finding && x.finding !== damage.finding) || x.place?.kind === 'blocks')
  );
}

const DOES =
  /^ (?:(?:and|then|so|also|i|we) )*(?:'ll|will|shall|(?:'m |am )?(?:going to|gonna)|(?:have|'ve)(?: got)? (?:half a mind )?to|must|might|may|could|want to|'d like to|need to|still have to|still need to|am to|just|'ve|have)? ?(?:do|did|done|doing) $/;

/** "…, will do the top edge tonight", "… and I've half a mind to do row three the same": the deed goes on at another place. */
function doesElsewhere(items: Item[], from: number): boolean {
  const at = items.findIndex((x, m) => m >= from && m < from + 8 && /^(do|did|done|doing)$/.test(x.w));
  if (at < 0 || !DOES.test(wordsBetween(items, from, at + 1))) return false;
  const next = /^(the|its|all)$/.test(items[at + 1]?.w ?? '') ? items[at + 2] : items[at + 1];
  return next?.place !== undefined && !/^place\.(?:it|them|both|those|that-one)$/.test(next.place.rule);
}

/** Is the comma or conjunction at `k` the end of a statement? */
export function isBoundary(items: Item[], k: number, current: Item[]): boolean {
  // "same again between 1-3 and 1-4 only with a ladder stitch": one seam
  if (current.at(-1)?.place && current.at(-2)?.w === 'between' && items[k + 1]?.place?.kind === 'blocks')
    return false;
  // "seam 4-1 & 5-1 open": nothing is said of the seam before the second block that it joins
  if (
    /^seams?$/.test(current[current[0]?.w === 'the' ? 1 : 0]?.w ?? '') &&
    /^(,|and|&|\+)$/.test(items[k]!.w) &&
    current.every((x) => x.place || /^(seams?|and|&|,|\+|the)$/.test(x.w)) &&
    joinsPlaces(items, k)
  )
    return false;
  // "took old patches off 2-2 + 3-4, hole under the 1st": found under one of those, which are one list
  if (
    /^(and|&|\+)$/.test(items[k]!.w) &&
    current.at(-1)?.place &&
    joinsPlaces(items, k) &&
    UNDER_ONE.test(wordsBetween(items, k + 2, k + 9))
  )
    return false;
  if (/^(,|and|&|\+)$/.test(items[k]!.w) && damageOfAll(items, k, current)) return false;
  return (
    endsStatement(items, k, current) || (/^(,|and|&|\+)$/.test(items[k]!.w) && bothStand(items, k, current))
  );
}

/**
 * "the tear in 2-3 and 4-1 was sewn up", "holes in 2-3 and 4-1 patched": damage named with all its places, and what was done about it behind
 * them. "hole in 2-3 and 4-1 patched" tells of two; nobody sews up a block, so that a tear sewn up is of both.
 */
function damageOfAll(items: Item[], k: number, current: Item[]): boolean {
  const at = current.findIndex((x) => (x.finding || x.seam) && !x.place);
  if (at < 0 || at > 3 || !/^(in|on|at|of)$/.test(current[at + 1]?.w ?? '') || !joinsPlaces(items, k))
    return false;
  if (!current.slice(at + 2).every((x) => x.place?.kind === 'blocks' || /^(,|and|&|\+)$/.test(x.w)))
    return false;
  if (!current.slice(0, at).every((x) => x.finding || x.fail || NAMES_DAMAGE.test(x.w))) return false;
  let m = k + 1;
  while (items[m]?.place?.kind === 'blocks' || joinsPlaces(items, m)) m++;
  while (/^(is|are|was|were|have|has|been|both|all|now)$/.test(items[m]?.w ?? '')) m++;
  const deed = items[m]?.action;
  if (deed?.form !== 'past' || items[m]!.finding) return false;
  const damage = current[at]!;
  return (
    /^(the|those|these|both|all)$/.test(current[0]!.w) ||
    /(?:holes|tears|rips|splits|slits|stains|patches|seams|bits|spots)$/.test(damage.w) ||
    (deed.v === 'resew' && (damage.seam === true || /^(?:tear|split-seam)$/.test(damage.finding ?? '')))
  );
}
const NAMES_DAMAGE = /^(the|those|these|both|all|split|open|worn|little|small|big|long|bad|two|old)$/;

const UNDER_ONE =
  /^ , (?:(?:and|but|with|found|a|an|the|old|little|big) )*\S+ (?:under|underneath|beneath|behind) (?:the |that )?(?:(?:1 ?st|2 ?nd|3 ?rd|first|second|third|last|one|other|latter|former|both|it|each)\b)/;

/** "3-1 is for lining", "row two's down for netting": what is meant for it is told. */
const IS_FOR =
  / (?:is|'s|are) (?:down |due |next |now |both |all )*for (?:a |an )?(?:lining|netting|darning|patching|backing|pressing|washing|replacing|replacement|cleaning|tying|quilting|patch|darn|net|support|press|wash) $/;

/** "(the calico has faded,) and so has the right-hand border", "(the twill's puckered) and the left border as well": the same of a part of the quilt. */
function sameOfPart(items: Item[], k: number, current: Item[]): boolean {
  if (
    !current.some((x) => x.finding || x.fail) ||
    !current.some((x) => x.fabric || x.place?.kind === 'blocks')
  )
    return false;
  let at = k + 1;
  while (/^(and|,|the)$/.test(items[at]?.w ?? '') && at < k + 3) at++;
  const so = items[at]?.w === 'so' && /^('s|is|are|has|have|was|were|did|does)$/.test(items[at + 1]?.w ?? '');
  if (so) at += items[at + 2]?.w === 'the' ? 3 : 2;
  if (items[at]?.place?.kind !== 'part') return false;
  return so || (/^(as|too|also)(?: |$)/.test(items[at + 1]?.w ?? '') && current.every((x) => !x.place));
}

/** "the bottom row is thin | and somebody has been at 3-3 before me", "4-4 is faded, | whoever had it darned 4-5": before an old mend. */
const beginsMend = (items: Item[], k: number, current: Item[]): boolean => {
  const next = items[/^(and|but|so)$/.test(items[k + 1]!.w) ? k + 2 : k + 1]?.w ?? '';
  if (!/^(somebody|someone|whoever|some|a|an|one|the)$/.test(next) || !hasPredicate(current)) return false;
  let end = k + 1;
  while (items[end] && !isStop(items[end]!) && items[end]!.w !== ',' && end < k + 14) end++;
  return tellsMendBefore(wordsBetween(items, k + 1, end)) && !tellsMendBefore(wordsBetween(current));
};

/** "somebody patched 4-1 years ago, | I've unpicked it", "whoever had it glued tape behind 2-3 | and the cloth is gummy": behind an old mend. */
const endsMend = (items: Item[], k: number, current: Item[]): boolean => {
  const next = items[k + 1]!;
  return (
    (/^(i|we|it|that|there|the|they|so|but|and)$/.test(next.w) ||
      Object.hasOwn(REMOVE_VERBS, next.w) ||
      next.finding !== undefined) &&
    !joinsPlaces(items, k) &&
    current.length > 2 &&
    tellsMendBefore(wordsBetween(current))
  );
};

/** "ditto 2-5", "the same 2-5 and 2-6": nothing but places that something told before holds for too. */
const isCarriedOn = (current: Item[]): boolean =>
  /^ (?:the )?(?:ditto|same|same again|likewise) /.test(wordsBetween(current)) &&
  current
    .slice(current[0]!.w === 'the' ? 2 : 1)
    .every((x) => x.place || /^(again|and|&|,|\+|the|for|on|in|at|to)$/.test(x.w));

/** The last of the places that are joined to the one at `k`. */
function lastJoined(items: Item[], k: number): number {
  let last = k;
  while (/^(and|&|\+)$/.test(items[last + 1]?.w ?? '') && items[last + 2]?.place) last += 2;
  return last;
}

/** "running stitch", "by hand", "small ladder stitch": how it was sewn, and no more. */
const isHowAlone = (current: Item[]): boolean =>
  current.length < 5 &&
  current.some((x) => x.stitch && x.action?.form !== 'past') &&
  current.every(
    (x) =>
      x.stitch ||
      /^(a|the|small|fine|big|in|with|by|all|done|sewn|double|tiny|close|grey|white|black)$/.test(x.w),
  );

/** "(2-1 whipstitched,) 3-1/4-1 by machine": where and how by themselves, which go on with the deed before. */
const isWhereAndHow = (current: Item[]): boolean =>
  current[0]?.place !== undefined &&
  current.at(-1)!.stitch !== undefined &&
  current.every((x) => !x.action && (x.place || x.stitch || /^(and|&|,|\/|by|in|with|a|the|on)$/.test(x.w)));

function endsStatement(items: Item[], k: number, current: Item[]): boolean {
  const w = items[k]!.w;
  const next = items[k + 1];
  // "4-5 as before"
  if (!next) return !(w === 'before' && items[k - 1]?.w === 'as');
  if (/^(,|and|&|but|so|which)$/.test(w) && (endsMend(items, k, current) || beginsMend(items, k, current)))
    return true;
  if (/^(,|and|&|\+|but)$/.test(w) && sameOfPart(items, k, current)) return true;
  if (w === '/') return false;
  // "(darned 2-2,) running stitch | and pressed the top"
  if (/^(and|&|\+|,|but)$/.test(w) && isHowAlone(current) && restHasPredicate(items, k + 1)) return true;
  // "3-1 by machine | 3-3 torn"
  if (/^(and|&|\+|,|but)$/.test(w) && next.place && isWhereAndHow(current) && restHasPredicate(items, k + 1))
    return true;
  // "snipped and pulled all the ties"
  const removing = REMOVE_VERBS[items[k - 1]?.w ?? '']?.form;
  if (removing && /^(,|and|&)$/.test(w) && REMOVE_VERBS[next.w]?.form === removing) return false;
  if ((w === 'but' || w === 'only' || w === ',') && tellsHow(items, k + 1)) return false;
  // "the batting was nothing but lumps"
  if (w === 'but' && /^(nothing|anything|all)$/.test(items[k - 1]?.w ?? '')) return false;
  if (
    /^(,|and|but|&|\+)$/.test(w) &&
    (beginsGapped(items, k, current) || beginsAnotherWay(items, k, current))
  )
    return true;
  // "replaced the silk in 4-1 and put lawn behind 4-2 and 4-3"
  if (/^(,|and|&|\+)$/.test(w) && putsStuff(items, k + 1) && hasPredicate(current)) return true;
  // "1-2/2-2 was open too, same stitch"
  if (
    w === ',' &&
    next.w === 'same' &&
    current.some((x) => x.fail || x.finding) &&
    !current.some((x) => x.action?.form === 'past') &&
    /^(st|stitch|way|again|treatment|deal|fix|cure)$/.test(items[k + 2]?.w ?? '')
  )
    return true;
  // "re-sewed the split seam, running stitch, and um the same on the block to the right of it"
  if (
    /^(,|and|&|\+)$/.test(w) &&
    sameElsewhere(items, k + 1) &&
    current.some((x) => x.action || x.finding || x.fail)
  )
    return true;
  // "there's a hole in 2-4 | and another somewhere"
  if (
    /^(,|and|but|&|\+)$/.test(w) &&
    current.some((x) => x.finding || x.fail) &&
    / (?:another|a (?:second|third|fourth))(?: one)? (?:somewhere|someplace|too|gone) /.test(
      wordsBetween(items, k + 1, k + 5),
    )
  )
    return true;
  // "herringboned it in, and the one above the same"
  if (
    /^(,|and|&|\+)$/.test(w) &&
    placeLikewise(items, k + 1) &&
    hasPredicate(current) &&
    items[k - 1]?.place?.how !== 'said'
  )
    return true;
  // "mildew along the bottom edge, | and somebody has inked a date on 3-4"
  if (
    /^(,|and|but|&|\+)$/.test(w) &&
    tellsOfSomebody(items, /^(and|but|&)$/.test(items[k + 1]?.w ?? '') ? k + 2 : k + 1) &&
    current.some((x) => x.finding || x.fail || x.action) &&
    current.at(-1)?.w !== ','
  )
    return true;
  // "3-5 left as is. 2-5 too, moth there as well"
  if (
    w === ',' &&
    current.length > 1 &&
    current.every((x) => x.place || /^(and|too|also|same|ditto|likewise|the)$/.test(x.w)) &&
    /^(too|also|ditto|likewise|same)$/.test(current.at(-1)!.w)
  )
    return restHasPredicate(items, k + 1);
  if (/^(,|and|&|\+)$/.test(w) && mendsOther(items, k + 1, current)) return true;
  // "worst in 4-4 | and 2-2 is torn"
  if (/^(and|&|,)$/.test(w) && tellsWorst(current, 0) && newSubject(items, k + 1)) return true;
  // "between 2-1 and 3-1 and closed …", "out of 2-2 + 3-2, …": a list of places goes on
  if (/^(and|&|,|\+)$/.test(w) && joinsPlaces(items, k)) {
    let right = k + 1;
    while (!items[right]!.place) right++;
    // "(2-1 frayed,) ditto 2-5, | 3-3 has a hole"
    if (w === ',' && isCarriedOn(current) && beginsSaying(items, lastJoined(items, right))) return true;
    // "4-5 and 6-4 I'm going to requilt": nothing is said of the first alone
    if (current.every((x) => x.place || x.fabric || /^(and|&|,|\+|the|both|in|of|all)$/.test(x.w)))
      return false;
    // "vacuum top and back, that's all it gets": nothing is said of the second
    if (items[right]!.part && items[k - 1]!.part && /^[,.;!?]?$/.test(items[right + 1]?.w ?? ''))
      return false;
    // "photographed the back and the front | I vacuumed it": the deed behind has a thing of its own
    if (items[right]!.part && items[k - 1]!.part && anotherDeed(items, right + 1)) return false;
    // "the old patches on 3-1 and 3-2 were horrible": one block alone "was"
    if (
      items[right]!.place!.places.length === 1 &&
      /^(were|are|have|need|want|look|'ve|'re)$/.test(items[right + 1]?.w ?? '') &&
      current.length > 1
    )
      return false;
    if (
      !items[right]!.part &&
      !beginsSaying(items, right) &&
      !tellsLater(items, k + 1, current) &&
      !findsElsewhere(items, k, right, current)
    )
      return false;
  }
  // "took the old patch and the label off": two things taken off together
  if (/^(and|&|,|\+)$/.test(w) && takenOffTogether(items, k)) return false;
  if (
    w === 'after' ||
    w === 'before' ||
    w === 'until' ||
    w === 'as' ||
    w === 'still' ||
    w === 'also' ||
    w === 'since'
  ) {
    // "left 3-3 as I found it"
    if (
      w === 'as' &&
      current.some((x) => x.action?.v === 'leave') &&
      /^(found|had)$/.test(items[k + 2]?.w ?? '')
    )
      return false;
    if (w === 'as') return next.w === 'i' && items[k - 1]?.w !== 'well' && items[k - 1]?.w !== 'just';
    return w === 'still' || w === 'also'
      ? next.w === 'i' || next.w === 'it' || next.w === 'well'
        ? next.w !== 'well'
        : restHasPredicate(items, k + 1) &&
          current.length > 0 &&
          hasPredicate(current) &&
          (w === 'also' || w === 'still')
      : next.w === 'i' || (next.w === 'that' && !PICTURES.test(items[k - 1]?.w ?? ''));
  }
  if (
    [
      'but',
      'so',
      'then',
      'because',
      'cos',
      'cause',
      'while',
      'which',
      'though',
      'although',
      'when',
      'whereas',
    ].includes(w)
  )
    return current.length > 0;
  if (
    /^(,|and|&)$/.test(w) &&
    (tellsLater(items, k + 1, current) ||
      doesElsewhere(items, k + 1) ||
      goesOnTo(items, k + 1) ||
      givesUp(items, k + 1))
  )
    return true;
  // "the bottom one I'll do tomorrow, I've had enough of this day"
  if (w === ',' && next.w === 'i' && tellsLater(current, 0)) return true;
  if (
    !says(current) &&
    !hasWork(current) &&
    !current.some((x) => x.duration || x.span || x.quantity || x.cost)
  ) {
    // "row three, block two, has a tear": nothing has been said yet
    if (w === ',' && current.every((x) => x.token.kind === 'word' && !x.place) && current.length < 4)
      return true;
    // "4-3 can't, | it wants net"
    if (
      w === ',' &&
      /^(n't|not|cannot)$/.test(current.at(-1)!.w) &&
      /^(it|they|that|those)$/.test(next.w) &&
      /^(wants?|needs?|gets?|'s|is|are|has|have|'ll|will)$/.test(items[k + 2]?.w ?? '')
    )
      return true;
    // "3-1 is for lining, | 3-2 is for netting"
    if (/^(,|and|but)$/.test(w) && IS_FOR.test(wordsBetween(current)) && newSubject(items, k + 1))
      return true;
    // "worked on 5-2 and 5-3 most of the evening | the backing's holding up"
    if (
      /^(,|and|but|&|\+)$/.test(w) &&
      (newSubject(items, k + 1) || thereBegins(items, k + 1)) &&
      // "saw to 4-1 and 4-2 just now"
      !(joinsPlaces(items, k) && /^(just|only|too|same|also|both|all|now)$/.test(items[k + 2]?.w ?? '')) &&
      tellsUnsaidDeed(current)
    )
      return true;
    // "there's fusible behind 2-5 now | and the tear's zigzagged", "net on 4-2 | and the backing's pressed"
    // "net over 3-3 | and darned the hole"
    if (
      /^(,|and|but|&|\+)$/.test(w) &&
      current.some((x, m) => isStuff(x) && stuffAtPlace(current, m)) &&
      (anotherDeed(items, k + 1) ||
        (startsWithSubject(items, k + 1) &&
          !endsInPlace(items.slice(k + 1, k + 2)) &&
          restHasPredicate(items, k + 1)))
    )
      return true;
    if (putsThenDoes(items, k, current)) return true;
    // "no patch on 2-4, I'm going to darn it"
    if (w === ',' && next.w === 'i' && /^(no|not)$/.test(current[0]?.w ?? ''))
      return restHasPredicate(items, k + 1);
    // "there's initials on the back and I squared it up"
    if (
      /^(,|and|but)$/.test(w) &&
      /^(i|we)$/.test(next.w) &&
      items[k + 2]?.action?.form === 'past' &&
      current.some((x, m) => x.w === 'there' && /^('s|is|are|was|were)$/.test(current[m + 1]?.w ?? ''))
    )
      return true;
    // "the purples are getting the tulle and I'm leaving the corduroy alone"
    if (
      /^(,|and|but)$/.test(w) &&
      next.w === 'i' &&
      /^('m|am|'ve|have|'ll|will|left)$/.test(items[k + 2]?.w ?? '') &&
      current.some((x) => x.fabric || x.place) &&
      current.some((x) => /^(are|is|'s|gets?|getting|will|'ll)$/.test(x.w))
    )
      return restHasPredicate(items, k + 1);
    // "someone's put a patch on 5-5 and the one below that is tender", "2-2 is to have net over it and the one below a bit of lawn"
    if (/^(and|&|but)$/.test(w) && hasOwnVerb(current) && newSubject(items, k + 1)) return true;
    // "2-5 will get muslin behind, the other five in that column I leave alone"
    if (
      /^(,|and|but)$/.test(w) &&
      hasOwnVerb(current) &&
      current.at(-1)!.w !== ',' &&
      placeForI(items, items[k + 1]!.w === 'and' ? k + 2 : k + 1)
    )
      return restHasPredicate(items, k + 1);
    if (
      /^(,|and|but)$/.test(w) &&
      current.some((x) => x.place) &&
      current.some((x) => /^(same|ditto|likewise)$/.test(x.w)) &&
      thereBegins(items, k + 1)
    )
      return true;
    return current.some((x) => x.place) &&
      restHasPredicate(items, k + 1) &&
      startsWithSubject(items, k + 1) &&
      !/^(and|&|or|\+|,)$/.test(w)
      ? true
      : w === ',' &&
          startsWithSubject(items, k + 1) &&
          restHasPredicate(items, k + 1) &&
          !endsInPlace(current) &&
          !current.some((x) => x.place);
  }
  // "no fraying or holes to speak of"
  if (
    /^(or|nor)$/.test(w) &&
    next.finding &&
    items[k - 1]?.finding &&
    /^(no|not|without|any)$/.test(items[k - 2]?.w ?? '')
  )
    return false;
  return restHasPredicate(items, k + 1) || hasWorkAhead(items, k + 1) || newSubject(items, k + 1);
}
