import type { Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';

const NO = /^(?:no|nope|nah|not|none|nil|nothing|thankfully not|luckily not)$/;
const THOUGHT =
  / (?:(?:i|we)(?: 'd| had)? (?:thought|took it for|reckoned|feared|guessed|was afraid)(?: it was| at first)?|at first|at first glance|by the look of it) $/;
const BUT_NO =
  /^ (?:, )?(?:but |and |only )?(?:no|it 's not|it is n't|it was n't|it wasn't|it 's n't|that 's not|not so|it turns out|turned out)(?: ,| it| to| that|$| )/;

/** How far back the finding may lie that is denied. */
const REACH = 16;
/** "no it hasn't", "no, it's not": denied whole, and what stands behind is another matter. */
const NO_IT_IS_NOT =
  /^ (?:no|nope|nah) (?:, |wait |actually |sorry |hang on )*(?:it|that|they|there|she)(?: (?:is|has|does|are|have|do|was|had|did)(?: n't|n't| not)|n't| (?:'s|'re) (?:not|n't)) (?:[,.;:-]|--|it|that|they|only|just|i|and|at all|after all|either|$)/;
/** What is no damage: "no, that's the pattern", "it's only fluff". */
const INNOCENT =
  /^ (?:(?:no|nope|nah|but|and|oh|wait|actually|sorry|,|-|--) )*(?:it|that|they|those|this) (?:is|'s|are|'re|was|were) (?:(?:only|just|merely|all|really|actually|probably|nothing but|part of|in) )*(?:(?:the|a|an|some|my|bits? of|one of the|loose|stray|old|printed|woven) )*(?:pattern|print|design|weave|fluff|lint|dust|shadows?|light|lamp|crumbs?|glasses|specs|thread|threads|cat hairs?|dog hairs?|hairs?|chalk|eyes|imagination|reflection|slub|slubs|nap|fold)\b/;
/** "well, not a tear", "no, not moth", "or rather not a stain". */
const NOT_THAT = /^(?:,|-|--|;|\.|no|well|rather|sorry|actually|then|wait|exactly|:|or)$/;

/**
 * A finding that she asks herself or took something for, and denies in the same breath, was not found: "damp spots, mould?
 * no, only water marks", "moth, I thought, but no, it's a burn", "it has the moth, oh no it hasn't, that's only fluff", "a tear,
 * well, not a tear, a split seam". The place it was told of stays.
 */
export function withoutDenied(items: Item[]): Item[] {
  for (let k = 0; k < items.length - 1; k++) {
    if (items[k]!.w === 'what' && TAKEN_FOR.test(wordsBetween(items, k, k + 6))) takenFor(items, k);
    if (k === 0) continue;
    ratherThan(items, k);
    const asked = items[k]!.w === '?' && NO.test(items[k + 1]!.w);
    if (asked || isThought(items, k)) {
      for (let m = k - 1; m >= 0 && !/^(?:[.;:?!,]|-|--|\n)$/.test(items[m]!.w); m--) forget(items[m]!);
      continue;
    }
    if (deniesAt(items, k)) {
      const told = lastFound(items, k);
      if (told) forget(told);
    } else if (items[k]!.w === 'not') toldOtherwise(items, k);
  }
  return items;
}

/** "what looked like mould on 2-2 is just dust", "what I took for moth turned out to be a burn": the first of the two is none. */
const TAKEN_FOR =
  /^ what (?:at first )?(?:(?:looked|looks|seemed|appeared)(?: at first)?(?: like| to be)|(?:i|we) (?:took for|mistook for|thought was|thought were|had down as|took to be)) /;
function takenFor(items: Item[], k: number): void {
  const turned = items.findIndex(
    (x, m) => m > k + 3 && /^(?:is|'s|was|are|were|turned|turns|proved)$/.test(x.w),
  );
  if (turned < 0) return;
  for (let m = k + 2; m < turned; m++) forget(items[m]!);
}

/** "tender rather than torn", "more thin than frayed", "not so much torn as frayed": the one of the two that it is not. */
function ratherThan(items: Item[], k: number): void {
  const next = (from: number): Item | undefined =>
    items.slice(from, from + 3).find((x) => x.finding || x.fail);
  const before = items.slice(Math.max(0, k - 7), k);
  if (items[k]!.w === 'than') {
    const rather = items[k - 1]!.w === 'rather';
    const compared = before.findLastIndex((x) => /^(?:more|less)$/.test(x.w));
    const told = before.slice(compared + 1).find((x) => x.finding || x.fail);
    const other = next(k + 1);
    if (!other || !(rather || (compared >= 0 && told))) return;
    if (!rather && before[compared]!.w === 'less') forget(told!);
    else forget(other);
  } else if (items[k]!.w === 'as') {
    const much = before.findLastIndex((x, m) => x.w === 'much' && before[m - 1]?.w === 'so');
    const told = much < 1 ? undefined : before.slice(much + 1).find((x) => x.finding || x.fail);
    if (told && next(k + 1) && /^(?:not|n't)$/.test(before[much - 2]?.w ?? '')) forget(told);
  }
}

const forget = (item: Item): void => {
  item.finding = undefined;
  item.fail = undefined;
};

/** Does a comma stand at `k` behind what was only thought, and a "no" behind it? */
function isThought(items: Item[], k: number): boolean {
  if (items[k]!.w !== ',' && items[k]!.w !== 'but') return false;
  return (
    BUT_NO.test(wordsBetween(items, k, k + 6)) &&
    (THOUGHT.test(wordsBetween(items, k - 5, k)) || / thought /.test(wordsBetween(items, k - 7, k)))
  );
}

/** "no it hasn't", "no, that's the pattern", "but it's only fluff". */
function deniesAt(items: Item[], k: number): boolean {
  const word = items[k]!.w;
  if (/^(?:no|nope|nah)$/.test(word))
    return NO_IT_IS_NOT.test(wordsBetween(items, k, k + 9)) || INNOCENT.test(wordsBetween(items, k, k + 12));
  // "faded, it's only the light" tells why, and may be told of something else
  const words =
    /^(?:but|,|-|--)$/.test(word) && /^(?:it|that|they|those|this)$/.test(items[k + 1]!.w)
      ? wordsBetween(items, k, k + 12)
      : '';
  return INNOCENT.test(words) && !/ (?:light|lamp) /.test(words);
}

/** The finding told last before `k`, of the same sentence or that before it. */
function lastFound(items: Item[], k: number): Item | undefined {
  for (let m = k - 1; m >= Math.max(0, k - REACH); m--)
    // "no stain, it's just a shadow" is denied already
    if (items[m]!.finding || items[m]!.fail)
      return /^(?:no|not)$/.test(items[m - 1]?.w ?? '') ? undefined : items[m];
  return undefined;
}

/** "a moth hole, no, not moth, a plain hole", "it has split, well, not split, only lost its colour": told, and told otherwise. */
function toldOtherwise(items: Item[], k: number): void {
  if (!NOT_THAT.test(items[k - 1]!.w)) return;
  const at = /^(?:a|an|any|really|exactly|quite|so much)$/.test(items[k + 1]!.w) ? k + 2 : k + 1;
  const denied = items[at];
  if (!denied || (!denied.finding && !denied.fail)) return;
  // "a tear in 2-3, not a tear in 2-4"
  const stop = items.findIndex((x, m) => m > at && /^(?:[,.;]|-|--)$/.test(x.w));
  if (items.slice(at + 1, Math.min(at + 4, stop < 0 ? items.length : stop)).some((x) => x.place)) return;
  const told = lastFound(items, k);
  if (
    !told ||
    (denied.finding ? told.finding !== denied.finding : told.w.split(' ')[0] !== denied.w.split(' ')[0])
  )
    return;
  forget(told);
  forget(denied);
}
