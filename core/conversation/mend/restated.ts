import type { Item } from '../../rules/item.ts';
import { splitBlock, unique } from '../../rules/places/grid.ts';
import { placesOf, put, type Standing, takePlaces } from '../standing.ts';
import { takesStitch } from './is-mend.ts';
import { POINTERS, sensed } from './items.ts';

/**
 * One of several things that were told is told again, by its name: "no, the darn was only 3-3", "the stain's a dye bleed really", "the
 * cutting was an hour". What stands of the others is kept.
 */

const LEAD =
  /^(?:no|nope|oh|ah|well|sorry|wait|actually|and|but|so|hang on|hold on|um|uh|er|i mean|,|-|;|\.)$/;
const LINK =
  /^(?:was|were|is|are|'s|'re|should|be|have|been|only|just|really|actually|more|like|of|in|on|at|over|for|to|from|the|a|an|rather|nearer|about|that|took|it|,|than|not|n't|and|but|i|mean|sorry|done|by|with|meant|in fact|fact|anyway|then|did|done|all|along|went|goes|either|come|look|now|down|round|around|all|stitch|stitched|sewn|sewed|it)$/;
/** Said of something besides, or of what comes next. */
const BESIDES =
  /^(?:too|also|as well|another|again|next|now|tomorrow|later|same|still|yet|both|worse|gone|next one|other)$/;

type Told = { at: number; s: Standing };

/** The one entry that the note begins with naming. */
function subjectOf(standing: Standing[], items: Item[]): Told | undefined {
  let k = 0;
  while (k < items.length && (LEAD.test(items[k]!.w) || /^(?:the|that|my)$/.test(items[k]!.w))) k++;
  const x = items[k];
  if (!x || k === 0 || k > 5 || !/^(?:the|that|my)$/.test(items[k - 1]!.w) || x.place?.places.length)
    return undefined;
  const hit = standing.filter(({ was: e }) =>
    e.kind === 'condition'
      ? x.finding !== undefined && x.finding === e.finding
      : e.kind === 'treatment' &&
        ((x.action !== undefined && x.action.v === e.action) ||
          (e.action === 'overlay' && x.material === 'net') ||
          (e.action === 'resew' && x.seam !== undefined)),
  );
  return hit.length === 1 ? { at: k, s: hit[0]! } : undefined;
}

/** Gives what stands afterwards, or undefined where no entry is told again. */
export function restated(standing: Standing[], items: Item[], words: string): boolean {
  if (items.length > 16) return false;
  const told = subjectOf(standing, items);
  if (!told) return false;
  const { s } = told;
  const behind = items.slice(told.at + 1);
  if (behind.some((x) => BESIDES.test(x.w))) return false;
  if (!/^(?:was|were|is|'s|are|should|took|only|just|went|ought)$/.test(behind[0]?.w ?? '')) return false;
  const said = behind.filter((x) => sensed(x) && !POINTERS.has(x.place?.rule ?? ''));
  if (behind.some((x) => !sensed(x) && !LINK.test(x.w))) return false;
  const not = behind.findIndex((x) => /^(?:not|n't)$/.test(x.w));
  const right = said.filter((x) => not < 0 || behind.indexOf(x) < not);
  return (
    placesAgain(s, right, said) ||
    findingAgain(s, right, words) ||
    lengthAgain(standing, s, right) ||
    stitchAgain(s, right)
  );
}

/** "the darn was only 3-3", "the net was just on 2-2 and 2-3". */
function placesAgain(s: Standing, right: Item[], said: Item[]): boolean {
  const placed = right.filter((x) => x.place?.places.length);
  if (!placed.length || placed.length !== right.length || said.some((x) => !x.place)) return false;
  const now = placesOf(s.was);
  const places = unique(placed.flatMap((x) => x.place!.places));
  if (!now.length || !places.every((p) => splitBlock(p)) !== !now.every((p) => splitBlock(p))) return false;
  if (JSON.stringify(places) === JSON.stringify(now)) return false;
  put(s.draft, 'places', places, 'amend.told-again', placed);
  return true;
}

const OTHERWISE = / (?:a|an|more|really|actually|rather|only|just|not) /;

/** "the stain's a dye bleed really", "the tear's more of a split seam". */
function findingAgain(s: Standing, right: Item[], words: string): boolean {
  const [found, more] = right;
  if (
    s.was.kind !== 'condition' ||
    !found?.finding ||
    more ||
    found.finding === s.was.finding ||
    !OTHERWISE.test(words)
  )
    return false;
  put(s.draft, 'finding', found.finding, 'amend.told-again', [found]);
  return true;
}

/** "the cutting was an hour", after forty minutes. */
function lengthAgain(standing: Standing[], s: Standing, right: Item[]): boolean {
  const [length, more] = right;
  if (s.was.kind !== 'treatment' || !length || more) return false;
  // "the darn was more like thirty", where minutes were told of one of them
  const number = length.quantity?.unit || length.place?.places.length ? undefined : length.quantity?.value;
  const minutes = length.duration?.minutes ?? (number !== undefined && number >= 5 ? number : undefined);
  const timed = standing.some(({ was }) => was.kind === 'treatment' && was.minutes !== undefined);
  if (minutes === undefined || !timed) return false;
  put(s.draft, 'minutes', minutes, 'amend.told-again', [length]);
  return true;
}

/** "and the patch is herringboned on", "the darn was in running stitch": how it was sewn, of the one deed of that name. */
function stitchAgain(s: Standing, right: Item[]): boolean {
  const { was } = s;
  const sewn = right.filter((x) => x.stitch);
  if (was.kind !== 'treatment' || sewn.length !== 1 || right.length !== 1 || !takesStitch(was)) return false;
  put(s.draft, 'stitch', sewn[0]!.stitch, 'amend.told-again', sewn);
  return true;
}

const SAID_SO =
  /(?: (?:that is|that was|i mean|i meant|actually|only|just|bar|but|except|except for|apart from|barring|minus|not|rather|really|well|anyway|if i 'm honest)(?= ))/;
const SMALL =
  /^(?:that|is|was|it|i|mean|meant|actually|only|just|bar|but|except|except for|for|apart|from|barring|minus|not|rather|really|well|anyway|no|oh|sorry|um|er|the|and|in|on|to|'s|of|,|\.|!|--|then|should|say)$/;

/** "row two bar the last one that is", "2-1 to 2-3 only": a part of the one list that holds it. */
export function lessOfIt(standing: Standing[], items: Item[], words: string): boolean {
  if (items.length > 14 || !SAID_SO.test(words)) return false;
  const placed = items.filter(
    (x) => x.place?.places.length && !POINTERS.has(x.place.rule) && x.place.rule !== 'place.excepted',
  );
  if (!placed.length || items.some((x) => !placed.includes(x) && !SMALL.test(x.w))) return false;
  const bar = items.findIndex((x) => /^(?:bar|but|except|except for|apart|barring|minus|not)$/.test(x.w));
  const of = (list: Item[]): string[] => unique(list.flatMap((x) => x.place!.places));
  const out = bar < 0 ? [] : of(placed.filter((x) => items.indexOf(x) > bar));
  const named = of(placed.filter((x) => bar < 0 || items.indexOf(x) < bar));
  const left = named.filter((p) => !out.includes(p));
  if (!left.length || (bar >= 0 && !out.length)) return false;
  const within = standing.filter(({ was }) => {
    const now = placesOf(was);
    return now.length > left.length && left.every((p) => now.includes(p));
  });
  const groups = new Set(within.map(({ was }) => placesOf(was).join()));
  if (groups.size !== 1) return false;
  for (const s of within) {
    const now = placesOf(s.was);
    // of several lines, the one that was named again
    const kept = bar >= 0 ? now.filter((p) => !out.includes(p)) : left;
    put(s.draft, 'places', kept, 'amend.less-of-it', placed);
  }
  return true;
}

const HAS_NOT =
  /^ (?:(?:no|oh|well|actually|sorry|wait|but|um|er|,) )*(?:not (?:on |in )?)?\S+(?: \S+){0,5} (?:(?:has|have|is|was|were|are|does|did|had) n't)(?: (?:got|have|had|one|any|it|that|them|there|like that|though|actually|so|been|in fact|[.!]))* $/;
/** "1-3's clean, it's only the one" */
const CLEAN =
  /^ (?:(?:no|oh|well|actually|sorry|wait|but|um|er|,) )*\S+(?: \S+){0,5} (?:'s|is|was|are|were|looks) (?:clean|clear|fine|all right|alright|okay|ok|free of it|not bad) ,? ?(?:it|that|they)? ?(?:'s|is|was|are)? ?(?:only|just) (?:on |in )?(?:the |that )?(?:one|other|other one|first|second|\S+ - \S+|one of them)(?: (?:actually|then|though|that has it|[.!]))* $/;

/** "1-2 hasn't got it", "4-4 wasn't, actually": a place of the one list of finds goes. */
export function placeHasNot(standing: Standing[], items: Item[], words: string): boolean {
  const clean = items.length <= 16 && CLEAN.test(words);
  if (!clean && (items.length > 10 || !HAS_NOT.test(words))) return false;
  if (items.some((x) => (!clean && (x.finding || x.action)) || x.material || x.quantity?.unit)) return false;
  const gone = unique(
    items
      .filter((x) => x.place?.places.length && !POINTERS.has(x.place.rule))
      .flatMap((x) => x.place!.places),
  );
  const lists = standing.filter(
    ({ was }) =>
      was.kind === 'condition' &&
      placesOf(was).length > gone.length &&
      gone.every((p) => placesOf(was).includes(p)),
  );
  if (!gone.length || !lists.length) return false;
  for (const s of lists) takePlaces(s, gone, 'amend.has-not', items);
  return true;
}

const DID_NOT =
  /^ (?:(?:no|oh|well|actually|sorry|wait|hang on|hold on|but|um|er|i tell a lie|tell a lie|my mistake|correction|i was wrong|i got that wrong|[,.:-]) )*(?:i |we )?(?:did n't|never|have n't|had n't|'ve not|have not|'ve never) (?:actually |even )?(?:do|did|done|touch|touched|get to|got to|get round to|got round to|start|started|reach|reached|get as far as|got as far as) /;

/** "i didn't do 1-2": of several places of a deed, that one was not done. */
export function placeNotDone(standing: Standing[], items: Item[], words: string): boolean {
  if (items.length > 18 || !DID_NOT.test(words) || / (?:yet|still|tomorrow|later) /.test(words)) return false;
  const named = items.filter((x) => x.place?.places.length && !POINTERS.has(x.place.rule));
  const gone = unique(named.flatMap((x) => x.place!.places));
  const lists = standing.filter(
    ({ was }) =>
      was.kind === 'treatment' &&
      placesOf(was).length > gone.length &&
      gone.every((p) => placesOf(was).includes(p)),
  );
  if (!gone.length || lists.length !== 1) return false;
  takePlaces(lists[0]!, gone, 'amend.not-done', named);
  return true;
}

/** "thin more than frayed", "more thin than frayed", "a tear rather than a hole": what it is, and what was told. */
export function moreThan(standing: Standing[], items: Item[], words: string): boolean {
  if (items.length > 9 || !/ (?:more|rather|less) (?:\S+ ){0,3}?(?:than|a|an) | more than /.test(words))
    return false;
  const deeds = items.filter((x) => x.action?.form === 'past');
  if (deeds.length === 2 && !items.some((x) => x.finding || x.place?.places.length)) {
    const [done, told] = / less /.test(words) ? [deeds[1]!, deeds[0]!] : [deeds[0]!, deeds[1]!];
    const s = standing.filter(({ was: e }) => e.kind === 'treatment' && e.action === told.action!.v);
    if (s.length !== 1) return false;
    put(s[0]!.draft, 'action', done.action!.v, 'amend.more-than', [done]);
    return true;
  }
  const found = items.filter((x) => x.finding);
  const [one, two] = found;
  if (!one || !two || found.length !== 2 || items.some((x) => x.action || x.material)) return false;
  const [is, was] = / less /.test(words) ? [two, one] : [one, two];
  const hit = standing.filter(({ was: e }) => e.kind === 'condition' && e.finding === was.finding);
  if (hit.length !== 1 || standing.some(({ was: e }) => e.kind === 'condition' && e.finding === is.finding))
    return false;
  put(hit[0]!.draft, 'finding', is.finding, 'amend.more-than', [is]);
  return true;
}
