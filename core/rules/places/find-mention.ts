import type { Action, Finding, RemovedObject } from '../../../shared/vocabulary.ts';
import type { Item } from '../item.ts';
import { unique } from './grid.ts';

/** Something told before, with the places it was told of: what "the tear", "the worn ones", "that old patch" can mean. */
export type Mention = { places: string[]; finding?: Finding; action?: Action; object?: RemovedObject };

const DETERMINERS = new Set(['the', 'that', 'those', 'these', 'this', 'both', 'all', 'my', 'our', 'same']);
/** "those three", "both": words that point to places by themselves, and are but determiners before "torn blocks". */
const POINTERS = new Set(['place.those', 'place.both', 'place.all-of-them']);
const HEADS = new Set('one ones block blocks square squares piece pieces lot bit bits spot spots'.split(' '));
const PLURALS = new Set('ones blocks squares pieces lot bits spots those these'.split(' '));
/** Damage told as a thing: "the tear", not "the torn". */
const THINGS =
  /\b(tear|rip|rent|slit|slash|hole|gap|split|stain|mark|spot|blotch|ring|seam|patch|mend|repair|darn|darning|bleed|run|mould|mold|mildew|pucker|ruck|fray|lump|loss|break|damage|burst)s?$/;
const MARKS = /^(mark|marks|blotch|blotches|spot|spots|splash|ring)$/;

const COUNTS = new Map(
  'one two three four five six seven eight nine ten'.split(' ').flatMap((word, n): [string, number][] => [
    [word, n + 1],
    [String(n + 1), n + 1],
  ]),
);

type Described = { finding?: Finding; action?: Action; seam?: boolean; patch?: boolean };

/**
 * A thing of the conversation named again by what it is: "sewed up the tear", "the worn ones want net", "those three
 * stained blocks", "the patched one". Gives the places it was told of, newest telling first; nothing where no telling
 * fits, or where "the tear" is followed by words of another place.
 */
export function findMention(items: Item[], mentions: Mention[]): string[] | undefined {
  for (let k = 0; k < items.length; k++) {
    if (!DETERMINERS.has(items[k]!.w) && !POINTERS.has(items[k]!.place?.rule ?? '')) continue;
    // "another of those rusty marks" is none of them
    if (items[k - 1]?.w === 'of' && /^(another|one|some|any|none)$/.test(items[k - 2]?.w ?? '')) continue;
    const phrase = describedAt(items, k);
    if (!phrase) continue;
    const places = placesOf(phrase, mentions);
    if (places) return places;
  }
  return undefined;
}

type Phrase = { is: Described; count?: number; plural: boolean };

/** Determiner, number, what it is like, and a head: "those three stained blocks", "the tear". */
function describedAt(items: Item[], from: number): Phrase | undefined {
  let plural = /^(those|these|both|all)\b/.test(items[from]!.w);
  let count = items[from]!.w === 'both' ? 2 : COUNTS.get(items[from]!.w.split(' ').at(-1)!);
  const is: Described = {};
  for (let k = from + 1; k < Math.min(items.length, from + 6); k++) {
    const item = items[k]!;
    const { w } = item;
    if (
      DETERMINERS.has(w) ||
      /^(old|other|new|big|little|small|long|nasty|worst|same|whole|first|poor|of)$/.test(w)
    )
      continue;
    if (item.quantity && item.quantity.unit === undefined && item.quantity.value) {
      // "three-cornered" counts no tears
      if (items[k + 1]?.w === '-') continue;
      count = item.quantity.value;
      plural ||= count > 1;
      continue;
    }
    if (HEADS.has(w.split(' ')[0]!)) {
      if (!described(is)) return undefined;
      return { is, ...(count ? { count } : {}), plural: plural || PLURALS.has(w.split(' ')[0]!) };
    }
    // "those five with the moth"
    if (w === 'with' && !described(is) && (count || plural)) {
      const damage = items.slice(k + 1, k + 4).find((x) => x.finding);
      return damage?.finding
        ? { is: { finding: damage.finding }, ...(count ? { count } : {}), plural: true }
        : undefined;
    }
    if (item.place || item.fabric) return undefined;
    if (MARKS.test(w)) is.finding = 'stain';
    else if (item.seam || item.finding === 'split-seam') is.seam = true;
    else if (item.object === 'old-patch' || /^(patch|patches)$/.test(w)) is.patch = true;
    else if (item.finding) is.finding = item.finding;
    else if (item.fail && /^(open|split|burst|gaping|loose)$/.test(w)) is.finding = 'split-seam';
    else if (item.action?.form === 'past') is.action = item.action.v;
    else if (isPlainWord(item)) continue;
    else return undefined;
    if (THINGS.test(w) && !HEADS.has((items[k + 1]?.w ?? '').split(' ')[0]!))
      return { is, ...(count ? { count } : {}), plural: plural || /[^s]s$/.test(w) };
  }
  return undefined;
}

const FUNCTION_WORDS = new Set(
  "'s 's 're 've 'll 'd i you he she we they it its is are was were be been has have had do does did will would can could and or but so then than if when while where which who what that as at by for from in into on onto off out over under up down with without to all some any no not n't just now here there back about after before behind between through round again too very way time".split(
    ' ',
  ),
);
/** "that coffee ring", "the three-cornered tear": a word that only says more of the thing. */
const isPlainWord = (item: Item): boolean =>
  ((item.token.kind === 'word' && !FUNCTION_WORDS.has(item.w)) || item.w === '-') &&
  !item.place &&
  !item.part &&
  !item.finding &&
  !item.fail &&
  !item.seam &&
  !item.action &&
  !item.stitch &&
  !item.task &&
  !item.topic &&
  !item.clock &&
  !item.span &&
  !item.duration;

const described = (is: Described): boolean =>
  is.finding !== undefined || is.action !== undefined || is.seam === true || is.patch === true;

/** The seam last found open that no one has closed since. */
const openSeam = (mentions: Mention[]): Mention | undefined =>
  mentions.findLast(
    (m, k) =>
      m.finding === 'split-seam' &&
      !mentions.slice(k).some((n) => n.action === 'resew' && n.places.some((p) => m.places.includes(p))),
  );

const fits = (is: Described, m: Mention): boolean =>
  is.seam
    ? m.finding === 'split-seam' || m.action === 'resew'
    : is.patch
      ? m.finding === 'old-repair' || m.action === 'patch' || m.object === 'old-patch'
      : is.finding !== undefined
        ? m.finding === is.finding
        : m.action === is.action;

function placesOf({ is, count, plural }: Phrase, mentions: Mention[]): string[] | undefined {
  const told = mentions.filter((m) => m.places.length && fits(is, m)).reverse();
  const newest = (is.seam ? openSeam(mentions) : undefined) ?? told[0];
  if (!newest) return undefined;
  if (!count) {
    if (!plural || newest.places.length > 1 || is.seam) return newest.places;
    return unique(told.flatMap((m) => m.places));
  }
  const gathered: string[] = [];
  for (const m of told) {
    gathered.push(...m.places.filter((p) => !gathered.includes(p)));
    if (gathered.length >= count) break;
  }
  return gathered.length === count ? gathered : undefined;
}
