import { isStop } from '../clause/joints.ts';
import { boundaryBefore, type Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';
import { HEAD, isDateAhead, matterAhead } from './bare-lists.ts';
import { senseOf } from './matter/topic-of.ts';

const MAY_END =
  /^(?:open|undecided|unsettled|settled|agreed|decided|fixed|firm|final|definite|tbd|tbc|decide|wait|yes|no|borders?)$/;
const ENDS = /^(?:open|undecided|unsettled|settled|agreed|decided|fixed|firm|final|definite|tbd|tbc)$/;
/** "i can't decide", "that can wait": what is said of the matter before it, where the next has a verb of its own. */
const PUTS_OFF = / (?:(?:ca|could|can) ?(?:n't|not) decide|(?:can|could|must|'ll have to) wait) $/;
const VERB = /^(?:is|'s|are|was|will|'ll|has|can|gets)$/;
/** Behind these a status word is no end: "settled on", "agreed with her". */
const GOES_ON =
  /^(?:on|in|to|that|for|about|when|at|up|from|as|because|and|or|by|of|it|if|yet|still|now|then|not|be|i|is|are|'s|was|has|will)$/;
const WITH_WHOM = /^ (?:w|with|by) (?:the |my )?(?:owner|client|her|him|them|church|school|family|museum) $/;

const isAbout = (x: Item, items: Item[], k: number): boolean =>
  senseOf(x, items, k) !== undefined ||
  x.cost !== undefined ||
  (x.quantity !== undefined && !x.quantity.unit);

/** Where, from `k` on, the words end that say how a matter before them stands; 0 where none do. */
function endOfStatus(items: Item[], from: number, k: number): number {
  const { w } = items[k]!;
  const told = items.slice(from, k);
  // "border yes | strips cut", "tie it | no border | ties 5 in apart"
  if (/^(?:yes|no)$/.test(w) && k - from <= 2 && /^borders?$/.test(items[k - 1]?.w ?? '')) return k + 1;
  if (/^borders?$/.test(w) && k === from + 1 && items[from]!.w === 'no') return k + 1;
  if (!told.some((x, m) => isAbout(x, items, from + m))) return 0;
  if (ENDS.test(w) && !HEAD.test(wordsBetween(items, from, from + 7))) {
    let end = k + 1;
    while (/^(?:still|yet|now)$/.test(items[end]?.w ?? '')) end++;
    for (const n of [2, 3]) if (WITH_WHOM.test(wordsBetween(items, end, end + n))) end += n;
    return end;
  }
  return PUTS_OFF.test(wordsBetween(items, from, k + 1)) ? k + 1 : 0;
}

/** Does the next matter, sum, date or length of time begin at `k`? */
function beginsNext(items: Item[], from: number, k: number): boolean {
  const x = items[k];
  if (
    !x ||
    (x.token.kind === 'mark' && !x.cost) ||
    (GOES_ON.test(x.w) && !/^ to be /.test(wordsBetween(items, k, k + 2)))
  )
    return false;
  const before = items[k - 1]!.w;
  const told = items.slice(from, k);
  if (/^(?:yes|no)$/.test(before)) return true;
  // "no border strips"
  if (/^borders?$/.test(before) && items[k - 2]?.w === 'no')
    return !/^(?:round|around|piece|strips?|colou?r|width)$/.test(x.w);
  if (x.duration) return !/^(?:ago|later|each)$/.test(items[k + 1]?.w ?? '');
  const due = /^ to be /.test(wordsBetween(items, k, k + 2)) ? k + 2 : k;
  if (
    /^(?:finished|back|ready|due|done|delivered|collected|wanted|needed|deadline)$/.test(
      items[due]?.w ?? '',
    ) &&
    isDateAhead(items, due)
  )
    return true;
  if (x.cost) return !told.some((y) => y.topic === 'price' || y.cost);
  const ahead = matterAhead(items, k);
  if (!ahead) return false;
  const verb = items.slice(ahead.at + 1, ahead.at + 3).some((y) => VERB.test(y.w));
  return ENDS.test(before) || !PUTS_OFF.test(wordsBetween(told)) ? true : verb;
}

/**
 * "tie or quilt open | £85 agreed", "price is settled | half an hour on the letter", "binding colour still open | due 30 may": behind the word
 * that tells how a matter stands a stop, where the next one begins without a mark.
 */
export function withStatusStops(items: Item[]): Item[] {
  if (!items.some((x) => MAY_END.test(x.w))) return items;
  const out: Item[] = [];
  let from = 0;
  let sealed = 0;
  let headed = false;
  items.forEach((x, k) => {
    if (isStop(x) || x.w === ':') {
      from = k + 1;
      headed = x.w === ':' && MAY_END.test(items[k - 1]?.w ?? '');
    } else if (
      k > from &&
      /^(?:tie|quilt)$/.test(items[from]!.w) &&
      k === from + 2 &&
      items[k - 1]!.w === 'it' &&
      x.w === 'no' &&
      /^borders?$/.test(items[k + 1]?.w ?? '')
    ) {
      out.push(boundaryBefore(x, ';'));
      from = k;
    } else if (
      k > from &&
      ((k === sealed && beginsNext(items, from, k)) ||
        // "a price of three hundred and twenty dollars | half an hour went on …"
        (x.duration &&
          items[k - 1]!.cost &&
          items.slice(from, k).some((y) => ENDS.test(y.w) || y.topic === 'price')))
    ) {
      out.push(boundaryBefore(x, ';'));
      from = k;
    }
    out.push(x);
    // "open: backing, thread | settled …": a heading of the next list
    if (!headed && MAY_END.test(x.w) && k >= from) {
      const end = endOfStatus(items, from, k);
      if (end) sealed = end;
    }
  });
  return out;
}
