import type { Material, MaterialUse } from '../../../shared/vocabulary.ts';
import { LENGTH_UNIT_SET } from '../../lexicon/units.ts';
import { REMOVE_VERBS } from '../clause/removal-at.ts';
import { type Draft, makeDraft } from '../draft.ts';
import type { Item } from '../item.ts';
import { itemWord as w } from '../item-word.ts';
import type { Claims, Sentence } from '../read-amounts.ts';
import type { ReaderState } from '../reader-state.ts';
import { wordsBetween } from '../words-between.ts';
import { findGood, type GoodFound, STORES } from './find-good.ts';
import { hadAfterAll } from './had-after-all.ts';
import { measuredIn } from './measured-in.ts';

/** A sentence with the items of the one before it. */
type Told = Sentence & { before?: Item[] | undefined };

type Cue = { use: MaterialUse; next: number; weak?: boolean };

const CUES: [string, MaterialUse, 'weak' | 'firm'][] = [
  [
    'bought|rcvd|recd|received|got in|delivery|parcel came|parcel :|sent off for|sent away for|put in an order for|let me have|had to buy|had to get|had to order|took delivery of|ordered|purchased|purchases|purchase|bt|bght|grabbed|fetched|stocked up on|treated myself to|picked up|picked me up|come home with|came home with|brought home|brought back|came away with|come away with|receipt|haul|from the shop|at the shop|paid for|splurged on|collected|got hold of|on order',
    'bought',
    'firm',
  ],
  [
    'used up|used|materials :|mats :|went through|gone through|got through|ate up|ate|ate into|eaten|took up|swallowed|finished off|used about',
    'used',
    'firm',
  ],
  [
    "to be bought|to be got|to be ordered|to be purchased|to be fetched|still to be bought|still to be got|still to be ordered|to buy|to get|to order|to purchase|must purchase|need to purchase|have to purchase|need to order|have to order|need to pick up|must order|must pick up|must buy|must get|need to buy|need to get|have to buy|have to get|'ve to get|'ve to buy|got to get|got to buy|gotta get|gotta buy|gotta order|got to order|still to buy|still to get|shopping list|shop list|list|short of|short on|short by|not enough|n't enough|n't got enough|n't have enough|run out of|ran out of|running out of|'m short|am short|'re short|are short|'m short of|running low on|low on|nearly out of|all out of|clean out of|fresh out of|out of|could do with|be needing|need|needs|needed|still need|will need|'ll need|takes|will take|'ll take|buy|order|to pick up|pick up|wanted|lack|lacking|am without|'m without|to fetch|n't forget|must remember",
    'needed',
    'firm',
  ],
  ["want|'ll want|will want|get|going to want|get some", 'needed', 'weak'],
  [
    "only got|only have|only had|down to my last|down to the last|on my last|gave me|given me|been given|was given|passed on to me|on hand|in stock|in hand|already have|already own|i own|we own|still own|already got|'ve already got|have already got|have got|'ve got|i have|still have|'ve still got|in the cupboard|in the drawer|in the stash|in the box|in the chest|in the bag|in the tin|on the shelf|in drawer|in cupboard|in stash|in box|in chest|in bag|in tin|on shelf|in my stash|left over|left|spare|leaves me|leaves us|leave me|leave us|leaving me|leaving us|that leaves|which leaves|left me|left us",
    'on-hand',
    'firm',
  ],
  ["have|'ve|leaving|leaves|got left|there 's|there is|there are|there 're|there was", 'on-hand', 'weak'],
  ['got|had|came home|came away with|took', 'bought', 'weak'],
];
const CUE_OF = new Map<string, { use: MaterialUse; weak?: true }>();
for (const [phrases, use, strength] of CUES)
  for (const phrase of phrases.split('|'))
    if (!CUE_OF.has(phrase)) CUE_OF.set(phrase, { use, ...(strength === 'weak' ? { weak: true } : {}) });
const CUE_HEADS = new Set([...CUE_OF.keys()].map(firstWord));

function firstWord(phrase: string): string {
  const blank = phrase.indexOf(' ');
  return blank < 0 ? phrase : phrase.slice(0, blank);
}

