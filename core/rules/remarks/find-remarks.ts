import { BEFELL } from '../../lexicon/befell.ts';
import { HISTORY, MARKS, NO_MARK, NO_WISH, WISHES } from '../../lexicon/story.ts';
import { PatternSet, plainWordsOf } from '../../text/pattern-set.ts';
import { HARD } from '../clause/joints.ts';
import { isDeadline } from '../decisions/is-deadline.ts';
import type { Draft } from '../draft.ts';
import type { Item } from '../item.ts';
import { splitBlock } from '../places/grid.ts';
import { placesOfClause } from '../places/places-of-clause.ts';
import { wordsBetween } from '../words-between.ts';

export type RemarkFound = {
  kind: 'history' | 'mark' | 'wish';
  /** Offsets of its words. */
  from: number;
  to: number;
  places: string[];
  /** It begins, or ends, in the middle of what is said in one breath. */
  apart?: boolean;
  /** Where what is said behind it begins, if it goes on in one breath. */
  cutAt?: number;
};

const SUBJECTS = new Set([
  'i',
  'it',
  'she',
  'he',
  'they',
  'we',
  'there',
  'that',
  'which',
  'so',
  'but',
  'because',
  'started',
  'been',
]);

/** Cuts a note where a new subject begins after a stop, a comma or an "and". */
function segmentsOf(items: Item[]): Item[][] {
  const out: Item[][] = [];
  let current: Item[] = [];
  const close = (): void => {
    if (current.length) out.push(current);
    current = [];
  };
  for (let k = 0; k < items.length; k++) {
    const item = items[k]!;
    const next = items[k + 1]?.w ?? '';
    if (HARD.has(item.w)) {
      // "acc. to", "c. 1880": the stop of an abbreviation
      if (item.w === '.' && /^(c|ca|acc|approx|betw|st|no|prob)$/.test(items[k - 1]?.w ?? ''))
        current.push(item);
      else close();
      continue;
    }
    if (
      current.length > 2 &&
      ((/^(,|and|--|:|\(|\)|oh|but)$/.test(item.w) &&
        (SUBJECTS.has(next) || next === 'oh' || next === 'and')) ||
        (item.w === '-' && !item.token.glued))
    ) {
      close();
      continue;
    }
    if (
      current.length > 3 &&
      item.w === 'i' &&
      !/^(as|that|what|which|when|where|if|than|and|like)$/.test(items[k - 1]!.w) &&
      // "to keep every scrap I take off"
      !/^(every|any|all|each|whatever)$/.test(items[k - 2]?.w ?? '')
    )
      close();
    current.push(item);
  }
  close();
  return out;
}

const OF_MARKS = new PatternSet(MARKS);
const OF_WISHES = new PatternSet(WISHES);
const OF_HISTORY = new PatternSet([...HISTORY, ...BEFELL]);
const BENCH = /(^| )(i|we|i 've|i 'm|i 'd|i 'll) /;

/** The sentences of a note that tell the quilt's story, name a mark found in it, or pass on a wish of its owner. */
export function findRemarks(items: Item[]): RemarkFound[] {
  const out: RemarkFound[] = [];
  for (const whole of segmentsOf(items)) {
    const marked = namesMark(whole);
    const segment = marked
      ? markAlone(toldAlone(whole, namesMark))
      : toldAlone(toldAlone(whole, passesOnWish), tellsStory);
    // "2-3 has a darn somebody did years ago": whose it is belongs to the repair
    // "mending since 1815": an hour, and no year
    const worked = segment.some((x) => x.clock) && segment.some((x) => x.task);
    const words = ` ${segment.map((x) => (x.finding === 'old-repair' ? 'old repair' : worked && x.clock ? 'hour' : x.fabric?.full ? 'cloth' : x.w)).join(' ')} `;
    const plain = plainWordsOf(words);
    const last = segment.at(-1)!;
    const next = items[items.indexOf(last) + 1];
    const isMark = marked && !NO_MARK.test(words);
    const found = {
      from: segment[0]!.token.from,
      to: last.end ?? last.token.to,
      ...(segment.length < whole.length ? { apart: true } : {}),
      ...((isMark || last !== whole.at(-1)) && next && !HARD.has(next.w) ? { cutAt: next.token.from } : {}),
    };
    if (isMark) {
      if (tellsOnlyDamage(segment)) continue;
      const placed = placesOfClause(segment);
      const places =
        placed.kind === 'specific' || placed.kind === 'general'
          ? placed.places.filter((p) => p !== 'quilt' && p !== 'top')
          : [];
      const everywhere = places.filter((p) => splitBlock(p)).length > 8;
      out.push({ ...found, kind: 'mark', places: everywhere ? [] : places });
    } else if (OF_WISHES.test(words, plain) && !NO_WISH.test(words) && !onlyDeadline(words, segment))
      out.push({ ...found, kind: 'wish', places: [] });
    else if (OF_HISTORY.test(words, plain) && !BENCH.test(words.slice(0, 8)))
      out.push({ ...found, kind: 'history', places: [] });
  }
  return out;
}

