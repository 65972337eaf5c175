import type { Item } from '../../rules/item.ts';
import { splitBlock } from '../../rules/places/grid.ts';
import { placesOf, put, type Standing } from '../standing.ts';

const ONLY_DONE =
  / (?:only|just) (?:did|done|got|managed|finished|had time for|got through) | (?:only|just) .* (?:done|did|finished) /;
const REST_LATER =
  /^(tomorrow|tmrw|later|tonight|next|to do|still to do|still to go|to follow|another day|next time)$/;

/**
 * "no I only did 3-2, 3-3's for tomorrow", "wait no I only did the top one, the other's to do tomorrow": what was told as done is
 * done at the places named, and planned at the rest. Gives what stands afterwards.
 */
export function onlyPartDone(standing: Standing[], items: Item[], words: string): Standing[] | undefined {
  if (!ONLY_DONE.test(words)) return undefined;
  const later = items.some((x, k) => REST_LATER.test(x.w) || REST_LATER.test(`${x.w} ${items[k + 1]?.w}`));
  if (!later) return undefined;
  const deeds = standing.filter(
    ({ was }) => was.kind === 'treatment' && was.state === 'done' && placesOf(was).length > 1,
  );
  const deed = deeds.length === 1 ? deeds[0]! : undefined;
  if (!deed) return undefined;
  const all = placesOf(deed.was);
  const at = items.findIndex((x) => /^(only|just)$/.test(x.w));
  const first = items
    .slice(at)
    .find((x) => x.place?.places.length && x.place.places.every((p) => all.includes(p)));
  const done = first?.place?.places ?? pickedOf(all, words);
  if (!done?.length || done.length >= all.length) return undefined;
  const rest = all.filter((p) => !done.includes(p));
  const { minutes: _minutes, ...planned } = deed.was as Record<string, unknown>;
  const other: Standing = {
    was: { ...deed.was },
    draft: {
      ...deed.draft,
      entry: planned as Standing['draft']['entry'],
      origins: { ...deed.draft.origins },
    },
  };
  put(deed.draft, 'places', done, 'amend.only-done', first ? [first] : []);
  put(other.draft, 'state', 'planned', 'amend.rest-later', items.slice(-1));
  put(other.draft, 'places', rest, 'amend.rest-later', items.slice(-1));
  return standing.flatMap((s) => (s === deed ? [s, other] : [s]));
}

/** "the top one", "the first one", "the left one" of two or more blocks. */
function pickedOf(all: string[], words: string): string[] | undefined {
  const end = / the (first|last|top|bottom|upper|lower|left|right)(?: hand)? (?:one|block|square)? ?/.exec(
    words,
  )?.[1];
  const at = all.map((p) => splitBlock(p));
  if (!end || at.some((b) => !b)) return undefined;
  if (end === 'first' || end === 'last') return [end === 'first' ? all[0]! : all.at(-1)!];
  const by = /^(left|right)$/.test(end) ? at.map((b) => b!.block) : at.map((b) => b!.row);
  const best = /^(top|upper|left)$/.test(end) ? Math.min(...by) : Math.max(...by);
  return by.filter((v) => v === best).length === 1 ? [all[by.indexOf(best)]!] : undefined;
}
