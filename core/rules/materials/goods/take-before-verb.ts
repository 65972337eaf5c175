import { itemWord as w } from '../../item-word.ts';
import type { Sentence } from '../../read-amounts.ts';
import { wordsBetween } from '../../words-between.ts';
import { findGood } from '../find-good.ts';
import { HAD_HERE } from './count-again.ts';
import type { GoodsTold } from './goods-told.ts';
import { postUse } from './post-use.ts';
import { pushGood } from './push-good.ts';
import { takeList } from './take-list.ts';

/** What stands before its verb: "batting to buy", "yarn 4 skeins wanted", "muslin in the drawer". */
export function takeBeforeVerb(told: GoodsTold, next: Sentence | undefined): void {
  const { items, claims, made } = told;
  const early = items.filter((x) => !claims.cut.has(x));
  const post = postUse(early);
  // "the drab's frayed and I've ordered nothing yet"
  if (post && /^(?:nothing|none|nowt|no)$/.test(w(early, post.end))) return;
  if (!post || (made.length && !(post.use === 'on-hand' && early.some((x) => x.quantity?.unit)))) return;
  // "tied row one with red pearl cotton, two skeins gone": the amount right before its verb
  const amount =
    post.use === 'used' && early[post.at - 1]?.quantity?.unit
      ? // "fusible web 3 yd used": of what is named right before it
        post.at - (early[post.at - 2]?.material && !early[post.at - 2]!.place && !early[post.at - 3] ? 2 : 1)
      : // "took the binding off, so that's eleven feet of new I need"
        early.findLastIndex((x, q) => q < post.at && x.w === 'so' && !x.place) + 1;
  for (let m = amount; m < post.at; m++) {
    const good = findGood(early, m, false);
    if (
      !good ||
      (good.head === undefined &&
        !good.points &&
        !(good.unit && good.next >= post.at && good.next <= post.end)) ||
      early.slice(m, good.head ?? m).some((x) => x.action && !x.material)
    )
      continue;
    // "tulle over the sashing, three quarters of a yard of it left": the tulle is not what is left
    if (
      good.quantity === undefined &&
      early
        .slice(good.next, post.at)
        .some((x) => (x.place && x.place.rule !== 'place.it') || (x.action && !x.material)) &&
      early.slice(good.next, post.at).some((x) => x.quantity?.unit)
    )
      continue;
    if (
      m > amount &&
      early.slice(amount, m).some((x) => x.place?.kind === 'blocks' || x.action?.form === 'past')
    )
      break;
    // the verb taken out, so that a price behind it follows its goods: "2.5 m calico bought, 4.80 a metre"
    // and so that it is told what for: "wide calico purchased for the back, 4.6 m"
    const goods =
      early.slice(post.end, post.end + 3).some((x) => x.cost) || /^(for|,)$/.test(w(early, post.end))
        ? early.filter(
            (x, q) =>
              q < post.at ||
              // "brown check, bought, 7.00 the pair"
              (q >= post.end && !(q === post.end && x.w === ',' && w(early, post.at - 1) === ',')),
          )
        : early;
    const none = /^(no|none|n't)$/.test(w(early, m - 1)) && post.use === 'on-hand';
    takeList(told, goods, m, none ? 'needed' : post.use, false);
    for (let q = post.at; q < post.end; q++) claims.cut.add(early[q]!);
    // "… two skeins used and one left"
    const rest = early.slice(post.end);
    const joint = rest.findIndex((x) => /^(and|,|but)$/.test(x.w));
    const had = joint < 0 || joint > 4 ? undefined : rest[joint + 1]?.quantity;
    const kept =
      w(rest, joint + 2) === 'left' ||
      // "six balls of yarn wanted for the tying, two in the cupboard"
      (post.use === 'needed' && HAD_HERE.test(wordsBetween(rest, joint + 2, joint + 7)));
    const last = made.at(-1)?.entry;
    if (
      had?.value !== undefined &&
      !had.unit &&
      kept &&
      last?.kind === 'material' &&
      /^(used|needed)$/.test(post.use)
    ) {
      const words = rest.slice(joint + 1, joint + 3);
      pushGood(told, { quantity: had.value, items: words, name: 'it', from: 1, next: 3 }, 'on-hand');
      for (const x of rest.slice(joint, joint + 3)) claims.cut.add(x);
    }
    break;
  }
  // "so many yards" told after the material
  const open = made.at(-1)?.entry as { quantity?: number; unit?: string } | undefined;
  if (open && open.quantity === undefined && !open.unit) {
    const unit = next?.items.find((x) =>
      /^(yards|metres|meters|feet|skeins|spools|reels|balls|packs)$/.test(x.w),
    );
    if (
      unit &&
      / (so many|some number|however many|n't (know|remember) how many|how many) /.test(
        wordsBetween(next!.items),
      )
    )
      open.unit = {
        yards: 'yd',
        metres: 'm',
        meters: 'm',
        feet: 'ft',
        skeins: 'skein',
        spools: 'spool',
        reels: 'spool',
        balls: 'ball',
        packs: 'pack',
      }[unit.w]!;
  }
}
