import type { Entry } from '../../shared/entry.ts';
import type { Ask } from '../../shared/note.ts';
import type { Action, Material, Task } from '../../shared/vocabulary.ts';
import { CLOTH_WORDS } from '../lexicon/materials.ts';
import { type Draft, readEntryOf } from '../rules/draft.ts';
import type { Item } from '../rules/item.ts';
import { mentionsOf } from '../rules/mentions-of.ts';
import type { Mention, Telling } from '../rules/places/find-mention.ts';
import { splitBlock } from '../rules/places/grid.ts';
import type { ReaderState } from '../rules/reader-state.ts';
import { objectOfRepair } from '../rules/treatments/object-of-repair.ts';
import { readCount, readOrdinal } from '../text/read-number.ts';
import type { Memory, Plan } from './memory.ts';
import { placesOf } from './standing.ts';

/** The conversation after this note. */
export function remember(
  memory: Memory,
  drafts: Draft[],
  ask: Ask | null,
  state: ReaderState,
  scanned: {
    focus: string[];
    earlier: string[][];
    cloth?: string[];
    counted?: { from: string[]; to: string[] };
    items: Item[];
  },
  text: string,
  amended: boolean,
  tellings: Telling[] = [],
): Memory {
  // a mended note is remembered as if it had been said right at once
  const { before, last: _last, ...now } = memory;
  const snapshot = amended && before ? before : now;
  const heard = ask?.slot === 'place' ? outsideHeard(scanned.items, state) : undefined;
  const short = ask?.slot === 'place' ? besideOutside(drafts) : [];
  const next: Memory = {
    ...snapshot,
    focus: scanned.focus,
    earlier: scanned.earlier.slice(-6),
    last: {
      entries: drafts.map(readEntryOf),
      said: text,
      ask: ask?.slot ?? null,
      ...(heard ? { heard } : {}),
      ...(short.length ? { short } : {}),
    },
    before: snapshot,
  };
  delete next.asked;
  if (scanned.cloth) next.cloth = scanned.cloth;
  else delete next.cloth;
  if (scanned.counted) next.counted = scanned.counted;
  else delete next.counted;
  let found = next.found;
  let open = next.open;
  const ways: { from: number; way: Memory['open'][number] }[] = [];
  for (const { entry: e, origins, clause } of drafts) {
    if (e.kind === 'condition') {
      found = { ...found, [e.finding]: e.places ?? [] };
      next.condition = { finding: e.finding, places: e.places ?? [] };
      // "darned it, there was a hole", and then "same on the next two": the deed, and not its reason
      if (!isReason(drafts, e.places)) next.lastKind = 'condition';
      if (e.places?.length && e.places.length <= 12)
        next.thing =
          e.finding === 'lumpy-batting'
            ? 'batting'
            : e.finding === 'old-repair'
              ? objectOfRepair(saidOf(origins['entry'], text).toLowerCase())
              : e.finding === 'broken-stitching' &&
                  /\b(?:ties?|knots?|tufts?)\b/.test(saidOf(origins['finding'], text))
                ? 'ties'
                : next.thing;
    } else if (e.kind === 'treatment') {
      // "binding strips cut", then "sewed it on"
      const strips =
        /^(?:cut|piece)$/.test(e.action ?? '') && /^(?:binding|border)\b/.exec(e.places?.[0] ?? '')?.[0];
      if (strips && e.state === 'done') next.thing = strips;
      if (e.action && e.state === 'considering')
        ways.push({
          from: origins['action']?.from ?? 0,
          way: { action: e.action, places: e.places ?? [], ...(e.object ? { object: e.object } : {}) },
        });
      else if (e.action)
        open = open.flatMap((o) => {
          const here = o.places.some((p) => e.places?.includes(p));
          if (o.action === e.action && (here || !o.places.length)) return [];
          return here ? [{ ...o, passed: true as const }] : [o];
        });
      // "crepeline over those two", still to come, and then "I'll need sixty centimetres of it"
      const ahead = e.state === 'planned' || (e.state === 'considering' && ways.length === 0);
      if (e.action && ahead) {
        const stuff = stuffOfWay(e.action, state.clauses[clause]?.items ?? []);
        if (stuff) next.material = { material: stuff };
      }
      if (e.action && e.stitch) next.stitch = { action: e.action, stitch: e.stitch };
      if (e.action && e.places?.length) next.plans = plansAfter(next.plans ?? [], e);
      // "the tulle goes on tomorrow; the cleaning I have given up": what is to be is spoken of further
      const givenUp =
        e.state === 'dropped' &&
        drafts.some(
          ({ entry: o }) => o.kind === 'treatment' && o.state === 'planned' && o.action !== e.action,
        );
      if (givenUp) continue;
      next.treatment = {
        ...(e.action ? { action: e.action } : {}),
        state: e.state,
        places: e.places ?? [],
        ...(e.stitch ? { stitch: e.stitch } : {}),
        ...(e.object ? { object: e.object } : {}),
        ...(e.fabric ? { fabric: e.fabric } : {}),
      };
      next.lastKind = 'treatment';
    } else if (e.kind === 'work') {
      if (e.task) next.ran = e.task as Task;
      if (e.mark === 'stop') delete next.running;
      else if (e.mark === 'start' && e.task) next.running = e.task as Task;
    } else if (e.kind === 'material' && e.material) {
      next.material = { material: e.material, ...(e.name ? { name: e.name } : {}) };
      const noun = e.name?.split(' ').at(-1);
      if (
        noun &&
        e.material !== 'fabric' &&
        CLOTH_WORDS.has(noun) &&
        !/^(cotton|wool|silk|linen)$/.test(noun)
      )
        next.goods = { ...next.goods, [noun]: e.material };
    } else if (e.kind === 'decision') {
      next.topic = e.about;
      const others = (next.matters ?? []).filter((m) => m.about !== e.about);
      if (e.status === 'open') {
        const told = origins['entry'];
        const words = told ? (told.words ?? text.slice(told.from, told.to)) : '';
        next.matters = [...others, { about: e.about, words: words.toLowerCase() }].slice(-12);
      } else {
        next.matters = others;
        const cloth = clothChosen(e.about, origins['entry'], text);
        if (cloth) next.chosen = { ...next.chosen, [cloth]: e.about as Material };
      }
      if (
        e.about === 'tie-thread' ||
        e.about === 'backing' ||
        e.about === 'batting' ||
        e.about === 'binding' ||
        e.about === 'thread'
      )
        next.material = { material: e.about };
    }
  }
  // "all the chintz ones pressed except the bottom left", then "that one": the one excepted
  const barred = state.clauses.flatMap((c) => c.items.flatMap((x) => x.fabric?.bar ?? []));
  next.found = found;
  // in the order said: what "the second of those ways" is
  next.open = [...open, ...ways.sort((a, b) => a.from - b.from).map((x) => x.way)].slice(-24);
  // "an old mend at 1-5, interfacing glued behind", then "that interfacing"
  const fused = drafts.flatMap(({ entry: e, sentence, clause }) =>
    e.kind === 'condition' &&
    e.finding === 'old-repair' &&
    e.places?.length &&
    state.clauses.some(
      (c, n) =>
        c.sentence === sentence &&
        n >= clause &&
        n <= clause + 1 &&
        c.items.some((x) => x.material === 'interfacing'),
    )
      ? [{ places: [...e.places], object: 'interfacing' as const }]
      : [],
  );
  next.mentions = [
    ...(snapshot.mentions ?? []),
    ...mentionsOf(drafts).map((m) => asTold(m, tellings)),
    ...fused,
  ].slice(-40);
  const list = listAfter(drafts, snapshot.list);
  if (list) next.list = list;
  else delete next.list;
  spokenOfAfter(next, drafts, snapshot, amended, state.drafts.length > 0);
  // "all four cleaned", "only the top two", then "the other two"
  if (amended && next.focus.length < memory.focus.length && next.focus.every((p) => memory.focus.includes(p)))
    next.earlier = [...next.earlier, memory.focus].slice(-6);
  if (barred.length === 1 && !amended) {
    next.earlier = [...next.earlier, next.focus].slice(-6);
    next.focus = barred;
  }
  return next;
}

