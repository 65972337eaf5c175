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
    return [{ finding: e.finding, places: [...e.places], made, words: [...new Set([...made, ...words])] }];
  });
}

/** "(a) red wine (stain)": what is said of the damage before it. */
function wordsBefore(items: Item[], at: number): string[] {
  let from = at;
  while (from > 0 && at - from < MOST_WORDS_BEFORE && isPlainWord(items[from - 1]!)) from--;
  return items.slice(from, at).map((x) => x.w);
}
const MOST_WORDS_BEFORE = 3;
