import type { Memory } from '../../../conversation/memory.ts';
import type { Item } from '../../item.ts';

/** The ways to finish or to clean, which are matters where each is of the whole quilt. */
const WAYS = new Set<string>(['tie', 'quilt', 'wash', 'clean']);
/** Parts that a way may keep to; the front and the back are the whole quilt seen from one side. */
const isNamedPlace = (x: Item): boolean =>
  (x.fabric !== undefined && x.fabric.names.length > 0) ||
  (x.place !== undefined &&
    !/^place\.(?:it|that-one|them|those|both|every-block|all-blocks)$/.test(x.place.rule) &&
    x.place.places.length > 0 &&
    !x.place.places.every((p) => /^(?:quilt|top|backing|batting|binding)$/.test(p)));

const wayOf = (x: Item): string | undefined => (x.action && WAYS.has(x.action.v) ? x.action.v : undefined);

const LEADS = /^(?:only|just|along|across|the|on|in|at|round|around|all|both|of|its|up|down|over|out|off)$/;

/** How far the way reaches whose deed is at `k`: over a named place, which stands right behind it, or over all of it. */
function reach(items: Item[], k: number): 'part' | 'whole' {
  let at = k + 1;
  while (LEADS.test(items[at]?.w ?? '') && !items[at]!.place && at < k + 5) at++;
  return items[at] && isNamedPlace(items[at]!) ? 'part' : 'whole';
}

/** "tie it all over, or only quilt along the sashing": two ways, of which one keeps to a named place, are treatments and no matter. */
export function isWholeOrPart(items: Item[]): boolean {
  const or = items.findIndex((x) => /^(?:or|vs|versus)$/.test(x.w));
  const one = items.slice(0, Math.max(0, or)).findLastIndex(wayOf);
  const other = items.findIndex((x, k) => k > or && k < or + 6 && wayOf(x) !== undefined);
  return (
    one >= 0 &&
    other > 0 &&
    or - one < 8 &&
    wayOf(items[one]!) !== wayOf(items[other]!) &&
    reach(items, one) !== reach(items, other)
  );
}

/** Do two such ways stand open, so that what is told of one of them is told of a treatment? */
export function waysStandOpen({ open }: Memory, items: Item[]): boolean {
  const ways = open.filter((o) => WAYS.has(o.action));
  const whole = ways.some((o) => o.places.every((p) => p === 'quilt'));
  return (
    whole &&
    ways.some((o) => o.places.some((p) => p !== 'quilt')) &&
    items.some((x) => ways.some((o) => o.action === x.action?.v))
  );
}