/** The stuff that a treatment still to come takes: net for an overlay, else what its own words name. */
function stuffOfWay(action: Action, items: Item[]): Material | undefined {
  if (action === 'overlay') return 'net';
  if (!/^(?:patch|stabilize|replace)$/.test(action)) return undefined;
  const named = new Set(
    items.flatMap((x) =>
      x.material && !x.object && (!x.action || x.material === 'interfacing') ? [x.material] : [],
    ),
  );
  return named.size === 1 ? [...named][0] : undefined;
}

const CURES = /^(?:darn|patch|resew|replace|overlay|stabilize|clean)$/;
/** Was damage at these places seen to in the same note? */
const isReason = (drafts: Draft[], places: string[] | undefined): boolean =>
  drafts.at(-1)?.entry.kind === 'condition' &&
  drafts.some(
    ({ entry: t }) =>
      t.kind === 'treatment' &&
      /^(?:done|doing)$/.test(t.state) &&
      CURES.test(t.action ?? '') &&
      t.places?.join() === places?.join() &&
      (places?.length ?? 0) > 0,
  );

/** The mention with the words in which its places were told. */
function asTold(mention: Mention, tellings: Telling[]): Mention {
  const own = tellings.filter(
    (t) => t.finding === mention.finding && t.places.every((p) => mention.places.includes(p)),
  );
  return own.length ? { ...mention, tellings: own } : mention;
}

export const saidOf = (at: { from: number; to: number; words?: string } | undefined, text: string): string =>
  at ? (at.words ?? text.slice(at.from, at.to)).toLowerCase() : '';

