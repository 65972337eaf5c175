import type { Entry } from '../../shared/entry.ts';
import type { AskSlot } from '../../shared/vocabulary.ts';
import type { Draft } from '../rules/draft.ts';
import type { Item } from '../rules/item.ts';
import { blockAt, rowOf, splitBlock, unique } from '../rules/places/grid.ts';
import { placesOfClause } from '../rules/places/places-of-clause.ts';
import type { ReaderState } from '../rules/reader-state.ts';
import { latestClock, wallMinutes, wallTime } from '../rules/times/local-time.ts';
import type { Memory } from './memory.ts';

const LEAD =
  /^(?:(?:oh|ah|right|okay|ok|um|so|and|but|well|hang on|hold on|hold it|oops|damn|bother|uh|er|please|just)[ ,.!-]+)*(?:no no|no wait|wait no|wait|no|nope|sorry|correction|i meant|i mean|make that|make it|that should (?:be|have been|read|say)|should (?:be|have been|read)|i should have said|actually|not|rather|scratch that|strike that|my mistake|i got that wrong|i said that wrong|i mixed|i told|hold on|hang on|that was|it was|they were|it 's|that 's|change|i misspoke|misspoke|amend|fix that|beg pardon|pardon|tell a lie|i tell a lie|not so|wrong|mistake|i miscounted|wait a minute|let me correct|apologies|got that wrong|say|call it|meant|read that as|other way round|the other way|on second thoughts)\b/;

/** Does the note begin as a mend of the one before? */
export const looksLikeAmend = (words: string): boolean => LEAD.test(words.trim());

/**
 * The last note's entries with what this note changes: an answer to the question that was asked, or a correction. Gives
 * undefined where the words change nothing that was said, so that the note is read as a new one.
 */
export function amendEntries(
  state: ReaderState,
  items: Item[],
  drafts: Draft[],
  words: string,
  answering: AskSlot | null,
): Entry[] | undefined {
  const last = state.memory.last;
  if (!last) return undefined;
  let entries = structuredClone(last.entries) as Entry[];
  let changed = false;
  const touch = (): void => {
    changed = true;
  };
  if (answering) {
    const filled = answer(state, entries, items, drafts, words, answering);
    if (filled) {
      entries = filled;
      touch();
      if (answering !== 'place') return merged(entries, drafts, answering);
    } else if (!looksLikeAmend(words)) return undefined;
  }
  if (!changed) {
    if (places(state, entries, items, words)) touch();
    if (numbers(state, entries, items, words)) touch();
    if (stitches(entries, items)) touch();
    if (substitutes(entries, drafts)) touch();
  }
  if (!changed) return undefined;
  return merged(entries, drafts, answering ?? 'place');
}

/** New conditions told along with an answer or correction are added; what only repeats is not. */
function merged(entries: Entry[], drafts: Draft[], _slot: AskSlot): Entry[] {
  for (const d of drafts) {
    if (d.entry.kind !== 'condition') continue;
    const e = d.entry;
    if (entries.some((x) => x.kind === 'condition' && x.finding === e.finding)) continue;
    if (entries.some((x) => x.kind === 'condition')) continue;
    if (!e.places?.length) {
      const at = entries.find((x) => 'places' in x && x.places?.length) as { places?: string[] } | undefined;
      if (!at?.places) continue;
      e.places = [...at.places];
    }
    entries.push(e);
  }
  return entries;
}