const tellsOf = (patterns: PatternSet, segment: Item[]): boolean => {
  // "been at the barn-red flannel" tells of no barn
  const words = wordsBetween(segment.some((x) => x.fabric?.full) ? segment.map(asCloth) : segment);
  return patterns.test(words, plainWordsOf(words));
};
const asCloth = (x: Item): Item => (x.fabric?.full ? { ...x, w: 'cloth' } : x);
export const namesMark = (segment: Item[]): boolean => tellsOf(OF_MARKS, segment);
export const passesOnWish = (segment: Item[]): boolean => tellsOf(OF_WISHES, segment);
export const tellsStory = (segment: Item[]): boolean =>
  tellsOf(OF_HISTORY, segment) && !BENCH.test(wordsBetween(segment).slice(0, 8));

/**
 * "a seam is open on the back and initials worked in red at the top right", "bound it with ladder stitch and the lady wants it
 * hung in the hall": in running speech the mark or the wish is told behind the last "and", and what stands before it is work.
 */
function toldAlone(segment: Item[], tells: (items: Item[]) => boolean): Item[] {
  const work = segment.findIndex(
    (x) =>
      x.finding ||
      x.fail ||
      x.action?.form === 'past' ||
      // "label to go top left corner, the church want it hung out of the damp"
      (tells === passesOnWish && (x.action || x.object === 'label')),
  );
  // most segments tell of no work, and none of the patterns need be tried
  if (work < 0 || !tells(segment)) return segment;
  const at = segment.findLastIndex(
    (x, k) =>
      k > work &&
      k > 1 &&
      (/^(and|,|&)$/.test(x.w) || (x.w === 'there' && /^('s|is)$/.test(segment[k + 1]?.w ?? ''))) &&
      tells(segment.slice(k)) &&
      !tells(segment.slice(0, k)),
  );
  return at > 1 ? segment.slice(at) : segment;
}

/**
 * "somebody's worked a name in the bottom left block and the top corners smell of mould": the mark told first, where what stands
 * behind the "and" begins at a place or a part, tells of work or damage of its own and of no mark.
 */
function markAlone(segment: Item[]): Item[] {
  const at = segment.findIndex((x, k) => {
    if (k < 3 || !/^(and|,|&|but)$/.test(x.w)) return false;
    const rest = segment.slice(k + 1);
    const own = rest.findIndex(
      (y) =>
        !/^(and|the|both|all|then|also|so|its|every|there|'s|is|are|a|an|i|we|um|uh|just|now)$/.test(y.w),
    );
    const head = rest[own];
    if (!head) return false;
    // "a date pencilled on the back, squared it up"
    const deed =
      head.action?.form === 'past' && /^(it|them|the|all|every|both|another)$/.test(rest[own + 1]?.w ?? '');
    const found =
      Boolean(head.place || head.part || head.fabric || head.seam || head.object || head.finding) &&
      rest.slice(own).some((y) => y.finding || y.fail || y.action?.form === 'past');
    return (deed || found) && namesMark(segment.slice(0, k)) && !namesMark(rest);
  });
  return at < 0 ? segment : segment.slice(0, at);
}

/** "the signature in 4-6 is faded": what has become of the mark, and nothing of what it says. */
function tellsOnlyDamage(segment: Item[]): boolean {
  const at = segment.findIndex((x) => x.finding || x.fail);
  return (
    at > 1 &&
    segment
      .slice(at + 1)
      .every((x) => /^(now|away|badly|quite|a|bit|too|completely|altogether|right|out|through)$/.test(x.w)) &&
    segment.slice(1, at).some((x) => /^(is|'s|are|has|have|was|gone|going|all|nearly|badly|looks)$/.test(x.w))
  );
}

/** "She wants it back by March" is a date and no wish besides. */
function onlyDeadline(words: string, segment: Item[]): boolean {
  return isDeadline(words, segment);
}

/**
 * Which drafts only echo such a sentence: "every block is cut from his neckties" cuts nothing today, "three children lost"
 * is no missing cloth. Times, lengths and damage at a named place are kept, as they may stand in the same breath.
 */
export function echoesOf(remarks: RemarkFound[], drafts: Draft[]): Set<Draft> {
  const out = new Set<Draft>();
  for (const draft of drafts) {
    const { entry, origins } = draft;
    const at =
      origins['action'] ?? origins['finding'] ?? origins['material'] ?? origins['about'] ?? origins['entry']!;
    const inside = remarks.find((r) => at.from >= r.from && at.to <= r.to);
    if (!inside) continue;
    if (entry.kind === 'treatment') {
      if (entry.action === 'photograph') continue;
      const blocks = (entry.places ?? []).some((p) => splitBlock(p)) && draft.placed === 'said';
      if (
        inside.kind !== 'wish' ||
        (inside.kind === 'wish' && !blocks) ||
        entry.action === 'label' ||
        !blocks ||
        entry.action === 'leave'
      )
        out.add(draft);
    } else if (entry.kind === 'condition') {
      if (inside.kind !== 'history' || draft.placed !== 'said' || !entry.places?.some((x) => x !== 'quilt'))
        out.add(draft);
    } else if (entry.kind === 'material') {
      if (entry.quantity === undefined && entry.cost === undefined) out.add(draft);
    } else if (entry.kind === 'work') {
      if (!entry.start && (!entry.time || !entry.task) && inside.kind === 'history') out.add(draft);
    } else if (
      entry.kind === 'decision' &&
      entry.about !== 'deadline' &&
      entry.about !== 'price' &&
      inside.kind !== 'wish'
    )
      out.add(draft);
  }
  return out;
}
