import type { Item } from '../item.ts';
import { isPredicate, PREPOSITIONS } from './is-predicate.ts';
import { joinsPlaces } from './joints.ts';
import { FINITE } from './new-subject.ts';
import { REMOVE_VERBS } from './removal-at.ts';

/** What stands between a thing and the word that it is off. */
const BEING = /^('s|is|are|'re|was|were|has|have|been|all|both|now|already|come|comes|came|coming|going)$/;
const HEAD =
  /^(the|that|its|this|my|old|new|all|both|every|last|of|and|&|so|then|now|also|ok|okay|right|well|that's)$/;
/** What may still be said of it: "the backing's off now", "the ties are out too". */
const BEHIND =
  /^(now|too|already|also|today|tonight|finally|altogether|completely|tomorrow|tmrw|next|first|last|later|again|well|yesterday|this|morning|afternoon|evening|(?:mon|tues?|wed|thu|thurs?|fri|sat|sun)(?:day|nesday|rsday|urday)?)$/;
/** What goes on behind "off" and "out" with the same thing. */
const GOES_ON =
  /^(of|the|it|them|that|those|this|to|on|in|at|from|for|by|with|without|as|when|while|because|cos|since|so|and|&|but|or|if|after|before|until|till|which|all|both|along|except|bar|not|every|each|my|her|its|row|rows|square|again|there|here|completely|then|an|um|back|down|\d+(?:st|nd|rd|th)|,|:|-|--|\/|\()$/;

/** A thing that is sewn on or in, and can be off or out. */
const isRemovable = (x: Item | undefined): boolean =>
  x !== undefined &&
  !x.seam &&
  (x.object !== undefined || /^(binding|border|backing|batting)/.test(x.part ?? ''));

/** Verbs whose thing follows them: what stands behind is no statement of its own. */
const TAKES_THING =
  /^(start|started|starting|finish|finished|finishing|get|got|getting|had|have|do|did|doing|want|wants|need|needs|with|find|found)$/;

/** The index of the "off" or "out" that is said of the thing at `k`: "pins out", "the backing's all off". */
export function offOf(items: Item[], k: number): number | undefined {
  if (!isRemovable(items[k])) return undefined;
  let at = k + 1;
  while (BEING.test(items[at]?.w ?? '') && at < k + 5) at++;
  return /^(off|out)$/.test(items[at]?.w ?? '') ? at : undefined;
}

/** "tied rows one and two | pins out as I went", "the backing's off | batting out": a thing begins, of which it is said that it is off. */
export function beginsOff(items: Item[], k: number, current: Item[]): boolean {
  // "binding to come off first | then ties out" is one plan
  if (/^(then|and|so|&|also|of)$/.test(items[k]!.w)) return false;
  let at = k;
  while (HEAD.test(items[at]?.w ?? '') && at < k + 4) at++;
  const off = offOf(items, at);
  if (off === undefined) return false;
  // "with the curved pins out of the tin": where they come from is no place of the quilt
  if (items[off + 1]?.w === 'of' && !items.slice(off + 2, off + 5).some((x) => x.place)) return false;
  // "started the tacking out"
  if (TAKES_THING.test(current.at(-1)!.w)) return false;
  // "took the binding off": the particle is the verb's
  return !current.some(
    (x, m) =>
      x.w in REMOVE_VERBS &&
      !/^(off|out|up|away|back|down)$/.test(current[m + 1]?.w ?? '') &&
      !current.slice(m + 1).some((y) => /^(off|out)$/.test(y.w)),
  );
}

/** "the backing's off | there's newspaper in it", "old batting is out | going with wool": that it is off is told, and something else begins. */
export function endsOff(items: Item[], k: number, current: Item[]): boolean {
  let last = current.length - 1;
  while (
    last > 0 &&
    (BEHIND.test(current[last]!.w) || (current[last]!.w === 'as' && current[last + 1]?.w === 'well'))
  )
    last--;
  if (!/^(off|out)$/.test(current[last]!.w)) return false;
  const joint = current.findLastIndex(
    (x, m) => m < last && /^(,|:|and|&|then|so)$/.test(x.w) && !isRemovable(current[m - 1]),
  );
  const own = current.slice(joint + 1, last);
  const thing = own.findLastIndex(isRemovable);
  if (thing < 0 || offOf(current, joint + 1 + thing) !== last) return false;
  if (!own.slice(0, thing).every((x) => HEAD.test(x.w) || isRemovable(x) || x.place?.kind === 'part'))
    return false;
  const next = items[k]!;
  // "binding to come off 1st then ties"
  if (next.w === '1' && items[k + 1]?.w === 'st') return false;
  // "the backing's off | there's newspaper behind it", but "take it off there"
  if (next.w === 'there' && /^('s|is|are|was|were)$/.test(items[k + 1]?.w ?? '')) return true;
  if (GOES_ON.test(next.w) || BEHIND.test(next.w) || PREPOSITIONS.has(next.w)) return false;
  // "came off in one piece"
  if (/^(?:in|on|of|with) /.test(next.w)) return false;
  return !next.place || saysOfPlace(items, k);
}

/** "old patch off 2-4" has its place behind it; in "binding's off | 2-4 is torn" something is said of it. */
function saysOfPlace(items: Item[], k: number): boolean {
  let at = k + 1;
  while (items[at]?.place || (joinsPlaces(items, at) && at < k + 8)) at++;
  return (
    offOf(items, k) !== undefined ||
    FINITE.has(items[at]?.w ?? '') ||
    (at < items.length && isPredicate(items, at))
  );
}