function answer(
  state: ReaderState,
  entries: Entry[],
  items: Item[],
  drafts: Draft[],
  words: string,
  slot: AskSlot,
): Entry[] | undefined {
  switch (slot) {
    case 'place': {
      const said = placesOfClause(items);
      let found = said.kind === 'specific' || said.kind === 'general' ? said.places : [];
      if (!found.length) {
        const fabric = items.find((x) => x.fabric);
        if (fabric?.fabric && fabric.fabric.names.length === 1)
          found = state.fabrics.blocks[fabric.fabric.names[0]!] ?? [];
      }
      // "the one in row three": the cloth's block in that row
      const open = entries.filter((e) => 'places' in e && e.places && e.places.length === 0);
      const cloth = open.map((e) => ('fabric' in e ? e.fabric : undefined)).find((f) => f !== undefined) as
        | string
        | undefined;
      const blocks = cloth ? state.fabrics.blocks[cloth] : undefined;
      if (blocks && found.length > 1) {
        const inside = found.filter((p) => blocks.includes(p));
        if (inside.length) found = inside;
      }
      if (!found.length) return undefined;
      if (!open.length) return undefined;
      for (const e of open) (e as { places?: string[] }).places = [...found];
      return entries;
    }
    case 'action': {
      const told = drafts.filter((d) => d.entry.kind === 'treatment' && d.entry.action);
      if (!told.length) return undefined;
      const open = entries.find((e) => e.kind === 'treatment' && !e.action) as
        | Extract<Entry, { kind: 'treatment' }>
        | undefined;
      if (!open) return undefined;
      const out: Entry[] = entries.filter((e) => e !== open);
      for (const d of drafts) {
        if (d.entry.kind === 'treatment') {
          const e = { ...d.entry };
          if (!e.places?.length || d.placed !== 'said') e.places = [...(open.places ?? [])];
          if (open.state) e.state = d.entry.state === 'done' ? open.state : d.entry.state;
          if (open.minutes && !e.minutes) e.minutes = open.minutes;
          out.push(e);
        } else if (d.entry.kind === 'material') out.push(d.entry);
      }
      return out;
    }
    case 'fabric': {
      const fabric = items.find((x) => x.fabric);
      let name = fabric?.fabric?.names.length === 1 ? fabric.fabric.names[0]! : undefined;
      const heard =
        name ??
        (items
          .filter(
            (x) =>
              x.token.kind === 'word' &&
              !/^(the|a|it|was|is|'s|that|one|of|with|i|used|mean|oh|no|yes|some)$/.test(x.w),
          )
          .map((x) => x.w)
          .join(' ') ||
          undefined);
      if (!heard) return undefined;
      const cloth = entries.filter(
        (e) => e.kind === 'material' && (e.material === 'fabric' || e.material === undefined),
      ) as Extract<Entry, { kind: 'material' }>[];
      // the words said before narrow a doubtful answer
      if (!name && fabric?.fabric) {
        const before = cloth[0]?.name ?? '';
        name = fabric.fabric.names.find((n) => before.split(' ').some((word) => n.includes(word)));
      }
      for (const e of cloth) e.name = name ?? heard;
      for (const e of entries) {
        if (
          e.kind === 'treatment' &&
          ['patch', 'replace', 'stabilize', 'overlay', 'piece'].includes(e.action ?? '')
        )
          e.fabric = name ?? heard;
        if (e.kind === 'condition') {
          e.fabric = name ?? heard;
          const blocks = name ? state.fabrics.blocks[name] : undefined;
          if (!e.places?.length && blocks) e.places = [...blocks];
        }
      }
      const said = placesOfClause(items);
      if (said.kind === 'specific')
        for (const e of entries) if ('places' in e && e.places && !e.places.length) e.places = said.places;
      return entries;
    }
    case 'quantity': {
      const item =
        items.find((x) => x.quantity?.value !== undefined) ?? items.find((x) => x.clock || x.place);
      const value = item?.quantity?.value ?? loneNumber(item);
      if (value === undefined) return undefined;
      const open = entries.find(
        (e) =>
          (e.kind === 'measurement' && e.value === undefined) ||
          (e.kind === 'material' && e.quantity === undefined),
      ) as { value?: number; quantity?: number; unit?: string; kind: string } | undefined;
      if (!open) return undefined;
      if (open.kind === 'measurement') open.value = value;
      else open.quantity = value;
      if (item?.quantity?.unit) open.unit = item.quantity.unit;
      const cost = items.find((x) => x.cost);
      if (cost && open.kind === 'material')
        (open as { cost?: unknown }).cost = {
          amount: cost.cost!.amount,
          ...(cost.cost!.each ? { each: true } : {}),
        };
      return entries;
    }
    case 'time': {
      const work = entries.find((e) => e.kind === 'work') as Extract<Entry, { kind: 'work' }> | undefined;
      if (!work) return undefined;
      const told = drafts.find((d) => d.entry.kind === 'work')?.entry as
        | Extract<Entry, { kind: 'work' }>
        | undefined;
      const duration = items.find((x) => x.duration);
      const span = items.find((x) => x.span);
      const clock = items.find((x) => x.clock);
      if (told && (told.start || told.mark)) {
        for (const k of ['start', 'end', 'minutes', 'time'] as const)
          if (told[k] !== undefined) (work as Record<string, unknown>)[k] = told[k];
        if (told.mark && !told.start) work.mark = work.mark ?? told.mark;
        return entries;
      }
      if (duration) {
        work.minutes = duration.duration!.minutes;
        return entries;
      }
      if (span || clock) {
        const c = span?.span?.start ?? clock!.clock!;
        work.mark ??= /\b(stop|finish|quit|end)/.test(words) ? 'stop' : 'start';
        work.time = wallTime(latestClock(c.minute, c.fixed, wallMinutes(state.local)));
        return entries;
      }
      const bare = items.find((x) => x.quantity?.value !== undefined);
      if (bare && (work.mark || /\b(at|about|around)\b/.test(words)) && bare.quantity!.value! <= 12) {
        work.mark ??= 'start';
        work.time = wallTime(latestClock(bare.quantity!.value! * 60, false, wallMinutes(state.local)));
        return entries;
      }
      return undefined;
    }
    case 'material': {
      const item =
        items.find((x) => x.material) ??
        items.find((x) => x.part && ['backing', 'batting', 'binding'].includes(x.part));
      const fabric = items.find((x) => x.fabric);
      const open = entries.find((e) => e.kind === 'material' && !e.material) as
        | Extract<Entry, { kind: 'material' }>
        | undefined;
      if (!open || !(item ?? fabric)) return undefined;
      const told = drafts.find((d) => d.entry.kind === 'material')?.entry as
        | Extract<Entry, { kind: 'material' }>
        | undefined;
      const stuff = [...items].reverse().find((x) => x.material);
      const first = items.find((x) => x.material && x.material !== 'fabric');
      open.material = told?.material ?? first?.material ?? stuff?.material ?? 'fabric';
      if (/\bfor the (back|backing|lining)\b/.test(words)) open.material = 'backing';
      open.name = items
        .filter((x) => x.material || x.fabric)
        .map((x) => x.w)
        .join(' ');
      return entries;
    }
  }
}

const loneNumber = (item: Item | undefined): number | undefined =>
  item?.token.value !== undefined ? item.token.value : undefined;

/** Puts other places in the place of those that were wrong. */
function places(state: ReaderState, entries: Entry[], items: Item[], words: string): boolean {
  const { grid } = state;
  const placed = items.filter(
    (x) =>
      x.place &&
      x.place.places.length &&
      !['place.it', 'place.them', 'place.both', 'place.that-one'].includes(x.place.rule),
  );
  const withPlaces = entries.filter(
    (e) =>
      'places' in e &&
      e.places &&
      (e.kind === 'condition' || e.kind === 'treatment' || e.kind === 'remark' || e.kind === 'measurement'),
  ) as { places: string[]; kind: string }[];
  if (!withPlaces.length) return false;
  // "make that one to four", "one to for": the blocks of the row last named
  if (!placed.length) {
    const range =
      /\b(one|two|three|four|five|six|seven|eight|nine|\d+) (?:to|through|-) (one|two|three|four|five|six|seven|eight|nine|for|\d+)\b/.exec(
        words,
      );
    const n: Record<string, number> = {
      one: 1,
      two: 2,
      three: 3,
      four: 4,
      for: 4,
      five: 5,
      six: 6,
      seven: 7,
      eight: 8,
      nine: 9,
    };
    const target = withPlaces.findLast((e) => e.places.some((p) => splitBlock(p)));
    if (range && target) {
      const from = n[range[1]!] ?? Number(range[1]);
      const to = n[range[2]!] ?? Number(range[2]);
      const row = splitBlock(target.places.findLast((p) => splitBlock(p))!)!.row;
      const fresh = Array.from({ length: Math.max(0, to - from + 1) }, (_, k) =>
        blockAt(grid, row, from + k),
      ).filter((p): p is string => p !== undefined);
      if (fresh.length) {
        target.places = unique([...target.places.filter((p) => splitBlock(p)?.row !== row), ...fresh]);
        return true;
      }
    }
    return false;
  }
  // "not 3-3, 3-2", "3-2 not 3-3": which is wrong
  const wrong = placed.find((x) => {
    const k = items.indexOf(x);
    return (
      /^(not|n't)$/.test(items[k - 1]?.w ?? '') || (items[k - 1]?.w === 'the' && items[k - 2]?.w === 'not')
    );
  });
  const right = placed.filter((x) => x !== wrong);
  if (wrong && right.length) {
    const bad = wrong.place!.places;
    const good = unique(right.flatMap((x) => x.place!.places));
    let hit = false;
    for (const e of withPlaces) {
      if (bad.every((p) => e.places.includes(p))) {
        e.places = unique([...e.places.filter((p) => !bad.includes(p)), ...good]);
        hit = true;
      }
    }
    return hit;
  }
  if (!right.length) return false;
  const good = unique(right.flatMap((x) => x.place!.places));
  // "no, row four" of a single block keeps its block
  const rowOnly =
    right.length === 1 &&
    (right[0]!.place!.rule === 'place.row' || right[0]!.place!.rule === 'place.ordinal-row')
      ? splitBlock(good[0]!)!.row
      : undefined;
  const targets = pickTargets(withPlaces, words, good, state.memory);
  for (const e of targets) {
    const blocks = e.places.filter((p) => splitBlock(p));
    if (rowOnly !== undefined && blocks.length && blocks.length < grid.blocks) {
      e.places = blocks.map((p) => blockAt(grid, rowOnly, splitBlock(p)!.block) ?? p);
    } else if (rowOnly !== undefined && blocks.length === grid.blocks) e.places = rowOf(grid, rowOnly);
    else e.places = [...good];
  }
  return targets.length > 0;
}

/** Which entries a corrected place belongs to: those of the kind or finding named with it, else all of the same places. */
function pickTargets(
  list: { places: string[]; kind: string }[],
  _words: string,
  good: string[],
  _memory: Memory,
): { places: string[]; kind: string }[] {
  const groups = unique(list.map((e) => [...e.places].sort().join(',')));
  if (groups.length === 1) return list;
  // the group most like the correction: same row or same block
  const score = (places: string[]): number =>
    places.reduce((s, p) => {
      const a = splitBlock(p);
      return (
        s + (a && good.some((g) => splitBlock(g)?.row === a.row || splitBlock(g)?.block === a.block) ? 1 : 0)
      );
    }, 0) / Math.max(1, places.length);
  const best = list.reduce((a, b) => (score(b.places) >= score(a.places) ? b : a));
  const key = [...best.places].sort().join(',');
  return list.filter((e) => [...e.places].sort().join(',') === key);
}

/** Quantities, prices, times and lengths that were wrong. */
function numbers(state: ReaderState, entries: Entry[], items: Item[], words: string): boolean {
  let hit = false;
  const materials = entries.filter((e) => e.kind === 'material') as Extract<Entry, { kind: 'material' }>[];
  const named = (k: number): Extract<Entry, { kind: 'material' }> | undefined => {
    for (let m = k - 1; m >= Math.max(0, k - 6); m--) {
      const x = items[m]!;
      if (!x.material && !x.part) continue;
      const found =
        materials.find((e) => e.name?.split(' ').includes(x.w)) ??
        materials.find((e) => e.material === x.material) ??
        materials.find((e) => e.material === x.part);
      if (found) return found;
    }
    for (let m = k + 1; m < Math.min(items.length, k + 4); m++) {
      const x = items[m]!;
      const found = x.material
        ? (materials.find((e) => e.name?.split(' ').includes(x.w)) ??
          materials.find((e) => e.material === x.material))
        : undefined;
      if (found) return found;
    }
    return undefined;
  };
  for (let k = 0; k < items.length; k++) {
    const x = items[k]!;
    if (/^(not|n't)$/.test(items[k - 1]?.w ?? '')) continue;
    if (x.cost && materials.length) {
      const target = named(k) ?? materials.findLast((e) => e.cost) ?? materials.at(-1)!;
      const each =
        x.cost.each || (target.cost?.each && !/\b(the lot|altogether|total|the pair)\b/.test(words));
      target.cost = { amount: x.cost.amount, ...(each ? { each: true as const } : {}) };
      hit = true;
    } else if (x.duration) {
      const t = entries.findLast((e) => e.kind === 'treatment' && e.minutes !== undefined) as
        | { minutes?: number }
        | undefined;
      const w = entries.findLast((e) => e.kind === 'work') as Extract<Entry, { kind: 'work' }> | undefined;
      if (t) t.minutes = x.duration.minutes;
      else if (w && (w.minutes !== undefined || !w.start)) w.minutes = x.duration.minutes;
      else {
        const only = entries.filter((e) => e.kind === 'treatment');
        if (only.length === 1) (only[0] as { minutes?: number }).minutes = x.duration.minutes;
        else continue;
      }
      hit = true;
    } else if (x.span || x.clock) {
      const w = entries.findLast((e) => e.kind === 'work') as Extract<Entry, { kind: 'work' }> | undefined;
      if (!w) continue;
      const now = wallMinutes(state.local);
      if (x.span && w.start) {
        const end = latestClock(x.span.end.minute, x.span.end.fixed, now, undefined);
        const start = latestClock(x.span.start.minute, x.span.start.fixed, end - 1);
        w.start = wallTime(start);
        w.end = wallTime(end);
        if (w.minutes) delete w.minutes;
      } else if (x.clock) {
        const base = w.time ?? w.end ?? w.start;
        const day = base ? Math.floor(wallMinutes(base) / 1440) * 1440 : undefined;
        const t = wallTime(
          latestClock(
            x.clock.minute,
            x.clock.fixed,
            now,
            day !== undefined && day < Math.floor(now / 1440) * 1440 ? { start: day } : undefined,
          ),
        );
        if (w.mark) w.time = t;
        else if (w.start && w.end) {
          const toStart =
            /\b(start|began|begin|from)/.test(words) ||
            (!/\b(stop|finish|end|till|until|to|quit)/.test(words) &&
              Math.abs(wallMinutes(t) - wallMinutes(w.start)) <
                Math.abs(wallMinutes(t) - wallMinutes(w.end)));
          const broke =
            w.minutes !== undefined ? wallMinutes(w.end) - wallMinutes(w.start) - w.minutes : undefined;
          if (toStart) w.start = t;
          else w.end = t;
          if (broke !== undefined) w.minutes = wallMinutes(w.end) - wallMinutes(w.start) - broke;
        } else continue;
      }
      hit = true;
    } else if (x.quantity?.value !== undefined) {
      const q = x.quantity;
      const measure = entries.filter((e) => e.kind === 'measurement') as Extract<
        Entry,
        { kind: 'measurement' }
      >[];
      const target =
        named(k) ??
        materials.findLast((e) => q.unit !== undefined && e.unit === q.unit) ??
        (measure.length ? undefined : materials.findLast((e) => e.quantity !== undefined));
      if (target) {
        // "the needles were 2.80": a price where there was one
        if (
          !q.unit &&
          target.cost &&
          (/\.\d\d$/.test(x.w) || /\b(was|were|cost|price|is)\b/.test(items[k - 1]?.w ?? '')) &&
          !/\b(packs?|spools?|reels?)\b/.test(items[k + 1]?.w ?? '')
        ) {
          target.cost = { ...target.cost, amount: q.value! };
        } else {
          target.quantity = q.value!;
          if (q.unit) target.unit = q.unit;
        }
        hit = true;
      } else if (measure.length) {
        const which =
          measure.find((m) => items.some((y) => y.measure === m.of)) ??
          (measure.length === 1 ? measure[0] : measure.findLast((m) => m.unit === q.unit)) ??
          measure.at(-1)!;
        which.value = q.value!;
        if (q.unit && q.unit !== 'piece') which.unit = q.unit as typeof which.unit;
        hit = true;
      } else {
        const t = entries.filter((e) => e.kind === 'treatment' && e.minutes !== undefined) as {
          minutes?: number;
        }[];
        if (t.length === 1 && !q.unit && /\b(min|minutes|took)\b/.test(words)) {
          t[0]!.minutes = q.value!;
          hit = true;
        }
      }
    }
  }
  return hit;
}

function stitches(entries: Entry[], items: Item[]): boolean {
  const item = items.findLast((x, k) => x.stitch && !/^(not|no|n't)$/.test(items[k - 1]?.w ?? ''));
  if (!item) return false;
  const targets = entries.filter((e) => e.kind === 'treatment' && e.stitch) as { stitch?: string }[];
  const list = targets.length
    ? targets
    : (entries.filter((e) => e.kind === 'treatment') as { stitch?: string }[]);
  if (!list.length) return false;
  for (const t of list.length > 1 && targets.length > 1 ? [list.at(-1)!] : list) t.stitch = item.stitch!;
  return true;
}

/** Another finding, treatment, material or matter in the place of the one that was wrong. */
function substitutes(entries: Entry[], drafts: Draft[]): boolean {
  let hit = false;
  for (const d of drafts) {
    const e = d.entry;
    if (e.kind === 'condition') {
      const target = entries.filter((x) => x.kind === 'condition') as Extract<Entry, { kind: 'condition' }>[];
      if (target.length === 1 && target[0]!.finding !== e.finding) {
        target[0]!.finding = e.finding;
        hit = true;
      }
    } else if (e.kind === 'treatment') {
      const target = entries.filter((x) => x.kind === 'treatment') as Extract<Entry, { kind: 'treatment' }>[];
      if (target.length === 1 && (target[0]!.action !== e.action || target[0]!.state !== e.state)) {
        const { places: _places, ...rest } = e;
        Object.assign(target[0]!, rest);
        hit = true;
      }
    } else if (e.kind === 'material') {
      const target = entries.filter((x) => x.kind === 'material') as Extract<Entry, { kind: 'material' }>[];
      if (target.length === 1 && target[0]!.material !== e.material && e.material) {
        target[0]!.material = e.material;
        if (e.name) target[0]!.name = e.name;
        hit = true;
      }
    }
  }
  return hit;
}