/** The plans that stand after a treatment was told: it joins them, or carries them out. */
function plansAfter(plans: Plan[], e: Extract<Entry, { kind: 'treatment' }>): Plan[] {
  const { action, places = [], object } = e;
  if (!action) return plans;
  // planned anew, done or called off: it stands no longer as it was
  const rest = plans.flatMap((p): Plan[] => {
    if (p.action !== action) return [p];
    const left = p.places.filter((q) => !places.includes(q));
    return left.length ? [{ ...p, places: left }] : [];
  });
  return e.state === 'planned'
    ? [...rest, { action, places, ...(object ? { object } : {}) }].slice(-24)
    : rest;
}

/** "2-1 hole, 2-2 stain, 2-3 fine": blocks told one by one, kept while the talk is of them. */
function listAfter(drafts: Draft[], before: string[] | undefined): string[] | undefined {
  const told = drafts.flatMap((d) => (placesOf(d.entry).length ? [placesOf(d.entry)] : []));
  const blocks = [...new Set(told.flat())];
  if (told.every((p) => p.length === 1 && splitBlock(p[0]!)) && blocks.length > 2 && blocks.length <= 6)
    return blocks;
  return before && blocks.every((p) => before.includes(p)) ? before : undefined;
}

/** Which places the next note's "it" and "them" stand on: those named, or those that the entries have got in other ways. */
function spokenOfAfter(
  next: Memory,
  drafts: Draft[],
  before: Omit<Memory, 'before' | 'last'>,
  amended: boolean,
  read: boolean,
): void {
  const mended = (d: Draft): boolean =>
    /^(answer|amend)\.(?!rest-later)/.test(d.origins['places']?.rule ?? '') &&
    placesOf(d.entry).some((p) => splitBlock(p));
  const placed =
    (amended ? drafts.findLast(mended) : undefined) ??
    drafts.findLast(
      ({ entry: e }) => (e.kind === 'condition' || e.kind === 'treatment') && placesOf(e).length > 0,
    );
  const places = placed ? placesOf(placed.entry) : [];
  if (!places.length) return;
  if (amended) {
    // what was wrongly said is nothing that was spoken of before
    next.earlier = before.focus.length ? [...before.earlier, before.focus].slice(-6) : before.earlier;
    next.focus = places;
    return;
  }
  if (!next.focus.length || !read) {
    next.focus = places;
    return;
  }
  // the blocks of a cloth, or of a thing told before, are spoken of as if they had been named
  const named = places.length === next.focus.length && places.every((p) => next.focus.includes(p));
  if (named || places.length > FEW_PLACES) return;
  next.earlier = [...next.earlier, next.focus].slice(-6);
  next.focus = places;
}
const FEW_PLACES = 8;

/** "backing = calico, fixed", "going with the green flannel for the back": the one cloth that was chosen for a part. */
function clothChosen(
  about: string,
  told: Draft['origins'][string] | undefined,
  text: string,
): string | undefined {
  if (!told || !/^(?:backing|binding|batting|tie-thread)$/.test(about)) return undefined;
  const words = (told.words ?? text.slice(told.from, told.to)).toLowerCase();
  if (/\b(?:not|no|n't|instead|rather)\b/.test(words)) return undefined;
  const cloths = new Set(words.match(/[a-z]+/g)?.filter((word) => CLOTH_WORDS.has(word)));
  return cloths.size === 1 ? [...cloths][0] : undefined;
}

/** "1-1 & 1-9 want it too": the entries that stand at the one block and wait for the other. */
const besideOutside = (drafts: Draft[]): number[] =>
  drafts.flatMap((d, k) => (d.outside && placesOf(d.entry).length ? [k] : []));

/** Row and block as heard, where a block was named that the quilt has not got. */
function outsideHeard(items: Item[], state: ReaderState): { row: number; block: number } | undefined {
  const item = items.find((x) => x.place?.outside && !x.place.places.length);
  // "the seam in block six", where no row was spoken of
  const alone = items.find((x) => x.place?.rule === 'place.block-alone' && !x.place.places.length);
  const number = !item && alone ? readCount(state.tokens, alone.i + 1) : undefined;
  if (number && number.value <= state.grid.blocks) return { row: state.grid.rows + 1, block: number.value };
  if (!item) return undefined;
  const numbers: number[] = [];
  for (let i = item.i; i < item.j; i++) {
    const read = readOrdinal(state.tokens, i) ?? readCount(state.tokens, i);
    if (read) {
      numbers.push(read.value);
      i = read.next - 1;
    }
  }
  // "in row nine, in the second block from the left": the block stands further on
  const block = items.find((x) => x.i >= item.j && x.i - item.j <= 5 && /block|square|patch/.test(x.w));
  for (let i = block?.i ?? 0; numbers.length === 1 && /row/.test(item.w) && i < (block?.j ?? 0); i++) {
    const read = readOrdinal(state.tokens, i) ?? readCount(state.tokens, i);
    if (read) numbers.push(read.value);
  }
  if (numbers.length < 2) return undefined;
  const [a, b] = numbers as [number, number];
  return /^(block|square|patch|b\d)/.test(item.w) ? { row: b, block: a } : { row: a, block: b };
}
