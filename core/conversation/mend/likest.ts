import { SIDES } from '../../lexicon/place-words.ts';
import { UNIT_WORDS } from '../../lexicon/units.ts';
import type { Item } from '../../rules/item.ts';
import { splitBlock, unique } from '../../rules/places/grid.ts';
import { placesOf, type Standing } from '../standing.ts';
import { named } from './items.ts';

/** How surely the items speak of this entry: by its name, stuff, unit, action, finding, object, stitch or place. */
export function anchored({ was: e }: Standing, items: Item[], skip: Set<Item>): number {
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
      if (e.unit === 'fat-quarter' && x.w === 'fat' && /^quarters?$/.test(items[k + 1]?.w ?? '')) score += 3;
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
      // "sorry, seven along the bottom"
      if (x.place?.places.length && e.places && x.place.places.join() === e.places.join()) score += 3;
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

export function best(pool: Standing[], items: Item[], skip: Set<Item>): Standing[] {
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

/** Those entries whose places are most like the new ones: as many, and in the same rows and columns. */
export function likest(pool: Standing[], good: string[], keepAll = false): Standing[] {
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