/** The word for buying, needing or having at item `k`. */
function cueAt(items: Item[], k: number): Cue | undefined {
  const list = items[k] && putOnList(items, k);
  if (list) return { use: 'needed', next: list };
  if (!items[k] || !CUE_HEADS.has(firstWord(w(items, k)))) return undefined;
  // "in the closet: 3 yd of muslin"
  if (/^(in|on)$/.test(w(items, k)) && /^(the|my)$/.test(w(items, k + 1)) && STORES.test(w(items, k + 2))) {
    // "in the cupboard I found a packet of pins"
    let m = k + 3;
    while (m < k + 7 && /^(i|we|found|there|'s|is|are|'ve|have|got|'re|,)$/.test(w(items, m))) m++;
    if (w(items, k + 3) === ':' || items[m]?.quantity?.unit) return { use: 'on-hand', next: m };
  }
  for (let n = Math.min(4, items.length - k); n >= 1; n--) {
    const phrase = wordsBetween(items, k, k + n).trim();
    if (items.slice(k, k + n).some((x) => x.quantity || x.cost || x.place?.kind === 'blocks')) continue;
    // "frayed on the left": a side, and nothing left over
    if (
      items[k]!.place?.places[0]?.includes('-left') ||
      (w(items, k) === 'left' && /^(the|top|bottom|upper|lower|far)$/.test(w(items, k - 1))) ||
      // "top 60, right 72, left 71.5 inches"
      (w(items, k) === 'left' && items.filter((x) => /^(top|right|bottom|btm)$/.test(x.w)).length > 1) ||
      // "found a pin left in the batting"
      (w(items, k) === 'left' &&
        /^(in|inside|under|behind|between)$/.test(w(items, k + 1)) &&
        items.slice(0, k).some((x) => x.w === 'found')) ||
      // "someone had left pins in the border"
      (w(items, k) === 'left' &&
        / (?:someone|somebody|they|who|whoever)(?: had| has| 'd| 've)* $/.test(
          wordsBetween(items, k - 3, k),
        )) ||
      // "left-handed shears"
      (w(items, k) === 'left' && /^(-|handed|hand)$/.test(w(items, k + 1))) ||
      // "with what was left of the gingham": used up
      (w(items, k) === 'left' &&
        w(items, k + 1) === 'of' &&
        items.slice(Math.max(0, k - 5), k).some((x) => /^(with|from|using|out|of|in)$/.test(x.w)))
    )
      continue;
    const cue = CUE_OF.get(phrase);
    // "the receipt says the calico was three fifty"
    if (
      phrase === 'receipt' &&
      /^(says|said|shows|reads|has|tells|in|here|from|is|was)$/.test(w(items, k + 1))
    )
      continue;
    // "to buy then, a metre of calico"
    const then = cue?.use === 'needed' && n > 1 && /^(then|now|so)$/.test(w(items, k + n)) ? 1 : 0;
    if (cue) return { ...cue, next: k + n + then };
  }
  return undefined;
}

/** Lists of goods bought, needed, on hand or used up; their words are claimed. */
export function readGoods(state: ReaderState, sentences: Sentence[], claims: Claims): void {
  let carried: MaterialUse | undefined;
  let lastSentence = -2;
  let lastNumber = -2;
  for (const [number, own] of sentences.entries()) {
    const sentence: Told = { ...own, before: sentences[number - 1]?.items };
    const items = underHeading(sentence.items);
    const all = wordsBetween(items);
    const priced = items.some((x) => x.cost) || isBill(items);
    const shop = / (shop|shopping|store|market|town|receipt|stall|counter|haberdasher|draper) /.test(all);
    let use: MaterialUse | undefined;
    let k = 0;
    const made: Draft[] = [];
    while (k < items.length) {
      const after = hadAlready(state, sentence, items, k, made);
      if (after) {
        for (const x of items.slice(k, after)) claims.cut.add(x);
        k = after;
        continue;
      }
      // "no pins left, two packs to get"
      const none = noneLeft(items, k);
      if (none) {
        push(state, sentence, none, 'needed', made);
        for (const x of items.slice(k, none.next + 1)) claims.cut.add(x);
        k = none.next + 1;
        continue;
      }
      // "75 cm calico used, 40 cm left", "four feet of binding left over in the box"
      const behind = usedBehind(items, k, justCounted(state, sentence));
      if (behind) {
        push(state, sentence, behind.good, behind.use, made);
        for (const x of items.slice(behind.good.from, behind.next)) claims.cut.add(x);
        k = behind.next;
        continue;
      }
      // "spent £12.60 on a metre of silk", "paid 15 for the lining"
      const price = items[k]!.cost ?? nextPrice(items, k, made);
      // "parted with £8.40 at the market for …"
      let to = k + 1;
      while (
        to < k + 5 &&
        (items[to]?.task === 'shopping' ||
          /^(even|exactly|flat|at|in|from|down|the|a|my|town|market|shop|store|fair|sale|stall|i|we|paid)$/.test(
            w(items, to),
          ))
      )
        to++;
      if (
        price &&
        /^(on|for)$/.test(w(items, to)) &&
        // "1¾ m linen @ 12/m for binding": the price of what stands before it
        !(items[k]!.cost && (items[k - 1]?.material || items[k - 1]?.fabric)) &&
        (!made.length ||
          w(items, to) === 'on' ||
          !items[k]!.cost ||
          // "paid 56.25 for 5 yd backing and 3.10 each for 2 packs of sharps"
          (/^(,|and|&|\+)$/.test(w(items, k - 1)) && findGood(items, to + 1, false)?.quantity !== undefined))
      ) {
        const good = withoutNextPrice(items, findGood(items, to + 1, false));
        if (
          good &&
          (good.head !== undefined ||
            // "paid 18 for three yards"
            (/^(paid|spent|gave|to|)$/.test(w(items, k - 1)) && good.unit && good.quantity !== undefined)) &&
          !good.cost &&
          !/^(job|quilt|work|repair)$/.test(w(items, good.head ?? to))
        ) {
          push(
            state,
            sentence,
            { ...good, cost: { amount: price.amount, ...(price.each ? { each: true as const } : {}) } },
            'bought',
            made,
          );
          for (let m = k; m < good.next; m++) claims.cut.add(items[m]!);
          if (/^(spent|paid|i|we|with)$/.test(w(items, k - 1))) claims.cut.add(items[k - 1]!);
          // "paid 18 for two yards of lining, and three spools of thread"
          let on = good.next;
          while (/^(,|and|&|\+|plus|there|were|was)$/.test(w(items, on))) on++;
          const more = on > good.next ? findGood(items, on, false) : undefined;
          k =
            more?.head !== undefined &&
            (more.quantity !== undefined || /^(|,|and|&|for|at|from|today)$/.test(w(items, more.next)))
              ? takeList(state, sentence, items, on, 'bought', claims, made, true, carried)
              : good.next;
          continue;
        }
      }
      // "that net I bought was six pounds a metre and I took two metres"
      const bought = toldByPrice(items, k);
      if (bought) {
        push(state, sentence, bought, 'bought', made);
        for (let m = k; m < bought.next; m++) claims.cut.add(items[m]!);
        k = bought.next;
        continue;
      }
      const cue = cueAt(items, k);
      // "two yards of lawn I need, and a spool of thread"
      const ahead =
        cue && !made.length && /^(bought|needed)$/.test(cue.use) && /^(,|and|&|)$/.test(w(items, cue.next))
          ? toldBefore(items, k)
          : undefined;
      if (cue && ahead) {
        push(state, sentence, ahead, cue.use, made);
        for (const x of items.slice(ahead.from, cue.next)) claims.cut.add(x);
        let on = cue.next;
        while (/^(,|and|&)$/.test(w(items, on))) on++;
        const more = on > cue.next ? findGood(items, on, false) : undefined;
        k =
          more?.quantity !== undefined && more.head !== undefined
            ? takeList(state, sentence, items, on, cue.use, claims, made, true, carried)
            : cue.next;
        continue;
      }
      if (cue && !isOther(items, k, cue, priced || shop)) {
        let at = cue.next;
        const headed = headingEnd(items, at);
        if (headed !== undefined) at = headed;
        while (
          // "bought at the market: 2 m calico"
          (items[at]?.task === 'shopping' ||
            // "what I have to buy is a yard of net"
            (/^(is|are|was)$/.test(w(items, at)) && /^(what|all)$/.test(w(items, Math.max(0, k - 2)))) ||
            // "used on 2-2: half a yard of muslin"
            (cue.use === 'used' && items[at]?.place && w(items, at + 1) === ':') ||
            /^(:|,|-|today|now|here|still|also|me|in|up|just|this|for|one|time|the|on|it|these|of|home|with|from|town|at|market|shop|store|stall|sale|fair|yesterday|morning|afternoon|lunchtime)$/.test(
              w(items, at),
            )) &&
          at < cue.next + 8 &&
          !goodAt(items, at, cue, priced)
        )
          at++;
        const good = goodAt(items, at, cue, priced);
        if (good) {
          // "that took 3 m of binding" is used up, "I took five yards at £2" bought
          use = /^took/.test(w(items, k)) && !priced && cue.use === 'bought' ? 'used' : cue.use;
          if (/^only$/.test(w(items, k)) && (priced || shop)) use = 'bought';
          // "I've three and a half metres of calico to buy yet"
          if (
            use === 'on-hand' &&
            / to (?:buy|get|order|find|pick up|fetch)(?: yet| still| in)? (?:$|[,.;]|for |and |at |from |in |tomorrow |on )/.test(
              wordsBetween(items, good.next, good.next + 6).replace(/^ (?:yet|still) /, ' '),
            )
          ) {
            use = 'needed';
            if (good.material === 'fabric')
              good.material = / for (?:the )?(?:back|backing) /.test(
                wordsBetween(items, good.next, good.next + 8),
              )
                ? 'backing'
                : 'fabric';
          }
          // "I got three yards of it in the cedar chest": had, and not bought
          if (
            /^(got|had)$/.test(w(items, k)) &&
            !priced &&
            !shop &&
            (keptInStore(items, good.next) ||
              /^(left|spare)$/.test(w(items, good.next).split(' ')[0]!) ||
              // "I got one roll of batting here already"
              HAD_HERE.test(wordsBetween(items, good.next, good.next + 5)))
          )
            use = 'on-hand';
          const fronted = use === 'bought' || use === 'needed' ? toldBefore(items, k) : undefined;
          if (fronted) {
            push(state, sentence, fronted, use, made);
            for (const x of fronted.items) claims.cut.add(x);
          }
          for (let m = k; m < at; m++) claims.cut.add(items[m]!);
          k = takeList(state, sentence, items, at, use, claims, made, true, carried);
          continue;
        }
        const had = justCounted(state, sentence) ? countOnHand(items, k, cue) : undefined;
        if (had) {
          push(
            state,
            sentence,
            { quantity: had.quantity, items: items.slice(k, had.at), name: 'it', from: k, next: had.at },
            'on-hand',
            made,
          );
          const from = /^(i|we)$/.test(w(items, k - 1)) ? k - 1 : k;
          for (let m = from; m < had.at; m++) claims.cut.add(items[m]!);
          k = had.at;
          // "8 skeins of yarn (have 2) and a pack of needles": the list goes on
          const onward = /^[),]$/.test(w(items, k)) ? k + 1 : k;
          if (use && /^(and|&|\+|plus)$/.test(w(items, onward))) {
            const more = findGood(items, onward + 1, false);
            if (more?.quantity !== undefined && more.head !== undefined)
              k = takeList(state, sentence, items, onward + 1, use, claims, made, true, carried);
          }
          continue;
        }
        // "… still to buy", "2.2 m bought": the list stood before
      }
      k++;
    }
    // "to buy - net 2 yd; needles 1 pk"
    if (
      !made.length &&
      carried &&
      sentence.number === lastSentence + 1 &&
      state.tokens[(items[0]?.i ?? 0) - 1]?.w === ';' &&
      items.some((x) => x.quantity) &&
      !items.some((x) => x.action || x.place?.kind === 'blocks' || x.finding) &&
      findGood(items, 0, priced)?.head !== undefined
    )
      takeList(state, sentence, items, 0, carried, claims, made, true, carried);
    // "still to get: batting, 2 yards; binding, 7 yards": the list goes on behind a semicolon
    if (!made.length && carried && lastNumber === number - 1 && isAfterSemicolon(state, items)) {
      const good = findGood(items, 0, true);
      if (good?.head !== undefined && (good.quantity !== undefined || good.next === items.length))
        takeList(state, sentence, items, 0, carried, claims, made, true, carried);
    }
    const early = items.filter((x) => !claims.cut.has(x));
    if (!made.length || (postUse(early)?.use === 'on-hand' && early.some((x) => x.quantity?.unit))) {
      // what stands before its verb: "batting to buy", "yarn 4 skeins wanted", "muslin in the drawer"
      const post = postUse(early);
      if (post) {
        // "tied row one with red pearl cotton, two skeins gone": the amount right before its verb
        const amount =
          post.use === 'used' && early[post.at - 1]?.quantity?.unit
            ? post.at - 1
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
              ? early.filter((_, q) => q < post.at || q >= post.end)
              : early;
          const none = /^(no|none|n't)$/.test(w(early, m - 1)) && post.use === 'on-hand';
          takeList(state, sentence, goods, m, none ? 'needed' : post.use, claims, made, false, undefined);
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
            const told = rest.slice(joint + 1, joint + 3);
            push(
              state,
              sentence,
              { quantity: had.value, items: told, name: 'it', from: 1, next: 3 },
              'on-hand',
              made,
            );
            for (const x of rest.slice(joint, joint + 3)) claims.cut.add(x);
          }
          break;
        }
        // "so many yards" told after the material
        const open = made.at(-1)?.entry as { quantity?: number; unit?: string } | undefined;
        if (open && open.quantity === undefined && !open.unit) {
          const next = sentences[number + 1];
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
    }
    if (
      !made.length &&
      priced &&
      !items.some(
        (x, m) =>
          x.action &&
          x.action.form !== 'base' &&
          !x.material &&
          !x.part &&
          // "six skeins of white floss for tying"
          w(items, m - 1) !== 'for',
      )
    ) {
      // prices say that the goods were bought
      const goods = items
        .map((_x, m) => findGood(items, m, true))
        .filter(
          (g): g is GoodFound => g?.cost !== undefined && (g.head !== undefined || g.unit !== undefined),
        );
      const first = goods[0];
      if (first) {
        const from = listedBefore(
          items,
          Math.min(...goods.filter((g) => g.next === first.next).map((g) => g.from)),
        );
        if (!items.slice(0, from).some((x) => x.topic === 'price' || x.w === 'price'))
          takeList(
            state,
            sentence,
            items,
            from,
            sentence.number === lastSentence + 1 && carried ? carried : 'bought',
            claims,
            made,
            true,
            carried,
          );
      }
    }
    // "spent 12 dollars at the shop": on what is not told
    const spent = made.length ? -1 : items.findIndex((x) => x.cost);
    if (
      spent >= 0 &&
      (/^(spent|paid)$/.test(w(items, spent - 1)) || /^(spent|paid) /.test(w(items, spent))) &&
      (items.length === spent + 1 ||
        items[spent + 1]?.task === 'shopping' ||
        (shop && items.length <= spent + 5))
    ) {
      const { amount } = items[spent]!.cost!;
      push(
        state,
        sentence,
        { cost: { amount }, items, name: 'it', from: 0, next: items.length },
        'bought',
        made,
      );
      for (const x of items) claims.cut.add(x);
    }
    // "been through the bath, forty grams of soap flakes": a wash uses up what it is told with
    if (!made.length && !priced)
      for (let m = 0; m < items.length; m++) {
        const little = A_LITTLE.test(w(items, m)) && w(items, m + 1) === 'of';
        if ((!items[m]!.quantity?.unit && !little) || claims.cut.has(items[m]!)) continue;
        const good = findGood(items, little ? m + 2 : m, false);
        if (!good || (good.material !== 'detergent' && !(little && good.material === 'other'))) continue;
        if (good.quantity === undefined && !little) continue;
        if (
          / (will|'ll|need|needs|want|wants|going to|to|should|maybe|might) /.test(wordsBetween(items, 0, m))
        )
          continue;
        takeList(state, sentence, items, good.from, 'used', claims, made, false, undefined);
        break;
      }
    // "18 all in, 2 m of it bought": the sum told first
    const [alone] = made;
    const sum = items[0]?.cost;
    if (
      sum?.whole &&
      w(items, 1) === ',' &&
      made.length === 1 &&
      alone?.entry.kind === 'material' &&
      alone.entry.use === 'bought' &&
      !alone.entry.cost
    ) {
      alone.entry.cost = { amount: sum.amount };
      claims.cut.add(items[0]!);
    }
    if (made.length) {
      carried = (made.at(-1)!.entry as { use: MaterialUse }).use;
      lastSentence = sentence.number;
      lastNumber = number;
    }
  }
}

/** What soap and vinegar are measured in. */
const A_LITTLE =
  /^(?:splash|dash|drop|drops|squirt|glug|pinch|capful|cupful|cup|spoonful|spoonfuls|spoon|spoons|teaspoon|teaspoons|tablespoon|tablespoons|handful|dollop)$/;

/** "paid 3.99 for pins, 8 for a yard of tulle": a sum in a list of them. */
function nextPrice(items: Item[], k: number, made: Draft[]): { amount: number; each: false } | undefined {
  const value = items[k]!.quantity?.value;
  if (value === undefined || items[k]!.quantity!.unit) return undefined;
  // "it came to twenty-four for three yards of it"
  if (/ (?:came|comes|come) to $/.test(wordsBetween(items, k - 2, k)) && w(items, k + 1) === 'for')
    return { amount: value, each: false };
  if (!/^(,|and|&)$/.test(w(items, k - 1))) return undefined;
  if (!/^(for|on)$/.test(w(items, k + 1)) || !items.slice(0, k).some((x) => x.cost)) return undefined;
  const last = made.at(-1)?.entry;
  return last?.kind === 'material' && last.cost ? { amount: value, each: false } : undefined;
}

/** "A couple of reels of red thread I bought, half a yard of flannel …": the good that stands before "I" and the verb at `k`. */
function toldBefore(items: Item[], k: number): GoodFound | undefined {
  if (!/^(i|we)$/.test(w(items, k - 1))) return undefined;
  for (let m = Math.max(0, k - 10); m < k - 1; m++) {
    const good = findGood(items, m, false);
    const told = good?.quantity !== undefined || m === 0 || /^(,|and|&)$/.test(w(items, m - 1));
    if (good?.head !== undefined && told && good.next === k - 1) return good;
  }
  return undefined;
}

/** "£28 on wadding, £9.80 on two metres of lining": the sum behind the comma is of what comes next. */
function withoutNextPrice(items: Item[], good: GoodFound | undefined): GoodFound | undefined {
  if (!good?.cost || good.head === undefined) return good;
  const at = items.findIndex((x, m) => m > good.head! && m < good.next && x.cost);
  if (w(items, at - 1) !== ',' || !/^(on|for)$/.test(w(items, at + 1))) return good;
  const { cost: _cost, ...rest } = good;
  return { ...rest, items: items.slice(good.from, at - 1), next: at - 1 };
}

/** "no hang on, I've got one of those": what was to be got, or told with no word for getting it, is on hand. Gives the index after the words. */
function hadAlready(
  state: ReaderState,
  sentence: Told,
  items: Item[],
  k: number,
  made: Draft[],
): number | undefined {
  const had = hadAfterAll(items, k);
  if (!had) return undefined;
  const wanted = state.drafts.findLast(
    ({ entry: e, sentence: n }) =>
      e.kind === 'material' &&
      e.use === 'needed' &&
      n >= sentence.number - 1 &&
      n <= sentence.number &&
      (!had.named || e.material === had.named.material),
  );
  if (wanted?.entry.kind === 'material') {
    const { quantity, unit, ...rest } = wanted.entry;
    wanted.entry = {
      ...rest,
      use: 'on-hand',
      ...(had.some || quantity === undefined ? {} : { quantity }),
      ...(had.some || !unit ? {} : { unit }),
    };
    return had.next;
  }
  // "three yards of muslin for the back, no hang on, I have that already"
  const told = made.length || had.named ? undefined : findGood(items, 0, false);
  if (told?.quantity === undefined || told.head === undefined) return undefined;
  if (told.next !== k && !(w(items, told.next) === ',' && told.next === k - 1)) return undefined;
  push(state, sentence, told, 'on-hand', made);
  return had.next;
}

/** "no pins left", "not any thread left": what has run out. */
function noneLeft(items: Item[], k: number): GoodFound | undefined {
  if (w(items, k) !== 'no' && !(w(items, k) === 'any' && /^(n't|not)$/.test(w(items, k - 1))))
    return undefined;
  const good = findGood(items, k + 1, false);
  return good?.head !== undefined &&
    good.quantity === undefined &&
    /^(left|remaining)$/.test(w(items, good.next))
    ? good
    : undefined;
}

const BEHIND =
  /^(?:used up|used|used so far|gone|left over|left|spare|to spare|remaining|bought|ordered|purchased|needed|wanted|required|to buy|to get|to order|to find|on hand|in stock|in hand|would do|will do|should do|'ll do)$/;
const JOINT_BEHIND = /^ *(?:$|[,;.)] |and |but |so |(?:in|on) (?:the|my) )/;

/** An amount whose verb stands behind it, in a list of such: "75 cm calico used, 40 cm left". */
function usedBehind(
  items: Item[],
  k: number,
  counted: boolean,
): { good: GoodFound; use: MaterialUse; next: number } | undefined {
  const amount = items[k]!.quantity;
  if (amount?.value === undefined || items.slice(0, k).some((x) => x.cost)) return undefined;
  if (k > 0 && !/^(,|and|&|but|so|:|;|--|-)$/.test(w(items, k - 1))) return undefined;
  // "8 yd bias binding & 18 in fusible on hand": one list, with its verb behind it
  if (k > 0 && listedBefore(items, k) < k && items.filter((x) => BEHIND.test(x.w)).length < 2)
    return undefined;
  // "used two yards of muslin, one left": of the goods just told
  const bare = !amount.unit && k > 0 && counted;
  if (!amount.unit && !bare) return undefined;
  for (let at = k + 1; at < Math.min(items.length, k + 7); at++) {
    if (/^[,.;]$/.test(w(items, at))) return undefined;
    for (const n of [2, 1]) {
      const phrase = wordsBetween(items, at, at + n).trim();
      const use = BEHIND.test(phrase) && USE_BEHIND[phrase.split(' ').at(-1)!];
      if (!use || (bare && use !== 'on-hand')) continue;
      if (!JOINT_BEHIND.test(wordsBetween(items, at + n, at + n + 3).slice(1))) continue;
      // told alone it is a plain statement; "a packet of betweens to buy, and two reels of the ecru": one list, with its verb in it
      if (k === 0 && !items.slice(at + n).some((x) => BEHIND.test(x.w))) return undefined;
      const told = items.slice(0, at);
      const good = bare
        ? { quantity: amount.value, items: told.slice(k), name: 'it', from: k, next: k + 1 }
        : findGood(told, k, false);
      return good?.quantity === undefined || good.cost || good.next !== at
        ? undefined
        : { good, use, next: at + n };
    }
  }
  return undefined;
}
const USE_BEHIND: Record<string, MaterialUse> = {
  up: 'used',
  used: 'used',
  gone: 'used',
  over: 'on-hand',
  left: 'on-hand',
  spare: 'on-hand',
  remaining: 'on-hand',
  bought: 'bought',
  ordered: 'bought',
  purchased: 'bought',
  needed: 'needed',
  wanted: 'needed',
  required: 'needed',
  buy: 'needed',
  get: 'needed',
  order: 'needed',
  find: 'needed',
  hand: 'on-hand',
  do: 'needed',
  stock: 'on-hand',
};

const isAfterSemicolon = (state: ReaderState, items: Item[]): boolean =>
  state.tokens[(items[0]?.i ?? 0) - 1]?.w === ';';

/** "muslin, two spools of thread and pins came to 31.40": where the list begins that ends in the priced good at `from`. */
function listedBefore(items: Item[], from: number): number {
  for (let k = 0; k < from; k++) {
    let at = k;
    while (at < from) {
      const good = findGood(items, at, false);
      if (good?.head === undefined || good.next > from || good.cost) break;
      at = good.next;
      if (!/^(,|and|&|\+|plus)$/.test(w(items, at))) break;
      while (/^(,|and|&|\+|plus)$/.test(w(items, at))) at++;
    }
    if (at === from) return k;
  }
  return from;
}

/** "On hand for the crib quilt: 2 fat quarters": the first word behind the colon that the heading ends in. */
function headingEnd(items: Item[], from: number): number | undefined {
  if (w(items, from) !== 'for') return undefined;
  for (let m = from + 1; m < from + 7; m++) {
    if (w(items, m) === ':') return m + 1;
    if (items[m]?.token.kind !== 'word' || items[m]!.quantity || items[m]!.material) return undefined;
  }
  return undefined;
}

/** "shopping: 2 m calico 14, roll of wadding 38": numbers behind the goods are their prices. */
const isBill = (items: Item[]): boolean =>
  items[0]?.task === 'shopping' &&
  w(items, 1) === ':' &&
  items.some((x, k) => x.quantity && !x.quantity.unit && items[k - 1]?.material);

/** Do the words behind the goods tell where they are kept: "in the cedar chest", "up in the attic"? */
function keptInStore(items: Item[], from: number): boolean {
  for (let m = from; m < from + 3; m++)
    if (/^(in|on)$/.test(w(items, m)) && STORES.test(w(items, m + 1))) return true;
    else if (/^(in|on)$/.test(w(items, m)) && /^(the|my|a)$/.test(w(items, m + 1)))
      return STORES.test(w(items, m + 2)) || (!items[m + 2]?.place && STORES.test(w(items, m + 3)));
  return false;
}

/** Goods that open with what they are and go on with the price of one: the amount follows it. */
function toldByPrice(items: Item[], k: number): GoodFound | undefined {
  // "needles were a pound a pack and I bought three packs"
  if (
    (items[k]!.material || items[k]!.fabric) &&
    /^(was|were|is|are|'s|cost|came)$/.test(w(items, k + 1)) &&
    items.slice(k + 2, k + 4).some((x) => x.cost?.each)
  ) {
    const priced = findGood(items, k, false);
    return priced?.cost?.each && priced.quantity !== undefined ? priced : undefined;
  }
  if (
    !(items[k]!.material || items[k]!.fabric) ||
    !/^(i|we)$/.test(w(items, k + 1)) ||
    !/^(bought|ordered|got|had)$/.test(w(items, k + 2)) ||
    !/^(was|were|cost|came)$/.test(w(items, k + 3))
  )
    return undefined;
  const good = findGood(items, k, false);
  return good?.cost ? good : undefined;
}

/** When or where the goods were got, behind them and one more. */
const BOUGHT_THEN =
  /^ (?:(?:,|and|&) (?:\w+ ){1,3}){0,2}(?:today|yesterday|this (?:morning|afternoon|week)|last (?:night|week)|(?:at|from) the (?:\w+ )?(?:market|shop|store|fair|sale|haberdasher)|in town|on the way (?:home|back|in)|on (?:mon|tues|wednes|thurs|fri|satur|sun)day|online)\b/;
/** What is wanted is work: cloth "sewn in behind". */
const WANTS_WORK =
  /^ (?:a|an|some|something|a few|another|new|the)? ?(?:\S+ ){0,6}?(?:sewn|stitched|put|set|slipped|tacked|laid|let|basted|pieced|cut|couched|patched|fused|ironed|sewing|stitching|putting|tacking|basting|laying|slipping|fusing|ironing|setting|running) (?:on |in |into |down |up )?(?:behind|underneath|under|beneath|over|on|in|there|across)\b/;

const MODAL =
  /^(still|also|may|might|could|will|'ll|would|probably|maybe|perhaps|possibly|really|well|both|all|just)$/;

/** A word for needing or having that is about something else: "needs patching", "have patched", "got it off". */
function isOther(items: Item[], k: number, cue: Cue, trade: boolean): boolean {
  const phrase = wordsBetween(items, k, cue.next).trim();
  // "when I measured it from corner to corner I got 228 cm one way"
  if (/got$/.test(phrase) && items.some((x) => x.measure === 'diagonal')) return true;
  // "the other three sides still need binding"
  // "2-3 may well need a lining": whose need it is stands before
  let at = k - 1;
  while (MODAL.test(w(items, at))) at--;
  const before = items[items[at]?.place || items[at]?.fabric ? at : k - 1];
  const after = items[cue.next];
  if (!after) return true;
  // "corner to corner I got 228 cm one way and 231 the other": a length that was measured
  if (
    /^(?:i |we )?got$/.test(phrase) &&
    after.quantity?.unit &&
    /^(?:one|each|that|this) (?:way|side) |^(?:across|down|along|wide|long|high) /.test(
      `${wordsBetween(items, cue.next + 1, cue.next + 4).trim()} `,
    )
  )
    return true;
  if (phrase === 'list' && after.w !== ':' && headingEnd(items, cue.next) === undefined) return true;
  // "no need to buy net"
  if (
    cue.use === 'needed' &&
    / (?:no need|n't need|not need|n't have|n't got)(?: to)? $/.test(
      wordsBetween(items, Math.max(0, k - 4), k),
    )
  )
    return true;
  // "check if we've got any net left"
  if (
    cue.use === 'on-hand' &&
    / (?:if|whether) (?:i|we|there) (?:still )?$/.test(wordsBetween(items, k - 4, k))
  )
    return true;
  // "left four inches of backing over all the way round": how far it hangs over
  if (
    phrase === 'left' &&
    / (?:(?:over|proud|extra|showing|beyond) (?:all|on|round|around|the)|of (?:the )?(?:backing|back|batting|wadding) (?:all|on|round|around)) /.test(
      wordsBetween(items, cue.next, cue.next + 10),
    )
  )
    return true;
  // "someone had left pins in the border"
  if (
    phrase === 'left' &&
    / (?:someone|somebody|they|whoever|she|he|mum|gran)(?: (?:had|has|'d|'s))?(?: also)? $/.test(
      wordsBetween(items, Math.max(0, k - 3), k),
    )
  )
    return true;
  // "the tails I'm leaving at an inch and a half", "it has left the cloth weak"
  if (phrase === 'leaving' && after.w === 'at') return true;
  if (
    phrase === 'left' &&
    /^(has|have|had|'s|'ve|'d|it|that|this|which)$/.test(w(items, k - 1)) &&
    /^(the|it|that|this|them|those|a)$/.test(after.w) &&
    !items[cue.next + 1]?.quantity &&
    !after.quantity
  )
    return true;
  // "ends left 2 cm long"
  if (phrase === 'left' && after.quantity?.unit && /^(?:long|wide|proud)$/.test(w(items, cue.next + 1)))
    return true;
  // "left the purple alone", "left that bit as it was"
  if (
    phrase === 'left' &&
    / (alone|be|as|the way|well alone) /.test(wordsBetween(items, cue.next, cue.next + 8))
  )
    return true;
  // "I have taken the patch off", "the one below that i 've put net over"
  if (
    cue.use === 'on-hand' &&
    /^(put|laid|set|sewn|stuck|slipped|tucked|used|cut|taken|been|gone|given|found|done|made|looked|had)$/.test(
      after.w,
    )
  )
    return true;
  // "I have the backing off": taken off, and none in store
  if (
    cue.use === 'on-hand' &&
    /\b(?:have|has|'ve|got)$/.test(phrase) &&
    !after.quantity &&
    items
      .slice(cue.next, cue.next + 6)
      .some((x, m, rest) => x.object && x.object !== 'piece' && /^(off|out)$/.test(rest[m + 1]?.w ?? ''))
  )
    return true;
  if (before?.w === 'not' || before?.w === "n't" || before?.w === 'no') return true;
  // "they're going to need some kind of cloth sewn in behind them", "row two could do with a lining put in"
  if (
    cue.use === 'needed' &&
    WANTS_WORK.test(wordsBetween(items, cue.next, cue.next + 10)) &&
    !items.slice(cue.next, cue.next + 4).some((x) => x.quantity?.unit && x.quantity.unit !== 'piece')
  )
    return true;
  if (
    cue.use === 'needed' &&
    /^((?:still )?(?:need|needs|want)|(?:(?:got to|gotta|have to|need to|must|'ve to|to) )?get|to buy)$/.test(
      phrase,
    )
  ) {
    // a place or a thing needs treatment
    if (
      before &&
      (before.place ||
        before.part ||
        before.seam ||
        before.finding ||
        before.fabric ||
        /^(it|that|they|those|these|which|one|ones|both|all|blocks?|row)$/.test(before.w)) &&
      // "the backing needs 5 m"
      !(GOODS_PART.test(before.part ?? '') && after.quantity?.unit)
    )
      return true;
    // "2-3 thin, needs net"
    if (
      /^(need|needs|wants?)$/.test(phrase) &&
      /^(net|interfacing)$/.test(after.material ?? '') &&
      items.slice(0, k).some((x) => x.place?.kind === 'blocks')
    )
      return true;
    if (after.w === 'to' && !/^(buy|get|order|fetch|pick)$/.test(w(items, cue.next + 1))) return true;
    // "need patching", but "need backing 3 yd"
    const thing =
      after.material && (items[cue.next + 1]?.quantity || /^(,|and|&|\+|)$/.test(w(items, cue.next + 1)));
    if ((after.action?.form === 'ing' && !thing) || after.action?.form === 'past') return true;
    // "managed to get the backing off"
    if (
      /get$/.test(phrase) &&
      items.slice(cue.next + 1, cue.next + 6).some(
        (x, m, rest) =>
          /^(off|out|apart|undone|loose|flat|clean|unpicked)$/.test(x.w) ||
          // "got to get the binding on", but "get pins on Monday"
          (x.w === 'on' &&
            (!rest[m + 1] || /^(and|,|by|today|tonight|tomorrow|before|after)$/.test(rest[m + 1]!.w))),
      )
    )
      return true;
    // "four four's gonna need fusible behind it"
    const stuff = findGood(items, cue.next, false);
    if (
      stuff?.head !== undefined &&
      stuff.quantity === undefined &&
      /^(behind|underneath|over|across)$/.test(w(items, stuff.next)) &&
      (items[stuff.next + 1]?.place || w(items, stuff.next + 1) === 'the')
    )
      return true;
    if (/^(to get|to buy)$/.test(phrase) && before && (before.place || before.fabric)) return true;
    // "2-3 is going to get a piece of lawn behind it"
    if (
      phrase === 'to get' &&
      before?.w === 'going' &&
      !/^(i|we)$/.test(w(items, k - 3)) &&
      items
        .slice(cue.next, cue.next + 8)
        .some((x) => /^(behind|underneath|over|on|in|round|beneath)$/.test(x.w))
    )
      return true;
    if (phrase === 'get' && before && !/^(to|must|and|,|'ll|will|also|then|better|should)$/.test(before.w))
      return true;
    if (phrase === 'want' && before && !/^(i|we|'ll|and|still|also|,|:|-)$/.test(before.w)) return true;
  }
  // "the backing takes 4.8 metres", but "it takes a while"
  if (/take/.test(phrase) && cue.use === 'needed')
    return !(GOODS_PART.test(before?.part ?? '') && after.quantity?.unit);
  if (
    cue.use === 'needed' &&
    phrase === 'out of' &&
    before &&
    !/^(nearly|all|almost|run|am|'m|is|clean|right|completely)$/.test(before.w) &&
    // "stopped at three, out of thread"
    !(before.w === ',' && isLastGood(items, cue.next)) &&
    !(/^(are|'re)$/.test(before.w) && /^(we|i)$/.test(w(items, k - 2)))
  )
    return true;
  // "ran out of spray, so the rest is pinned": why, and no list of what to buy
  if (phrase === 'ran out of') {
    const gone = findGood(items, cue.next, false);
    if (gone && gone.quantity === undefined && / so /.test(wordsBetween(items, gone.next, gone.next + 2)))
      return !/ (?:need|buy|get|order) /.test(wordsBetween(items, gone.next));
  }
  // "out of the box came …"
  if (phrase === 'out of' && STORES.test(w(items, cue.next + 1))) return true;
  // "don't forget needles", but "the pins in the border"
  if (/forget|remember/.test(phrase)) {
    const good = findGood(items, cue.next, false);
    return !(good?.head !== undefined && after.w !== 'the' && /^(,|and|&|)$/.test(w(items, good.next)));
  }
  if (cue.weak && (cue.use === 'bought' || cue.use === 'on-hand')) {
    if (after.action?.form === 'past' || after.action?.form === 'ing') return true;
    // "I've peeled some old interfacing off", "we've scraped the glue off 2-3"
    if (phrase === "'ve" && REMOVE_VERBS[after.w]?.form === 'past') return true;
    if (cue.use === 'bought' && phrase !== 'came home' && phrase !== 'came away with') {
      // "that took 3 m of binding", "the backing took all five yards"
      if (
        phrase === 'took' &&
        before &&
        (/^(that|it|which|this)$/.test(before.w) || GOODS_PART.test(before.part ?? '')) &&
        items.slice(cue.next, cue.next + 3).some((x) => x.quantity?.unit) &&
        !trade
      )
        return false;
      // "the tying took eight skeins"
      if (
        phrase === 'took' &&
        (before?.task || before?.place?.kind === 'blocks') &&
        after.quantity?.unit &&
        !LENGTH_UNIT_SET.has(after.quantity.unit) &&
        !trade
      )
        return false;
      if (
        before &&
        (before.place ||
          before.part ||
          before.seam ||
          /^(it|that|they|which|has|'s|'ve|have)$/.test(before.w)) &&
        !trade
      )
        return true;
      // "those two are replaced, took half a yard of the gabardine"
      if (
        phrase === 'took' &&
        after.quantity?.unit &&
        after.quantity.unit !== 'in' &&
        w(items, cue.next + 1) === 'of'
      )
        return false;
      if (phrase === 'took' || phrase === 'had')
        return !items.slice(cue.next, cue.next + 14).some((x) => x.cost) || !trade;
    }
    if (
      cue.use === 'on-hand' &&
      before &&
      (before.place?.kind === 'blocks' ||
        before.seam ||
        /^(they|it|that|which|to|will|could|would|should|should|must|could|might|she|he|you)$/.test(before.w))
    )
      return true;
  }
  // "1-2 is thin and will get a piece of muslin sewn in behind": what is to be done to it
  if (
    cue.weak &&
    cue.use === 'needed' &&
    items
      .slice(cue.next, cue.next + 9)
      .some((x) => x.action?.form === 'past' || /^(put|laid|slipped|behind|underneath|over)$/.test(x.w))
  )
    return true;
  if (cue.use === 'used' && before && /^(be|was|were|is|being|get|to)$/.test(before.w)) return true;
  return false;
}

/** Is a thing other than cloth named from item `k` on, and nothing behind it? */
function isLastGood(items: Item[], k: number): boolean {
  const good = findGood(items, k, false);
  return good?.head !== undefined && good.material !== 'fabric' && good.next === items.length;
}

const GOODS_PART = /^(backing|batting|binding|border)$/;

/** The first good after a cue; weak cues want an amount. */
function goodAt(items: Item[], at: number, cue: Cue, priced: boolean): GoodFound | undefined {
  const good = findGood(items, at, !cue.weak);
  if (!good) return undefined;
  // "there's some of the calico missing in 3-1": how it was found
  if (
    cue.weak &&
    cue.use === 'on-hand' &&
    good.quantity === undefined &&
    items.slice(good.next, good.next + 3).some((x) => x.finding || (x.fail && x.w !== 'left'))
  )
    return undefined;
  // "there's four inches of overhang"
  if (
    items
      .slice(good.from, good.next)
      .some((x) => /^(overhang|tail|seam|diagonal|tie-spacing)$/.test(x.measure ?? '') && !x.material)
  )
    return undefined;
  // "get thread, pins and three metres of calico": an order to oneself that names nothing but goods
  if (cue.use === 'needed' && cue.next === 1 && good.head !== undefined && items[at]?.w !== 'the')
    if (/^(,|and|&|)$/.test(w(items, good.next))) return good;
  if (good.quantity === undefined && !good.uncounted && cue.weak && !(priced && good.cost)) {
    // "have the calico", "there's muslin in the drawer", "i 've plenty of calico"
    const store = STORES.test(w(items, good.next + 2)) || STORES.test(w(items, good.next + 1));
    if (
      (cue.use === 'on-hand' || (w(items, cue.next - 1) === 'got' && keptInStore(items, good.next))) &&
      good.head !== undefined &&
      (store ||
        /^(left|spare|already)$/.test(w(items, good.next)) ||
        // "I've net over", and not "over it"
        (w(items, good.next) === 'over' && !items[good.next + 1]) ||
        / (enough|plenty|some|loads|lots) /.test(wordsBetween(items, at - 1, good.head)))
    )
      return good;
    // "got some thread today", "got thread and needles at the market"
    if (
      cue.use === 'bought' &&
      w(items, cue.next - 1) === 'got' &&
      good.head !== undefined &&
      BOUGHT_THEN.test(wordsBetween(items, good.next))
    )
      return good;
    // "got the calico and the thread for £12 together"
    if (
      priced &&
      cue.use === 'bought' &&
      good.head !== undefined &&
      /^(and|,|&)$/.test(w(items, good.next))
    ) {
      const other = findGood(items, good.next + 1, false);
      if (other?.cost && other.head !== undefined) return good;
    }
    return undefined;
  }
  if (
    cue.weak &&
    good.quantity !== undefined &&
    !good.unit &&
    !good.cost &&
    !priced &&
    good.head === undefined &&
    !(good.points === 'more' && cue.use === 'needed')
  )
    return undefined;
  if (
    cue.weak &&
    good.quantity !== undefined &&
    (!good.unit || good.unit === 'piece') &&
    !good.cost &&
    !priced &&
    cue.use === 'bought'
  )
    return undefined;
  // "there's a piece of the top gone", "there are two inches of seam open": no goods
  if (cue.weak && cue.use === 'on-hand') {
    if (
      good.head !== undefined &&
      items.slice(good.from, good.next + 4).some((x) => x.finding || x.fail || x.seam)
    )
      return undefined;
    if (
      items
        .slice(good.next, good.next + 4)
        .some((x) => (x.finding && x.finding !== 'sound') || x.fail || x.w === 'gone')
    )
      return undefined;
    if (good.head === undefined && !good.points && !good.material && (!good.unit || good.unit === 'piece'))
      return undefined;
    // "I've got the denim one spread out": the quilt on the table
    if (/^(one|quilt)$/.test(w(items, good.next)) && good.quantity === undefined) return undefined;
  }
  return good;
}

/** "put 4 yards of muslin on the shopping list", "add needles to my list": what is to be bought. */
function putOnList(items: Item[], k: number): number | undefined {
  if (!/^(put|putting|add|adding|stick|jot|pop|write|i 'll put)$/.test(w(items, k))) return undefined;
  return / (?:on|to|onto|down on) (?:the|my|our|a) (?:shopping )?list /.test(
    wordsBetween(items, k + 1, k + 16),
  )
    ? k + 1
    : undefined;
}

const TO_BE = new Set(['is', "'s", 'are', 'was', 'were']);
/** What use a word after the goods gives them. */
function postUse(items: Item[]): { use: MaterialUse; at: number; end: number } | undefined {
  for (let k = 1; k < items.length; k++) {
    const two = `${w(items, k)} ${w(items, k + 1)}`;
    if (/^to (buy|get|order|fetch)$/.test(two) && !items[k + 2]?.place)
      return { use: 'needed', at: k, end: k + 2 };
    // "one spool must be bought", "a yard of net will have to be got"
    if (w(items, k) === 'be' && /^(bought|ordered|purchased|got|fetched)$/.test(w(items, k + 1))) {
      let at = k;
      while (
        /^(to|must|should|will|'ll|needs?|wants?|has|have|ought|still|also|only)$/.test(w(items, at - 1))
      )
        at--;
      if (at < k) return { use: 'needed', at, end: k + 2 };
    }
    // "thread and interfacing, that's what I'm short of"
    const short =
      w(items, k) === 'that' &&
      / (?:that (?:'s|is) (?:all |just )?(?:what )?(?:i|we) (?:'m short of|'m out of|need|still need|have to get|'ve to get|want)|that (?:'s|is) (?:still )?(?:to (?:buy|get)|wanted|needed)) $/.exec(
        wordsBetween(items, k, items.length),
      );
    if (short && !items.slice(0, k).some((x) => x.action && !x.material))
      return { use: 'needed', at: w(items, k - 1) === ',' ? k - 1 : k, end: items.length };
    // "the batting arrived, queen size", "the net came in the post"
    if (
      (/^(arrived|delivered)$/.test(w(items, k)) ||
        / (?:turned up|came in the (?:post|mail)|came (?:today|this morning|yesterday)) /.test(
          wordsBetween(items, k, k + 4),
        )) &&
      items.slice(0, k).some((x) => x.material || x.fabric) &&
      !items.some((x) => x.finding || x.place?.kind === 'blocks')
    )
      return { use: 'bought', at: k, end: k + 1 };
    if (two === 'on order') return { use: 'bought', at: k, end: k + 2 };
    if (/^(bought|ordered|purchased|bt|bght)$/.test(w(items, k))) return { use: 'bought', at: k, end: k + 1 };
    if (/^(wanted|required|needed)$/.test(w(items, k))) return { use: 'needed', at: k, end: k + 1 };
    // "muslin in the drawer", "1 roll wadding in cupboard", "1.1 m of it in the trunk"
    const store = /^(in|on)$/.test(w(items, k))
      ? /^(the|my|a|our)$/.test(w(items, k + 1))
        ? k + 2
        : k + 1
      : 0;
    if (
      store &&
      STORES.test(w(items, store)) &&
      // "came off in my hand"
      w(items, store) !== 'hand' &&
      items.slice(0, k).some((x) => x.material || x.fabric || x.quantity?.unit)
    )
      return { use: 'on-hand', at: k, end: store + 1 };
    if (
      w(items, k) === 'left' &&
      !items[k]!.place &&
      k === items.length - 1 &&
      items.slice(0, k).some((x) => x.quantity?.unit || x.material)
    )
      return { use: 'on-hand', at: k, end: k + 1 };
    // the two that read on are asked only at their first words: else a long list is joined anew at each of its words
    const head = firstWord(w(items, k));
    // "pins I already have"
    const own =
      (head === 'i' || head === 'we') &&
      /^ (?:i|we) (?:already |still )?(?:have|own|'ve got|have got)(?: already| at home| here| plenty of| enough of)* $/.exec(
        wordsBetween(items, k, items.length),
      );
    if (own && items[k - 1]?.material) return { use: 'on-hand', at: k, end: items.length };
    // "so that's eleven feet of new I need", "another two skeins I'll need"
    const wants =
      (head === 'i' || head === 'we') &&
      /^ (?:i|we) (?:(?:'ll|will|'m going to|shall|still) )*(?:need|want|be needing)(?: (?:still|now|then|yet|for it|for that|in all|altogether|all told))* $/.exec(
        wordsBetween(items, k, items.length),
      );
    if (wants && (items[k - 1]?.quantity?.unit || /^(new|more|it|that)$/.test(w(items, k - 1))))
      return { use: 'needed', at: k, end: items.length };
    // "the thread 's running low"
    if (
      TO_BE.has(head) &&
      /^ (?:is|'s|are|was|were) (?:running|getting|nearly|almost|about) (?:low|short|out|done|finished|gone) /.test(
        wordsBetween(items, k, k + 3),
      )
    )
      return items.slice(0, k).some((x) => x.material) ? { use: 'needed', at: k, end: k + 3 } : undefined;
    // "the grey thread's all gone", "pins and net are on the list"
    const spent =
      /^ (?:(?:is|'s|are) )?(?:(?:all|both) )?(?:gone|finished|used up|run out|on (?:the|my) (?:shopping )?list|for the (?:shopping )?list)(?: now| too| as well| again)? $/.test(
        wordsBetween(items, k, items.length),
      );
    if (
      spent &&
      (/ list /.test(wordsBetween(items, k, items.length)) ||
        /^(?:is|'s|are) (?:all|both|finished|used|run)/.test(wordsBetween(items, k, k + 2).trim())) &&
      items[k - 1]?.material &&
      !items.some((x) => x.place?.kind === 'blocks' || x.seam || x.stitch)
    )
      return { use: 'needed', at: k, end: items.length };
    // "the last half metre of leaf green went into it"
    if (
      /^went (in|into)$/.test(two) &&
      !/^(behind|under|over|beneath|at|the|a)$/.test(w(items, k + 2)) &&
      items[k + 2]?.place?.kind !== 'blocks' &&
      items.slice(Math.max(0, k - 5), k).some((x) => x.quantity?.unit && x.quantity.unit !== 'piece')
    )
      return { use: 'used', at: k, end: k + 2 };
    // "a whole reel of thread gone on that border"
    if (
      w(items, k) === 'gone' &&
      /^(on|into|in)$/.test(w(items, k + 1)) &&
      items[k - 1]?.material &&
      items.slice(Math.max(0, k - 4), k).some((x) => x.quantity?.unit && x.quantity.unit !== 'piece')
    )
      return { use: 'used', at: k, end: k + 1 };
    // "1 roll wadding in already"
    if (
      /^ (?:is |'s |are )?in already $/.test(wordsBetween(items, k, items.length)) &&
      items.slice(0, k).some((x) => x.material)
    )
      return { use: 'on-hand', at: k, end: items.length };
    // "two skeins that took"
    if (
      /^ (?:that|it|this|the lot) took(?: me)? $/.test(wordsBetween(items, k, items.length)) &&
      items.slice(Math.max(0, k - 4), k).some((x) => x.quantity?.unit)
    )
      return { use: 'used', at: k, end: items.length };
    if (/^(in stock|on hand|left over|to hand)$/.test(two)) return { use: 'on-hand', at: k, end: k + 2 };
    if (
      /^(used|gone)$/.test(w(items, k)) &&
      (w(items, k) === 'used' || items[k - 1]?.quantity?.unit) &&
      (k === items.length - 1 ||
        (/^(on|for|in|up|so|now|already|today|tonight|,|and)$/.test(w(items, k + 1)) &&
          items.slice(0, k).some((x) => x.quantity?.unit)))
    )
      return { use: 'used', at: k, end: k + 1 };
  }
  return undefined;
}

/** Takes goods one after the other from item `k` on, and gives the index after the last. */
function takeList(
  state: ReaderState,
  sentence: Told,
  items: Item[],
  k: number,
  use: MaterialUse,
  claims: Claims,
  made: Draft[],
  listed: boolean,
  _carried: MaterialUse | undefined,
): number {
  let at = k;
  let count = 0;
  while (at < items.length) {
    let from = at;
    if (count) {
      while (
        /^(,|and|&|\+|plus|then|also|:|together|along|with|-|--|i|got|bought|had|took|there|were|was|uh|um|er|oh|ah|what|else|let|me|see|yes|yeah|as|well)$/.test(
          w(items, from),
        ) &&
        from < at + 6
      )
        from++;
      if (/^(we|she|he|they|it)$/.test(w(items, from))) break;
      const cue = cueAt(items, from === at ? at : from);
      if (cue && !/^(got|took|had|used|left|spare)$/.test(w(items, from)) && !(cue.use === use)) break;
      // "two rolls of batting in the shop and I bought two hundred pins"
      if (use !== 'bought' && boughtBetween(items, at, from)) break;
    }
    // "two packs of needles, scrap the needles, I found some"
    if (count && (hadAfterAll(items, at) ?? hadAfterAll(items, from))) break;
    let good = findGood(items, from, listed);
    // "a metre of net, because they close early, and two spools of thread": on to the next amount
    if (count && !listGood(good)) {
      const on = nextAmount(items, at);
      if (on !== undefined) {
        from = on;
        good = findGood(items, on, false);
      }
    }
    if (!good) break;
    if (count && good.quantity === undefined && !good.cost && !good.uncounted && good.head === undefined)
      break;
    // after the list the talk goes on: "…, and 3-2 patched with the linen"
    if (
      count &&
      good.head !== undefined &&
      good.quantity === undefined &&
      !good.cost &&
      items.slice(from, good.next + 3).some((x) => x.action && !x.material && x.action.form !== 'base')
    )
      break;
    if (count && good.quantity === undefined && !good.cost && from === at) break;
    // "half a yard of tulle and all the pearl satin ones are holding up": what is said of a cloth, and no more goods
    if (
      count &&
      good.quantity === undefined &&
      !good.cost &&
      items[good.head ?? from]?.fabric &&
      TOLD_OF.test(wordsBetween(items, good.next, good.next + 4))
    )
      break;
    // "… and a couple packs of pins I've got already"
    const own = use === 'needed' && count ? ownedBehind(items, good.next) : good.next;
    // "… and I got one roll of batting here already"
    const kept =
      use === 'bought' &&
      count > 0 &&
      /^(got|had)$/.test(w(items, good.from - 1)) &&
      HAD_HERE.test(wordsBetween(items, good.next, good.next + 5));
    push(state, sentence, good, kept || own > good.next ? 'on-hand' : use, made);
    for (let m = at; m < own; m++) claims.cut.add(items[m]!);
    at = own;
    count++;
    // what is said of the thing, up to the next joint
    let skip = at;
    while (
      skip < items.length &&
      skip < at + 9 &&
      !/^(,|and|&|\+|plus|then|but|so)$/.test(w(items, skip)) &&
      // "tape for hanging it": what is spoken of, and no block
      !(items[skip]!.place?.kind !== 'pointer' && items[skip]!.place?.places.some((p) => /\d/.test(p))) &&
      !items[skip]!.quantity?.unit &&
      !items[skip]!.cost &&
      // "one ball of it in the drawer I need to buy three more"
      !(skip > at && runsOn(items, skip, use)) &&
      // "two metres left in the drawer", "six feet of tape for hanging it"
      (!items[skip]!.action ||
        ((use === 'on-hand' || kept) && w(items, skip) === 'left') ||
        (w(items, skip - 1) === 'for' && items[skip]!.action!.form === 'ing')) &&
      !items[skip]!.finding
    )
      skip++;
    if (skip === items.length || /^(,|and|&|\+|plus|then|but)$/.test(w(items, skip))) {
      for (let m = at; m < skip; m++) claims.cut.add(items[m]!);
      at = skip;
    } else if (items[skip]?.quantity?.unit && skip === at) continue;
    if (
      !/^(,|and|&|\+|plus|then)$/.test(w(items, at)) &&
      !/^ (?:together|along) with /.test(wordsBetween(items, at, at + 2)) &&
      !items[at]?.quantity?.unit &&
      !items[at]?.quantity?.value &&
      // "muslin 4.5 yd @ 5.25 thread 3 @ 2.10"
      !(items[at]?.material && items[at - 1]?.cost && findGood(items, at, listed)?.cost)
    )
      break;
  }
  return Math.max(at, k + 1);
}

/** "… ones are holding up", "… is frayed", "… blocks there all need lining". */
const TOLD_OF =
  /^ (?:(?:ones?|blocks?|patches|pieces|bits?|there|all|both) ){0,3}(?:is|'s|are|'re|was|were|has|have|looks?|seems?|needs?|wants?|got|held|holding) /;

/** Does the talk between two goods of a list turn to buying ("… and I bought", ", picked up", "… and got … for £7")? */
function boughtBetween(items: Item[], at: number, from: number): boolean {
  for (let m = at; m < from; m++) {
    const cue = cueAt(items, m);
    if (cue?.use !== 'bought') continue;
    if (!cue.weak) return true;
    const good = findGood(items, cue.next, false);
    if (good?.cost && good.quantity !== undefined) return true;
  }
  return false;
}

/**
 * "need five more skeins, I've got two in the closet", "8 more of it (have 2)": how many there are of the goods just told; the
 * index after the number. What is left to do ("I've got two left to darn") is none.
 */
function countOnHand(items: Item[], k: number, cue: Cue): { quantity: number; at: number } | undefined {
  const got = cue.use === 'bought' && w(items, k) === 'got';
  if (cue.use !== 'on-hand' && !got) return undefined;
  let at = cue.next;
  while (/^(only|just|about|still|already|another)$/.test(w(items, at))) at++;
  const count = items[at]?.quantity;
  if (count?.value === undefined || count.unit) return undefined;
  const behind = wordsBetween(items, at + 1, at + 6);
  return (got ? HAD_HERE : COUNT_ENDS).test(behind) ? { quantity: count.value, at: at + 1 } : undefined;
}
const HAD_HERE =
  /^ +(?:left |already |here |by me |put by |to start with |on top of that |besides |as well |at home |in stock |to hand |on hand |upstairs |of (?:them|those) ){1,2}(?:$|[,;()] |and |but |so )|^ (?:left |already )?(?:out |up |over |down )?(?:in|on) (?:the|my) /;
const COUNT_ENDS = new RegExp(`^ *(?:$|[,;()] |and |but |so )|${HAD_HERE.source}`);

/** "I've got already", "we have at home": the index after such words, or `k` where there are none. */
function ownedBehind(items: Item[], k: number): number {
  const told =
    /^ (?:that |which )?(?:i|we) (?:'ve got|have got|already have|have already|'ve already got|have|own)(?: (?:already|here|at home|in (?:the|my) \S+))* /.exec(
      wordsBetween(items, k, k + 8),
    )?.[0];
  return told && !/(?:have|got) to $/.test(told) ? k + told.trim().split(' ').length : k;
}

/** Does another use of goods begin here, with nothing said to join it? */
function runsOn(items: Item[], k: number, use: MaterialUse): boolean {
  const from = /^(i|we)$/.test(w(items, k)) ? k + 1 : k;
  const cue = cueAt(items, from);
  if (cue && cue.use !== use && countOnHand(items, from, cue)) return true;
  if (!cue || cue.use === use || cue.weak || isOther(items, from, cue, false)) return false;
  const good = findGood(items, cue.next, false);
  return good?.quantity !== undefined || good?.head !== undefined;
}

const listGood = (good: GoodFound | undefined): boolean =>
  good !== undefined && (good.quantity !== undefined || good.cost !== undefined || good.head !== undefined);

/** The amount of goods that goes on with the list after a few words of talk; nothing where work is told between. */
function nextAmount(items: Item[], at: number): number | undefined {
  for (let m = at; m < Math.min(items.length, at + 26); m++) {
    const x = items[m]!;
    if (x.finding || x.duration || x.span || x.place?.kind === 'blocks' || x.action?.form === 'past')
      return undefined;
    // another use begins: "three balls in the cupboard, but I'll have to buy half a dozen more"
    const cue = cueAt(items, m);
    if (cue && !isOther(items, m, cue, false)) return undefined;
    if (
      x.quantity?.unit &&
      x.quantity.value !== undefined &&
      /^(and|&|\+|plus|,)$/.test(w(items, m - 1)) &&
      items.slice(m + 1, m + 6).some((y) => y.material || y.fabric)
    )
      return m;
  }
  return undefined;
}

const isUnknownNoun = (x: Item): boolean =>
  x.token.kind === 'word' &&
  !x.quantity &&
  !x.place &&
  !/^(?:pieces?|of|it|them|that|more|too|also|left|each|the|a|bits?|scraps?|for|in|on)$/.test(x.w);

function push(state: ReaderState, sentence: Told, good: GoodFound, use: MaterialUse, made: Draft[]): void {
  let material: Material | undefined = good.material;
  let unit = good.unit;
  let how: 'said' | 'implied' = 'said';
  const purpose = sentencePurpose(sentence.items);
  if (purpose && (!material || material === 'fabric') && (use !== 'used' || !material)) {
    material = purpose;
    how = 'implied';
  }
  if (material === 'fabric' && (good.forIt || FOR_IT.test(wordsBetween(sentence.items, 0, 6)))) {
    const matter = matterSpokenOf(state);
    if (matter === 'backing' || matter === 'binding') material = matter;
  }
  if (!material && !good.points) {
    material = subjectOf(sentence.items, good) ?? lastTold(sentence.before ?? [], good);
    // "backing will be calico. bought 3 yd"
    if (material === 'fabric') material = decidedOn(state, sentence.number) ?? material;
    if (material) how = 'implied';
  }
  // "the lining's to be linen, I need 5 m of that": what was just decided on
  if (!material && good.points === 'it') {
    material =
      decidedOn(state, sentence.number) ??
      justTold(state, sentence, good) ??
      subjectOf(sentence.items, good) ??
      lastTold(sentence.before ?? [], good);
    if (material) how = 'implied';
  }
  // "three metres for the backing and six for the binding"
  const last = made.at(-1)?.entry;
  if (
    !unit &&
    good.quantity !== undefined &&
    good.head === undefined &&
    good.material !== 'other' &&
    last?.kind === 'material'
  )
    unit = last.unit;
  // "300 ml soap, 2 pieces foam": a thing of its own, by a word that is known for nothing
  const noun = good.items.at(-1);
  if (!material && !good.points && good.head === undefined && unit === 'piece' && noun && isUnknownNoun(noun))
    material = 'other';
  if (!material && (good.points || unit || good.quantity !== undefined)) {
    const before = [...state.drafts].reverse().find((d) => d.entry.kind === 'material')?.entry as
      | { material?: Material; unit?: typeof unit }
      | undefined;
    if (!good.points && unit === 'spool') material = 'thread';
    else if (!good.points && (unit === 'skein' || unit === 'ball') && before?.unit !== unit)
      material = 'tie-thread';
    else if (before) {
      material = before.material;
      unit ??= before.unit;
    } else if (unit === 'skein' || unit === 'ball') material = 'tie-thread';
    else if (unit === 'spool') material = 'thread';
    else if (good.points === 'it') material = state.memory.material?.material;
    else if (good.points === 'more') {
      material = state.memory.material?.material;
    }
    how = 'implied';
  }
  material = named(state, material, good.name);
  // "darned 5-1 and used up the last of the wool": what it was sewn with
  if (
    material === 'fabric' &&
    use === 'used' &&
    /^(?:silk|cotton|wool|linen)$/.test(good.name.split(' ').at(-1)!) &&
    sentence.items.some((x) => /^(?:darn|resew)$/.test(x.action?.v ?? ''))
  )
    material = 'thread';
  const draft = makeDraft(
    'material',
    { index: -1, sentence: sentence.number, items: good.items },
    {
      material: [material, `material.${material}`, good.items, how],
      use: [use, `use.${use}`, good.items],
      quantity: [good.uncounted ? undefined : good.quantity, 'amount', good.items],
      unit: [unit, 'amount', good.items],
      cost: [good.cost, 'cost', good.items],
      ...(good.head !== undefined || (good.material && good.name !== 'it')
        ? { name: [good.name, 'material.name', good.items] as [unknown, string, Item[]] }
        : {}),
    },
    'unneeded',
  );
  state.drafts.push(draft);
  made.push(draft);
}

/** "for it I bought 4 m of calico" */
const FOR_IT =
  /^ (?:(?:and|so|well|,) )*for (?:it|that|this|the job)(?: ,)? (?:i|we|bought|got|picked|ordered)\b/;

/** The matter last spoken of, in this note or before it: what goods "for it" are for. */
const matterSpokenOf = (state: ReaderState): string | undefined => {
  const told = state.drafts.findLast((d) => d.entry.kind === 'decision')?.entry;
  return told?.kind === 'decision' ? told.about : state.memory.topic;
};

const DECIDED: Partial<Record<string, Material>> = {
  backing: 'backing',
  batting: 'batting',
  binding: 'binding',
  thread: 'thread',
  'tie-thread': 'tie-thread',
  border: 'fabric',
};

/** What the last matter of this note is made of, where no goods have been told since. */
function decidedOn(state: ReaderState, sentence: number): Material | undefined {
  const told = state.drafts.findLast(
    ({ entry: e, sentence: n }) => n <= sentence && (e.kind === 'decision' || e.kind === 'material'),
  );
  // matters are read off the note before its goods are
  const since = state.drafts.some(
    ({ entry: e, sentence: n }) => e.kind === 'material' && told && n >= told.sentence,
  );
  return told?.entry.kind === 'decision' && !since ? DECIDED[told.entry.about] : undefined;
}

/** "Buy 2 m of flannel for the back. A metre of it in the cupboard": of the goods told last in this sentence or the one before. */
function justTold(state: ReaderState, sentence: Told, good: GoodFound): Material | undefined {
  const told = state.drafts.findLast((d) => d.entry.kind === 'material');
  return told?.entry.kind === 'material' &&
    told.sentence >= sentence.number - 1 &&
    told.sentence <= sentence.number &&
    measuredIn(told.entry.material, good.unit)
    ? told.entry.material
    : undefined;
}

/** Were goods with an amount told in this sentence or in the one before? */
function justCounted(state: ReaderState, sentence: Told): boolean {
  const told = state.drafts.findLast((d) => d.entry.kind === 'material');
  return (
    told?.entry.kind === 'material' &&
    told.entry.quantity !== undefined &&
    told.sentence >= sentence.number - 1 &&
    told.sentence <= sentence.number
  );
}

/** "Crepeline it is. Bought 40 cm": the stuff last named in the sentence before. */
function lastTold(before: Item[], good: GoodFound): Material | undefined {
  const told = before.findLast(
    (x) => x.material && (!x.action || x.material === 'net') && measuredIn(x.material, good.unit),
  );
  return good.quantity !== undefined && good.unit ? told?.material : undefined;
}

/** "the batting's still to buy, a single roll", "the backing takes 5 m": what the amount is of was named before it. */
function subjectOf(items: Item[], good: GoodFound): Material | undefined {
  const at = items.indexOf(good.items[0]!);
  for (let k = at - 1; k >= Math.max(0, at - 14); k--) {
    const x = items[k]!;
    if (x.material)
      return x.object !== 'stitching' && measuredIn(x.material, good.unit) ? x.material : undefined;
    // "crepeline it is, and for that I shall need eighteen inches"
    const forThat = / (?:for|of) (?:that|it|this|which) (?:i|we) /.test(wordsBetween(items, at - 7, at));
    if (x.fabric || x.quantity || (x.w === 'and' && !forThat)) return undefined;
    // "tulle over 1-1, I'll need half a metre": a place between holds for what lies over it
    if (x.place?.kind === 'blocks' && !/^(over|on|behind|for|across|onto|in)$/.test(w(items, k - 1)))
      return undefined;
  }
  return undefined;
}

/** "batting: bought a crib size cotton one, 18 dollars": what the goods are for stands before a colon, and is none of them. */
function headingOf(items: Item[]): Material | undefined {
  const named = items[0]?.part ?? items[0]?.material;
  return w(items, 1) === ':' && (named === 'backing' || named === 'batting' || named === 'binding')
    ? named
    : undefined;
}

const underHeading = (items: Item[]): Item[] =>
  headingOf(items) &&
  items.slice(2).some((x, k, rest) => (x.material || x.fabric) && !rest.slice(0, k).some((y) => y.place))
    ? items.slice(2)
    : items;

/** "For the backing I still have to buy flannel", "brown sheet for the back: have 1 m, need 2": what all of it is for. */
function sentencePurpose(items: Item[]): Material | undefined {
  const headed = headingOf(items);
  if (headed) return headed;
  const colon = items.findIndex((x) => x.w === ':');
  const at = items.findIndex((x) => x.w === 'for');
  if (at < 0 || !(at === 0 || (colon > at && at < 5))) return undefined;
  for (const x of items.slice(at + 1, at + 4)) {
    if (x.part === 'backing' || x.material === 'backing' || x.w === 'back') return 'backing';
    if (x.part === 'batting') return 'batting';
    if (x.part === 'binding') return 'binding';
    if (x.w === 'ties') return 'tie-thread';
    if (!/^(the|new|a|its)$/.test(x.w)) return undefined;
  }
  return undefined;
}

/** A cloth or yarn that was spoken of before for a purpose keeps it: "felt (backing)" then "felt cost 19.80". */
export function named(
  state: ReaderState,
  material: Material | undefined,
  name: string,
): Material | undefined {
  if (material !== 'fabric' && material !== undefined) return material;
  const last = name.split(' ').at(-1)!;
  return state.memory.goods?.[last] ?? material;
}
