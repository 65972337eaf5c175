import type { MaterialUnit } from '../../../shared/vocabulary.ts';
import type { Item } from '../../rules/item.ts';
import type { ReaderState } from '../../rules/reader-state.ts';
import { readNumber } from '../../text/read-number.ts';
import type { Standing } from '../standing.ts';
import { LENGTHS, named } from './items.ts';
import { best } from './likest.ts';
import { swapIndex } from './mend-parts.ts';
import { change, type Segment, type Work } from './mending.ts';

/** "did I say two? I meant three": a wrong number with a right one, neither with a unit. */
export function swapNumbers(work: Work, items: Item[]): void {
  const numbers = items.filter(
    (x) =>
      !x.place?.places.length &&
      (numberFact(work, items, items.indexOf(x))?.sort === 'bare' ||
        // "I said three but it was four": a number like the wrong one, and no hour
        (x.clock?.firm && work.wrong.size > 0 && work.standing.every(({ was }) => was.kind !== 'work'))),
  );
  const [wrong, right] = [true, false].map((is) => numbers.filter((x) => work.wrong.has(x) === is));
  if (wrong?.length !== 1 || right?.length !== 1) return;
  const [from, to] = [wrong[0]!, right[0]!].map((x) => numberOf(work.state, x));
  if (from !== undefined && to !== undefined && swapIndex(work.state, work.standing, from, to))
    work.changed = true;
}

/** The number that an item says, whatever else it was taken for. */
export function numberOf(state: ReaderState, x: Item): number | undefined {
  if (x.duration) return x.duration.minutes;
  if (x.cost) return x.cost.amount;
  if (x.quantity?.value !== undefined) return x.quantity.value;
  const read = readNumber(state.tokens, x.i);
  return read && read.next >= x.j ? read.value : x.j === x.i + 1 ? x.token.value : undefined;
}

type Sort = 'quantity' | 'cost' | 'minutes' | 'bare';

type Slot = {
  s: Standing;
  slot: 'quantity' | 'cost' | 'minutes' | 'value';
  value: number;
  unit?: string | undefined;
};

export function slotsOf(work: Work): Slot[] {
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
export function mendNumbers(work: Work, segment: Segment, items: Item[], lean: Item[]): void {
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
    const sameUnit = fact.unit ? pool.filter((slot) => alike(slot, fact.unit)) : [];
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
      // "thread was 3.50": the price, where it had one
      !(fact.cents && pool.some((slot) => slot.slot === 'cost')) &&
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
      // "three hours of piecing", then "no, two and a half": hours as well
      const hours =
        target.slot === 'minutes' &&
        fact.sort === 'bare' &&
        fact.value <= 12 &&
        target.value >= 60 &&
        / (?:hours?|hrs?) /.test(` ${work.state.memory.last?.said.toLowerCase()} `);
      change(work, target.s, target.slot, hours ? fact.value * 60 : fact.value, 'number', [x]);
      if (fact.unit && fact.unit !== target.unit && target.slot !== 'minutes')
        change(work, target.s, 'unit', fact.unit, 'unit', [x]);
    }
  }
}

const namedBy = (s: Standing, items: Item[]): boolean => items.some((x) => named(s.was, x));

/** The same unit; "six foot eleven" is a size like "seven foot". */
const alike = ({ slot, unit }: Slot, said: string | undefined): boolean =>
  unit === said || (slot === 'value' && /^(?:in|ft)$/.test(unit ?? '') && /^(?:in|ft)$/.test(said ?? ''));

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
