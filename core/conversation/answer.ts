import type { Entry } from '../../shared/entry.ts';
import type { Action, Material, MaterialUse } from '../../shared/vocabulary.ts';
import type { Draft } from '../rules/draft.ts';
import type { Item } from '../rules/item.ts';
import { blockAt, isWholeRow, splitBlock, unique } from '../rules/places/grid.ts';
import { placesOfClause } from '../rules/places/places-of-clause.ts';
import type { ReaderState } from '../rules/reader-state.ts';
import { type DayFound, findDays } from '../rules/times/find-day.ts';
import { latestClock, wallMinutes, wallTime } from '../rules/times/local-time.ts';
import { COUNT_WORDS } from '../text/number-words.ts';
import { readNumber } from '../text/read-number.ts';
import { type Cue, cueOf } from './cues.ts';
import { correct } from './mend/correct.ts';
import { complete, sensed, wordsOfName } from './mend/items.ts';
import { type LastNote, placesOf, put, type Standing, standingOf } from './standing.ts';

type Answering = {
  state: ReaderState;
  last: LastNote;
  standing: Standing[];
  items: Item[];
  /** The items up to the first stop: an answer mostly comes first. */
  head: Item[];
  words: string;
  /** The day that the note before was told of, where the answer names none. */
  day: DayFound | undefined;
  cue: Cue;
  /** Drafts that the answer took up; the others are told beside it. */
  taken: Set<Draft>;
  used: Set<Item>;
};

const POINTERS = new Set(['place.it', 'place.them', 'place.both', 'place.those', 'place.that-one']);

/**
 * Reads a note as the answer to the question that the last note left open. Gives the last note's whole set with the answer put
 * in, and what is told beside it; undefined where the note is no answer, but plainly tells something new.
 */
export function answer(
  state: ReaderState,
  last: LastNote,
  items: Item[],
  words: string,
): Draft[] | undefined {
  if (last.ask === null) return undefined;
  const stop = items.findIndex((x) => /^[.;!?\n]$/.test(x.w) && x.token.kind === 'mark');
  const a: Answering = {
    state,
    last,
    standing: standingOf(last),
    items,
    head: stop > 0 ? items.slice(0, stop) : items,
    words: ` ${words} `,
    day:
      last.ask === 'time'
        ? (findDays(words, state.local).find((d) => !d.vague) ?? findDays(last.said, state.local)[0])
        : undefined,
    cue: cueOf(words),
    taken: new Set(),
    used: new Set(),
  };
  if (a.cue !== 'strong' && (/ (same again|another one|as well|next one) /.test(a.words) || tellsNew(a)))
    return undefined;
  const answered = {
    place: answerPlace,
    action: answerAction,
    fabric: answerFabric,
    quantity: answerQuantity,
    time: answerTime,
    material: answerMaterial,
  }[last.ask](a);
  if (!answered) return undefined;
  // what else it says of the same entries: "the poplin, and machine zigzag round both"
  const rest = a.head.filter((x) => !a.used.has(x));
  const mended =
    last.ask === 'action' ? undefined : correct({ ...state, drafts: [] }, a.standing, rest, words, 'weak');
  const drafts = mended ?? a.standing.map((s) => s.draft);
  return [...drafts, ...beside(a, drafts)];
}

/** Something else than what was asked: "different thing", "what colour's the binding to be", a list to buy, a deed done "too". */
function tellsNew(a: Answering): boolean {
  if (
    /^ (?:um |uh |er |oh |and |so |now |, )*(?:(?:a )?(?:different|other|another|new) (?:thing|matter|one|job)|to (?:get|buy)|shopping|do i|shall i|should i|beats me|no idea (?:if|whether))\b/.test(
      a.words,
    ) ||
    / (?:do|shall|should) i (?:tie|quilt|wash|bind|use|go|leave|patch) .* or | what colou?r /.test(a.words)
  )
    return true;
  const deeds = a.state.drafts.filter(({ entry: e }) => e.kind === 'treatment' || e.kind === 'condition');
  if (/ (?:too|also) /.test(a.words) && (deeds.length > 0 || / got (?:one|it|some) too /.test(a.words)))
    return true;
  // "Batting to buy, so many yards": goods wanted, which no place and no deed asks for
  const goods = a.state.drafts.filter(
    ({ entry: e }) => e.kind === 'material' && (e.use === 'needed' || e.use === 'bought'),
  );
  return (
    goods.length > 0 && /^(place|action)$/.test(a.last.ask ?? '') && !deeds.some((d) => d.placed === 'said')
  );
}

/** Entries told along with the answer. A finding without a place of its own is where the answer is. */
function beside(a: Answering, drafts: Draft[]): Draft[] {
  const out: Draft[] = [];
  for (const d of a.state.drafts) {
    if (a.taken.has(d) || d.entry.kind === 'remark') continue;
    const e = d.entry;
    if (drafts.some((x) => repeats(x.entry, e))) continue;
    // "b4, a moth hole", after a hole
    const hole = e.kind === 'condition' && e.finding === 'insect-damage' && d.placed !== 'said';
    const known = hole && drafts.find((x) => x.entry.kind === 'condition' && x.entry.finding === 'hole');
    if (known) {
      put(known, 'finding', 'insect-damage', 'answer.finding', []);
      continue;
    }
    if (e.kind === 'condition') {
      if (!placesOf(e).length) {
        const at = drafts.find((x) => placesOf(x.entry).length);
        if (!at) continue;
        put(d, 'places', [...placesOf(at.entry)], 'place.answered', []);
      }
      out.push(d);
    } else if (complete(d) && !(e.kind === 'treatment' && !e.action)) out.push(d);
  }
  return out;
}

