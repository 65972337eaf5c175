import type { Entry } from '../../shared/entry.ts';
import type { MaterialUnit, Stitch } from '../../shared/vocabulary.ts';
import { SIDES } from '../lexicon/place-words.ts';
import { STITCH_PHRASES } from '../lexicon/stitches.ts';
import { UNIT_WORDS } from '../lexicon/units.ts';
import type { Draft } from '../rules/draft.ts';
import type { Item } from '../rules/item.ts';
import { findGood } from '../rules/materials/find-good.ts';
import { blockAt, isWholeRow, rowOf, splitBlock, unique } from '../rules/places/grid.ts';
import type { ReaderState } from '../rules/reader-state.ts';
import { latestClock, wallMinutes, wallTime } from '../rules/times/local-time.ts';
import { readNumber } from '../text/read-number.ts';
import { type Cue, cueOf } from './cues.ts';
import { allBut, keepOnly, noStuff, otherChoice, otherSide, strikeNth, swapIndex } from './mend-parts.ts';
import { mendWork, tookMinutes } from './mend-work.ts';
import { placesOf, put, type Standing } from './standing.ts';

const POINTERS = new Set(['place.it', 'place.them', 'place.both', 'place.those', 'place.that-one']);
/** Parts named as wholes: as often the stuff as the place. */
const WHOLES = new Set(['quilt', 'top', 'backing', 'batting', 'binding', 'sashing', 'border', 'edge']);
const LENGTHS = new Set<MaterialUnit>(['yd', 'in', 'ft', 'm', 'cm', 'mm']);
const JOINTS = new Set([',', 'and', '&', '+', 'but', 'so', 'then', 'plus', 'while', 'with']);
const STOPS = new Set(['.', ';', '!', '?', '\n', ':', '--', '(', ')']);

type Work = {
  state: ReaderState;
  standing: Standing[];
  cue: Cue;
  words: string;
  /** Items said to be wrong: "not 3-3". */
  wrong: Set<Item>;
  /** Items that gave a change, or only said again what stands. */
  used: Set<Item>;
  changed: boolean;
  /** Drafts that tell something of their own beside the mending. */
  told: Set<Draft>;
};
type Segment = { items: Item[]; words: string };

const stem = (word: string): string => (word.length > 3 && word.endsWith('s') ? word.slice(0, -1) : word);

/**
 * Reads a note as a mend of the last one: what it says is laid beside the entries that stand, by kind, name, action, finding,
 * stitch and place, and what differs is put in. Gives the whole set, or undefined where the note mends nothing.
 */
export function correct(
  state: ReaderState,
  standing: Standing[],
  items: Item[],
  words: string,
  cue: Cue = cueOf(words),
): Draft[] | undefined {
  if (!standing.length) return undefined;
  const said = ` ${words} `;
  const picked =
    strikeNth(standing, said) ?? keepOnly(standing, items, said) ?? noStuff(standing, items, said);
  if (picked) return picked.map((s) => s.draft);
  if (
    otherSide(standing, said) ||
    allBut(standing, items) ||
    mendWork(state, standing, items, said) ||
    tookMinutes(standing, items, said) ||
    (cue !== 'none' && otherChoice(standing, items))
  )
    return standing.map((s) => s.draft);
  items = resolvePlaces(state, standing, items);
  if (cue === 'weak' && deniesAtOnce(items)) cue = 'none';
  if (cue !== 'strong' && / (as well|too|also|another|same again|again|next) /.test(` ${words} `))
    return undefined;
  if (
    cue === 'none' &&
    (movesFinding(standing, items, words) ||
      tellsStitch(state, standing, items) ||
      reachesLess(standing, items, said) ||
      measuresAgain(state, standing, items))
  )
    cue = 'strong';
  const wrong = wrongItems(items, standing);
  const work: Work = {
    state,
    standing,
    cue,
    words: ` ${words} `,
    wrong,
    used: new Set(),
    changed: false,
    told: new Set(),
  };
  const denied =
    wrong.size > 0 &&
    items.length <= 18 &&
    [...wrong].some((x) => x.place?.rule !== 'place.the-other' && standsIn(standing, x, state));
  const units =
    items.length <= 10 &&
    items.some(
      (x, k) =>
        x.w === 'not' &&
        items
          .slice(k + 1, k + 3)
          .some(
            (y) =>
              Object.hasOwn(UNIT_WORDS, y.w) &&
              standing.some(({ was }) => 'unit' in was && was.unit === UNIT_WORDS[y.w]),
          ),
    );
  const plainly =
    denied ||
    units ||
    plainEnough(work, items) ||
    (items.length <= 20 && NOT_DONE.test(work.words)) ||
    (items.length <= 14 && deniedFindings(work, items).length > 0);
  if (cue === 'none' && !plainly && !STRIKE_LOGGED.test(work.words)) return undefined;
  if (denied && cue !== 'strong') work.cue = 'strong';
  if (work.cue === 'weak' && items.length > 34) return undefined;
  if (cue !== 'strong' && tellsWork(work)) return undefined;
  if (strikeOut(work, items)) return work.standing.map((s) => s.draft);
  if (work.cue === 'none' && !plainly) return undefined;
  const segments = segmentsOf(items, wrong);
  // "hold on, 3-3 has a hole": another place, another damage
  if (work.cue === 'weak' && segments.some((segment) => tellsAnew(work, segment))) return undefined;
  let carried: Item[] = [];
  for (const segment of segments) {
    carried = mendSegment(work, segment, carried);
  }
  leftOver(work, items);
  substitute(work, items);
  swapStuff(work, items);
  if (!work.changed) swapNumbers(work, items);
  if (items.length <= 16) {
    denyFindings(work, items);
    notDone(work, items);
  }
  if (!work.changed) return undefined;
  const extra = unconsumed(work, items);
  if (work.cue === 'none' && (extra.length || unexplained(work, items))) return undefined;
  if (work.cue === 'weak' && extra.some((d) => d.clause === 0 || extra.length > 1)) return undefined;
  const later = extra.filter((d) => (d.sentence > 0 || work.told.has(d)) && complete(d));
  return [...work.standing.map((s) => s.draft), ...later];
}

/** "the stain's on 3-3", after a stain told of another block. */
const movesFinding = (standing: Standing[], items: Item[], words: string): boolean =>
  items.length <= 8 &&
  /^(?:(?:no|oh|and|but|well|,) )*the \S+(?: \S+)? (?:'s|is|was) (?:actually |really |over )?(?:on|in|at) /.test(
    words,
  ) &&
  items.filter((x) => x.finding).length === 1 &&
  !items.some((x) => x.fabric || x.action) &&
  items.some(
    (x) => x.finding && standing.some(({ was }) => was.kind === 'condition' && was.finding === x.finding),
  );

/** "85 long", "width's 71": a size that was told just now. */
const measuresAgain = (state: ReaderState, standing: Standing[], items: Item[]): boolean =>
  items.length <= 7 &&
  state.drafts.length > 0 &&
  state.drafts.every(
    ({ entry: e }) =>
      e.kind === 'measurement' &&
      standing.some(({ was }) => was.kind === 'measurement' && was.of === e.of && was.value !== e.value),
  );

/** "row three I only got to block two", after rows one to three were told as tied. */
const reachesLess = (standing: Standing[], items: Item[], words: string): boolean =>
  items.length <= 16 &&
  / only (?:\w+ )?(?:it )?(?:as far as|up to|to|through to|down to) | only (?:did|tied|quilted|got|finished|managed) /.test(
    words,
  ) &&
  !items.some((x) => x.finding || x.material || x.clock || x.span) &&
  standing.some(({ was }) => {
    const now = was.kind === 'treatment' ? placesOf(was) : [];
    return now.length > 1 && places(items).length > 0 && places(items).every((p) => now.includes(p));
  });

