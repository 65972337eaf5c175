import { COLOURS } from '../lexicon/colours.ts';
import type { Clause } from './clause/clause.ts';
import type { Draft } from './draft.ts';
import type { Item } from './item.ts';
import type { Mention, Telling } from './places/find-mention.ts';
import { isPlainWord } from './plain-word.ts';

/** What the drafts tell of places, in their order. */
export function mentionsOf(drafts: Draft[]): Mention[] {
  return drafts.flatMap(({ entry: e }): Mention[] => {
    if ((e.kind !== 'condition' && e.kind !== 'treatment') || !e.places?.length) return [];
    const places = [...e.places];
    if (e.kind === 'condition') return [{ places, finding: e.finding }];
    return [
      {
        places,
        ...(e.action ? { action: e.action } : {}),
        ...(e.object ? { object: e.object } : {}),
        state: e.state,
        ...(e.stitch ? { stitch: e.stitch } : {}),
      },
    ];
  });
}

/**
 * In which words each damage was told, place by place, before what is like is put together: of "2-2 has an ink stain and 5-1 a
 * coffee stain" the ink is of the one and the coffee of the other.
 */
export function tellingsOf(drafts: Draft[], clauses: Clause[]): Telling[] {
  return drafts.flatMap(({ entry: e, clause, origins }): Telling[] => {
    if (e.kind !== 'condition' || !e.places?.length) return [];
    const items = clauses[clause]?.items ?? [];
    const said = origins['finding'];
    const at = said ? items.findIndex((x) => x.token.from >= said.from && x.token.from < said.to) : -1;
    const made = at < 0 ? [] : [...wordsBefore(items, at), ...items[at]!.w.split(' ')];
    const words = items.filter((x) => isPlainWord(x) || x.quantity).map((x) => x.w);
    const thing = at < 0 ? undefined : thingOf(items, at);
    return [
      {
        finding: e.finding,
        places: [...e.places],
        made,
        words: [...new Set([...made, ...words])],
        ...(thing ? { thing } : {}),
      },
    ];
  });
}

/** "the duck's wing is missing", "a leaf torn", "has lost an ear": what of the patchwork is damaged, by its name. */
function thingOf(items: Item[], at: number): string | undefined {
  let k = at - 1;
  while (k >= 0 && BETWEEN.test(items[k]!.w)) k--;
  const before = items[k];
  const named =
    before &&
    isPlainWord(before) &&
    !before.fabric &&
    !NO_THING.test(before.w) &&
    !COLOURS.has(before.w) &&
    OF_A.test(items[k - 1]?.w ?? '');
  if (named) return before.w;
  const behind =
    /^(?:lost|missing)$/.test(items[at]!.w) && OF_A.test(items[at + 1]?.w ?? '') ? items[at + 2] : undefined;
  return behind && isPlainWord(behind) ? behind.w : undefined;
}
const BETWEEN =
  /^(?:is|are|'s|'re|was|were|has|have|been|come|gone|got|just|all|half|nearly|completely|quite|badly|now)$/;
const OF_A = /^(?:the|a|an|one|its|her|his|'s|little|that|this|of)$/;
const NO_THING =
  /^(?:one|it|block|piece|bit|other|whole|lot|rest|thing|stuff|little|small|big|nasty|bad|old|long|great|corner|edge|side|row|column|end|middle|print|cloth|fabric|quilt|top|back)$/;

/** "(a) red wine (stain)": what is said of the damage before it. */
function wordsBefore(items: Item[], at: number): string[] {
  let from = at;
  while (from > 0 && at - from < MOST_WORDS_BEFORE && isPlainWord(items[from - 1]!)) from--;
  return items.slice(from, at).map((x) => x.w);
}
const MOST_WORDS_BEFORE = 3;