const repeats = (x: Entry, e: Entry): boolean =>
  x.kind === e.kind &&
  ((x.kind === 'condition' && e.kind === 'condition' && x.finding === e.finding) ||
    (x.kind === 'treatment' && e.kind === 'treatment' && x.action === e.action) ||
    (x.kind === 'material' &&
      e.kind === 'material' &&
      x.material === e.material &&
      (e.quantity === undefined || e.quantity === x.quantity)) ||
    (x.kind === 'measurement' && e.kind === 'measurement' && x.of === e.of) ||
    (x.kind === 'work' && e.kind === 'work'));

/** The first stretch says nothing but the answer: no damage, no deed. */
const bare = (items: Item[]): boolean =>
  !items.some((x) => x.finding || x.action || x.stitch || x.task || x.cost || x.duration);

function answerPlace(a: Answering): boolean {
  const open = a.standing.filter(({ draft: { entry: e } }) => 'places' in e && e.places?.length === 0);
  if (!open.length) return false;
  const first = firstStretch(a.items);
  const lead = bare(first) && first.some((x) => x.place?.places.length && !POINTERS.has(x.place.rule));
  const told = a.state.drafts.filter((d) => d.entry.kind !== 'remark');
  const otherDamage = OTHER_DAMAGE.test(a.words) && told.every((d) => d.entry.kind === 'condition');
  if (!lead && !otherDamage && a.cue !== 'strong' && told.some((d) => !saysAgain(a, d, open))) return false;
  // "1-2 is all done": another block, another deed
  if (
    a.cue === 'none' &&
    told.some((d) => d.entry.kind === 'treatment' && !d.entry.action && d.placed === 'said') &&
    open.every(({ was }) => was.kind !== 'treatment' || was.action !== undefined)
  )
    return false;
  if (!lead && a.cue === 'none' && a.items.length > 24) return false;
  const whereInIt = NEAR_IN_IT.test(a.head[first.length + 1]?.w ?? a.head[first.length]?.w ?? '');
  let found = placesHeard(a, lead ? (bare(a.head) && !whereInIt ? a.head : first) : a.head);
  let from = lead ? first : a.head;
  if (!found.length) {
    found = placesHeard(a, a.items);
    from = a.items;
  }
  if (!found.length) found = [numberHeard(a), sideOfSeveral(a, open)].find((p) => p !== undefined) ?? [];
  const cloth = from.find((x) => x.fabric?.names.length === 1);
  const inCloth = cloth ? (a.state.fabrics.blocks[cloth.fabric!.names[0]!] ?? []) : [];
  if (!found.length) found = [...inCloth];
  if (!found.length) return false;
  for (const s of open) {
    const e = s.draft.entry;
    const fabric = 'fabric' in e ? e.fabric : undefined;
    const blocks = fabric !== undefined ? a.state.fabrics.blocks[fabric] : undefined;
    // "the one in row three": the cloth's block in that row
    const inside = blocks ? found.filter((p) => blocks.includes(p)) : [];
    const items = from.filter((x) => x.place?.places.length);
    put(s.draft, 'places', found.length > 1 && inside.length ? inside : found, 'answer.place', items);
    for (const x of items) a.used.add(x);
  }
  for (const d of told)
    if (d.clause === 0 || saysAgain(a, d, open)) if (saysAgain(a, d, open)) a.taken.add(d);
  return true;
}

/** "3-5, near the middle of it": where in the block. */
const NEAR_IN_IT = /^(near|nearer|towards?|close|right|just|about|over|dead|bang)\b/;

