import { boundaryBefore, type Item } from '../../item.ts';

const LEADS = /^([,(.;]|--|and|but|so|um|uh|er|leaving|left)$/;

/** "(pressed) all but the middle one, which I'm leaving", "all but the top left. That one I'll patch": the one excepted is what is told of next. */
export function withBarredTold(items: Item[]): Item[] {
  if (!items.some((x) => x.place?.bar)) return items;
  return items.flatMap((x, k) => {
    if (x.w !== 'which' && !/^place\.(that-one|it)$/.test(x.place?.rule ?? '')) return [x];
    let m = k - 1;
    while (m >= 0 && k - m < 4 && LEADS.test(items[m]!.w) && !items[m]!.place) m--;
    const barred = items[m]?.place?.bar;
    if (!barred || m === k - 1) return [x];
    const told: Item = {
      ...x,
      place: { next: x.j, places: barred, how: 'implied', rule: 'place.excepted', kind: 'blocks' },
    };
    return x.w === 'which' ? [boundaryBefore(x), told] : [told];
  });
}
