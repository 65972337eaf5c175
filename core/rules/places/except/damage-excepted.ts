import type { FabricIndex } from '../../fabrics/find-fabric.ts';
import { boundaryBefore, type Item } from '../../item.ts';
import { baseOf } from './base-of.ts';

const SLIGHT =
  /^(a|an|the|some|one|two|that|this|of|few|couple|bit|very|small|big|little|large|long|short|slight|tiny|minor|nasty|bad|odd|single)$/;

/** Where the damage from `k` on is, and where its words end: "a small tear in three two", "a tear in the one beneath it". */
function damageAt(items: Item[], k: number): { places: string[]; next: number } | undefined {
  let m = k;
  while (m < k + 5 && SLIGHT.test(items[m]?.w ?? '') && !items[m]!.finding) m++;
  if (!items[m]?.finding || items[m]!.finding === 'sound') return undefined;
  // "a stain the shape of a boat on 2-3": what it is like
  let at = m + 1;
  while (at < m + 8 && items[at] && !IN.test(items[at]!.w) && !ENDS.test(items[at]!.w) && !tells(items[at]!))
    at++;
  if (!IN.test(items[at]?.w ?? '')) return undefined;
  while (/^(in|on|at|near|along|the|a|very)$/.test(items[at]?.w ?? '') && !items[at]!.place) at++;
  const place = items[at]?.place;
  return place?.places.length ? { places: place.places, next: at + 1 } : undefined;
}
const IN = /^(in|on|at|near|along)$/;
const ENDS = /^([,.;:!?\n]|and|but|is|are|has|have|'s)$/;
const tells = (x: Item): boolean => Boolean(x.finding || x.place || x.action);

/** One damage after another: "a stain on 1-2 and a tear in the one beneath it". */
export function damagesAt(items: Item[], k: number): { places: string[]; next: number } | undefined {
  const places: string[] = [];
  let next = k;
  for (let from = k; ; ) {
    const one = damageAt(items, from);
    if (!one) break;
    places.push(...one.places);
    next = one.next;
    while (/^(,|and|&|\+|plus)$/.test(items[one.next]?.w ?? '')) one.next++;
    if (one.next === next) break;
    from = one.next;
  }
  return places.length ? { places, next } : undefined;
}

/** "(the twill is fine but for) a small tear in three two": the blocks of `base` that have something of their own. */
export function damageExcepted(items: Item[], k: number, base: string[]): string[] | undefined {
  const places = damagesAt(items, k)?.places ?? [];
  return places.length && places.length < base.length && places.every((p) => base.includes(p))
    ? places
    : undefined;
}

/**
 * "apart from a tear in 2-3, row two is sound", "looked at row two, and apart from a stain on the third block it's fine": the
 * damage is told for itself, and what it is excepted from comes behind, by its name or as "it".
 */
export function damageExceptedAhead(
  items: Item[],
  k: number,
  marker: number,
  isBase: (x: Item) => boolean,
  fabrics: FabricIndex,
): Item[] | undefined {
  const damage = damagesAt(items, k + marker);
  if (!damage) return undefined;
  let at = damage.next;
  while (/^(,|the|all|of|rest)$/.test(items[at]?.w ?? '') && !items[at]!.place) at++;
  const subject = items[at];
  if (!subject) return undefined;
  const told = /^place\.(it|them|those|all-of-them|both)$/.test(subject.place?.rule ?? '')
    ? items.slice(0, k).findLast((x) => isBase(x) && x.place?.how === 'said')
    : isBase(subject)
      ? subject
      : undefined;
  const base = told ? baseOf(told, fabrics) : [];
  if (!damage.places.every((p) => base.includes(p)) || damage.places.length >= base.length) return undefined;
  const rest = base.filter((p) => !damage.places.includes(p));
  const sound: Item = told!.place
    ? {
        ...subject,
        place: { next: subject.j, places: rest, how: 'implied', rule: 'place.all-but', kind: 'blocks' },
      }
    : { ...subject, fabric: { ...subject.fabric!, bar: damage.places } };
  const from = /^(and|but)$/.test(items[k - 1]?.w ?? '') ? k - 1 : k;
  return [
    ...items.slice(0, from),
    ...(from ? [boundaryBefore(items[k]!, ';')] : []),
    ...items.slice(k + marker, damage.next),
    boundaryBefore(items[damage.next]!, ';'),
    ...(items[at - 1]!.w === 'the' ? [items[at - 1]!] : []),
    sound,
    ...items.slice(at + 1),
  ];
}
