import type { Item } from '../../rules/item.ts';
import { wordsBetween } from '../../rules/words-between.ts';
import type { Standing } from '../standing.ts';
import { STOPS, sensed } from './items.ts';
import { anchored } from './likest.ts';
import { change, type Work } from './mending.ts';

const STRIKE_ONE =
  / (?:scratch|strike|strike out|delete|cross out|rub out|cross off|leave out|leave off|take off the list|without) (?:the bit about |the part about |the |that |those |my )?/;

/** Verbs of the bench too: only of what was logged as found or used, which no deed takes away. */
export const STRIKE_LOGGED =
  /^ (?:(?:no|oh|ah|actually|please|sorry|just|and|but|,|\.) )*(?:forget|drop|lose|ignore|remove|take|leave|never mind|disregard|bin|scrap|wipe|cancel|erase) (?:(?:out|off) )?(?:(?:that|the|my) (?:last )?(?:bit|part|thing|one)s? (?:about|with|on) )?(?:the |that |those |my |any )?/;

/** "forget the darn", "scrub the net, that was last week", "drop the net from that": a deed of the log, and none of the bench. */
const STRIKE_DEED =
  /^ (?:(?:no|oh|ah|actually|please|sorry|just|and|but|wait|hang on|um|er|,|\.) )*(?:(?:forget|ignore|scrub|disregard|bin|scrap|cancel|erase|undo|never mind|take back|lose|strike|scratch|delete) (?:about )?|(?:drop|take|leave) (?=(?:\S+ ){1,4}(?:from|out of|off) (?:that|the (?:list|note|log|last one))\b))(?:the |that |my )?/;

const STRUCK_SLOT: [RegExp, string][] = [
  [/^(?:time|minutes|mins|length of time|timing|duration)\b/, 'minutes'],
  [/^(?:price|cost|money|amount it cost)\b/, 'cost'],
  [/^(?:stitch|stitching)\b/, 'stitch'],
];

/** "scratch the needles", "leave out the pins", "forget the bit about the hole": one of several entries goes, or one slot. */
export function strikeOut(work: Work, items: Item[]): boolean {
  if (items.length > 16) return false;
  if (strikeDeed(work, items)) return true;
  if (leavesAsFound(items)) return false;
  const plain = STRIKE_ONE.exec(work.words);
  const lead = plain ?? STRIKE_LOGGED.exec(work.words);
  if (!lead) return false;
  const rest = work.words.slice(lead.index + lead[0].length);
  const start = work.words
    .slice(0, lead.index + lead[0].length)
    .trim()
    .split(' ').length;
  const first = items[0]?.i ?? 0;
  const behind = items.filter((x) => x.i - first >= start);
  const slot =
    STRUCK_SLOT.find(([said]) => said.test(rest))?.[1] ??
    (behind[0]?.duration ? 'minutes' : behind[0]?.cost ? 'cost' : undefined);
  if (slot !== undefined) {
    const holding = work.standing.filter(({ draft }) => slot in draft.entry);
    if (holding.length !== 1 || / (?:not|make|it was|was) /.test(rest)) return false;
    change(work, holding[0]!, slot, undefined, 'struck', behind.slice(0, 1));
    return true;
  }
  const stop = behind.findIndex((x) => STOPS.has(x.w) || x.w === ',');
  const said = plain ? items : stop >= 0 ? behind.slice(0, stop) : behind;
  const logged = (s: Standing): boolean =>
    plain !== null || s.was.kind === 'condition' || (s.was.kind === 'material' && s.was.use === 'used');
  const hit = work.standing.filter((s) => logged(s) && anchored(s, said, new Set()) > 0);
  if (!hit.length || hit.length === work.standing.length) return false;
  // what took its place is told beside it: then it is exchanged, and not struck out
  const instead = (x: Item): boolean =>
    sensed(x) && !work.standing.some((s) => anchored(s, [x], new Set()) > 0);
  if (stop >= 0 && behind.slice(stop).some(instead)) {
    for (const x of behind.slice(0, stop))
      if (hit.some((s) => anchored(s, [x], new Set()) > 0)) work.wrong.add(x);
    work.cue = 'strong';
    return false;
  }
  const best = Math.max(...hit.map((s) => anchored(s, said, new Set())));
  const gone = new Set(hit.filter((s) => anchored(s, said, new Set()) === best));
  work.standing = work.standing.filter((s) => !gone.has(s));
  return true;
}

/** "leave the stain as is", "leave the tear alone", "just leave the stain": a deed of the bench, where nothing says "out" of the note. */
const leavesAsFound = (items: Item[]): boolean => {
  const words = wordsBetween(items);
  return (
    /^ (?:(?:and|but|so|just|i|'ll|will|we|then|,) )*leave (?:the|that|this|those) /.test(words) &&
    items.some((x) => x.finding && x.finding !== 'old-repair') &&
    !/ (?:out|off|from|in|note|log|list|that bit|part) /.test(words)
  );
};

/** Of several things told, the one deed that was done is taken back by its name, with what it used. */
function strikeDeed(work: Work, items: Item[]): boolean {
  const lead = STRIKE_DEED.exec(work.words);
  if (!lead) return false;
  const start = work.words
    .slice(0, lead.index + lead[0].length)
    .trim()
    .split(' ').length;
  const first = items[0]?.i ?? 0;
  const x = items.find((y) => y.i - first >= start);
  if (!x?.action || x.place?.places.length) return false;
  const hit = work.standing.filter(
    ({ was }) => was.kind === 'treatment' && was.action === x.action!.v && /^(?:done|doing)$/.test(was.state),
  );
  const [gone] = hit;
  if (hit.length !== 1 || !gone || work.standing.filter((s) => s.was.kind !== 'material').length < 2)
    return false;
  const at = gone.draft.origins['entry']?.words;
  work.standing = work.standing.filter(
    (s) =>
      s !== gone &&
      !(
        s.was.kind === 'material' &&
        s.was.use === 'used' &&
        at !== undefined &&
        s.draft.origins['entry']?.words !== undefined &&
        at.includes(s.draft.origins['entry'].words)
      ),
  );
  return true;
}