/** "four three, no hole in that one just thin": what was there, beside where. */
const OTHER_DAMAGE = / (?:no|not|n't|never|without) (?:\S+ ){1,7}(?:just|only|merely|simply|it was) /;

/** Up to the first comma or stop. */
function firstStretch(items: Item[]): Item[] {
  const end = items.findIndex(
    (x, k) =>
      k > 0 &&
      ((/^[.;!?\n,:-]$/.test(x.w) &&
        x.token.kind === 'mark' &&
        items.slice(0, k).some((y) => y.place?.places.length) &&
        !(items[k + 1]?.place && items[k + 1]!.w !== 'it' && x.w === ',')) ||
        // "it was four three and you know there wasn't any hole", "3-2 it was thin"
        (k < 10 &&
          ((/^(and|but|where|though)$/.test(x.w) && /^(there|it|you|that)$/.test(items[k + 1]?.w ?? '')) ||
            (x.w === 'it' && /^(was|'s|is|had|has|did|does)$/.test(items[k + 1]?.w ?? ''))) &&
          items
            .slice(0, Math.min(k, 6))
            .some((y) => y.place?.kind === 'blocks' && y.place.places.length === 1))),
  );
  return end > 0 ? items.slice(0, end) : items;
}

/** Does the draft only name again what the question was about: "the hole is in 3-2", "that darning was on 4-3"? */
function saysAgain(a: Answering, d: Draft, open: Standing[]): boolean {
  const e = d.entry;
  return open.some(({ was }) => {
    if (was.kind === 'condition' && e.kind === 'condition') return was.finding === e.finding;
    if (was.kind === 'treatment' && e.kind === 'treatment')
      return (
        was.action === e.action &&
        !(e.stitch && e.stitch !== was.stitch) &&
        !(e.minutes && e.minutes !== was.minutes) &&
        (a.cue !== 'none' || was.state === e.state)
      );
    return false;
  });
}

/** Places said; a row or a block alone is filled up with what was heard of the block outside the grid. */
function placesHeard(a: Answering, items: Item[]): string[] {
  const said = placesOfClause(items.filter((x) => !POINTERS.has(x.place?.rule ?? '')));
  const alone = items.find(
    (x) => x.place && !x.place.places.length && /^(block|blk|bl|b|square|patch)\b/.test(x.w),
  );
  if (a.last.heard && said.kind === 'none' && alone) {
    const n = readNumber(a.state.tokens, alone.i + 1)?.value;
    const block = n === undefined ? undefined : blockAt(a.state.grid, a.last.heard.row, n);
    return block ? [block] : [];
  }
  if (said.kind !== 'specific' && said.kind !== 'general') return [];
  const { heard } = a.last;
  const { grid } = a.state;
  if (heard && said.items.length === 1) {
    const rule = said.items[0]!.place!.rule;
    const first = splitBlock(said.places[0] ?? '');
    if (first && /row/.test(rule) && isWholeRow(grid, said.places) && grid.blocks > 1) {
      const block = blockAt(grid, first.row, heard.block);
      if (block) return [block];
    }
    if (first && said.places.length === 1 && /^block/.test(said.items[0]!.w)) {
      const block = blockAt(grid, heard.row, first.block);
      if (block && !/row/.test(said.items[0]!.w)) return [block];
    }
  }
  return said.places;
}

/** "six, not nine", "it's six rows down and not seven" after a block outside the grid: the number that was wrong is put right. */
function numberHeard(a: Answering): string[] | undefined {
  const { heard } = a.last;
  const { grid } = a.state;
  if (!heard || a.items.length > (a.cue === 'strong' ? 18 : 8)) return undefined;
  // "the fifth", "the last one then"
  const nth =
    / (?:the|it 's) (?:(first|second|third|fourth|fifth|sixth|seventh|eighth|ninth|tenth)|last|end)(?: one| block)?(?: (?:then|that is|i think|it must be))*(?: [.!])* $/.exec(
      a.words,
    );
  if (nth) {
    const most = heard.row > grid.rows ? grid.rows : grid.blocks;
    const index = nth[1] ? ORDINALS.indexOf(nth[1]) + 1 : most;
    const block = heard.row > grid.rows ? blockAt(grid, index, heard.block) : blockAt(grid, heard.row, index);
    return block === undefined ? undefined : [block];
  }
  const number = a.items.find(
    (x, k) =>
      x.quantity?.value !== undefined &&
      !x.quantity.unit &&
      !a.items.slice(Math.max(0, k - 2), k).some((y) => /^(not|n't|say|said|of)$/.test(y.w)),
  );
  const n = number?.quantity?.value;
  if (n === undefined) return undefined;
  const counted = a.items[a.items.indexOf(number!) + 1]?.w ?? '';
  const ofRow =
    /^rows?$/.test(counted) || (!/^(along|across|over|in)$/.test(counted) && heard.row > grid.rows);
  const block = ofRow ? blockAt(grid, n, heard.block) : blockAt(grid, heard.row, n);
  return block === undefined ? undefined : [block];
}

const ORDINALS = 'first second third fourth fifth sixth seventh eighth ninth tenth'.split(' ');

/** "the lower one", "the left-hand one", "the first": one of the blocks of the cloth that was named. */
function sideOfSeveral(a: Answering, open: Standing[]): string[] | undefined {
  const fabric = open
    .map(({ was }) => ('fabric' in was ? was.fabric : undefined))
    .find((f) => f !== undefined);
  const all = fabric === undefined ? [] : (a.state.fabrics.blocks[fabric] ?? []);
  if (all.length < 2 || a.items.length > 12) return undefined;
  const at = (p: string): { row: number; block: number } => splitBlock(p) ?? { row: 0, block: 0 };
  const rows = [...all].sort((p, q) => at(p).row - at(q).row);
  const columns = [...all].sort((p, q) => at(p).block - at(q).block);
  const picks: [RegExp, string[], number][] = [
    [/ (lower|bottom|lowest|last) /, rows, -1],
    [/ (upper|top|higher|highest|first) /, rows, 0],
    [/ (left|leftmost) /, columns, 0],
    [/ (right|rightmost) /, columns, -1],
    [/ second /, rows, 1],
    [/ (middle|third) /, rows, / third /.test(a.words) ? 2 : Math.floor(all.length / 2)],
  ];
  for (const [said, list, k] of picks) {
    const pick = said.test(a.words) ? list.at(k) : undefined;
    if (pick !== undefined) return [pick];
  }
  return undefined;
}

/** Deeds that lay something on, whose edge is sewn down. */
const LAID_ON = new Set<string>(['overlay', 'patch', 'stabilize', 'replace']);

function answerAction(a: Answering): boolean {
  const k = a.standing.findIndex(({ draft: { entry: e } }) => e.kind === 'treatment' && !e.action);
  if (k < 0) return false;
  const open = a.standing[k]!.draft;
  if (open.entry.kind !== 'treatment') return false;
  const where = placesOf(open.entry);
  const told = deedsOf(a, open);
  if (!told.length) return false;
  const pointsOnly =
    // "whipstitched the seam shut", where the seam last spoken of was another
    a.items.some((x) => POINTERS.has(x.place?.rule ?? '') || x.seam) &&
    !a.items.some((x) => x.place?.kind === 'blocks' && x.place.how === 'said');
  const elsewhere = (d: Draft): boolean =>
    d.placed === 'said' &&
    // "took the old patch off it", where the old patch last spoken of was another
    !pointsOnly &&
    placesOf(d.entry).some(
      (p) =>
        splitBlock(p) !== undefined ||
        (d.entry.kind === 'treatment' && d.entry.object !== undefined && p !== 'quilt'),
    ) &&
    !placesOf(d.entry).some((p) => where.includes(p));
  // "I fixed 5-3": another block, and again it is not said how
  const unsaid = a.state.drafts.some((d) => d.entry.kind === 'treatment' && !d.entry.action && elsewhere(d));
  if (told.every(elsewhere) || unsaid) return false;
  const made: Standing[] = [];
  for (const d of told) {
    if (d.entry.kind !== 'treatment') continue;
    a.taken.add(d);
    if (elsewhere(d)) {
      made.push({ draft: d, was: d.entry });
      continue;
    }
    // an edging stitch of an overlay or a patch is no deed of its own
    const main = made.find((s) => s.draft.entry.kind === 'treatment');
    if (
      main?.draft.entry.kind === 'treatment' &&
      d.entry.action === 'resew' &&
      d.entry.stitch &&
      !main.draft.entry.stitch &&
      main.draft.entry.action !== 'resew'
    ) {
      put(main.draft, 'stitch', d.entry.stitch, 'answer.action', []);
      main.draft.origins['stitch'] = d.origins['stitch'] ?? main.draft.origins['stitch']!;
      continue;
    }
    const own = placesOf(d.entry).filter((p) => splitBlock(p) !== undefined && where.includes(p));
    // "sewed up the seam between it and two two"
    const joined =
      d.entry.action === 'resew' && own.length > 0 && d.placed === 'said' && a.items.some((x) => x.seam);
    put(
      d,
      'places',
      joined ? [...placesOf(d.entry)] : own.length && d.placed === 'said' ? own : [...where],
      'place.asked',
      [],
    );
    const e = d.entry as Record<string, unknown>;
    if (
      d.entry.state !== 'done' &&
      open.entry.state === 'done' &&
      !/ (will|going to|to be|next|tomorrow|yet) /.test(a.words)
    )
      e['state'] = 'done';
    if (open.entry.minutes && !d.entry.minutes) e['minutes'] = open.entry.minutes;
    made.push({ draft: d, was: d.entry });
  }
  // an edging told as a deed of its own before the one it belongs to: "whipstitched net over them"
  const edge = made.findIndex(
    ({ draft: { entry: e } }) => e.kind === 'treatment' && e.action === 'resew' && e.stitch,
  );
  const main = made.find(({ draft: { entry: e } }) => e.kind === 'treatment' && LAID_ON.has(e.action ?? ''));
  if (edge >= 0 && main?.draft.entry.kind === 'treatment') {
    const { entry, origins } = made[edge]!.draft;
    const { stitch } = main.draft.entry;
    if (entry.kind === 'treatment' && (stitch === undefined || stitch === entry.stitch)) {
      main.draft.entry.stitch = entry.stitch;
      if (origins['stitch']) main.draft.origins['stitch'] = origins['stitch'];
      made.splice(edge, 1);
    }
  }
  a.standing.splice(k, 1, ...made);
  for (const d of a.state.drafts) {
    if (a.taken.has(d)) continue;
    if (d.entry.kind === 'condition' && !placesOf(d.entry).some((p) => splitBlock(p)))
      put(d, 'places', [...where], 'place.asked', []);
    if (d.entry.kind === 'material') {
      a.taken.add(d);
      const at = a.standing.findIndex((s) => made.includes(s));
      a.standing.splice(at + made.length, 0, { draft: d, was: d.entry });
    }
  }
  return true;
}

/** Stuff that tells by itself what was done with it. */
const DEED_OF_STUFF: Partial<Record<Material, Action>> = { net: 'overlay', interfacing: 'stabilize' };

/**
 * The treatments that answer what was done. Where the clauses gave none, the words are read more freely than in a note of its
 * own, since a deed is what was asked for: "netting over them", "they were darned", "a running stitch".
 */
function deedsOf(a: Answering, open: Draft): Draft[] {
  const drafts = a.state.drafts.filter((d) => d.entry.kind === 'treatment' && d.entry.action);
  const edging = drafts.every((d) => d.entry.kind === 'treatment' && d.entry.action === 'resew');
  const stuff = a.items.find((x) => x.material && DEED_OF_STUFF[x.material]);
  if (drafts.length && !(edging && stuff)) return drafts;
  const verb =
    a.items.find((x) => x.action && x.action.v !== 'resew' && !x.part) ??
    (stuff ? undefined : a.items.find((x) => x.action && !x.part));
  const stitch = a.items.find((x) => x.stitch && !x.weakStitch) ?? a.items.find((x) => x.stitch);
  // a long note that tells of damage or goods answers by the way at most
  if (
    !drafts.length &&
    a.cue !== 'strong' &&
    a.items.length > 14 &&
    a.state.drafts.some((d) => d.entry.kind === 'condition' || d.entry.kind === 'work')
  )
    return drafts;
  const action =
    verb?.action?.v ?? (stuff ? DEED_OF_STUFF[stuff.material!] : undefined) ?? (stitch ? 'resew' : undefined);
  if (!action) return drafts;
  const state = open.entry.kind === 'treatment' ? open.entry.state : 'done';
  const draft: Draft = {
    entry: { kind: 'treatment', action, state, places: [] },
    origins: {},
    placed: 'none',
    clause: 0,
    sentence: 0,
  };
  put(draft, 'action', action, 'answer.action', [verb ?? stuff ?? stitch!]);
  draft.origins['entry'] = draft.origins['action']!;
  if (stitch) put(draft, 'stitch', stitch.stitch, 'answer.action', [stitch]);
  const length = a.items.find((x) => x.duration);
  if (length) put(draft, 'minutes', length.duration!.minutes, 'answer.action', [length]);
  for (const d of drafts) a.taken.add(d);
  for (const x of a.items) {
    if (!x.material || x.object || x.part || x.action === verb?.action) continue;
    // "white silk thread": the cloth's name is part of the thread's
    if (
      x.fabric &&
      a.items.slice(a.items.indexOf(x) + 1, a.items.indexOf(x) + 3).some((y) => y.material && !y.fabric)
    )
      continue;
    if (a.state.drafts.some((d) => d.entry.kind === 'material' && d.entry.material === x.material)) continue;
    const k = a.items.indexOf(x);
    const name = [x.w];
    for (
      let m = k - 1;
      m >= 0 &&
      a.items[m]!.token.kind === 'word' &&
      !SMALL.test(a.items[m]!.w) &&
      (!sensed(a.items[m]!) || a.items[m]!.fabric);
      m--
    )
      name.unshift(a.items[m]!.w);
    const used: Draft = {
      entry: { kind: 'material', material: x.material, use: 'used', name: name.join(' ') },
      origins: {},
      placed: 'unneeded',
      clause: 0,
      sentence: 0,
    };
    put(used, 'material', x.material, 'answer.action', [x]);
    used.origins['entry'] = used.origins['material']!;
    if (name.length > 1 || !a.items.some((y) => y !== x && y.material === x.material))
      a.state.drafts.push(used);
  }
  return [draft];
}

const SMALL =
  /^(the|a|an|it|was|is|'s|that|those|one|ones|of|with|i|used|put|over|them|they|we|round|mean|oh|no|yes|some|sorry|were|actually|,|\.|and|my|this|ah|right|called|from|said|should|have)$/;

/** "spotted one", of an ochre spot and an ochre stripe: the one cloth with a word of its name in what is said. */
function clothLike(a: Answering, content: Item[]): string | undefined {
  const alike = Object.keys(a.state.fabrics.blocks).filter((n) =>
    wordsOfName(n).some(
      (word) =>
        word.length > 2 &&
        content.some(
          (x) => x.w.length > word.length && x.w.startsWith(word.slice(0, Math.max(3, word.length - 1))),
        ),
    ),
  );
  return alike.length === 1 ? alike[0] : undefined;
}

const TAKES_CLOTH = new Set<string>(['patch', 'replace', 'stabilize', 'overlay', 'piece', 'add-border']);

function answerFabric(a: Answering): boolean {
  if (placeOfCloth(a)) return true;
  const told = a.state.drafts.filter(
    (d) =>
      (d.entry.kind === 'treatment' || d.entry.kind === 'condition') &&
      d.placed === 'said' &&
      placesOf(d.entry).some((p) => splitBlock(p)) &&
      !a.standing.some(({ was }) => placesOf(was).some((p) => placesOf(d.entry).includes(p))),
  );
  const cloths = a.items.filter(
    (x, k) =>
      x.fabric &&
      !/^(not|n't)$/.test(a.items[k - 1]?.w ?? '') &&
      !/^(not|n't)$/.test(a.items[k - 2]?.w ?? ''),
  );
  const surest =
    cloths.find((x) => x.fabric!.full) ?? cloths.find((x) => x.fabric!.names.length === 1) ?? cloths[0];
  if (a.cue === 'none' && told.length && !surest?.fabric?.full) return false;
  if (a.cue === 'none' && told.length && a.head.some((x) => x.place?.places.length && !x.fabric))
    return false;
  if (a.cue === 'none' && a.items.some((x) => x.action && !x.stitch) && a.items.length > 8) return false;
  let name = surest?.fabric?.names.length === 1 ? surest.fabric.names[0]! : undefined;
  const asked = a.standing
    .map(({ was }) =>
      // "black thread", told before the cloth that is asked for
      was.kind === 'material' && (was.material === undefined || was.material === 'fabric')
        ? was.name
        : was.kind === 'condition'
          ? was.fabric
          : undefined,
    )
    .find((n) => n !== undefined);
  // the words said before narrow a doubtful answer
  if (!name && surest?.fabric && asked)
    name = surest.fabric.names.find((n) =>
      asked.split(' ').some((word) => n.toLowerCase().split(' ').includes(word)),
    );
  let items = surest ? [surest] : [];
  if (!name) {
    const content = a.head.filter((x) => x.token.kind === 'word' && !SMALL.test(x.w));
    const alike = content.length <= 3 ? clothLike(a, content) : undefined;
    if (alike) {
      name = alike;
      items = content;
    } else if (
      !content.length ||
      content.length > 4 ||
      content.some((x) => x.action || x.finding || x.place || x.task)
    )
      return false;
    else {
      const candidates = Object.keys(a.state.fabrics.blocks).filter((n) =>
        content.every((x) => wordsOfName(n).includes(x.w)),
      );
      name = candidates.length === 1 ? candidates[0]! : content.map((x) => x.w).join(' ');
      items = content;
    }
  }
  const blocks = a.state.fabrics.blocks[name];
  let hit = false;
  // what is settled takes the cloth before what is not
  const decided = a.standing.some(
    ({ was }) => was.kind === 'treatment' && TAKES_CLOTH.has(was.action ?? '') && was.state !== 'considering',
  );
  for (const s of a.standing) {
    const e = s.draft.entry;
    if (decided && e.kind === 'treatment' && e.state === 'considering') continue;
    if (
      e.kind === 'material' &&
      (e.material === 'fabric' || e.material === undefined) &&
      (e.name === asked || !e.name)
    ) {
      put(s.draft, 'name', name, 'answer.fabric', items);
      hit = true;
    } else if (
      e.kind === 'treatment' &&
      TAKES_CLOTH.has(e.action ?? '') &&
      (e.fabric === undefined || e.fabric === asked)
    ) {
      put(s.draft, 'fabric', name, 'answer.fabric', items);
      hit = true;
    } else if (
      e.kind === 'condition' &&
      (e.fabric === asked || !placesOf(e).length) &&
      (e.fabric !== undefined || !placesOf(e).length)
    ) {
      put(s.draft, 'fabric', name, 'answer.fabric', items);
      if (!placesOf(e).length && blocks) put(s.draft, 'places', [...blocks], 'answer.fabric', items);
      hit = true;
    }
  }
  const said = placesOfClause(a.items.filter((x) => !POINTERS.has(x.place?.rule ?? '')));
  if (said.kind === 'specific')
    for (const s of a.standing)
      if ('places' in s.draft.entry && s.draft.entry.places?.length === 0)
        put(s.draft, 'places', said.places, 'answer.place', said.items);
  for (const x of items) a.used.add(x);
  for (const d of a.state.drafts)
    if (d.clause <= 0 || d.placed !== 'said') if (d.entry.kind === 'condition') a.taken.add(d);
  return hit;
}

/** "it's the second and third along in the bottom row": where the cloth that the quilt did not know is. */
function placeOfCloth(a: Answering): boolean {
  const open = a.standing.filter(({ was }) => 'places' in was && was.places?.length === 0);
  if (!open.length || a.items.some((x) => x.fabric)) return false;
  if (a.state.drafts.some((d) => d.entry.kind !== 'remark')) return false;
  const said = placesOfClause(a.items.filter((x) => !POINTERS.has(x.place?.rule ?? '')));
  if (said.kind !== 'specific') return false;
  for (const s of open) put(s.draft, 'places', said.places, 'answer.place', said.items);
  for (const x of said.items) a.used.add(x);
  return true;
}

function numberAt(a: Answering, x: Item): number | undefined {
  if (x.quantity?.value !== undefined) return x.quantity.value;
  if (x.cost) return undefined;
  const read = readNumber(a.state.tokens, x.i);
  return read && (x.place || x.clock || x.span || x.token.kind === 'number' || read.inWords)
    ? read.value
    : undefined;
}

function answerQuantity(a: Answering): boolean {
  const open =
    a.standing.find(
      ({ draft: { entry: e } }) =>
        (e.kind === 'measurement' && e.value === undefined) ||
        (e.kind === 'material' && e.quantity === undefined && e.unit !== undefined),
    ) ?? a.standing.find(({ draft: { entry: e } }) => e.kind === 'material' && e.quantity === undefined);
  if (!open) return false;
  const item =
    a.head.find((x) => numberAt(a, x) !== undefined) ?? a.items.find((x) => numberAt(a, x) !== undefined);
  if (!item) return false;
  // "6,5"
  const comma = /^ (?:(?:oh|er|um|so|about) )*(\d+) , (\d{1,2}) $/.exec(a.words);
  const value = comma ? Number(`${comma[1]}.${comma[2]}`) : numberAt(a, item)!;
  const unit = item.quantity?.unit;
  const e = open.draft.entry as { unit?: string };
  const length = (u: string): boolean => /^(yd|in|ft|m|cm|mm)$/.test(u);
  if (unit && e.unit && length(unit) !== length(e.unit)) return false;
  const before = a.items.slice(0, a.items.indexOf(item));
  if (
    a.cue === 'none' &&
    before.some(
      (x) => x.action || x.finding || (x.place?.places.length && !x.part && !POINTERS.has(x.place.rule)),
    )
  )
    return false;
  if (a.cue === 'none' && a.head.some((x) => x.finding || (x.action && x.action.form !== 'base' && !x.part)))
    return false;
  // "18 dollars", "no, 16": the number that was told is put right, and the one asked for still is not
  if (
    // "thread was 3.50 actually"
    (a.cue === 'strong' ||
      /^ (?:oh |, )*(?:no|nope|sorry) /.test(a.words) ||
      / was \d*\.\d\d /.test(a.words)) &&
    !unit &&
    open.draft.entry.kind === 'material' &&
    open.draft.entry.cost
  )
    return false;
  put(open.draft, open.draft.entry.kind === 'measurement' ? 'value' : 'quantity', value, 'answer.quantity', [
    item,
  ]);
  if (unit) put(open.draft, 'unit', unit, 'answer.quantity', [item]);
  for (const x of comma ? a.items : [item]) a.used.add(x);
  const cost = a.head.find((x) => x.cost);
  if (cost && open.draft.entry.kind === 'material') {
    put(
      open.draft,
      'cost',
      { amount: cost.cost!.amount, ...(cost.cost!.each ? { each: true } : {}) },
      'answer.quantity',
      [cost],
    );
    a.used.add(cost);
  }
  takeOver(a, [item]);
  if (open.draft.entry.kind === 'material') alsoWanted(a, open.draft.entry.use);
  return true;
}

/** "… and a spool of that cream thread while I'm at it": more of the list that the answer belongs to. */
function alsoWanted(a: Answering, use: MaterialUse): void {
  for (let k = a.head.length; k < a.items.length; k++) {
    const amount = a.items[k]!;
    if (!amount.quantity?.unit || amount.quantity.value === undefined || a.used.has(amount)) continue;
    let m = a.items.findIndex((x, n) => n > k && n < k + 6 && x.material !== undefined);
    while (m >= 0 && a.items[m + 1]?.material) m++;
    const stuff = m < 0 ? undefined : a.items[m]!;
    if (
      !stuff ||
      a.state.drafts.some((d) => d.entry.kind === 'material' && d.entry.material === stuff.material)
    )
      continue;
    const name = a.items
      .slice(k + 1, m + 1)
      .filter((x) => x.token.kind === 'word' && !/^(of|that|the|this|those|my|some|a)$/.test(x.w));
    const draft: Draft = {
      entry: { kind: 'material', material: stuff.material!, use, name: name.map((x) => x.w).join(' ') },
      origins: {},
      placed: 'unneeded',
      clause: 0,
      sentence: 0,
    };
    put(draft, 'quantity', amount.quantity.value, 'answer.quantity', [amount]);
    put(draft, 'unit', amount.quantity.unit, 'answer.quantity', [amount]);
    put(draft, 'material', stuff.material, 'answer.quantity', [stuff]);
    draft.origins['entry'] = {
      rule: 'answer.quantity',
      how: 'said',
      from: amount.token.from,
      to: stuff.end ?? stuff.token.to,
    };
    a.state.drafts.push(draft);
  }
}

/** Drafts that stand on the words of the answer itself are no entries of their own. */
function takeOver(a: Answering, items: Item[]): void {
  for (const d of a.state.drafts) {
    const at = d.origins['entry'];
    if (at && items.some((x) => x.token.from >= at.from && x.token.from < at.to)) a.taken.add(d);
  }
}

/** "seven to nine", asked when it was: two hours of the clock. */
function bareSpan(a: Answering): { start: Hour; end: Hour } | undefined {
  const said =
    /^ (?:(?:um|uh|er|oh|about|say|it was|from|on|that|this|last|(?:sun|mon|tues|wednes|thurs|fri|satur)day|yesterday|today|morning|afternoon|evening|night|,) )*([a-z]+|\d{1,2}(?:[.:][0-5]\d)?) (?:to|till|til|until|-) ([a-z]+|\d{1,2}(?:[.:][0-5]\d)?)(?: (?:or so|ish|about|i think|i 'd say|i reckon|(?:on )?(?:yesterday|\w+day|that day)(?: morning| afternoon| evening)?))*(?: [.!])* $/.exec(
      a.words,
    );
  const minutesOf = (w: string): number => {
    const [hour, minutes] = w.split(/[.:]/) as [string, string?];
    return (HOURS.indexOf(hour) % 13) * 60 + Number(minutes ?? 0);
  };
  const [start, end] = said ? [minutesOf(said[1]!), minutesOf(said[2]!)] : [];
  return start === undefined || end === undefined || start < 60 || end < 60
    ? undefined
    : { start: { minute: start, fixed: false }, end: { minute: end, fixed: false } };
}
type Hour = { minute: number; fixed: boolean };
const HOURS = [...'0 1 2 3 4 5 6 7 8 9 10 11 12'.split(' '), ...COUNT_WORDS.slice(0, 13)];

/** "forty-five", asked how long: minutes. */
function bareMinutes(a: Answering): Item | undefined {
  const numbers = a.items.filter((x) => x.quantity?.value !== undefined && !x.quantity.unit);
  const n = numbers[0]?.quantity?.value ?? 0;
  return numbers.length === 1 && n > 12 && n <= 600 && a.items.length <= 7 ? numbers[0] : undefined;
}

function answerTime(a: Answering): boolean {
  const open = a.standing.find(
    ({ draft: { entry: e } }) => e.kind === 'work' && !e.mark && !e.start && !e.minutes,
  );
  const target = open ?? a.standing.find(({ draft }) => draft.entry.kind === 'work');
  if (!target || target.draft.entry.kind !== 'work') return false;
  const blocks = a.state.drafts.some(
    (d) =>
      (d.entry.kind === 'treatment' || d.entry.kind === 'condition') &&
      d.placed === 'said' &&
      placesOf(d.entry).some((p) => splitBlock(p)),
  );
  if (blocks && a.cue !== 'strong') return false;
  if (a.cue !== 'strong' && ofAnotherTime(a)) return false;
  const work = a.state.drafts.find((d) => d.entry.kind === 'work');
  const hours = bareSpan(a);
  if (!hours && work?.entry.kind === 'work' && (work.entry.start || work.entry.mark || work.entry.minutes)) {
    const { task } = work.entry;
    if (task && target.draft.entry.task && task !== target.draft.entry.task && saidHere(a, work, 'task'))
      return false;
    for (const slot of ['start', 'end', 'minutes', 'time', 'mark'] as const)
      if (work.entry[slot] !== undefined) {
        (target.draft.entry as Record<string, unknown>)[slot] = work.entry[slot];
        const origin = work.origins[slot] ?? work.origins['entry'];
        if (origin) target.draft.origins[slot] = origin;
      }
    a.taken.add(work);
    for (const x of a.items) if (x.duration || x.span || x.clock || x.quantity) a.used.add(x);
    takeOver(
      a,
      a.items.filter((x) => a.used.has(x)),
    );
    return true;
  }
  const duration = a.items.find((x) => x.duration);
  // "saturday, ten till twelve": two hours, and not ten to
  const spanItem = a.items.find((x) => x.span);
  const span = spanItem?.span ?? hours;
  const clock = a.items.find((x) => x.clock);
  const now = wallMinutes(a.state.local);
  const minutes = span || duration || clock ? undefined : bareMinutes(a);
  if (span) {
    const end = latestClock(span.end, now, a.day);
    const start = latestClock(span.start, end - 1, a.day);
    const from = spanItem ? [spanItem] : a.items.filter((x) => x.quantity || x.place || x.clock);
    put(target.draft, 'start', wallTime(start), 'answer.time', from);
    put(target.draft, 'end', wallTime(end), 'answer.time', from);
    for (const x of from) a.used.add(x);
  } else if (minutes) {
    put(target.draft, 'minutes', minutes.quantity!.value, 'answer.time', [minutes]);
    a.used.add(minutes);
  } else if (duration) {
    put(target.draft, 'minutes', duration.duration!.minutes, 'answer.time', [duration]);
    a.used.add(duration);
  } else {
    const number = clock
      ? undefined
      : a.items.find((x) => x.quantity?.value !== undefined && !x.quantity.unit);
    const value = number?.quantity?.value;
    if (
      !clock &&
      (value === undefined || value > 12 || !/ (at|about|around|since|from|till|until|by) /.test(a.words))
    )
      return false;
    const item = clock ?? number!;
    put(
      target.draft,
      'mark',
      target.draft.entry.mark ??
        (/ (stop|stopped|finish|finished|quit|end|ended|till|until) /.test(a.words) ? 'stop' : 'start'),
      'answer.time',
      [item],
    );
    put(
      target.draft,
      'time',
      wallTime(latestClock(clock?.clock ?? { minute: value! * 60, fixed: false }, now)),
      'answer.time',
      [item],
    );
    a.used.add(item);
  }
  takeOver(a, [...a.used]);
  return true;
}

const PARTS_OF_DAY: [RegExp, string][] = [
  [/ (?:before breakfast|before work|this morning|first thing|at dawn) /, 'morning'],
  [/ (?:this afternoon|after lunch|before tea|this arvo) /, 'afternoon'],
  [/ (?:tonight|this evening|after supper|after dinner|after tea) /, 'evening'],
  [/ last night /, 'last night'],
  [/ yesterday /, 'yesterday'],
];
const partOfDay = (words: string): string | undefined => PARTS_OF_DAY.find(([p]) => p.test(words))?.[1];

/**
 * "mended from seven till quarter past nine tonight", where it was asked how long she mended before breakfast; "sewing the binding
 * down now, started 7:15", where last night's was asked: work of its own, and no answer.
 */
function ofAnotherTime(a: Answering): boolean {
  const asked = partOfDay(
    ` ${a.state.memory.last?.said.toLowerCase().replace(/[.,;!?]/g, ' ') ?? ''} `.replace(/ +/g, ' '),
  );
  if (!asked) return false;
  if (
    a.state.drafts.some((d) => d.entry.kind === 'treatment' && d.entry.state === 'doing') &&
    / now /.test(a.words)
  )
    return true;
  const told = partOfDay(a.words.replace(/ [.,;!?] /g, ' '));
  return told !== undefined && told !== asked;
}

/** Is the slot said in this note, and not taken from what ran? */
const saidHere = (a: Answering, d: Draft, slot: string): boolean => {
  const o = d.origins[slot];
  return o?.how === 'said' && a.items.some((x) => x.task && x.token.from >= o.from && x.token.from < o.to);
};

function answerMaterial(a: Answering): boolean {
  const open = a.standing.find(({ draft: { entry: e } }) => e.kind === 'material' && !e.material);
  if (!open || open.draft.entry.kind !== 'material') return false;
  const told = a.state.drafts.filter((d) => d.entry.kind === 'material' && d.entry.material);
  const own = told.find(
    (d) =>
      d.entry.kind === 'material' &&
      d.entry.quantity !== undefined &&
      d.entry.quantity !== (open.was as { quantity?: number }).quantity,
  );
  if (own && a.cue !== 'strong' && told[0] === own) return false;
  if (
    a.cue === 'none' &&
    a.items.some(
      (x) => x.finding || (x.action && !x.material && !x.part && !x.stitch && x.action.form === 'past'),
    )
  )
    return false;
  // "put a patch on 1-2 out of an old pillowcase": a deed with a place of its own
  if (
    a.cue === 'none' &&
    a.state.drafts.some(
      (d) => d.entry.kind === 'treatment' && d.placed === 'said' && d.entry.state === 'done',
    )
  )
    return false;
  const stuff = a.items.filter((x) => x.material || x.fabric);
  const part = a.items.find((x) => x.part && ['backing', 'batting', 'binding'].includes(x.part));
  if (!stuff.length && !part) return false;
  const named = told.find((d) => d !== own)?.entry;
  const first = stuff.find((x) => x.material && x.material !== 'fabric') ?? stuff[0];
  const material = / for the (back|backing|lining) /.test(a.words)
    ? 'backing'
    : named?.kind === 'material' && named.material
      ? named.material
      : (first?.material ?? (part?.part as 'backing' | undefined) ?? 'fabric');
  const items = stuff.length ? stuff : [part!];
  put(open.draft, 'material', material, 'answer.material', items);
  put(
    open.draft,
    'name',
    (named?.kind === 'material' ? named.name : undefined) ?? unique(items.map((x) => x.w)).join(' '),
    'answer.material',
    items,
  );
  // so that the slots stand in the order in which people read them
  const { kind, material: stuffing, ...rest } = open.draft.entry;
  open.draft.entry = { kind, material: stuffing, ...rest } as Entry;
  for (const x of items) a.used.add(x);
  for (const d of told) if (d !== own) a.taken.add(d);
  return true;
}
