import type { Entry } from '../../../shared/entry.ts';
import type { Item } from '../../rules/item.ts';
import { unique } from '../../rules/places/grid.ts';
import type { ReaderState } from '../../rules/reader-state.ts';
import { TAKES_STITCH } from '../../rules/treatments/stitch-of.ts';
import { placesOf, put, type Standing } from '../standing.ts';
import { POINTERS, places, sensed } from './items.ts';
import type { Segment, Work } from './mending.ts';

/** "the stain's on 3-3", after a stain told of another block. */
export const movesFinding = (standing: Standing[], items: Item[], words: string): boolean =>
  items.length <= 8 &&
  /^(?:(?:no|oh|and|but|well|,) )*the \S+(?: \S+)? (?:'s|is|was) (?:actually |really |over )?(?:on|in|at) /.test(
    words,
  ) &&
  items.filter((x) => x.finding).length === 1 &&
  !items.some((x) => x.fabric || x.action) &&
  items.some(
    (x) => x.finding && standing.some(({ was }) => was.kind === 'condition' && was.finding === x.finding),
  );

/** "thread was gray & it's 3-3", "15 minutes and it was row two": beside another mend, where it was. */
export const namesPlaceBesides = (items: Item[], words: string): boolean =>
  items.length <= 14 &&
  / (?:and|&|,|\+) (?:it|that) (?:'s|is|was) (?:actually |really |in |on |at )*/.test(words) &&
  items.at(-1)?.place?.kind === 'blocks' &&
  items.at(-1)!.place!.how === 'said' &&
  items.filter((x) => x.place?.places.length && !POINTERS.has(x.place.rule)).length === 1 &&
  !items.some((x) => x.finding || x.action);

/** "85 long", "width's 71": a size that was told just now. */
export const measuresAgain = (state: ReaderState, standing: Standing[], items: Item[]): boolean =>
  items.length <= 7 &&
  state.drafts.length > 0 &&
  state.drafts.every(
    ({ entry: e }) =>
      e.kind === 'measurement' &&
      standing.some(({ was }) => was.kind === 'measurement' && was.of === e.of && was.value !== e.value),
  );

/** "row three I only got to block two", after rows one to three were told as tied. */
export const reachesLess = (standing: Standing[], items: Item[], words: string): boolean =>
  items.length <= 16 &&
  / only (?:\w+ )?(?:it )?(?:as far as|up to|to|through to|down to) | only (?:did|tied|quilted|got|finished|managed) /.test(
    words,
  ) &&
  !items.some((x) => x.finding || x.material || x.clock || x.span) &&
  standing.some(({ was }) => {
    const now = was.kind === 'treatment' ? placesOf(was) : [];
    return now.length > 1 && places(items).length > 0 && places(items).every((p) => now.includes(p));
  });

/** "(all) three with running stitch": how many they were. */
const isCount = (x: Item): boolean =>
  x.quantity?.value !== undefined && !x.quantity.unit && x.quantity.value < 10;

/** "oh, whipstitched", "whipstitch on both": nothing but the stitch, of a deed just told that had none. */
export function tellsStitch(state: ReaderState, standing: Standing[], items: Item[]): boolean {
  const stitches = items.filter((x) => x.stitch);
  if (stitches.length !== 1 || items.length > 7) return false;
  if (
    items.some(
      (x) =>
        x !== stitches[0] &&
        ((sensed(x) && !isCount(x)) ||
          /^(same|next|now|then|will|'ll|to|tomorrow|might|maybe|again)$/.test(x.w)) &&
        !POINTERS.has(x.place?.rule ?? ''),
    )
  )
    return false;
  const deeds = standing.filter(({ was }) => was.kind === 'treatment');
  return (
    deeds.length === 1 &&
    deeds.every(
      ({ was }) => was.kind === 'treatment' && !was.stitch && was.state !== 'considering' && takesStitch(was),
    ) &&
    state.drafts.every(({ entry: e }) => e.kind === 'treatment' && e.action === 'resew')
  );
}

/** "no holes in row four", "no washing it": the "no" denies the thing itself. */
export function deniesAtOnce(items: Item[]): boolean {
  const k = items.findLastIndex((x, n) => n < 4 && /^(no|nope|nah)$/.test(x.w));
  const next = k < 0 ? undefined : items[k + 1];
  return (
    next !== undefined &&
    Boolean(
      next.finding ||
        next.action ||
        next.object ||
        next.material ||
        /^(more|other|sign|need|luck|idea|real|new|old)$/.test(next.w),
    )
  );
}

/** Time at work that the last note knows nothing of. */
export function tellsWork(work: Work): boolean {
  const stands = work.standing.filter(({ was }) => was.kind === 'work');
  // "that was an hour cutting and half an hour piecing", where no length stood
  const lengths = work.state.drafts.flatMap(({ entry: e }) =>
    e.kind === 'work' && e.minutes !== undefined && e.task !== undefined ? [e.task] : [],
  );
  if (
    new Set(lengths).size > 1 &&
    !stands.some(({ was }) => was.kind === 'work' && was.minutes !== undefined)
  )
    return true;
  // "packed in at ten to five", after a start
  if (
    stands.length &&
    work.cue === 'none' &&
    work.state.drafts.some(
      ({ entry: e }) =>
        e.kind === 'work' &&
        e.mark !== undefined &&
        stands.every(({ was }) => was.kind === 'work' && was.mark !== undefined && was.mark !== e.mark),
    )
  )
    return true;
  if (stands.length)
    // "shopping took from eleven to twelve": another kind of work with hours of its own
    return (
      work.cue === 'none' &&
      work.state.drafts.some(
        ({ entry: e, origins }) =>
          e.kind === 'work' &&
          e.task !== undefined &&
          origins['task']?.how === 'said' &&
          (e.start !== undefined || e.minutes !== undefined) &&
          !stands.some(({ was }) => was.kind === 'work' && was.task === e.task),
      )
    );
  // "it was only forty five minutes": the task that runs is none that was told
  return work.state.drafts.some(
    ({ entry: e, origins }) =>
      e.kind === 'work' &&
      (e.start !== undefined ||
        e.mark !== undefined ||
        (e.task !== undefined && origins['task']?.how === 'said')),
  );
}

/** Without a word of mending only the plainest form counts: "the calico was 6.80", "15 ml and 20 min, that". */
export function plainEnough(work: Work, items: Item[]): boolean {
  const plain = work.words.match(/ (was|were) /g)?.length ?? 0;
  if (items.length > (plain > 1 ? 30 : 12)) return false;
  if (
    work.state.drafts.some(
      (d) => d.entry.kind === 'condition' || (d.entry.kind === 'treatment' && d.entry.action),
    )
  )
    if (!items.some((x) => x.stitch) || items.some((x) => x.action && !x.stitch)) return false;
  const words = work.words.trim();
  return /\b(was|were|is|are|'s|should|took|cost|came to|rang up at|worked out at|set me back|=)\b|=/.test(
    words,
  ) && !/^(there|it|i|that|this|he|she|they)\b/.test(words)
    ? true
    : /[ ,](that|that was|those)[ .]*$/.test(words);
}

/** A number, stitch or time that mended nothing: then the note tells something new. */
export function unexplained(work: Work, items: Item[]): boolean {
  return items.some(
    (x) =>
      !work.used.has(x) &&
      !work.wrong.has(x) &&
      (x.cost || x.duration || x.span || x.stitch || x.quantity?.unit),
  );
}

/** A stretch after the mending that tells something of its own: another place with damage or a deed that stands nowhere. */
export function tellsAnew(work: Work, segment: Segment): boolean {
  const from = segment.items[0]!.token.from;
  const last = segment.items.at(-1)!;
  const to = last.end ?? last.token.to;
  const named = segment.items.filter(
    (x) => x.place?.places.length && !POINTERS.has(x.place.rule) && !work.wrong.has(x),
  );
  const places = unique(named.flatMap((x) => x.place!.places));
  const known = (p: string): boolean =>
    work.standing.some(({ was, draft }) => placesOf(was).includes(p) || placesOf(draft.entry).includes(p));
  if (!places.length || places.some(known)) return false;
  const fresh = work.state.drafts.filter((d) => {
    const e = d.entry;
    const told = d.origins['finding'] ?? d.origins['action'];
    return (
      (e.kind === 'condition' || e.kind === 'treatment') &&
      told !== undefined &&
      told.from >= from &&
      told.to <= to &&
      !work.standing.some(
        ({ was }) =>
          (was.kind === 'condition' && e.kind === 'condition' && was.finding === e.finding) ||
          (was.kind === 'treatment' && e.kind === 'treatment' && was.action === e.action),
      )
    );
  });
  for (const d of fresh) {
    work.told.add(d);
    d.placed = 'said';
    put(d, 'places', places, 'place.said', named);
  }
  return fresh.length > 0;
}

/** "the sunflower ones get pressed tomorrow, not the pink": another deed at other places, and what it leaves out. */
export const tellsAnotherDeed = (state: ReaderState, standing: Standing[]): boolean =>
  state.drafts.some(({ entry: e, placed }) => {
    if (e.kind !== 'treatment' || !e.action || placed !== 'said' || !e.places?.length) return false;
    return !standing.some(
      ({ was }) =>
        (was.kind === 'treatment' && was.action === e.action) ||
        placesOf(was).some((p) => e.places!.includes(p)),
    );
  });

/** A label or a tie takes a stitch when it is told with it, but none that is told by itself later. */
export const takesStitch = (e: Entry): boolean =>
  e.kind === 'treatment' &&
  e.action !== undefined &&
  (e.stitch !== undefined || (TAKES_STITCH.has(e.action) && e.action !== 'label' && e.action !== 'tie'));
