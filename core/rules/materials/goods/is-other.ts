import { LENGTH_UNIT_SET } from '../../../lexicon/units.ts';
import { REMOVE_VERBS } from '../../clause/removal-at.ts';
import type { Item } from '../../item.ts';
import { itemWord as w } from '../../item-word.ts';
import { wordsBetween } from '../../words-between.ts';
import { findGood } from '../find-good.ts';
import { STORES } from '../stores.ts';
import type { Cue } from './cue-at.ts';
import { headingEnd } from './heading.ts';

/** What is wanted is work: cloth "sewn in behind". */
const WANTS_WORK =
  /^ (?:a|an|some|something|a few|another|new|the)? ?(?:\S+ ){0,6}?(?:sewn|stitched|put|set|slipped|tacked|laid|let|basted|pieced|cut|couched|patched|fused|ironed|sewing|stitching|putting|tacking|basting|laying|slipping|fusing|ironing|setting|running) (?:on |in |into |down |up )?(?:behind|underneath|under|beneath|over|on|in|there|across)\b/;

const MODAL =
  /^(still|also|may|might|could|will|'ll|would|probably|maybe|perhaps|possibly|really|well|both|all|just)$/;

/** "(they have got) black net over them now", "a bit of silk behind it" */
const LAID_THERE =
  /^ (?:(?!and |but |for )\S+ ){1,6}?(?:over|behind|across|underneath) (?:it|them|that|those|these|both|all) /;

/** "moths got in", "the damp has got in": a pest or the weather, right before the verb. */
const DAMAGING =
  / (?:moths?|mice|mouse|rats?|beetles?|silverfish|insects|bugs|grubs|worms?|woodworm|damp|wet|water|rain|mould|mold|mildew|rot|rust|sun|light|dye|soot|smoke|dust) (?:(?:have|has|had|'ve|'s|all|really|been|must) )*$/;

/** Others used it, long ago. */
const BY_OTHERS =
  / (?:whoever|someone|somebody|(?:an?|the) (?:earlier|previous|last) \S+) (?:(?!i |we |[.;,] )\S+ ){0,7}$/;

/** A word for needing or having that is about something else: "needs patching", "have patched", "got it off". */
export function isOther(items: Item[], k: number, cue: Cue, trade: boolean): boolean {
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
  // "she only ever calls when I've got a thimble on": no time to count what is in the drawer
  if (
    cue.use === 'on-hand' &&
    / (?:when|whenever|while|just as) (?:i|we|you) $/.test(wordsBetween(items, k - 2, k))
  )
    return true;
  // "the moths have got in the brown suiting": what did damage gets nothing from a shop
  if (/\b(?:got|get|been)\b/.test(phrase) && DAMAGING.test(wordsBetween(items, k - 3, k))) return true;
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
  // "all three have got black net over them now", "2-2 and 3-3 have interfacing behind them": what lies there, and nothing in store
  if (cue.use === 'on-hand' && LAID_THERE.test(wordsBetween(items, cue.next, cue.next + 8))) return true;
  // "there's two inches of backing showing all round"
  if (
    cue.use === 'on-hand' &&
    / of (?:the )?(?:backing|back|batting|wadding) (?:showing|sticking out|hanging|over|proud|extra|spare|beyond|past) /.test(
      wordsBetween(items, cue.next, cue.next + 6),
    )
  )
    return true;
  // "leaving an inch and a quarter of yarn on each tie": how long its ends are
  if (
    cue.use === 'on-hand' &&
    / (?:on|at|to|either side of) (?:each|every|the|all the|all|both) (?:ties?|knots?|ends?) /.test(
      wordsBetween(items, cue.next, cue.next + 9),
    )
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
  // "whoever mended row two used glue"
  if (phrase === 'used' && BY_OTHERS.test(wordsBetween(items, Math.max(0, k - 9), k))) return true;
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
    !isOutAndNeeded(items, cue.next) &&
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
      // "the tying took eight skeins", "3-3 took half a yard of gabardine"
      if (
        phrase === 'took' &&
        (before?.task || before?.place) &&
        after.quantity?.unit &&
        (!LENGTH_UNIT_SET.has(after.quantity.unit) ||
          (after.quantity.unit !== 'in' && w(items, cue.next + 1) === 'of')) &&
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

/** "3-5 is sound and out of pins, need a pack": run out of, and more to be got. */
function isOutAndNeeded(items: Item[], k: number): boolean {
  const good = findGood(items, k, false);
  const head = good?.head === undefined ? undefined : items[good.head];
  return (
    head?.material !== undefined &&
    !head.place &&
    /^ +(?:, )?(?:need|must|have to|got to|to get|to buy) /.test(
      ` ${wordsBetween(items, good!.next, good!.next + 4)}`,
    )
  );
}
