import { boundaryBefore, type Item, wordsAt } from '../item.ts';
import { looksUndecided } from '../mood.ts';
import { itemsIn, wordsBetween } from '../words-between.ts';
import { endOfDoubt } from './choices.ts';
import { isStop } from './joints.ts';

/** What leads to the question: "whether", "not sure if", "does", "should". */
const ASKS =
  /^ (?:(?:so|and|well|still|just|hmm?|um|right|now|ok|okay) )*(?:(?:i|we) (?:'m |am |'re )?)?(?:(?:not|n't|never) )?(?:(?:sure|certain|unsure|undecided|know|wondering|wonder|do n't know|ca n't decide|in two minds|open question|to be decided|tbd|undecided)(?: is| yet| about)?(?: :)? )?(?:whether|if|does|do|should|shall|will|would|must|can|is) (?:(?:i|we) |to )?$/;
const OFF =
  /^ (?:(?:should|has to|ought to|is to|must|would|can|will|really) )*(?:comes?|coming|goes|go|to come|to go) (off|out)(?: at all| too| as well| or not| again)* $/;
const TAKE = /^(?:take|remove|strip|unpick|pull|lift|get)$/;
const STAYS =
  /^ (?:or )(?:(?:it|they|just|is|gets?|whether it|if it) )*(?:stays?|left|leave it|remains?|not)(?: put| on| in| where it is| as it is| alone| be)* /;

/**
 * "whether the backing comes off at all I don't know yet", "does the border come off? not sure", "whether to take the binding off is an
 * open question": whether a thing is to be taken off, which is a treatment in question and no matter of how to finish.
 */
export function withOffOrNot(items: Item[]): Item[] {
  if (!items.some((x) => /^(?:off|out)\b/.test(x.w))) return items;
  for (let k = 0; k < items.length; k++) {
    if (k > 0 && !isStop(items[k - 1]!) && !/^(?:,|and|but|so|-|--)$/.test(items[k - 1]!.w)) continue;
    for (let m = k + 1; m < Math.min(items.length, k + 9); m++) {
      if (!ASKS.test(wordsBetween(items, k, m))) continue;
      const told = removalAt(items, m);
      if (!told) continue;
      const stays = STAYS.exec(wordsBetween(items, told.end, told.end + 7));
      const end = told.end + (stays ? itemsIn(items, told.end, stays[0]) : 0);
      const last = endOfDoubt(items, end);
      const asked = items[end]?.w === '?';
      if (
        !asked &&
        !looksUndecided(wordsBetween(items, k, last)) &&
        !/^(?:should|shall)$/.test(items[m - 1]!.w)
      )
        break;
      if (items[last] && !isStop(items[last]!) && !/^(?:,|and|but|so|-|--)$/.test(items[last]!.w)) break;
      const left =
        stays && !/ not /.test(stays[0])
          ? [boundaryBefore(items[k]!, ';'), ...wordsAt(items[k]!, 'maybe leave'), ...told.thing]
          : [];
      const rest = items[last]?.w === '?' ? items.slice(last + 1) : items.slice(last);
      const stop = rest[0] && !isStop(rest[0]) ? [boundaryBefore(rest[0], ';')] : [];
      return [
        ...items.slice(0, k),
        ...wordsAt(items[k]!, 'maybe take'),
        ...told.thing,
        ...wordsAt(items[k]!, told.particle),
        ...left,
        ...stop,
        ...withOffOrNot(rest),
      ];
    }
  }
  return items;
}

/** "(whether) the old patch on 2-3 comes off", "(to) take the backing off": the thing with its place, and where the words end. */
function removalAt(items: Item[], k: number): { thing: Item[]; particle: string; end: number } | undefined {
  const verb = TAKE.test(items[k]?.w ?? '') ? 1 : 0;
  let m = k + verb;
  const from = m;
  while (
    items[m] &&
    m < from + 8 &&
    (items[m]!.object ||
      items[m]!.place ||
      items[m]!.part ||
      items[m]!.finding === 'old-repair' ||
      /^(?:the|my|its|that|those|old|on|in|from|of|and|patch)$/.test(items[m]!.w))
  )
    m++;
  const thing = items.slice(from, m);
  if (!thing.some((x) => x.object || x.part || x.finding === 'old-repair')) return undefined;
  if (verb && /^(?:off|out)$/.test(items[m]?.w ?? '')) {
    const all = /^ at all /.test(wordsBetween(items, m + 1, m + 3)) ? 2 : 0;
    return { thing, particle: items[m]!.w, end: m + 1 + all };
  }
  if (verb) return undefined;
  for (let n = Math.min(items.length, m + 6); n > m + 1; n--) {
    const off = OFF.exec(wordsBetween(items, m, n));
    if (off) return { thing, particle: off[1]!, end: n };
  }
  return undefined;
}
