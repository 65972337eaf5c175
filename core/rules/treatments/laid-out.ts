import { wordsBetween } from '../words-between.ts';
import { isNet } from './is-cloth.ts';
import { found, type WayFound, type WordAt } from './way.ts';

/** "laid it all up, back and batting and top". */
export function laidOut({ items, k, item, all }: WordAt): WayFound {
  if (
    /^(laid|lay|laying|spread|spreading|stacked|put|sandwiched)$/.test(item.w) &&
    / (out|up|together|on top|over) /.test(wordsBetween(items, k + 1, k + 12)) &&
    !/ to dry /.test(` ${all}`) &&
    !items.some((x) => isNet(x) || x.object === 'old-patch') &&
    (new Set(items.map((x) => x.part).filter((p) => p === 'backing' || p === 'batting' || p === 'top'))
      .size >= 2 ||
      / (three|all|the|in|into) layers /.test(all) ||
      // "laid it out and pinned it"
      / (?:laid|lay) (?:it|everything|the lot|the whole thing|it all) (?:all )?(?:out|up)(?: flat| square| on \S+ \S+)? and (?:then )?(?:pinned|basted|tacked|pin|baste|tack) (?:it|everything|the lot|that)\b/.test(
        all,
      ))
  ) {
    return found(
      {
        action: 'layer',
        form: /ing$/.test(item.w) ? 'ing' : item.w === 'lay' ? 'base' : 'past',
        at: k,
        items: [item],
        rule: 'treatment.laid-out',
      },
      k,
    );
  }
  return undefined;
}