/** "oh, whipstitched", "whipstitch on both": nothing but the stitch, of a deed just told that had none. */
function tellsStitch(state: ReaderState, standing: Standing[], items: Item[]): boolean {
  const stitches = items.filter((x) => x.stitch);
  if (stitches.length !== 1 || items.length > 7) return false;
  if (
    items.some(
      (x) =>
        x !== stitches[0] &&
        (sensed(x) || /^(same|next|now|then|will|'ll|to|tomorrow|might|maybe|again)$/.test(x.w)) &&
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

/** "did I say two? I meant three": a wrong number with a right one, neither with a unit. */
function swapNumbers(work: Work, items: Item[]): void {
  const numbers = items.filter(
    (x) => !x.place?.places.length && numberFact(work, items, items.indexOf(x))?.sort === 'bare',
  );
  const [wrong, right] = [true, false].map((is) => numbers.filter((x) => work.wrong.has(x) === is));
  if (wrong?.length !== 1 || right?.length !== 1) return;
  const [from, to] = [wrong[0]!, right[0]!].map((x) => numberOf(work.state, x));
  if (from !== undefined && to !== undefined && swapIndex(work.state, work.standing, from, to))
    work.changed = true;
}

/** "no holes in row four", "no washing it": the "no" denies the thing itself. */
function deniesAtOnce(items: Item[]): boolean {
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

const places = (items: Item[]): string[] =>
  items
    .filter((y) => y.place?.places.length && !POINTERS.has(y.place.rule) && y.place.kind !== 'pointer')
    .flatMap((y) => y.place!.places);

/** Findings of the last note that this one says are none: "there was no hole there", "it wasn't a hole". */
function deniedFindings(work: Work, items: Item[]): { s: Standing; item: Item }[] {
  const out: { s: Standing; item: Item }[] = [];
  for (let k = 0; k < items.length; k++) {
    const x = items[k]!;
    if (!x.finding) continue;
    const before = items.slice(Math.max(0, k - 5), k).map((y) => y.w);
    const no = before.findLastIndex((w) => /^(no|not|n't|never|without)$/.test(w));
    if (
      no < 0 ||
      before
        .slice(no + 1)
        .some((w) => !/^(a|an|any|real|the|actually|really|that|even|such|actual|after|all|been)$/.test(w))
    )
      continue;
    // "no holes" may be told of the next place; "no hole there", "there was no hole" looks back
    const back =
      /^(there|here|in|on|at|after|it|that|though)$/.test(items[k + 1]?.w ?? '') ||
      before.slice(0, no).some((w) => /^(there|that|it|was|were|is|'s|did|does)$/.test(w)) ||
      (no === 0 &&
        k < 3 &&
        items.length <= 10 &&
        !places(items).length &&
        !items.some((y) => /^(anywhere|other|others|else|more|otherwise)$/.test(y.w))) ||
      x.token.from >= items.at(-1)!.token.from;
    if (!back) continue;
    const named = places(items);
    const s = work.standing.find(
      ({ was }) =>
        was.kind === 'condition' &&
        was.finding === x.finding &&
        (!named.length || placesOf(was).some((p) => named.includes(p))),
    );
    if (s && work.standing.length > 1) out.push({ s, item: x });
  }
  return out;
}

function denyFindings(work: Work, items: Item[]): void {
  for (const { s, item } of deniedFindings(work, items)) {
    // another finding took its place already
    if (JSON.stringify(s.draft.entry) !== JSON.stringify(s.was) || !work.standing.includes(s)) continue;
    const replaced = work.standing.some(
      (o) => o !== s && o.was.kind === 'condition' && JSON.stringify(o.was) !== JSON.stringify(o.draft.entry),
    );
    if (replaced || work.standing.length < 2) continue;
    work.standing.splice(work.standing.indexOf(s), 1);
    work.used.add(item);
    work.changed = true;
  }
}

/** A deed of the last note that was told as done and is not: "I haven't done that yet", "that's only planned". */
const NOT_DONE =
  / (?:(?:not|n't|never) (?:(?:been|actually|even|really) )?(?:done|started|begun|patched|sewn|sewed|done it|done that|done them|do that|do it|happened|finished it)(?: (?:it|that|them|any of it|any of that|yet|there))*|still to (?:do|be done)|(?:only|just|still) (?:planned|planning|a plan|the plan|an idea|thinking)|(?:planned|planning) (?:it |that )?only|(?:is|'s) (?:the plan|a plan)|have n't \w+ed (?:it|that|them)(?: yet)?|i 'm (?:only )?going to(?= (?:do (?:it|that|them) )?$)) /;

function notDone(work: Work, items: Item[]): void {
  if (!NOT_DONE.test(work.words) || work.changed) return;
  const done = work.standing.filter(
    ({ draft: { entry: e } }) =>
      e.kind === 'treatment' && (e.state === 'done' || e.state === 'doing') && e.action !== undefined,
  );
  if (!done.length) return;
  // "the second one isn't done yet": of several, that one
  const named = unique(
    items
      .filter((x) => x.place?.places.length && (!POINTERS.has(x.place.rule) || x.place.kind === 'blocks'))
      .flatMap((x) => x.place!.places),
  );
  for (const s of done) {
    const all = placesOf(s.draft.entry);
    if (named.length && named.length < all.length && named.every((p) => all.includes(p))) {
      setApart(work, s, named);
      continue;
    }
    change(
      work,
      s,
      'state',
      / (?:thinking|idea|maybe|might) /.test(work.words) ? 'considering' : 'planned',
      'state',
      [],
    );
    change(work, s, 'minutes', undefined, 'state', []);
  }
  // what was not done has used nothing
  work.standing = work.standing.filter(
    ({ draft: { entry: e } }) => !(e.kind === 'material' && e.use === 'used' && e.quantity === undefined),
  );
}

/** Some places of a deed are only planned: they become an entry of their own. */
function setApart(work: Work, s: Standing, planned: string[]): void {
  if (s.was.kind !== 'treatment') return;
  const { minutes: _minutes, ...rest } = structuredClone(s.was);
  const draft: Draft = {
    ...s.draft,
    entry: { ...rest, state: 'planned', places: planned },
    origins: { ...s.draft.origins },
  };
  delete draft.origins['minutes'];
  change(
    work,
    s,
    'places',
    placesOf(s.draft.entry).filter((p) => !planned.includes(p)),
    'state',
    [],
  );
  work.standing.splice(work.standing.indexOf(s) + 1, 0, { draft, was: structuredClone(draft.entry) });
}

/** Stuffs that stand in each other's place. */
const sameUse = (a: string | undefined, b: string | undefined): boolean =>
  a === b ||
  [a, b].every((m) => /^(fabric|backing|net|interfacing)$/.test(m ?? '')) ||
  [a, b].every((m) => /^(thread|tie-thread)$/.test(m ?? '')) ||
  [a, b].every((m) => /^(detergent|other|adhesive)$/.test(m ?? ''));

const describes = (x: Item): boolean =>
  x.token.kind === 'word' &&
  !sensed(x) &&
  !x.place &&
  /^[a-z]{3,}$/.test(x.w) &&
  !/^(the|some|was|were|that|this|not|with|and|but|for|should|have|been|just|only|rather|sorry|mean|meant|actually|used|from|wait|hang|hold|call|made|make|say|said|called|than|put|yes|nope|they|read|it)$/.test(
    x.w,
  );

/** "sorry, it was the calico", "scratch that, cotton lawn": another stuff of the same sort in the place of the one told. */
function swapStuff(work: Work, items: Item[]): void {
  if (
    work.cue === 'none' ||
    (work.cue === 'weak' && !(items.length <= 8 && / (?:was|were|is|'s) (?!now)/.test(work.words)))
  )
    return;
  const materials = work.standing.filter(({ was }) => was.kind === 'material');
  if (!materials.length) return;
  for (let k = 0; k < items.length; k++) {
    const x = items[k]!;
    if ((!x.material && !x.fabric) || work.used.has(x) || work.wrong.has(x) || x.stitch) continue;
    const good = findGood(items, k, true);
    // "blue thread": the word that tells it from other threads stands before
    let from = good?.from ?? k;
    while (from > 0 && k - from < 3 && describes(items[from - 1]!)) from--;
    const own = items.slice(from, good?.next ?? k + 1);
    if (good) k = Math.max(k, good.next - 1);
    if (own.some((y) => work.used.has(y) || work.wrong.has(y))) continue;
    const material = good?.material ?? x.material ?? 'fabric';
    const like = materials.filter(
      ({ draft: { entry: e } }) => e.kind === 'material' && sameUse(e.material, material),
    );
    const said = (s: Standing): boolean => own.some((y) => named(s.was, y) && (y.fabric || like.length > 1));
    const target = like.length === 1 ? like[0]! : undefined;
    if (!target || target.was.kind !== 'material' || said(target)) continue;
    const words = own.filter(
      (y) => y.token.kind === 'word' && !/^(the|a|an|some|of|my|that|it|was)$/.test(y.w),
    );
    const name = x.fabric?.full ? x.fabric.names[0]! : words.map((y) => y.w).join(' ');
    const old = target.was.name;
    if (!name || name === old || old?.split(' ').includes(name)) continue;
    change(work, target, 'name', name, 'material', own);
    if (target.was.material !== 'backing' && material !== 'fabric')
      change(work, target, 'material', material, 'material', own);
    for (const s of work.standing)
      if (
        s.draft.entry.kind === 'treatment' &&
        s.draft.entry.fabric !== undefined &&
        s.draft.entry.fabric === old
      )
        change(work, s, 'fabric', name, 'material', own);
  }
}

/** Time at work that the last note knows nothing of. */
function tellsWork(work: Work): boolean {
  if (work.standing.some(({ was }) => was.kind === 'work')) return false;
  return work.state.drafts.some(
    ({ entry: e }) =>
      e.kind === 'work' && (e.start !== undefined || e.mark !== undefined || e.task !== undefined),
  );
}

/** The item `k` to `m` as one that names blocks. */
const asPlace = (items: Item[], k: number, m: number, places: string[], rule = 'amend.block'): Item => ({
  i: items[k]!.i,
  j: items[m]!.j,
  w: items
    .slice(k, m + 1)
    .map((x) => x.w)
    .join(' '),
  token: items[k]!.token,
  end: items[m]!.end ?? items[m]!.token.to,
  place: { next: items[m]!.j, places, how: 'implied', rule, kind: 'blocks' },
});

const HOMOPHONES: Record<string, number> = {
  for: 4,
  fore: 4,
  to: 2,
  too: 2,
  won: 1,
  ate: 8,
  tree: 3,
  sex: 6,
};
const NTH: Record<string, number> = { first: 0, second: 1, third: 2, fourth: 3, fifth: 4 };

/** Places that only make sense beside what stands: "block three" in the row spoken of, "the first one", "the row was the third". */
function resolvePlaces(state: ReaderState, standing: Standing[], items: Item[]): Item[] {
  const { grid } = state;
  const out: Item[] = [];
  const entries = standing.filter(({ was }) => was.kind === 'treatment' || was.kind === 'condition');
  const several = entries.findLast(({ was }) => placesOf(was).filter((p) => splitBlock(p)).length > 1);
  const list = several ? placesOf(several.was) : [];
  const row = entries
    .flatMap(({ was }) => placesOf(was))
    .map((p) => splitBlock(p)?.row)
    .findLast((r) => r !== undefined);
  let picked: string | undefined;
  for (let k = 0; k < items.length; k++) {
    const x = items[k]!;
    const before = items[k - 1];
    const next = items[k + 1];
    if (
      x.place &&
      !x.place.places.length &&
      !x.place.outside &&
      /^(block|square|patch)/.test(x.w) &&
      row !== undefined
    ) {
      const n = readNumber(state.tokens, x.i + 1)?.value;
      const block = n === undefined ? undefined : blockAt(grid, row, n);
      if (block) {
        out.push(asPlace(items, k, k, [block]));
        continue;
      }
    }
    // "it was seven for", where places are spoken of
    if (
      next &&
      Object.hasOwn(HOMOPHONES, next.w) &&
      !next.place &&
      !x.place &&
      (k + 2 >= items.length || STOPS.has(items[k + 2]!.w) || items[k + 2]!.w === ',') &&
      items.some((y) => y.place?.places.length && !POINTERS.has(y.place.rule))
    ) {
      const n = readNumber(state.tokens, x.i)?.value;
      const block = n === undefined ? undefined : blockAt(grid, n, HOMOPHONES[next.w]!);
      if (block) {
        out.push(asPlace(items, k, k + 1, [block]));
        k++;
        continue;
      }
    }
    // "the row i vacuumed was the third"
    if (
      Object.hasOwn(NTH, x.w) &&
      before?.w === 'the' &&
      (next === undefined || STOPS.has(next.w) || next.w === ',')
    ) {
      const head = items.slice(Math.max(0, k - 8), k).map((y) => y.w);
      if (head.includes('row') && NTH[x.w]! < grid.rows) {
        out.push(asPlace(items, k, k, rowOf(grid, NTH[x.w]! + 1), 'amend.row'));
        continue;
      }
    }
    if (x.place?.rule === 'place.one-of-them' && x.place.places.length === 1) picked = x.place.places[0];
    // "only the first one", "the other": of the blocks that stand
    if (list.length > 1 && before?.w === 'the' && !x.place) {
      const one = next && (/^ones?$/.test(next.w) || next.quantity?.value === 1) ? 1 : 0;
      const n = x.w === 'last' ? list.length - 1 : NTH[x.w];
      if (
        n !== undefined &&
        (one || next === undefined || /^('s|is|was|of|only|,|\.)$/.test(next.w)) &&
        list[n] !== undefined
      ) {
        picked = list[n]!;
        out.push(asPlace(items, k, k + one, [picked], 'amend.pick'));
        k += one;
        continue;
      }
      if (/^(other|others)$/.test(x.w) && (picked !== undefined || list.length === 2)) {
        const rest = list.filter((p) => p !== picked);
        if (picked !== undefined) {
          out.push(asPlace(items, k, k + one, rest, 'amend.pick'));
          k += one;
          continue;
        }
      }
    }
    out.push(x);
  }
  return out;
}

/** Without a word of mending only the plainest form counts: "the calico was 6.80", "15 ml and 20 min, that". */
function plainEnough(work: Work, items: Item[]): boolean {
  const plain = work.words.match(/ (was|were) /g)?.length ?? 0;
  if (items.length > (plain > 1 ? 30 : 12)) return false;
  if (
    work.state.drafts.some(
      (d) => d.entry.kind === 'condition' || (d.entry.kind === 'treatment' && d.entry.action),
    )
  )
    if (!items.some((x) => x.stitch) || items.some((x) => x.action && !x.stitch)) return false;
  const words = work.words.trim();
  return /\b(was|were|is|are|'s|should|took|cost|came to|=)\b|=/.test(words) &&
    !/^(there|it|i|that|this|he|she|they)\b/.test(words)
    ? true
    : /[ ,](that|that was|those)[ .]*$/.test(words);
}

/** A number, stitch or time that mended nothing: then the note tells something new. */
function unexplained(work: Work, items: Item[]): boolean {
  return items.some(
    (x) =>
      !work.used.has(x) &&
      !work.wrong.has(x) &&
      (x.cost || x.duration || x.span || x.stitch || (x.quantity && x.quantity.unit)),
  );
}

/** What stands after "not", "instead of" or "rather than", with what is joined to it by "and" or "or". */
function wrongItems(items: Item[], standing: Standing[]): Set<Item> {
  const wrong = new Set<Item>();
  // "make the tear a hole", "change the ladder stitch to a running stitch"
  const lead = items.findIndex((x) => /^(make|change|alter|swap|correct|turn)$/.test(x.w));
  if (lead >= 0 && lead < 4) {
    const first = items.findIndex((x, k) => k > lead && sensed(x));
    const second = items.findIndex((x, k) => k > first && sensed(x));
    if (
      first > 0 &&
      second > first &&
      second - first <= 4 &&
      sameSort(items[first]!, items[second]!) &&
      standsIn(standing, items[first]!)
    )
      wrong.add(items[first]!);
  }
  // "i said the backing, i meant the binding"
  const said = items.findIndex((x) => x.w === 'said');
  const meant = items.findIndex((x) => /^(meant|mean)$/.test(x.w));
  if (said >= 0 && meant > said) for (const x of items.slice(said + 1, meant)) if (sensed(x)) wrong.add(x);
  // "did i say two? i meant three"
  const doubted = items.findIndex(
    (x, k) => x.w === 'say' && items[k - 1]?.w === 'i' && items[k - 2]?.w === 'did',
  );
  if (doubted >= 0)
    for (const x of items.slice(doubted + 1)) {
      if (STOPS.has(x.w) || x.w === ',') break;
      if (sensed(x)) wrong.add(x);
    }
  // "the second one should be 4-3", "4-2 isn't"
  items.forEach((x, k) => {
    const said = ` ${items
      .slice(k + 1, k + 5)
      .map((y) => y.w)
      .join(' ')} `;
    const pick = /^(place\.one-of-them|amend\.pick)$/.test(x.place?.rule ?? '');
    if (
      pick &&
      /^ (?:should (?:be|have been)|ought to be|was|is|'s|were) /.test(said) &&
      items.slice(k + 1, k + 6).some((y) => y.place?.kind === 'blocks' && y.place.rule !== 'amend.pick')
    )
      wrong.add(x);
    if (x.place?.places.length && k < 3 && /^ (?:is|was|has|are|were) (?:not|n't)(?: [.!])* $/.test(said))
      wrong.add(x);
  });
  for (let k = 0; k < items.length; k++) {
    const w = items[k]!.w;
    const before = items[k - 1]?.w ?? '';
    const after = items[k + 1]?.w ?? '';
    const denies =
      (w === 'not' &&
        !/^(sure|yet|only|just|done|so|quite|too)$/.test(after) &&
        !/^('m|am|'re|'ll|will|do|does|did|can|could|would|have|has|had|if|or|why)$/.test(before)) ||
      (w === "n't" && /^(is|was|were|are|should)$/.test(before)) ||
      ((w === 'instead' || w === 'rather') && /^(of|than)$/.test(after)) ||
      w === 'instead of' ||
      w === 'rather than';
    if (!denies) continue;
    for (let m = k + 1, taken = false; m < Math.min(items.length, k + 8); m++) {
      const x = items[m]!;
      if (STOPS.has(x.w) || /^(,|but|it|i|that|they|is|was|were|only|-)$/.test(x.w)) break;
      if (x.place && POINTERS.has(x.place.rule)) break;
      if (sensed(x)) {
        if (taken && !/^(and|or|nor|&)$/.test(items[m - 1]!.w) && (x.place || !sameSense(items[m - 1]!, x)))
          break;
        wrong.add(x);
        taken = true;
      } else if (standing.some(({ was }) => named(was, x))) {
        wrong.add(x);
        taken = true;
      } else if (SIDES[x.w] || /^(sides?|ends?)$/.test(x.w)) {
        wrong.add(x);
        taken = true;
      } else if (taken && !/^(and|or|nor|&|the|a)$/.test(x.w)) break;
    }
  }
  return wrong;
}

const sameSort = (a: Item, b: Item): boolean =>
  (['finding', 'action', 'stitch', 'material', 'task', 'place', 'object', 'fabric'] as const).some(
    (k) => a[k] !== undefined && b[k] !== undefined,
  );
const sameSense = (a: Item, b: Item): boolean =>
  sensed(a) && Boolean(b.material || b.object || b.stitch || b.task);
export const sensed = (x: Item): boolean =>
  Boolean(
    (x.place && x.place.places.length) ||
      x.quantity ||
      x.cost ||
      x.duration ||
      x.span ||
      x.clock ||
      x.stitch ||
      x.finding ||
      x.action ||
      x.material ||
      x.fabric ||
      x.object ||
      x.task,
  );

/** Does the last note hold what is denied? */
function standsIn(standing: Standing[], x: Item, state?: ReaderState): boolean {
  const number = state && numberOf(state, x);
  return standing.some(({ was: e }) => {
    if (x.place?.places.length && x.place.places.every((p) => placesOf(e).includes(p))) return true;
    // "not row three": the row that its blocks stand in
    if (
      x.place &&
      /row|column/.test(x.place.rule) &&
      placesOf(e).length &&
      placesOf(e).every((p) => x.place!.places.includes(p))
    )
      return true;
    if (SIDES[x.w] || /^(sides?|ends?)$/.test(x.w)) return placesOf(e).some((p) => /^(border|edge)-/.test(p));
    if (e.kind === 'treatment')
      return (
        (x.stitch !== undefined && e.stitch === x.stitch) ||
        (x.action !== undefined && e.action === x.action.v) ||
        (x.object !== undefined && e.object === x.object) ||
        (number !== undefined && e.minutes === number)
      );
    if (e.kind === 'condition') return x.finding !== undefined && e.finding === x.finding;
    if (e.kind === 'material')
      return (
        (x.material !== undefined && e.material === x.material) ||
        named(e, x) ||
        (number !== undefined && (e.quantity === number || e.cost?.amount === number))
      );
    if (e.kind === 'measurement') return number !== undefined && e.value === number;
    if (e.kind === 'work')
      return (x.task !== undefined && e.task === x.task) || (number !== undefined && e.minutes === number);
    return false;
  });
}

const named = (e: Entry, x: Item): boolean =>
  e.kind === 'material' &&
  e.name !== undefined &&
  x.token.kind === 'word' &&
  e.name
    .toLowerCase()
    .split(/[\s-]+/)
    .map(stem)
    .some((word) => word.length > 2 && word === stem(x.w.split(' ').at(-1)!));

/** The number that an item says, whatever else it was taken for. */
function numberOf(state: ReaderState, x: Item): number | undefined {
  if (x.duration) return x.duration.minutes;
  if (x.cost) return x.cost.amount;
  if (x.quantity?.value !== undefined) return x.quantity.value;
  const read = readNumber(state.tokens, x.i);
  return read && read.next >= x.j ? read.value : x.j === x.i + 1 ? x.token.value : undefined;
}

const STRIKE_ONE =
  / (?:scratch|strike|strike out|delete|cross out|rub out|cross off|leave out|leave off|take off the list|without) (?:the bit about |the part about |the |that |those |my )?/;
/** Verbs of the bench too: only of what was logged as found or used, which no deed takes away. */
const STRIKE_LOGGED =
  /^ (?:(?:no|oh|ah|actually|please|sorry|just|and|but|,|\.) )*(?:forget|drop|lose|ignore|remove|take|leave|never mind|disregard|bin|scrap|wipe|cancel|erase) (?:(?:out|off) )?(?:(?:that|the|my) (?:last )?(?:bit|part|thing|one)s? (?:about|with|on) )?(?:the |that |those |my |any )?/;
const STRUCK_SLOT: [RegExp, string][] = [
  [/^(?:time|minutes|mins|length of time|timing|duration)\b/, 'minutes'],
  [/^(?:price|cost|money|amount it cost)\b/, 'cost'],
  [/^(?:stitch|stitching)\b/, 'stitch'],
];

/** "scratch the needles", "leave out the pins", "forget the bit about the hole": one of several entries goes, or one slot. */
function strikeOut(work: Work, items: Item[]): boolean {
  if (items.length > 16) return false;
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

/** Stretches that speak of one entry each: cut at stops, and at joints between two tellings. */
function segmentsOf(items: Item[], wrong: Set<Item>): Segment[] {
  const out: Segment[] = [];
  let current: Item[] = [];
  const close = (): void => {
    if (current.length) out.push({ items: current, words: ` ${current.map((x) => x.w).join(' ')} ` });
    current = [];
  };
  for (let k = 0; k < items.length; k++) {
    const x = items[k]!;
    if (STOPS.has(x.w) || (x.w === '-' && x.token.kind === 'mark' && !x.token.glued)) {
      close();
      continue;
    }
    if (JOINTS.has(x.w) && !sensed(x)) {
      const next = items[k + 1];
      const list =
        (current.at(-1)?.place &&
          next?.place &&
          !/^('s|is|are|has|had|was|were|needs|have)$/.test(items[k + 2]?.w ?? '')) ||
        (SIDES[current.at(-1)?.w ?? ''] && SIDES[next?.w ?? '']) ||
        (bareNumber(current.at(-1)) && bareNumber(next)) ||
        x.w === 'with';
      if (!list && current.some((y) => sensed(y) && !wrong.has(y))) close();
      else current.push(x);
      continue;
    }
    // "the first one's zigzag the other's blanket stitch": a second place after a stitch
    if (
      x.place &&
      current.some((y) => y.stitch) &&
      current.some((y) => y.place) &&
      items.slice(k).some((y) => y.stitch)
    ) {
      const the = current.at(-1)?.w === 'the' ? current.pop() : undefined;
      close();
      if (the) current.push(the);
    }
    current.push(x);
  }
  close();
  return out;
}

const bareNumber = (x: Item | undefined): boolean => x?.quantity?.value !== undefined && !x.quantity.unit;

/** How surely the items speak of this entry: by its name, stuff, unit, action, finding, object, stitch or place. */
function anchored({ was: e }: Standing, items: Item[], skip: Set<Item>): number {
  let score = 0;
  for (let k = 0; k < items.length; k++) {
    const x = items[k]!;
    if (skip.has(x)) continue;
    if (e.kind === 'material') {
      if (named(e, x)) score += 4;
      if (x.material && x.material === e.material) score += 2;
      else if (x.part && x.part === e.material) score += 2;
      const unit = Object.hasOwn(UNIT_WORDS, x.w) ? UNIT_WORDS[x.w] : undefined;
      if (unit && unit === e.unit && x.w.length > 2) score += 3;
      if (x.quantity?.unit && x.quantity.unit === e.unit) score += 1;
      if (x.fabric && e.name && x.fabric.names.includes(e.name)) score += 4;
    } else if (e.kind === 'treatment') {
      if (x.action && (x.action.v === e.action || (x.action.v === 'remove' && e.action === 'remove')))
        score += 3;
      if (e.action === 'remove' && x.object && x.object === e.object) score += 3;
      if (x.stitch && x.stitch === e.stitch) score += 2;
      if (x.seam && e.action === 'resew') score += 1;
      if (x.place?.places.length && x.place.places.every((p) => placesOf(e).includes(p))) score += 2;
    } else if (e.kind === 'condition') {
      if (x.finding === e.finding) score += 3;
      if (x.seam && e.finding === 'split-seam') score += 1;
      if (x.place?.places.length && x.place.places.every((p) => placesOf(e).includes(p))) score += 2;
    } else if (e.kind === 'measurement') {
      if (x.measure === e.of) score += 3;
      const side =
        SIDES[x.w] ?? ({ r: 'right', l: 'left', t: 'top', b: 'bottom' } as Record<string, string>)[x.w];
      if (side && e.of === `side-${side}`) score += 4;
    } else if (e.kind === 'work') {
      if (x.task && x.task === e.task) score += 3;
    } else if (e.kind === 'decision') {
      if (x.topic === e.about) score += 2;
    }
  }
  return score;
}

function best(pool: Standing[], items: Item[], skip: Set<Item>): Standing[] {
  let top = 0;
  let out: Standing[] = [];
  for (const s of pool) {
    const score = anchored(s, items, skip);
    if (score > top) {
      top = score;
      out = [s];
    } else if (score === top && score > 0) out.push(s);
  }
  return out;
}

function change(work: Work, s: Standing, slot: string, value: unknown, rule: string, items: Item[]): void {
  const old = (s.draft.entry as Record<string, unknown>)[slot];
  for (const x of items) work.used.add(x);
  if (JSON.stringify(old) === JSON.stringify(value)) return;
  put(s.draft, slot, value, `amend.${rule}`, items);
  work.changed = true;
}

/** Applies one stretch; gives the items that later stretches without a subject of their own may lean on. */
function mendSegment(work: Work, segment: Segment, carried: Item[]): Item[] {
  if (work.changed && tellsAnew(work, segment)) return carried;
  const items = segment.items.filter((x) => !work.wrong.has(x));
  const own = items.some((x) => work.standing.some((s) => anchored(s, [x], new Set()) > 1));
  const lean = own ? items : [...carried, ...items];
  const placed = placeItems(work, items);
  const anchorPlaces = mendPlaces(work, segment, items, placed);
  mendStitch(work, segment, items, lean, anchorPlaces ? placed : []);
  mendTimes(work, segment, items);
  mendNumbers(work, segment, items, lean);
  return own ? items : carried;
}

/** A stretch after the mending that tells something of its own: another place with damage or a deed that stands nowhere. */
function tellsAnew(work: Work, segment: Segment): boolean {
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

/** The items that name blocks or sides; a part named as a whole counts only where an entry stands at such a part. */
function placeItems(work: Work, items: Item[]): Item[] {
  const all = items.filter((x) => x.place?.places.length && !POINTERS.has(x.place.rule));
  const exact = all.filter((x) => x.place!.places.some((p) => !WHOLES.has(p)));
  if (exact.length) return exact;
  return all.filter(
    (x) =>
      ((!x.material && !x.object) ||
        [...work.wrong].some((y) => y.place?.places.length && y.part) ||
        (work.cue === 'strong' && work.standing.every(({ was }) => was.kind === 'condition'))) &&
      work.standing.some(({ was }) => placesOf(was).some((p) => WHOLES.has(p) && p !== 'quilt')),
  );
}

/** Puts places right. True where the places only say which entry is meant. */
function mendPlaces(work: Work, segment: Segment, items: Item[], placed: Item[]): boolean {
  const { grid } = work.state;
  const pool = work.standing.filter(
    ({ draft: { entry: e } }) =>
      (e.kind === 'condition' || e.kind === 'treatment' || e.kind === 'remark' || e.kind === 'measurement') &&
      placesOf(e).length,
  );
  const open = work.standing.filter(
    ({ draft: { entry: e } }) => 'places' in e && e.places && !e.places.length && e.kind !== 'remark',
  );
  if (mendSides(work, segment, items, placed, pool)) return false;
  if (mendRun(work, items, placed, pool)) return false;
  if (!placed.length) return false;
  const good = unique(placed.flatMap((x) => x.place!.places));
  if (!pool.length) {
    if (open.length && work.cue !== 'none')
      for (const s of open) change(work, s, 'places', good, 'place', placed);
    return false;
  }
  const wrongPlaces = unique([...work.wrong].flatMap((x) => x.place?.places ?? []));
  const only = /\b(only|just|as far as|all i)\b/.test(segment.words);
  const stitch = stitchIn(items)?.stitch;
  const elsewhere = items.some(
    (x) =>
      (x.stitch && !work.standing.some(({ was }) => was.kind === 'treatment' && was.stitch === x.stitch)) ||
      (x.finding &&
        !work.standing.some(({ was }) => was.kind === 'condition' && was.finding === x.finding)) ||
      x.duration ||
      x.cost ||
      x.quantity?.unit,
  );
  const known = good.every((p) => work.standing.some(({ was }) => placesOf(was).includes(p)));
  // "three two was blanket stitch", "3-2 took forty minutes": the place says which
  if (
    known &&
    elsewhere &&
    !wrongPlaces.some((p) => work.standing.some(({ was }) => placesOf(was).includes(p)))
  )
    return true;
  const skip = new Set(placed);
  let targets = best(pool, items, skip);
  // "and 5-2, sorry": one that was left out
  if (!wrongPlaces.length && /^ (?:(?:oh|ah|no|sorry|,) )*(?:and|also|plus|add) /.test(work.words)) {
    for (const s of targets.length ? targets : pool.slice(-1))
      change(work, s, 'places', unique([...placesOf(s.draft.entry), ...good]), 'place', placed);
    return false;
  }
  if (wrongPlaces.length) {
    const holding = (targets.length ? targets : pool).filter(({ draft }) =>
      wrongPlaces.some((p) => placesOf(draft.entry).includes(p)),
    );
    const hold = holding.length
      ? holding
      : pool.filter(({ draft }) => wrongPlaces.some((p) => placesOf(draft.entry).includes(p)));
    if (hold.length) {
      for (const s of hold) {
        const now = placesOf(s.draft.entry);
        if (now.length < wrongPlaces.length && placed.length === 1 && isWholeRow(grid, good)) {
          change(work, s, 'places', fitted(s, placed, good, segment, only), 'place', placed);
          continue;
        }
        const at = now.findIndex((p) => wrongPlaces.includes(p));
        const kept = now.filter((p) => !wrongPlaces.includes(p));
        const cut = Math.min(at, kept.length);
        change(
          work,
          s,
          'places',
          unique([...kept.slice(0, cut), ...good, ...kept.slice(cut)]),
          'place',
          placed,
        );
      }
      for (const x of work.wrong) work.used.add(x);
      return false;
    }
  }
  if (!targets.length) targets = likest(pool, good);
  else if (targets.length > 1) targets = likest(targets, good, true);
  // a whole stitch or deed said again of fewer places: only those
  if (stitch && targets.every(({ was }) => was.kind === 'treatment' && was.stitch === stitch) && known) {
    for (const s of targets) change(work, s, 'places', good, 'place', placed);
    return true;
  }
  if (work.cue === 'none') return known;
  for (const s of targets) change(work, s, 'places', fitted(s, placed, good, segment, only), 'place', placed);
  return false;

  /** The new places of an entry: a row alone keeps its blocks, a block at the end of a run shortens it. */
  function fitted(s: Standing, from: Item[], to: string[], seg: Segment, onlyThose: boolean): string[] {
    const now = placesOf(s.draft.entry);
    const blocks = now.filter((p) => splitBlock(p));
    if (!blocks.length) return to;
    const rows = unique(to.map((p) => splitBlock(p)?.row));
    const whole = rows.length === 1 && rows[0] !== undefined && isWholeRow(grid, to) && grid.blocks > 1;
    if (whole && from.length === 1 && !/pair|range|row-block|block/.test(from[0]!.place!.rule)) {
      const row = rows[0]!;
      const inRow = blocks.filter((p) => splitBlock(p)!.row === row);
      if (
        inRow.length &&
        inRow.length < rowOf(grid, row).length &&
        /\b(all|whole|entire|every|rest)\b/.test(`${seg.words}${from[0]!.w}`)
      )
        return unique([...now.filter((p) => splitBlock(p)?.row !== row), ...rowOf(grid, row)]);
      if (
        blocks.length < grid.blocks &&
        !onlyThose &&
        !/\b(all|whole|entire|every)\b/.test(`${seg.words}${from[0]!.w}`)
      )
        return now.map((p) => {
          const b = splitBlock(p);
          return b ? (blockAt(grid, row, b.block) ?? p) : p;
        });
      return to;
    }
    // "make that block three", of how far the row was done
    const reached = s.draft.origins['action']?.rule === 'treatment.so-far' ? splitBlock(to[0]!) : undefined;
    if (reached && to.length === 1 && now.every((p) => splitBlock(p)?.row === reached.row))
      return rowOf(grid, reached.row).slice(0, reached.block);
    const ahead = ` ${seg.items
      .slice(0, Math.max(0, seg.items.indexOf(from[0]!)))
      .map((x) => x.w)
      .join(' ')} `;
    if (
      to.length === 1 &&
      from[0]!.place!.rule !== 'amend.pick' &&
      from[0]!.place!.kind !== 'pointer' &&
      / (as far as|up to|through to|down to|got to|stopped at|to the|to) (the )?$/.test(ahead)
    ) {
      const end = splitBlock(to[0]!);
      const inRow = end ? blocks.filter((p) => splitBlock(p)!.row === end.row) : [];
      if (end && blocks.length > 1) {
        const first = Math.min(...inRow.map((p) => splitBlock(p)!.block), 1);
        const run = Array.from({ length: Math.max(0, end.block - first + 1) }, (_, k) =>
          blockAt(grid, end.row, first + k),
        ).filter((p): p is string => p !== undefined);
        if (run.length) return unique([...now.filter((p) => splitBlock(p)?.row !== end.row), ...run]);
      }
    }
    return to;
  }
}

/** Those entries whose places are most like the new ones: as many, and in the same rows and columns. */
function likest(pool: Standing[], good: string[], keepAll = false): Standing[] {
  const key = (s: Standing): string => [...placesOf(s.draft.entry)].sort().join(',');
  const groups = unique(pool.map(key));
  if (groups.length === 1) return pool;
  const score = (s: Standing): number => {
    const places = placesOf(s.draft.entry);
    const near = places.filter((p) => {
      const a = splitBlock(p);
      if (!a) return good.includes(p) || good.some((g) => g.split('-')[0] === p.split('-')[0]);
      return good.some((g) => {
        const b = splitBlock(g);
        return b !== undefined && (b.row === a.row || b.block === a.block);
      });
    }).length;
    const shared = places.filter((p) => good.includes(p)).length;
    return near / Math.max(1, places.length) + (places.length === good.length ? 1 : 0) + (shared ? 0.25 : 0);
  };
  if (keepAll && pool.every((s) => score(s) === score(pool[0]!))) return pool;
  const top = pool.reduce((a, b) => (score(b) >= score(a) ? b : a));
  return pool.filter((s) => key(s) === key(top));
}

/** "top and bottom, not the sides": sides of what stands at sides of the border or the edge. */
function mendSides(work: Work, segment: Segment, items: Item[], placed: Item[], pool: Standing[]): boolean {
  const holding = pool.filter(({ draft }) => placesOf(draft.entry).some((p) => /^(border|edge)-/.test(p)));
  if (!holding.length || placed.some((x) => x.place!.places.some((p) => splitBlock(p)))) return false;
  if (work.cue === 'none') return false;
  if (items.some((x) => x.quantity?.value !== undefined || x.cost || x.measure || /corner/.test(x.w)))
    return false;
  const said: Item[] = [];
  const sides: string[] = [];
  for (const [k, x] of items.entries()) {
    // "right, so that's done" names no side
    if (
      k === 0 &&
      x.w === 'right' &&
      !/ (mean|meant|sorry|not|instead|rather) /.test(work.words) &&
      /^(,|so|then|now|ok|okay|on|i|that|well)$/.test(items[1]?.w ?? '')
    )
      continue;
    for (const word of x.w.split(' ')) {
      const side = SIDES[word];
      if (side) {
        sides.push(side);
        said.push(x);
      } else if (/^sides$/.test(word)) {
        sides.push('left', 'right');
        said.push(x);
      }
    }
  }
  if (!sides.length) return false;
  const anchoredOnes = best(holding, items, new Set(said));
  for (const s of anchoredOnes.length ? anchoredOnes : holding) {
    const family = placesOf(s.draft.entry)
      .find((p) => /^(border|edge)-/.test(p))!
      .split('-')[0]!;
    change(work, s, 'places', unique(sides.map((side) => `${family}-${side}`)), 'side', said);
  }
  return segment.items.length > 0;
}

const COUNT: Record<string, number> = {
  one: 1,
  two: 2,
  to: 2,
  three: 3,
  four: 4,
  for: 4,
  five: 5,
  six: 6,
  seven: 7,
  eight: 8,
  nine: 9,
  ten: 10,
};
const count = (word: string | undefined): number | undefined =>
  word === undefined ? undefined : (COUNT[word] ?? (/^\d{1,2}$/.test(word) ? Number(word) : undefined));

const AS_FAR_AS = /^(?:.* )?(?:as far as|up to|(?:got|went|managed|made it|did) to|stopped at|through to) $/;

/** "no, only as far as three", "I only got to row two": the end of what stands comes sooner. */
function mendEnd(work: Work, items: Item[], placed: Item[], pool: Standing[]): boolean {
  const k = items.findLastIndex(
    (x) =>
      (x.place?.places.length && placed.includes(x)) || (x.quantity?.value !== undefined && !x.quantity.unit),
  );
  const end = items[k];
  if (!end) return false;
  const ahead = items
    .slice(Math.max(0, k - 6), k)
    .filter((x) => x.w !== 'the' && !(x.place && POINTERS.has(x.place.rule)))
    .map((x) => `${x.w} `)
    .join('');
  // "in row three I only did the first two", "only up to block two": of one row, its beginning
  const said = end.place?.places ?? [];
  const few =
    said.length < work.state.grid.blocks &&
    (/ only (?:did|tied|quilted|finished|managed) /.test(work.words) || /\b(?:as far as|up to) /.test(end.w));
  if (!AS_FAR_AS.test(ahead) && !few) return false;
  const target = pool.findLast(({ draft }) => placesOf(draft.entry).filter((p) => splitBlock(p)).length > 1);
  if (!target) return false;
  const now = placesOf(target.draft.entry);
  const rowLast = splitBlock(now.findLast((p) => splitBlock(p))!)!.row;
  const row = isWholeRow(work.state.grid, said) ? splitBlock(said[0]!)?.row : undefined;
  const block = said.length === 1 || few ? splitBlock(said.at(-1) ?? '') : undefined;
  if (end.place && row === undefined && !block) return false;
  const n = end.quantity?.value;
  const kept = now.filter((p) => {
    const at = splitBlock(p);
    if (!at) return true;
    if (block) return at.row < block.row || (at.row === block.row && at.block <= block.block);
    return row !== undefined ? at.row <= row : at.row !== rowLast || at.block <= n!;
  });
  if (!kept.length || kept.length === now.length) return false;
  change(work, target, 'places', kept, 'place', [end, ...placed]);
  return true;
}

/** "make that one to four": the blocks of the row last named in the entry. */
function mendRun(work: Work, items: Item[], placed: Item[], pool: Standing[]): boolean {
  if (work.cue !== 'none' && mendEnd(work, items, placed, pool)) return true;
  if (mendRows(work, items, placed, pool)) return true;
  if (work.cue !== 'strong' || placed.some((x) => x.place!.rule !== 'place.pair')) return false;
  const run = /\b(?:blocks? )?(\w+) (?:to|through|thru|till|until|up to|-) (\w+) $/.exec(
    ` ${items.map((x) => x.w).join(' ')} `.replace(/ (please|sorry|instead|then) $/, ' '),
  );
  const from = count(run?.[1]);
  const to = count(run?.[2]);
  if (from === undefined || to === undefined || to < from) return false;
  const target = pool.findLast(({ draft }) => placesOf(draft.entry).filter((p) => splitBlock(p)).length > 1);
  if (!target) return false;
  const now = placesOf(target.draft.entry);
  const row = splitBlock(now.findLast((p) => splitBlock(p))!)!.row;
  const fresh = Array.from({ length: to - from + 1 }, (_, k) =>
    blockAt(work.state.grid, row, from + k),
  ).filter((p): p is string => p !== undefined);
  if (!fresh.length) return false;
  change(
    work,
    target,
    'places',
    unique([...now.filter((p) => splitBlock(p)?.row !== row), ...fresh]),
    'place',
    items.filter((x) => x.quantity || x.span || x.clock || x.place || count(x.w) !== undefined),
  );
  return true;
}

/** "no, one and two": whole rows told by their numbers alone. */
function mendRows(work: Work, items: Item[], placed: Item[], pool: Standing[]): boolean {
  const { grid } = work.state;
  if (work.cue === 'none' || placed.length) return false;
  const numbers = items.filter((x) => x.quantity?.value !== undefined || x.token.kind === 'number');
  if (
    !numbers.length ||
    items.some(
      (x) =>
        !numbers.includes(x) &&
        !/^(no|nope|sorry|and|,|&|just|only|rows?|to|it|was|make|that|correction|actually|wait|i|meant)$/.test(
          x.w,
        ),
    )
  )
    return false;
  const rows = numbers.map((x) => x.quantity?.value ?? x.token.value ?? 0);
  if (
    rows.some((r) => !Number.isInteger(r) || r < 1 || r > grid.rows) ||
    numbers.some((x) => x.quantity?.unit)
  )
    return false;
  const whole = pool.filter(({ was }) => {
    const places = placesOf(was);
    return (
      places.length > 0 &&
      places.every((p) => rowOf(grid, splitBlock(p)?.row ?? 0).every((q) => places.includes(q)))
    );
  });
  if (!whole.length || work.standing.some(({ was }) => was.kind === 'work' || was.kind === 'material'))
    return false;
  const joined =
    items.some((x) => x.w === 'to') && rows.length === 2
      ? Array.from({ length: Math.max(0, rows[1]! - rows[0]! + 1) }, (_, k) => rows[0]! + k)
      : rows;
  for (const s of whole)
    change(
      work,
      s,
      'places',
      joined.flatMap((r) => rowOf(grid, r)),
      'place',
      numbers,
    );
  return true;
}

/** The most particular stitch that a stretch names. */
function stitchIn(items: Item[]): { stitch: Stitch; item: Item } | undefined {
  let top: { stitch: Stitch; item: Item } | undefined;
  for (const x of items)
    if (x.stitch && (!top || STITCH_PHRASES[x.stitch].rank > STITCH_PHRASES[top.stitch].rank))
      top = { stitch: x.stitch, item: x };
  return top;
}

function mendStitch(work: Work, segment: Segment, items: Item[], lean: Item[], at: Item[]): void {
  const found = stitchIn(items);
  if (!found) return;
  const { stitch, item } = found;
  const treatments = work.standing.filter(({ draft }) => draft.entry.kind === 'treatment');
  const wrongStitch = [...work.wrong].find((x) => x.stitch && x.stitch !== stitch)?.stitch;
  const set = (list: Standing[]): void => {
    for (const s of list) change(work, s, 'stitch', stitch, 'stitch', [item]);
  };
  if (wrongStitch) {
    const holding = treatments.filter(({ was }) => was.kind === 'treatment' && was.stitch === wrongStitch);
    if (holding.length) {
      set(holding);
      return;
    }
  }
  const places = unique(at.flatMap((x) => x.place!.places));
  if (places.length) {
    const holding = treatments.filter(
      ({ was }) => places.every((p) => placesOf(was).includes(p)) && takesStitch(was),
    );
    const target = holding.findLast(({ was }) => was.kind === 'treatment' && was.stitch) ?? holding.at(-1);
    if (target) {
      const all = placesOf(target.was);
      if (places.length < all.length) {
        split(work, target, places, stitch, item, at);
        return;
      }
      set([target]);
      return;
    }
  }
  if (treatments.some(({ was }) => was.kind === 'treatment' && was.stitch === stitch)) {
    work.used.add(item);
    return;
  }
  if (work.cue === 'none' && !at.length && !wrongStitch) return;
  const meant = best(treatments, lean, new Set([item]));
  const stitched = treatments.filter(({ was }) => was.kind === 'treatment' && was.stitch);
  const able = treatments.filter(({ was }) => takesStitch(was));
  const pool = meant.length ? meant : stitched.length ? stitched : able.length ? able : treatments;
  const last = pool.at(-1);
  if (!last) return;
  const all = / (all|both|each|every|throughout) /.test(segment.words);
  const same = pool.filter(
    ({ was }) =>
      was.kind === 'treatment' &&
      last.was.kind === 'treatment' &&
      (all || (was.stitch === last.was.stitch && was.action === last.was.action)),
  );
  set(same);
}

const TAKES_STITCH = new Set([
  'resew',
  'patch',
  'replace',
  'stabilize',
  'overlay',
  'darn',
  'quilt',
  'bind',
  'piece',
  'add-border',
  'baste',
]);
const takesStitch = (e: Entry): boolean =>
  e.kind === 'treatment' && e.action !== undefined && (e.stitch !== undefined || TAKES_STITCH.has(e.action));

/** Some places of an entry got another stitch: they become an entry of their own. */
function split(work: Work, s: Standing, places: string[], stitch: Stitch, item: Item, at: Item[]): void {
  if (s.was.kind !== 'treatment') return;
  if (s.was.stitch === stitch) {
    work.used.add(item);
    return;
  }
  const left = placesOf(s.draft.entry).filter((p) => !places.includes(p));
  if (!left.length) {
    change(work, s, 'stitch', stitch, 'stitch', [item]);
    return;
  }
  put(s.draft, 'places', left, 'amend.place', at);
  const draft: Draft = {
    ...s.draft,
    entry: { ...structuredClone(s.was), minutes: undefined } as Entry,
    origins: { ...s.draft.origins },
  };
  delete (draft.entry as { minutes?: number }).minutes;
  delete draft.origins['minutes'];
  put(draft, 'places', places, 'amend.place', at);
  put(draft, 'stitch', stitch, 'amend.stitch', [item]);
  work.standing.splice(work.standing.indexOf(s) + 1, 0, { draft, was: structuredClone(draft.entry) });
  for (const x of [item, ...at]) work.used.add(x);
  work.changed = true;
}

const BREAK =
  / (less|minus|take off|knock off|take away|not counting|excluding|apart from|break|breaks|out|off) .*| for (tea|coffee|lunch|dinner|supper|breakfast|a break|a cuppa|the phone) /;

/** Clock times of work: start, end, or a mark's own time; a break that was taken off stays taken off. */
function mendTimes(work: Work, segment: Segment, items: Item[]): void {
  const target = work.standing.findLast(
    ({ draft: { entry: e } }) => e.kind === 'work' && (e.start !== undefined || e.mark !== undefined),
  );
  if (!target || target.draft.entry.kind !== 'work') return;
  const e = target.draft.entry;
  const now = wallMinutes(work.state.local);
  const broke = (): number | undefined =>
    e.start && e.end && e.minutes !== undefined
      ? wallMinutes(e.end) - wallMinutes(e.start) - e.minutes
      : undefined;
  const base = e.time ?? e.end ?? e.start;
  const day = base ? Math.floor(wallMinutes(base) / 1440) * 1440 : undefined;
  const onDay = (clock: { minute: number; fixed: boolean; anyHour?: true }): number => {
    const today = Math.floor(now / 1440) * 1440;
    return latestClock(clock, now, day !== undefined && day < today ? { start: day } : undefined);
  };
  // "less ten minutes for tea": a break told afterwards
  const off = items.find((x) => x.duration);
  if (off && e.start && e.end && BREAK.test(segment.words)) {
    change(
      work,
      target,
      'minutes',
      wallMinutes(e.end) - wallMinutes(e.start) - off.duration!.minutes,
      'break',
      [off],
    );
    return;
  }
  for (let k = 0; k < items.length; k++) {
    const x = items[k]!;
    if (x.span && e.start && e.end) {
      const rest = broke();
      const end = onDay(x.span.end);
      const start = latestClock(x.span.start, end - 1);
      change(work, target, 'start', wallTime(start), 'time', [x]);
      change(work, target, 'end', wallTime(end), 'time', [x]);
      if (rest !== undefined) change(work, target, 'minutes', end - start - rest, 'time', [x]);
      continue;
    }
    const pair = x.clock ? undefined : pairClock(items, k);
    const clock = x.clock ?? pair ?? bareClock(items, k, work.cue === 'strong' && !slotsOf(work).length);
    if (!clock) continue;
    if (pair) work.used.add(items[k + 1]!);
    const lone = x.clock === undefined && e.end !== undefined;
    const t = wallTime(lone ? nearestClock(clock.minute, wallMinutes(e.end!)) : onDay(clock));
    if (e.mark) change(work, target, 'time', t, 'time', [x]);
    else if (e.start && e.end) {
      const rest = broke();
      const before = ` ${items
        .slice(Math.max(0, k - 6), k)
        .map((y) => y.w)
        .join(' ')} `;
      const toStart =
        /\b(start|started|began|begin|from|beginning)\b/.test(before) ||
        (!/\b(stop|stopped|finish|finished|end|ended|till|until|til|to|quit)\b/.test(before) &&
          Math.abs(wallMinutes(t) - wallMinutes(e.start)) < Math.abs(wallMinutes(t) - wallMinutes(e.end)));
      change(work, target, toStart ? 'start' : 'end', t, 'time', [x]);
      if (rest !== undefined)
        change(work, target, 'minutes', wallMinutes(e.end) - wallMinutes(e.start) - rest, 'time', [x]);
    }
  }
}

/** The clock time in whichever half of the day lies nearer. */
function nearestClock(minute: number, old: number): number {
  const day = Math.floor(old / 1440) * 1440;
  return [day + (minute % 720), day + (minute % 720) + 720].reduce((a, b) =>
    Math.abs(b - old) < Math.abs(a - old) ? b : a,
  );
}

/** "eleven fifteen it was": hour and minutes. */
function pairClock(items: Item[], k: number): { minute: number; fixed: boolean } | undefined {
  const hour = items[k]!.quantity;
  const past = items[k + 1]?.quantity;
  if (!hour || !past || hour.unit || past.unit) return undefined;
  const h = hour.value ?? 0;
  const m = past.value ?? 0;
  if (!Number.isInteger(h) || h < 1 || h > 12 || !Number.isInteger(m) || m < 5 || m > 59 || m % 5 !== 0)
    return undefined;
  return { minute: h * 60 + m, fixed: false };
}

/** "stopped at seven": a bare number after such a word is a clock. */
function bareClock(items: Item[], k: number, lone = false): { minute: number; fixed: boolean } | undefined {
  const x = items[k]!;
  const value = x.quantity?.value;
  if (value === undefined || x.quantity?.unit || !Number.isInteger(value) || value < 1 || value > 12)
    return undefined;
  return lone || /^(at|till|until|til|since|by)$/.test(items[k - 1]?.w ?? '')
    ? { minute: value * 60, fixed: false }
    : undefined;
}

type Sort = 'quantity' | 'cost' | 'minutes' | 'bare';
type Slot = {
  s: Standing;
  slot: 'quantity' | 'cost' | 'minutes' | 'value';
  value: number;
  unit?: string | undefined;
};

function slotsOf(work: Work): Slot[] {
  const out: Slot[] = [];
  for (const s of work.standing) {
    const e = s.was;
    if (e.kind === 'material') {
      if (e.quantity !== undefined) out.push({ s, slot: 'quantity', value: e.quantity, unit: e.unit });
      if (e.cost) out.push({ s, slot: 'cost', value: e.cost.amount });
    } else if (e.kind === 'measurement' && e.value !== undefined)
      out.push({ s, slot: 'value', value: e.value, unit: e.unit });
    else if ((e.kind === 'treatment' || e.kind === 'work') && e.minutes !== undefined)
      out.push({ s, slot: 'minutes', value: e.minutes });
  }
  return out;
}

/** Quantities, prices, lengths of time and sizes: the slot of the named entry, of the same sort, nearest in value. */
function mendNumbers(work: Work, segment: Segment, items: Item[], lean: Item[]): void {
  const wrongNumbers = [...work.wrong]
    .map((x) => numberOf(work.state, x))
    .filter((v): v is number => v !== undefined);
  for (let k = 0; k < items.length; k++) {
    const x = items[k]!;
    if (work.used.has(x)) continue;
    const fact = numberFact(work, items, k);
    if (!fact) continue;
    const all = slotsOf(work);
    const fits = (slot: Slot): boolean =>
      fact.sort === 'bare'
        ? true
        : fact.sort === 'cost'
          ? slot.slot === 'cost'
          : fact.sort === 'minutes'
            ? slot.slot === 'minutes'
            : (slot.slot === 'quantity' || slot.slot === 'value') &&
              (slot.unit === fact.unit ||
                (slot.unit !== undefined &&
                  LENGTHS.has(slot.unit as MaterialUnit) === LENGTHS.has(fact.unit as MaterialUnit)));
    const skip = new Set([x]);
    const own = best(work.standing, nearby(items, items, k), skip);
    let pool = all.filter(fits);
    const sameUnit = fact.unit ? pool.filter((slot) => slot.unit === fact.unit) : [];
    const about = own.length || sameUnit.length ? own : best(work.standing, nearby(lean, items, k), skip);
    const meant = about.length || sameUnit.length ? about : best(work.standing, lean, skip);
    const corrected = pool.filter((slot) => wrongNumbers.includes(slot.value));
    if (corrected.length) pool = corrected;
    else if (
      sameUnit.length &&
      !sameUnit.some((slot) => meant.includes(slot.s)) &&
      !meant.some((s) => namedBy(s, items))
    )
      pool = sameUnit;
    else if (meant.length && pool.some((slot) => meant.includes(slot.s)))
      pool = pool.filter((slot) => meant.includes(slot.s));
    else if (meant.length && !pool.length) {
      addNumber(work, meant, fact, x);
      continue;
    } else if (
      meant.length &&
      fact.sort !== 'minutes' &&
      (named(meant[0]!.was, x) || meant[0]!.was.kind === 'material')
    ) {
      // "it was two packs" of something that had none
      addNumber(
        work,
        meant,
        fact,
        x,
        meant.some((s) => namedBy(s, lean)),
      );
      continue;
    }
    if (fact.unit && pool.some((slot) => slot.unit === fact.unit))
      pool = pool.filter((slot) => slot.unit === fact.unit);
    if (fact.cents && pool.some((slot) => slot.slot === 'cost'))
      pool = pool.filter((slot) => slot.slot === 'cost');
    if (!pool.length) {
      addNumber(work, meant.length ? meant : work.standing, fact, x);
      continue;
    }
    if (
      work.cue === 'none' &&
      !meant.length &&
      !corrected.length &&
      !(work.changed && sameUnit.length === 1) &&
      !/ (that|those) *$/.test(segment.words + work.words.trimEnd())
    )
      continue;
    const apart = (slot: Slot): number =>
      Math.abs(Math.log(Math.max(fact.value, 1e-6) / Math.max(slot.value, 1e-6)));
    const target = pool.reduce((a, b) => (apart(b) <= apart(a) + 1e-9 ? b : a));
    if (target.slot === 'cost') {
      const old = target.s.was.kind === 'material' ? target.s.was.cost : undefined;
      const each =
        fact.each ||
        (old?.each &&
          !/ (the lot|altogether|in all|all in|total|for (both|the pair|all)|the pair) /.test(work.words));
      change(work, target.s, 'cost', { amount: fact.value, ...(each ? { each: true } : {}) }, 'cost', [x]);
    } else {
      change(work, target.s, target.slot, fact.value, 'number', [x]);
      if (fact.unit && fact.unit !== target.unit && target.slot !== 'minutes')
        change(work, target.s, 'unit', fact.unit, 'unit', [x]);
    }
  }
}

const namedBy = (s: Standing, items: Item[]): boolean => items.some((x) => named(s.was, x));

/** The words around a number that say what it counts: back to the number before it, on to the next joint. */
function nearby(lean: Item[], items: Item[], k: number): Item[] {
  const at = lean.indexOf(items[k]!);
  if (at < 0) return items;
  let from = at;
  while (from > 0 && !(lean[from - 1]!.quantity && from < at)) from--;
  let to = at + 1;
  while (to < lean.length && to < at + 5 && !lean[to]!.quantity && !lean[to]!.cost) to++;
  return lean.slice(from, to);
}

function numberFact(
  work: Work,
  items: Item[],
  k: number,
):
  | { sort: Sort; value: number; unit?: MaterialUnit | undefined; each?: boolean; cents?: boolean }
  | undefined {
  const x = items[k]!;
  if (x.cost) return { sort: 'cost', value: x.cost.amount, each: x.cost.each };
  if (x.duration) {
    const after = items[k + 1]?.w ?? '';
    if (/^(ago|old|break|for lunch)$/.test(after)) return undefined;
    return { sort: 'minutes', value: x.duration.minutes };
  }
  if (x.quantity?.unit && x.quantity.value !== undefined)
    return { sort: 'quantity', value: x.quantity.value, unit: x.quantity.unit };
  if (x.place?.places.length || x.span) return undefined;
  const value = numberOf(work.state, x);
  if (value === undefined || value <= 0) return undefined;
  if (x.clock?.firm && !/^\d+\.\d\d$/.test(x.w)) return undefined;
  // "half of one"
  const cents = /^\d*\.\d\d$/.test(x.w);
  // "the first one", "that one": no number
  if (
    x.w === 'one' &&
    /^(the|that|this|other|first|second|last|every|each|of|which|a|good|nice|bad|big|little|tricky|easy|nasty|hard|long|wrong|right)$/.test(
      items[k - 1]?.w ?? '',
    )
  )
    return undefined;
  return { sort: 'bare', value, cents };
}

/** A number that the entry had not got before: a price, an amount, a length of time. */
function addNumber(
  work: Work,
  list: Standing[],
  fact: { sort: Sort; value: number; unit?: MaterialUnit | undefined; each?: boolean },
  x: Item,
  sure = false,
): boolean {
  if (work.cue === 'none' && !sure) return false;
  if (fact.sort === 'minutes') {
    const treatments = list.filter(({ draft }) => draft.entry.kind === 'treatment');
    const works = list.filter(({ draft }) => draft.entry.kind === 'work');
    const target = treatments.length === 1 ? treatments[0] : works.length === 1 ? works[0] : undefined;
    if (!target) return false;
    change(work, target, 'minutes', fact.value, 'number', [x]);
    return true;
  }
  const materials = list.filter(({ draft }) => draft.entry.kind === 'material');
  if (materials.length !== 1) return false;
  const target = materials[0]!;
  if (fact.sort === 'cost') {
    change(work, target, 'cost', { amount: fact.value, ...(fact.each ? { each: true } : {}) }, 'cost', [x]);
    return true;
  }
  if (fact.sort === 'quantity') {
    change(work, target, 'quantity', fact.value, 'number', [x]);
    change(work, target, 'unit', fact.unit, 'unit', [x]);
    return true;
  }
  return false;
}

/** Places said to be wrong with none put in their stead: "not 4-3". */
function leftOver(work: Work, items: Item[]): void {
  const wrongItemsLeft = [...work.wrong].filter((x) => x.place?.places.length && !work.used.has(x));
  if (!wrongItemsLeft.length || !items.length) return;
  const gone = unique(wrongItemsLeft.flatMap((x) => x.place!.places));
  for (const s of work.standing) {
    const now = placesOf(s.draft.entry);
    const kept = now.filter((p) => !gone.includes(p));
    if (kept.length && kept.length < now.length) change(work, s, 'places', kept, 'place', wrongItemsLeft);
  }
}

/** Another finding, treatment, stuff, cloth or task in the place of the one that was wrong. */
function substitute(work: Work, items: Item[]): void {
  const right = items.filter((x) => !work.wrong.has(x) && !work.used.has(x));
  const denies = (test: (x: Item) => boolean): boolean => [...work.wrong].some(test);
  const { standing } = work;
  const findings = standing.filter(({ was }) => was.kind === 'condition');
  for (const d of work.state.drafts) {
    if (work.told.has(d)) continue;
    const e = d.entry;
    if (e.kind === 'condition') {
      const from = d.origins['finding'];
      const own = right.filter(
        (x) => x.finding === e.finding && from && x.token.from >= from.from && x.token.from < from.to,
      );
      if (!own.length || findings.some(({ was }) => was.kind === 'condition' && was.finding === e.finding))
        continue;
      const target =
        findings.find(({ was }) => was.kind === 'condition' && denies((x) => x.finding === was.finding)) ??
        (findings.length === 1 &&
        work.cue !== 'none' &&
        (d.placed !== 'said' || samePlaces(findings[0]!, e)) &&
        (work.cue === 'strong' || e.finding !== 'sound')
          ? findings[0]
          : findings
              .filter(
                (s) =>
                  d.placed === 'said' && (work.cue === 'strong' ? sharesPlace(s.was, e) : samePlaces(s, e)),
              )
              .at(-1));
      if (target && work.cue !== 'none') change(work, target, 'finding', e.finding, 'finding', own);
    } else if (e.kind === 'treatment' && e.action) swapTreatment(work, d, right, denies);
    else if (e.kind === 'material' && e.material) {
      const own = right.filter((x) => x.material || x.fabric || x.part);
      const materials = standing.filter(({ was }) => was.kind === 'material');
      if (!own.length || e.quantity !== undefined) continue;
      swapMaterial(work, e, own, materials, denies);
    }
  }
  const stuff = right.filter((x) => x.material && !x.fabric && !work.used.has(x));
  const materials = standing.filter(({ was }) => was.kind === 'material');
  if (stuff.length && denies((x) => x.material !== undefined))
    swapMaterial(
      work,
      { kind: 'material', use: 'used', material: stuff[0]!.material!, name: stuff.map((x) => x.w).join(' ') },
      stuff,
      materials,
      denies,
    );
  swapUnits(work, items);
  swapNames(work, items, materials);
  if (!swapObject(work, right)) swapDeed(work, right);
  swapCloth(work, right, denies);
  const task = right.find((x) => x.task && !work.used.has(x));
  const works = standing.filter(({ was }) => was.kind === 'work');
  if (
    task &&
    works.length &&
    denies((x) => x.task !== undefined && works.some(({ was }) => was.kind === 'work' && was.task === x.task))
  )
    for (const s of works) change(work, s, 'task', task.task, 'task', [task]);
}

const samePlaces = (s: Standing, e: Entry): boolean =>
  [s.was, s.draft.entry].some((x) => [...placesOf(x)].sort().join() === [...placesOf(e)].sort().join());
const sharesPlace = (a: Entry, b: Entry): boolean => placesOf(a).some((p) => placesOf(b).includes(p));

function swapTreatment(
  work: Work,
  d: Draft,
  right: Item[],
  denies: (test: (x: Item) => boolean) => boolean,
): void {
  const e = d.entry;
  if (e.kind !== 'treatment') return;
  if (swapObject(work, right)) return;
  const from = d.origins['action'];
  const own = right.filter((x) => from && x.token.from >= from.from && x.token.from < from.to);
  const treatments = work.standing.filter(({ draft }) => draft.entry.kind === 'treatment');
  const same = treatments.filter(
    ({ was }) =>
      was.kind === 'treatment' && was.action === e.action && (!e.object || was.object === e.object),
  );
  if (same.length) {
    // the same deed, in another state: "that's only planned"
    const target = same.length === 1 ? same[0]! : same.find(({ was }) => sharesPlace(was, e));
    if (
      target?.was.kind === 'treatment' &&
      target.was.state !== e.state &&
      work.cue === 'strong' &&
      / (not yet|n't yet|still|only|planned|to do|going to|will|tomorrow|already|done|maybe|thinking|considering|yet) /.test(
        work.words,
      ) &&
      (d.placed !== 'said' || sharesPlace(target.was, e))
    )
      change(work, target, 'state', e.state, 'state', own);
    for (const x of own) work.used.add(x);
    return;
  }
  if (!own.length || work.cue === 'none') return;
  const about = treatments.filter(
    ({ was }) =>
      was.kind === 'treatment' &&
      ((was.object !== undefined && placesOf(e).includes(was.object)) ||
        (d.placed === 'said' && sharesPlace(was, e))),
  );
  const target =
    treatments.find(({ was }) => was.kind === 'treatment' && denies((x) => x.action?.v === was.action)) ??
    (about.length === 1 ? about[0] : undefined) ??
    (treatments.length === 1 &&
    (work.cue === 'strong' ||
      (d.placed !== 'said' && (work.standing.length <= 2 || deniesDeed(work, treatments[0]!))))
      ? treatments[0]
      : undefined);
  if (!target) return;
  change(work, target, 'action', e.action, 'action', own);
  change(work, target, 'state', e.state, 'state', own);
  if (e.object || (target.was.kind === 'treatment' && target.was.object))
    change(work, target, 'object', e.object, 'action', own);
  if (e.stitch) change(work, target, 'stitch', e.stitch, 'stitch', own);
  if (e.fabric) change(work, target, 'fabric', e.fabric, 'action', own);
  if (d.placed === 'said' && placesOf(e).length && !about.length)
    change(work, target, 'places', placesOf(e), 'place', own);
}

/** "quilting, I mean, not ties": another thing was taken off. */
function swapObject(work: Work, right: Item[]): boolean {
  const gone = [...work.wrong].find((x) => x.object);
  const thing = right.find((x) => x.object && x.object !== gone?.object);
  const s = work.standing.find(
    ({ was }) => was.kind === 'treatment' && was.action === 'remove' && was.object === gone?.object,
  );
  if (!gone || !thing || !s) return false;
  change(work, s, 'object', thing.object, 'object', [thing]);
  return true;
}

/** "I didn't patch it, I darned it": the deed that stands is denied in words of its own. */
function deniesDeed(work: Work, s: Standing): boolean {
  const items = work.state.clauses.flatMap((c) => c.items);
  return items.some(
    (x, k) =>
      x.action !== undefined &&
      s.was.kind === 'treatment' &&
      x.action.v === s.was.action &&
      items.slice(Math.max(0, k - 3), k).some((y) => /^(not|n't|never)$/.test(y.w)),
  );
}

function swapMaterial(
  work: Work,
  e: Extract<Entry, { kind: 'material' }>,
  own: Item[],
  materials: Standing[],
  denies: (test: (x: Item) => boolean) => boolean,
): void {
  const target =
    materials.find(
      ({ was }) =>
        was.kind === 'material' &&
        denies((x) => named(was, x) || (x.material !== undefined && x.material === was.material)),
    ) ??
    (materials.length === 1 && work.cue === 'strong' && !own.some((x) => named(materials[0]!.was, x))
      ? materials[0]
      : undefined);
  if (target?.was.kind !== 'material' || own.every((x) => work.used.has(x))) return;
  if (target.was.material === e.material && target.was.name === e.name) return;
  change(
    work,
    target,
    'material',
    target.was.material === 'backing' && e.material === 'fabric' ? 'backing' : e.material,
    'material',
    own,
  );
  if (e.name) change(work, target, 'name', e.name, 'material', own);
}

/** "metres, not yards". */
function swapUnits(work: Work, items: Item[]): void {
  const unitOf = (x: Item): MaterialUnit | undefined =>
    x.token.kind === 'word' && x.w.length > 1 && Object.hasOwn(UNIT_WORDS, x.w) ? UNIT_WORDS[x.w] : undefined;
  for (let k = 0; k < items.length; k++) {
    if (!/^(not|n't|of|than)$/.test(items[k]!.w)) continue;
    const gone = items
      .slice(k + 1, k + 3)
      .map(unitOf)
      .find((u) => u !== undefined);
    const right = items.find((x, m) => (m < k || m > k + 2) && unitOf(x) !== undefined && unitOf(x) !== gone);
    if (!gone || !right) continue;
    for (const s of work.standing)
      if ((s.was.kind === 'material' || s.was.kind === 'measurement') && s.was.unit === gone)
        change(work, s, 'unit', unitOf(right), 'unit', [right]);
  }
}

/** "grey thread, not cream": the same stuff by another name. */
function swapNames(work: Work, items: Item[], materials: Standing[]): void {
  for (const s of materials) {
    const e = s.was;
    if (e.kind !== 'material' || e.name === undefined) continue;
    const gone = [...work.wrong].filter((x) => named(e, x) && !x.material);
    const stuff = items.findIndex((x) => !work.wrong.has(x) && x.material === e.material);
    if (!gone.length || stuff < 1) continue;
    const before = items[stuff - 1]!;
    if (before.token.kind !== 'word' || /^(the|a|an|some|of|was|is|that|my)$/.test(before.w)) continue;
    change(work, s, 'name', `${before.w} ${items[stuff]!.w}`, 'material', [before, items[stuff]!]);
  }
}

/** "no, that was a darn": a deed named by its noun. */
function swapDeed(work: Work, right: Item[]): void {
  if (work.cue === 'none' || work.state.drafts.some((d) => d.entry.kind === 'treatment' && d.entry.action))
    return;
  const treatments = work.standing.filter(({ was }) => was.kind === 'treatment');
  const deed = right.find((x) => x.action && !x.part && !x.stitch && !work.used.has(x));
  const only = treatments[0];
  if (
    !deed ||
    treatments.length !== 1 ||
    only?.was.kind !== 'treatment' ||
    only.was.action === deed.action!.v
  )
    return;
  change(work, only, 'action', deed.action!.v, 'action', [deed]);
}

/** "the claret, not the gold": the cloth put in, or the cloth that has the damage, with its blocks. */
function swapCloth(work: Work, right: Item[], denies: (test: (x: Item) => boolean) => boolean): void {
  const cloth = right.find((x) => x.fabric?.names.length === 1);
  if (!cloth || work.cue === 'none') return;
  const name = cloth.fabric!.names[0]!;
  const { blocks } = work.state.fabrics;
  for (const s of work.standing) {
    const e = s.was;
    const old =
      e.kind === 'material'
        ? e.name
        : e.kind === 'condition' || e.kind === 'treatment'
          ? e.fabric
          : undefined;
    if (old === undefined || old === name || !Object.hasOwn(blocks, old)) continue;
    if (work.cue !== 'strong' && !denies((x) => Boolean(x.fabric?.names.includes(old)))) continue;
    change(work, s, e.kind === 'material' ? 'name' : 'fabric', name, 'fabric', [cloth]);
    const theirs = blocks[old]!;
    if (
      e.kind === 'condition' &&
      placesOf(e).length === theirs.length &&
      theirs.every((p) => placesOf(e).includes(p))
    )
      change(work, s, 'places', [...(blocks[name] ?? [])], 'fabric', [cloth]);
  }
}

/** Entries that the note tells beside the mending. */
function unconsumed(work: Work, _items: Item[]): Draft[] {
  return work.state.drafts.filter((d) => {
    const e = d.entry;
    const told = d.origins['entry'];
    const within = (x: Item): boolean =>
      told !== undefined && x.token.from >= told.from && x.token.from < told.to;
    if ([...work.used, ...work.wrong].some(within)) return false;
    if (e.kind === 'remark' || e.kind === 'decision') return false;
    if (e.kind === 'treatment' && e.action === undefined && NOT_DONE.test(work.words)) return false;
    return !work.standing.some(({ was, draft }) =>
      [was, draft.entry].some(
        (x) =>
          x.kind === e.kind &&
          ((e.kind === 'condition' &&
            x.kind === 'condition' &&
            x.finding === e.finding &&
            (d.placed !== 'said' || sharesPlace(x, e))) ||
            (e.kind === 'treatment' &&
              x.kind === 'treatment' &&
              x.action === e.action &&
              (d.placed !== 'said' || sharesPlace(x, e))) ||
            (e.kind === 'material' &&
              x.kind === 'material' &&
              x.material === e.material &&
              e.quantity === undefined) ||
            (e.kind === 'measurement' && x.kind === 'measurement' && x.of === e.of) ||
            (e.kind === 'work' && x.kind === 'work')),
      ),
    );
  });
}

/** Can it stand on its own beside the mended entries? */
export const complete = (d: Draft): boolean =>
  (d.placed === 'said' && placesOf(d.entry).length > 0) ||
  (d.entry.kind === 'material' && d.entry.material !== undefined && d.entry.quantity !== undefined);
