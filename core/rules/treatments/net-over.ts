import { isPredicate } from '../clause/is-predicate.ts';
import type { Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';
import { isNet } from './is-cloth.ts';
import { plainVerbNear } from './plain-verb-near.ts';
import { verbNear } from './verb-near.ts';
import { found, type WayFound, type WordAt } from './way.ts';

/** "net over it", "a layer of tulle on 3-2": over the face. */
export function netOver({ items, k, item, before, after, all, choosing, used }: WordAt): WayFound {
  // "I'll net it instead", "might have to net 2-5": the verb
  if (
    item.w === 'net' &&
    / (?:'ll|will|to|gonna|could|might|may|should|must|shall|can|would|'d|let 's) (?:just |probably |also )?$/.test(
      before,
    ) &&
    !/^ (?:over|on) /.test(after)
  )
    return found({ action: 'overlay', form: 'base', at: k, items: [item], rule: 'treatment.to-net' }, k);
  // "column one got its crepeline in the end", "2-3 has had its net"
  if (
    isNet(item) &&
    HAS_GOT_ITS.test(before) &&
    items.slice(0, k).some((x) => x.place || x.fabric) &&
    !/ (?:off|back) /.test(after)
  )
    return found(
      { action: 'overlay', form: 'past', at: k, items: [item], stuff: item, rule: 'treatment.net-over' },
      k,
    );
  // "2-3 and 2-4 need net", "that gingham wants a bit of tulle"
  if (isNet(item) && NEEDS_IT.test(before) && needsForItself(items, k))
    return found({ action: 'overlay', form: 'base', at: k, items: [item], rule: 'treatment.net-over' }, k);
  // "when the tulle comes"
  if (
    / (?:when|once|if|until|till|before|unless) (?:the|my|that|some) (?:new |rest of the )?$/.test(before) &&
    /^ (?:comes|arrives|is|'s|turns|gets|has) /.test(after)
  )
    return 'none';
  if (
    isNet(item) &&
    // "the net was rubbish, sent it back": told of the net itself
    !(
      k <= 1 &&
      /^ (?:was|is|'s|has|looks|came|turned|feels) /.test(after) &&
      !/ (?:over|across|on|onto|laid|stitched|sewn|down|face|in|off|at) /.test(after)
    ) &&
    // "washed the net before using it"
    !/(?<! (?:of|with|some|the|a|under|beneath|in)) (?:washed|rinsed|soaked|ironed|pressed|dyed|cut|measured|bought) (?:the |some |that |out the )?$/.test(
      before,
    ) &&
    // "vacuumed the back through a net screen": what the brush goes over
    !(
      items[k + 1]?.w === 'screen' ||
      (/ through (?:a |the |some |fine |bit of |piece of |scrap of |layer of )*$/.test(before) &&
        items.some((x) => x.action?.v === 'clean'))
    ) &&
    // "the netting on 4-6 was puckered"
    !(
      items.some((x, m) => m > k && x.finding && !isLaidOver(items, k, m) && isPredicate(items, m)) &&
      !plainVerbNear(items, k) &&
      !choosing
    ) &&
    // "tacked the net in place": a fastening of what is there
    !(
      items.slice(Math.max(0, k - 3), k).some((x) => x.action?.v === 'baste' && x.action.form !== 'base') &&
      /^(the|that|this)$/.test(items[k - 1]?.w ?? '') &&
      !/ (over|across|on top) /.test(after)
    ) &&
    // "torn between lining 4-1 and net over the top"
    (choosing || !items.slice(0, k).some((x) => x.action?.v === 'stabilize' && x.action.form !== 'base')) &&
    (choosing ||
      // "tulle at 3-3"
      (items[k + 1]?.w === 'at' && items[k + 2]?.place?.kind === 'blocks') ||
      / (over|across|on|on top|onto|overlay|it is|laid|face|for|goes|stitched|sewn|sewed|round|instead|there) /.test(
        after,
      ) ||
      / (over|cover|covered|covered by|covering|overlay|under|beneath|lay|laid|layer of|layers of|in|with|maybe|possibly|perhaps|or|either|about|put|gets?|getting|go with|going with|try|some|a|the|no|forget|with a|'s) $/.test(
        before
          .replace(
            / (?:[\d.,]+|an?|half an?) (?:mm|cm|m|in|inch|inches|yards?|yd|metres?|metre) (?:of )?(?:dyed |fine )?$/,
            ' ',
          )
          .replace(/ (?:little|bit of|piece of|scrap of|fine|light|soft|dark|black|white|cream|new) $/, ' '),
      ) ||
      /\b(off|overlay)\b/.test(after))
  ) {
    if (
      !/\b(bought|buy|need|got|still|pick(ed)? up|yards?|metres?|ordered|spent)\b/.test(
        // "have both got their crepeline on"
        all
          .replace(/ (?:has|have|had|'ve|'s)(?: both| all| now)* got (?:its|their|the|a) /, ' has ')
          // "need to cover 2-3 with tulle": a deed, and nothing to buy
          .replace(/ (?:need|got) to (?=cover |lay |put |sew |stitch |net )/, ' to '),
      ) ||
      / (over|across|on top) /.test(after) ||
      // "got that net on this morning"
      (/^ on /.test(after) && / got (?:the |that |my |its |their |some |a bit of )?$/.test(before))
    ) {
      const plain = plainVerbNear(items, k);
      const verb =
        plain && plain.form !== 'noun'
          ? plain
          : verbNear(items, k, ['overlay', 'layer', 'resew', 'baste', 'stabilize'], used);
      // "net over 3-3, tacked down for now": how it is held until it is sewn is told beside it
      const held =
        verb !== undefined && items.slice(k + 1, verb.k).some((x) => x.place) && isHeld(items, verb.k);
      return found(
        {
          action: 'overlay',
          form: verb?.form ?? 'noun',
          at: held ? k : (verb?.k ?? k),
          items: verb && !held ? [items[verb.k]!, item] : [item],
          stuff: item,
          rule: 'treatment.net-over',
        },
        k,
        ...(verb && !held ? [verb.k] : []),
      );
    }
  }
  return undefined;
}

/** Is the net but pinned, tacked or basted on? */
const isHeld = (items: Item[], k: number): boolean =>
  items[k]!.action?.v === 'baste' && items[k]!.action.form === 'past' && !items[k]!.stitch;
/** "net over the stain", "tulle across that long tear": the damage at `m` is what the net at `k` lies over, and is not told of the net. */
const isLaidOver = (items: Item[], k: number, m: number): boolean =>
  / (?:over|across|on|onto|on top of) (?:the|that|this|those|these|its|my|all|both|old|big|little|long|worst|whole|of) (?:\S+ ){0,3}$/.test(
    wordsBetween(items, k + 1, m),
  ) && !/ (?:is|are|was|were|'s|has|have|looks?|and|but|,|\.|;|:) /.test(wordsBetween(items, k + 1, m));
const HAS_GOT_ITS =
  / (?:got|had|(?:has|have|'s|'ve)(?: now| finally| both| all)*(?: got| had)?) (?:its|their|the) (?:own |new |bit of |piece of |fine |dyed )*$/;

const NEEDS_IT =
  / (?:needs?|wants?|requires?|awaits?|awaiting|to have|is to get|are to get|will need|should have) (?:some |a (?:bit|piece|layer|scrap) of |fine |silk |a )*$/;

/** Is it a place or a cloth that needs the net, and neither she nor a list of what is to be bought? */
function needsForItself(items: Item[], k: number): boolean {
  const verb = items
    .slice(0, k)
    .findLastIndex((x) => /^(needs?|wants?|requires?|awaits?|awaiting|have|get|need to)$/.test(x.w));
  const from =
    items.slice(0, Math.max(0, verb)).findLastIndex((x) => /^(i|we|she|he|,|;|:|but|so)$/.test(x.w)) + 1;
  const subject = items.slice(from, verb);
  return (
    verb > 0 &&
    subject.some(
      (x) => x.fabric || (x.place && x.place.places.length > 0 && x.place.places[0] !== 'quilt'),
    ) &&
    !items.some((x) => (x.quantity?.unit && x.quantity.unit !== 'piece') || x.cost)
  );
}
