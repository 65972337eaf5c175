import type { MaterialUse } from '../../../../shared/vocabulary.ts';
import { itemWord as w } from '../../item-word.ts';
import { wordsBetween } from '../../words-between.ts';
import { findGood } from '../find-good.ts';
import type { GoodsTold } from './goods-told.ts';
import { pushGood } from './push-good.ts';

/** "(the muslin) I picked up,", "that I bought for the back," */
const GOT =
  /^ (?:that |which )?(?:i|we)(?: 've| have| 'd| had)? (?:just |also |finally )?(?:picked up|picked me up|bought|ordered|got|found|came home with|brought home|collected|sent for|sent off for)(?: today| yesterday| this morning| this afternoon| last week| on \w+day| online| for the (?:back|backing|binding|border|borders|ties))? (?:,|\(|-|--|:) /;

/**
 * "the muslin I picked up, 4 yards at 5.20, is for the back", "the batting I ordered, queen size, 38.50, has come": goods told in a
 * clause of their own behind what they are, with how much of them or what they cost between the commas.
 */
export function takeRelative(told: GoodsTold, k: number): number | undefined {
  const { items, claims } = told;
  const thing = items[k]!;
  if (!(thing.material || thing.fabric) || thing.place) return undefined;
  const got = GOT.exec(wordsBetween(items, k + 1, k + 12))?.[0];
  if (!got) return undefined;
  const named = findGood(items, k, false);
  // "a couple of reels of thread I bought, half a yard of flannel": told with its own amount, and another thing behind it
  if (named?.head === undefined || named.quantity !== undefined || items[k - 1]?.w === 'of') return undefined;
  const at = k + 1 + got.trim().split(' ').length;
  // "queen size,": how large it is
  let end = at;
  while (end < at + 5 && items[end] && !/^[,;.)]$/.test(w(items, end))) end++;
  const first = findGood(items, at, false);
  if (first?.head !== undefined) return undefined;
  const quantity = first?.head === undefined ? first?.quantity : undefined;
  const unit = first?.head === undefined ? first?.unit : undefined;
  let cost = first?.cost ?? items[at]?.cost;
  let next = first?.head === undefined && first ? first.next : end;
  if (quantity === undefined && !cost && w(items, end) === ',' && items[end + 1]?.cost) {
    cost = items[end + 1]!.cost!;
    next = end + 2;
  }
  if (quantity === undefined && !cost) return undefined;
  if (quantity !== undefined && unit === undefined && !cost) return undefined;
  // "4 yards, 5.20 each,"
  if (quantity !== undefined && !cost && w(items, next) === ',' && items[next + 1]?.cost) {
    cost = items[next + 1]!.cost!;
    next += 2;
  }
  const use: MaterialUse = 'bought';
  // "…, is for the back"
  const part = / for the (back|backing|binding|ties) /.exec(
    `${got}${wordsBetween(items, next, next + 6)}`,
  )?.[1];
  const purpose = /^(?:backing|batting|binding|tie-thread)$/.test(first?.material ?? '')
    ? first!.material
    : undefined;
  pushGood(
    told,
    {
      ...named,
      ...(purpose && named.material === 'fabric' ? { material: purpose } : {}),
      ...(part && named.material === 'fabric'
        ? { material: part === 'ties' ? 'tie-thread' : part === 'binding' ? 'binding' : 'backing' }
        : {}),
      ...(quantity === undefined ? {} : { quantity }),
      ...(unit ? { unit } : {}),
      ...(cost ? { cost: { amount: cost.amount, ...(cost.each ? { each: true as const } : {}) } } : {}),
    },
    use,
  );
  for (let m = k; m < next; m++) claims.cut.add(items[m]!);
  return next;
}
