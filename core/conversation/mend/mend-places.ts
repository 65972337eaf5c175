import { SIDES } from '../../lexicon/place-words.ts';
import type { Item } from '../../rules/item.ts';
import { blockAt, isWholeRow, rowOf, splitBlock, unique } from '../../rules/places/grid.ts';
import { placesOf, type Standing } from '../standing.ts';
import { POINTERS, WHOLES } from './items.ts';
import { best, likest } from './likest.ts';
import { mendRun } from './mend-runs.ts';
import { stitchIn } from './mend-stitch.ts';
import { change, type Segment, type Work } from './mending.ts';

/** The items that name blocks or sides; a part named as a whole counts only where an entry stands at such a part. */
export function placeItems(work: Work, items: Item[]): Item[] {
  const all = items.filter((x) => x.place?.places.length && !POINTERS.has(x.place.rule));
  const exact = all.filter((x) => x.place!.places.some((p) => !WHOLES.has(p)));
  if (exact.length) return inSoManyWords(items, exact);
  return all.filter(
    (x) =>
      ((!x.material && !x.object) ||
        [...work.wrong].some((y) => y.place?.places.length && y.part) ||
        (work.cue === 'strong' && work.standing.every(({ was }) => was.kind === 'condition')) ||
        // "it was the backing actually", after the top was washed
        (work.cue !== 'none' &&
          items.length <= 8 &&
          !items.some((y) => y !== x && (y.finding || y.quantity)) &&
          work.standing.every(({ was }) => was.kind !== 'material' || was.material !== x.material) &&
          work.standing.every(({ was }) => was.kind !== 'treatment' || was.action !== 'remove'))) &&
      work.standing.some(({ was }) => placesOf(was).some((p) => WHOLES.has(p) && p !== 'quilt')),
  );
}

/** "it was the one to the left of it, I did five three": one block, pointed at and then named; the name holds. */
function inSoManyWords(items: Item[], placed: Item[]): Item[] {
  const named = placed.filter((x) => x.place!.how === 'said' && x.place!.kind === 'blocks');
  const pointed = placed.filter((x) => /^place\.(?:neighbour|next)/.test(x.place!.rule));
  return named.length === 1 &&
    pointed.length > 0 &&
    named.length + pointed.length === placed.length &&
    !items.some((x) => /^(?:and|&|\+|also|plus|not|too|both)$/.test(x.w))
    ? named
    : placed;
}

/** Puts places right. True where the places only say which entry is meant. */
export function mendPlaces(work: Work, segment: Segment, items: Item[], placed: Item[]): boolean {
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
      (x.stitch &&
        (!work.standing.some(({ was }) => was.kind === 'treatment' && was.stitch === x.stitch) ||
          // "sorry, I did 3-1 by hand", where 3-1 was told by machine and another by hand
          work.standing.some(
            ({ was }) =>
              was.kind === 'treatment' &&
              was.stitch &&
              was.stitch !== x.stitch &&
              placesOf(was).join() === good.join(),
          ))) ||
      (x.finding &&
        !work.standing.some(({ was }) => was.kind === 'condition' && was.finding === x.finding)) ||
      // "it was the ginger stripe I used in 4-2", where another cloth was told
      isOtherStuff(work, x) ||
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
    // "no, one through five on that row", after two whole rows and a part of the third
    const run = to.map((p) => splitBlock(p)?.block ?? 0);
    const others = now.filter((p) => splitBlock(p)?.row !== rows[0]);
    if (
      rows.length === 1 &&
      to.length > 1 &&
      !onlyThose &&
      !whole &&
      run.every((b, k) => k === 0 || b === run[k - 1]! + 1) &&
      others.length &&
      others.length < now.length
    )
      return unique([...others, ...to]);
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

/** A cloth or stuff that the note before did not name. */
const isOtherStuff = (work: Work, x: Item): boolean =>
  Boolean(x.fabric || (x.material && !x.part)) &&
  work.standing.some(({ was }) => was.kind === 'material') &&
  !work.standing.some(
    ({ was }) =>
      was.kind === 'material' &&
      (x.fabric || x.material === 'fabric'
        ? was.name?.includes(x.w.split(' ').at(-1)!)
        : was.material === x.material),
  );

/** "top and bottom, not the sides": sides of what stands at sides of the border or the edge. */
function mendSides(work: Work, segment: Segment, items: Item[], placed: Item[], pool: Standing[]): boolean {
  const holding = pool.filter(({ draft }) => placesOf(draft.entry).some((p) => /^(border|edge)-/.test(p)));
  if (!holding.length || placed.some((x) => x.place!.places.some((p) => splitBlock(p)))) return false;
  if (work.cue === 'none') return false;
  if (
    items.some(
      (x) => x.quantity?.value !== undefined || x.cost || (x.measure && x.w !== 'l') || /corner/.test(x.w),
    )
  )
    return false;
  const said: Item[] = [];
  const sides: string[] = [];
  const letters = items.some((x) => x.w === 'l') || items.some((x) => /^(?:lhs|rhs)$/.test(x.w));
  for (const [k, x] of items.entries()) {
    // "R & L, not top & bottom": what stands behind is what was wrong
    if (x.w === 'not' && sides.length) break;
    // "right, so that's done" names no side
    if (
      k === 0 &&
      x.w === 'right' &&
      !/ (mean|meant|sorry|not|instead|rather) /.test(work.words) &&
      /^(,|so|then|now|ok|okay|on|i|that|well)$/.test(items[1]?.w ?? '')
    )
      continue;
    for (const word of x.w.split(' ')) {
      const side = SIDES[word] ?? (letters && word === 'r' ? 'right' : undefined);
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
