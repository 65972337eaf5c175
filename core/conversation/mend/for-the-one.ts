import type { Item } from '../../rules/item.ts';
import { splitBlock, unique } from '../../rules/places/grid.ts';
import { wordsBetween } from '../../rules/words-between.ts';
import { placesOf, put, type Standing } from '../standing.ts';
import { POINTERS, sensed } from './items.ts';

/**
 * What is right is told first, and then which of the things told it belongs to: "thirty for the darn, I should say", "2-6, sorry, for the
 * batting", "3-4 for the stain", "it's 4-3 that's torn". What stands of the others is kept.
 */

/** Words that tell nothing of their own in such a mend. */
const SMALL =
  /^(?:the|that|that's|a|an|was|were|is|'s|are|it|they|them|this|no|nope|oh|ah|ugh|argh|sorry|actually|wait|well|and|but|i|i'd|'d|meant|mean|should|say|said|have|of|make|call|put|more|like|about|nearer|closer|only|just|really|had|right|first|time|the first time|round|in|at|on|for|to|hang|hold|minutes?|mins?|not|n't|so|then|one|block|though|after all|all|have|been|by|,|\.|!|-|--|;)$/;
const FOR = /^(?:for|on)$/;
/** A number that can be a length of time. */
const SHORTEST_MINUTES = 3;

/** The one entry that an item names, by its damage, its deed, its seam or the stuff it is of. */
function entryNamed(standing: Standing[], x: Item): Standing | undefined {
  const hit = standing.filter(({ was: e }) => {
    if (e.kind === 'condition')
      return (
        x.finding === e.finding ||
        (x.seam && e.finding === 'split-seam') ||
        (x.part === 'batting' && e.finding === 'lumpy-batting')
      );
    if (e.kind !== 'treatment') return false;
    return (
      (x.action !== undefined && x.action.v === e.action) ||
      (x.seam && e.action === 'resew') ||
      (x.object !== undefined && x.object === e.object)
    );
  });
  return hit.length === 1 ? hit[0] : undefined;
}

/** Gives whether an entry was mended so. */
export function forTheOne(standing: Standing[], items: Item[], words: string): boolean {
  if (standing.length < 2 || / (?:too|also|as well|another|again|next|tomorrow) /.test(words)) return false;
  const said = withoutFirstTime(items);
  return said.length <= 16 && (valueForIt(standing, said) || cleft(standing, said, words));
}

/** "ugh no, I had it right the first time, it's 4-3 that's torn": what follows says which. */
function withoutFirstTime(items: Item[]): Item[] {
  const at = items.findLastIndex((x) => x.w === ',' || x.w === '.' || x.w === ';');
  const before = wordsBetween(items, 0, at);
  return at > 0 &&
    / (?:right (?:the )?first|was right|right all along|right before|had it right) /.test(before)
    ? items.slice(at + 1)
    : items;
}

/** "thirty for the darn", "2-6, sorry, for the batting", "half an hour for the seam" */
function valueForIt(standing: Standing[], items: Item[]): boolean {
  const at = items.findIndex((x, k) => FOR.test(x.w) && /^(?:the|that|my)$/.test(items[k + 1]?.w ?? ''));
  const subject = items[at + 2];
  if (at < 1 || !subject) return false;
  const s = entryNamed(standing, subject);
  if (!s || items.some((x, k) => k !== at + 2 && !SMALL.test(x.w) && !isValue(x))) return false;
  const values = items.slice(0, at).filter(isValue);
  if (values.length !== 1 || items.slice(at + 3).some(isValue)) return false;
  return placeAt(s, values[0]!) || lengthOf(standing, s, values[0]!);
}

const isValue = (x: Item): boolean =>
  Boolean(
    (x.place?.places.length && !POINTERS.has(x.place.rule)) || x.duration || bareNumber(x) !== undefined,
  );

const bareNumber = (x: Item): number | undefined =>
  x.quantity?.value !== undefined && !x.quantity.unit && !x.place?.places.length
    ? x.quantity.value
    : undefined;

function placeAt(s: Standing, x: Item): boolean {
  const now = placesOf(s.was);
  const row = now.length === 1 ? splitBlock(now[0]!)?.row : undefined;
  const alone = x.place?.rule === 'amend.block' ? splitBlock(x.place.places[0] ?? '') : undefined;
  // "it's block 3 that's torn": in the row that was told of it
  const places = alone && row ? [`${row}-${alone.block}`] : (x.place?.places ?? []);
  if (!places.length || !now.length || !places.every((p) => splitBlock(p)) || places.join() === now.join())
    return false;
  put(s.draft, 'places', unique(places), 'amend.for-the-one', [x]);
  return true;
}

/** A bare number is minutes where minutes were told of a deed. */
function lengthOf(standing: Standing[], s: Standing, x: Item): boolean {
  if (s.was.kind !== 'treatment') return false;
  const number = bareNumber(x);
  const timed = standing.some(({ was }) => was.kind === 'treatment' && was.minutes !== undefined);
  const minutes =
    x.duration?.minutes ?? (number !== undefined && number >= SHORTEST_MINUTES ? number : undefined);
  if (minutes === undefined || !timed || minutes === s.was.minutes) return false;
  put(s.draft, 'minutes', minutes, 'amend.for-the-one', [x]);
  return true;
}

/** "it's 4-3 that's torn", "no, I had it right the first time, it's block 3 that's torn", "it was 3-3 I patched" */
function cleft(standing: Standing[], items: Item[], words: string): boolean {
  if (!/ it (?:is|'s|was) /.test(words)) return false;
  const named = items.filter((x) => x.finding || (x.action && !x.place));
  const [x, more] = named;
  if (!x || more) return false;
  const at = items.indexOf(x);
  const value = items.slice(0, at).findLast((y) => y.place?.places.length && !POINTERS.has(y.place.rule));
  if (!value) return false;
  const between = items
    .slice(items.indexOf(value) + 1, at)
    .map((y) => y.w)
    .join(' ');
  if (
    !/^(?:that (?:is|'s|was|has|i|had)(?: (?:got|the|a))*|what 's|which is|i|i 've|we|with the)$/.test(
      between,
    )
  )
    return false;
  const s = entryNamed(standing, x);
  if (!s || items.some((y) => y !== x && y !== value && sensed(y) && !SMALL.test(y.w))) return false;
  if (items.some((y) => y !== x && y !== value && !SMALL.test(y.w))) return false;
  return placeAt(s, value);
}
