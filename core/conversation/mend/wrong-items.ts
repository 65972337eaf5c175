import { SIDES } from '../../lexicon/place-words.ts';
import type { Item } from '../../rules/item.ts';
import type { ReaderState } from '../../rules/reader-state.ts';
import { placesOf, type Standing } from '../standing.ts';
import { bareNumber, JOINTS, named, POINTERS, STOPS, sameSense, sameSort, sensed } from './items.ts';
import { numberOf } from './mend-numbers.ts';
import type { Segment } from './mending.ts';

/** What stands after "not", "instead of" or "rather than", with what is joined to it by "and" or "or". */
export function wrongItems(items: Item[], standing: Standing[]): Set<Item> {
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
  if (said >= 0 && meant > said) {
    for (const x of items.slice(said + 1, meant)) if (sensed(x)) wrong.add(x);
  }
  const toldWrong = meant < 0 ? saidWrong(items) : undefined;
  if (toldWrong) wrong.add(toldWrong);
  // "when I say pinstripe I mean the green twill"
  const sayWhen = items.findIndex(
    (x, k) => /^(?:say|put|write|wrote)$/.test(x.w) && items[k - 1]?.w === 'i' && items[k - 2]?.w === 'when',
  );
  if (sayWhen >= 0 && meant > sayWhen)
    for (const x of items.slice(sayWhen + 1, meant)) if (sensed(x)) wrong.add(x);
  // "did i say two? i meant three"
  const doubted = items.findIndex(
    (x, k) => x.w === 'say' && items[k - 1]?.w === 'i' && items[k - 2]?.w === 'did',
  );
  if (doubted >= 0)
    for (const x of items.slice(doubted + 1)) {
      // "did i say 2-3 i meant 3-3"
      if (STOPS.has(x.w) || /^(,|i|meant|no|should|it)$/.test(x.w)) break;
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
        // "not 3-2/3-3, 4-2/4-3": both blocks of the seam
        if (
          taken &&
          !/^(and|or|nor|&|\/)$/.test(items[m - 1]!.w) &&
          (x.place || !sameSense(items[m - 1]!, x))
        )
          break;
        wrong.add(x);
        taken = true;
      } else if (standing.some(({ was }) => named(was, x))) {
        wrong.add(x);
        taken = true;
      } else if (SIDES[x.w] || /^(sides?|ends?)$/.test(x.w)) {
        wrong.add(x);
        taken = true;
      } else if (taken && !/^(and|or|nor|&|\/|the|a)$/.test(x.w)) break;
    }
  }
  return wrong;
}

/** "I said two and it's five", "it's block three, I said four", "put three, should be five": what was told, beside what it is. */
function saidWrong(items: Item[]): Item | undefined {
  const is = (x: Item): boolean =>
    (sensed(x) || x.token.value !== undefined) && !POINTERS.has(x.place?.rule ?? '');
  const told = items.findIndex(
    (x, k) => /^(said|put|wrote)$/.test(x.w) && (k === 0 || items[k - 1]!.w === 'i'),
  );
  if (told < 0) return undefined;
  const stop = items.findIndex(
    (x, k) => k > told && (STOPS.has(x.w) || /^(,|and|but|it|that|when|is|'s|should)$/.test(x.w)),
  );
  const [one, more] = items.slice(told + 1, stop < 0 ? undefined : stop).filter(is);
  const others = items.filter((x, k) => is(x) && (k < told || (stop > 0 && k > stop)));
  return one && !more && others.some((x) => sameSort(x, one) || (counts(one) && counts(x))) ? one : undefined;
}

/** A bare number, also one that could be an hour, or a row or block told by one. */
const counts = (x: Item): boolean =>
  bareNumber(x) ||
  Boolean(x.clock) ||
  (x.place
    ? x.place.kind === 'blocks' && /^place\.(row|column|block)/.test(x.place.rule)
    : x.token.value !== undefined);

/** Does the last note hold what is denied? */
export function standsIn(standing: Standing[], x: Item, state?: ReaderState): boolean {
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
      return (
        (x.task !== undefined && e.task === x.task) ||
        (number !== undefined && e.minutes === number) ||
        [e.start, e.end, e.time].some((time) => time !== undefined && tellsTime(x, time))
      );
    return false;
  });
}

/** Is the time that stands the one denied: "8:30, not 8", "half past, not twenty past"? */
export function tellsTime(x: Item, time: string): boolean {
  const minute = Number(time.slice(11, 13)) * 60 + Number(time.slice(14, 16));
  if (x.clock) return (minute - x.clock.minute) % (x.clock.anyHour ? 60 : 720) === 0;
  const figures = /^(\d{1,2})[.:]([0-5]\d)$/.exec(x.w);
  if (figures) return (minute - Number(figures[1]) * 60 - Number(figures[2])) % 720 === 0;
  const value = x.quantity?.unit ? undefined : x.quantity?.value;
  if (value === undefined) return false;
  return value <= 12 ? (minute - value * 60) % 720 === 0 : value === minute % 60;
}

/** Stretches that speak of one entry each: cut at stops, and at joints between two tellings. */
export function segmentsOf(items: Item[], wrong: Set<Item>): Segment[] {
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
