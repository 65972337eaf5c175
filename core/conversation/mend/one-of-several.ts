import type { Draft } from '../../rules/draft.ts';
import type { Item } from '../../rules/item.ts';
import { splitBlock, unique } from '../../rules/places/grid.ts';
import type { ReaderState } from '../../rules/reader-state.ts';
import type { Cue } from '../cues.ts';
import { placesOf, put, type Standing, takePlaces } from '../standing.ts';
import { POINTERS } from './items.ts';

/** Told besides what stands, and not in its stead. */
const BESIDES = / (?:too|also|as well|another|again|next|tomorrow|now|later|same|both) /;
const DENIES = /^ (?:(?:oh|ah|er|um|ugh|well|,|-) )*(?:no|nope|nah) /;
const STRUCK = /^(?:not|n't|never|rather than|instead of|scratch|strike)$/;

/**
 * "hang on, 3-5 isn't worn, it's faded", after two blocks were told as worn: what was told of several holds no longer of one of them, and what is
 * told of that one instead is an entry of its own; the others stand. Gives the whole set, or undefined.
 */
export function oneOfSeveral(
  state: ReaderState,
  standing: Standing[],
  items: Item[],
  words: string,
  cue: Cue,
): Draft[] | undefined {
  if (items.length > 16 || BESIDES.test(words)) return undefined;
  const all = standing.flatMap(({ was }) => placesOf(was));
  const named = items.filter(
    (x) =>
      x.place?.places.length &&
      !POINTERS.has(x.place.rule) &&
      x.place.places.every((p) => splitBlock(p) && all.includes(p)),
  );
  const places = unique(named.flatMap((x) => x.place!.places));
  if (!places.length) return undefined;
  if (items.some((x) => x.stitch || x.quantity?.unit || x.cost || x.duration || x.clock || x.span))
    return undefined;
  const denied = items.filter((x, k) => (x.finding || x.action) && isStruck(items, k));
  const told = state.drafts.filter((d) => !denied.some((x) => tellsOf(d.entry, x)));
  // "and 2-3 is torn", told besides
  const beyond = told.filter((d) => d.placed === 'said' && !placesOf(d.entry).some((p) => all.includes(p)));
  const [now, more] = told.filter((d) => !beyond.includes(d));
  if (more || (now && !isTold(now.entry)) || beyond.some((d) => !isTold(d.entry))) return undefined;
  if (now && standing.some(({ was }) => isSame(was, now.entry))) return undefined;
  // "not 2-2, that's faded"
  const struck = now !== undefined && items.some((x, k) => named.includes(x) && isStruck(items, k));
  if (!denied.length && (!now || !(struck || cue === 'strong' || DENIES.test(words)))) return undefined;
  if (now?.placed === 'said' && !placesOf(now.entry).every((p) => places.includes(p))) return undefined;
  const held = standing.filter(({ was }) => {
    const at = placesOf(was);
    return (
      /^(?:condition|treatment)$/.test(was.kind) &&
      at.length > places.length &&
      places.every((p) => at.includes(p)) &&
      (denied.length ? denied.some((x) => tellsOf(was, x)) : was.kind === now!.entry.kind)
    );
  });
  const [old] = held;
  // "it's not torn, it's patched": two kinds of thing, of which the one does not stand for the other
  if (!old || held.length > 1 || (now && now.entry.kind !== old.was.kind)) return undefined;
  takePlaces(old, places, 'amend.one-of-several', named);
  const kept = standing.map((s) => s.draft);
  if (!now) return [...kept, ...beyond];
  put(now, 'places', places, 'place.said', named);
  now.placed = 'said';
  kept.splice(standing.indexOf(old) + 1, 0, now);
  return [...kept, ...beyond];
}

/** Damage or a deed that has a name. */
const isTold = (e: Standing['was']): boolean =>
  e.kind === 'condition' || (e.kind === 'treatment' && e.action !== undefined);

/** Does a "not" stand before it, with nothing between that tells of itself? */
function isStruck(items: Item[], k: number): boolean {
  for (let m = k - 1; m >= 0 && m >= k - 4; m--) {
    if (STRUCK.test(items[m]!.w)) return true;
    if (/^(?:of|than)$/.test(items[m]!.w) && /^(?:instead|rather)$/.test(items[m - 1]?.w ?? '')) return true;
    if (!/^(?:a|an|the|really|actually|at all|been|any|that|quite)$/.test(items[m]!.w)) return false;
  }
  return false;
}

const tellsOf = (e: Standing['was'], x: Item): boolean =>
  (e.kind === 'condition' && e.finding === x.finding) ||
  (e.kind === 'treatment' && x.action !== undefined && e.action === x.action.v);

const isSame = (a: Standing['was'], b: Standing['was']): boolean =>
  (a.kind === 'condition' && b.kind === 'condition' && a.finding === b.finding) ||
  (a.kind === 'treatment' && b.kind === 'treatment' && a.action === b.action);
