import type { MaterialUse } from '../../../../shared/vocabulary.ts';
import type { Item } from '../../item.ts';
import { itemWord as w } from '../../item-word.ts';
import { wordsBetween } from '../../words-between.ts';
import { STORES } from '../stores.ts';

export type Cue = { use: MaterialUse; next: number; weak?: boolean };

const CUES: [string, MaterialUse, 'weak' | 'firm'][] = [
  [
    'bought|rcvd|recd|received|got in|delivery|parcel came|parcel :|sent off for|sent away for|put in an order for|let me have|had to buy|had to get|had to order|took delivery of|ordered|purchased|purchases|purchase|bt|bght|grabbed|fetched|stocked up on|treated myself to|treated us to|treated me to|picked up|picked me up|come home with|came back with|come back with|coming back with|went home with|walked out with|stocked up with|sent for|came home with|brought home|brought back|came away with|come away with|receipt|haul|from the shop|at the shop|paid for|splurged on|collected|got hold of|got my hands on|invested in|snagged|nabbed|laid in|had delivered|took home|shop cut me|they cut me|she cut me|he cut me|got them to cut me|had them cut me|managed to get|managed to find|managed to buy|on order',
    'bought',
    'firm',
  ],
  [
    'that took|this took|which took|used up|used|materials :|mats :|went through|gone through|got through|ate up|ate|ate into|eaten|took up|swallowed|finished off|there went|there goes|bang goes|bang went|used about',
    'used',
    'firm',
  ],
  [
    "to be bought|to be got|to be ordered|to be purchased|to be fetched|still to be bought|still to be got|still to be ordered|to buy|to get|to order|to purchase|must purchase|need to purchase|have to purchase|need to order|have to order|need to pick up|must order|must pick up|must buy|must get|need to buy|need to get|have to buy|have to get|'ve to get|'ve to buy|got to get|got to buy|gotta get|gotta buy|gotta order|got to order|still to buy|still to get|shopping list|shop list|list|have to send for|must send for|need to send for|to send for|send for|send off for|send away for|should get|should buy|should order|ought to get|ought to buy|better get|better buy|better order|could use|can use|stock up on|grab|remember to get|remember to buy|remember to order|to source|short of|short on|short by|not enough|n't enough|n't got enough|n't have enough|run out of|ran out of|running out of|'m short|am short|'re short|are short|'m short of|running low on|low on|nearly out of|all out of|clean out of|fresh out of|out of|could do with|be needing|be wanting|be requiring|require|requires|required|need|needs|needed|still need|will need|'ll need|takes|will take|'ll take|buy|order|to pick up|pick up|wanted|lack|lacking|am without|'m without|to fetch|n't forget|must remember",
    'needed',
    'firm',
  ],
  ["want|'ll want|will want|get|going to want|get some", 'needed', 'weak'],
  [
    "still got|still had|already had|had already|brought me|brought us|brought over|handed me|sent me|passed me|dropped off|got enough|got plenty of|got loads of|got lots of|only got|only have|only had|down to my last|down to the last|on my last|gave me|given me|been given|was given|passed on to me|on hand|in stock|in store|to hand|in hand|held :|stock :|stores :|in stock :|already have|already own|i own|we own|still own|already got|'ve already got|have already got|have got|'ve got|i have|still have|'ve still got|in the cupboard|in the drawer|in the stash|in the box|in the chest|in the bag|in the tin|on the shelf|in drawer|in cupboard|in stash|in box|in chest|in bag|in tin|on shelf|in my stash|left over|left|spare|leaves me|leaves us|leave me|leave us|leaving me|leaving us|that leaves|which leaves|left me|left us",
    'on-hand',
    'firm',
  ],
  [
    "have|'ve|'d|leaving|leaves|got left|there 's|there is|there are|there 're|there was|found|unearthed|dug out|came across|turned up",
    'on-hand',
    'weak',
  ],
  ['got|had|came home|came away with|took', 'bought', 'weak'],
];
const CUE_OF = new Map<string, { use: MaterialUse; weak?: true }>();
for (const [phrases, use, strength] of CUES)
  for (const phrase of phrases.split('|'))
    if (!CUE_OF.has(phrase)) CUE_OF.set(phrase, { use, ...(strength === 'weak' ? { weak: true } : {}) });
const CUE_HEADS = new Set([...CUE_OF.keys()].map(firstWord));

export function firstWord(phrase: string): string {
  const blank = phrase.indexOf(' ');
  return blank < 0 ? phrase : phrase.slice(0, blank);
}

/** The word for buying, needing or having at item `k`. */
export function cueAt(items: Item[], k: number): Cue | undefined {
  const list = items[k] && putOnList(items, k);
  if (list) return { use: 'needed', next: list };
  // "plenty of ecru thread here", "enough calico in the drawer"
  const plenty = plentyAt(items, k);
  if (plenty) return { use: 'on-hand', next: plenty };
  // "we're two skeins short", "a yard short on the backing"
  const wants = shortBy(items, k);
  if (wants) return { use: 'needed', next: wants };
  // "next time in town: pins, thread", "for the shop: interfacing"
  const head = k === 0 ? SHOP_HEAD.exec(wordsBetween(items, 0, 8))?.[0] : undefined;
  if (head) return { use: 'needed', next: head.trim().split(' ').length };
  // "the cupboard has 2 yds of muslin"
  if (
    w(items, k) === "'s" &&
    w(items, k + 1) === 'got' &&
    STORES.test(w(items, k - 1)) &&
    items[k + 2]?.quantity
  )
    return { use: 'on-hand', next: k + 2 };
  if (/^(has|holds)$/.test(w(items, k)) && STORES.test(w(items, k - 1)) && items[k + 1]?.quantity)
    return { use: 'on-hand', next: k + 1 };
  const stored = k === 0 ? storeHead(items) : undefined;
  if (stored) return { use: 'on-hand', next: stored };
  const gets = stillGet(items, k);
  if (gets) return { use: 'needed', next: gets };
  // "short one spool of thread"
  if (w(items, k) === 'short' && items[k + 1]?.quantity?.unit) return { use: 'needed', next: k + 1 };
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
      // "the first gets net, the second left", "…, the right one is left": the block, left as found
      (w(items, k) === 'left' && isOfBlock(items, k)) ||
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
      // "the ends left at three quarters of an inch"
      (w(items, k) === 'left' && /^(at|to|long)$/.test(w(items, k + 1))) ||
      // "left-handed shears"
      (w(items, k) === 'left' && /^(-|handed|hand)$/.test(w(items, k + 1))) ||
      // "with what was left of the gingham": used up
      (w(items, k) === 'left' &&
        w(items, k + 1) === 'of' &&
        items.slice(Math.max(0, k - 5), k).some((x) => /^(with|from|using|out|of|in)$/.test(x.w)))
    )
      continue;
    // "leaving all three blue checks as they are": left as found, and no goods
    if (/^leav/.test(phrase) && LEFT_AS_FOUND.test(wordsBetween(items, k, k + 12))) continue;
    // "I have decided against the crepeline": what she has done, and nothing that she has
    if (
      /(?:^|\s)(?:have|'ve)$/.test(phrase) &&
      /^(?:now |since |just |finally |also )*(?:decided|gone|chosen|settled|agreed|changed|thought|opted|plumped|dropped|ruled|given|abandoned)\b/.test(
        wordsBetween(items, k + n, k + n + 3).trim(),
      )
    )
      continue;
    // "that took two skeins of pearl cotton", but "that took an hour"
    if (/^\w+ took$/.test(phrase) && !items[k + n]?.quantity?.unit) continue;
    const cue = CUE_OF.get(phrase);
    // "it's going to get the net", "3-3's going to get a patch": what is done to the block
    if (cue && /^(?:to |going to )?get$/.test(phrase) && isBlocksTurn(items, k)) continue;
    // "the receipt says the calico was three fifty"
    if (
      phrase === 'receipt' &&
      /^(says|said|shows|reads|has|tells|in|here|from|is|was)$/.test(w(items, k + 1))
    )
      continue;
    // "to buy then, a metre of calico", "still to be bought, then: …", "needed, let me see: …"
    const then = cue?.use === 'needed' ? TURN.exec(wordsBetween(items, k + n, k + n + 6))?.[1] : undefined;
    if (cue) return { ...cue, next: k + n + (then ? then.trim().split(' ').length : 0) };
  }
  return undefined;
}

/** "plenty of", "lots of" and "enough" at the head of a statement that ends with where it is, or with nothing more. Gives the index of the stuff. */
function plentyAt(items: Item[], k: number): number | undefined {
  if (!/^(plenty|lots|loads|enough)$/.test(w(items, k)) || !/^(|[.,;:]|and|but|&)$/.test(w(items, k - 1)))
    return undefined;
  const from = w(items, k + 1) === 'of' ? k + 2 : k + 1;
  if (from === k + 1 && w(items, k) !== 'enough') return undefined;
  let end = from;
  while (end < items.length && end < from + 4 && !HERE.test(w(items, end)) && !/^[.,;!]$/.test(w(items, end)))
    end++;
  const stuff = items.slice(from, end);
  const head = stuff.at(-1);
  if (!head?.material || stuff.some((x) => x.finding || x.place?.kind === 'blocks' || x.quantity))
    return undefined;
  return HERE_BEHIND.test(wordsBetween(items, end, end + 4)) ? from : undefined;
}
const HERE = /^(?:here|left|already|still|in|on|at|to|over|spare)$/;
const HERE_BEHIND =
  /^ (?:$|[.,;!]|(?:still )?(?:here|left|already|spare|over|to hand|in hand|at home|on hand)(?: $|[ ](?:[.,;!]|too|already|and|still|over))|(?:in|on) (?:the|my|a) \S+)/;

/** Is it the block or the cloth of which "is going" is said, and not she who buys? */
function isBlocksTurn(items: Item[], k: number): boolean {
  let m = k - 1;
  // "every gingham block to get net", "3-3 to get a patch"
  const before = items[m];
  if (w(items, k) === 'to' && before && (before.place || /^(?:bl(?:oc)?ks?|squares?|ones)$/.test(before.w)))
    return true;
  while (/^(?:going|gonna|to|now|all|both|also|just|still|definitely)$/.test(w(items, m))) m--;
  // "the damask was going to get net", "2-2 was to get net"
  if (m === k - 1 && !(w(items, k) === 'to' && /^(?:was|were)$/.test(w(items, m)))) return false;
  if (!/^(?:is|'s|are|'re|was|were)$/.test(w(items, m))) return false;
  const subject = items[m - 1];
  return Boolean(
    subject &&
      (/^(?:it|that|this|they|those|these|one|ones|block|blocks|both)$/.test(subject.w) ||
        subject.place ||
        subject.fabric),
  );
}

/** What is said before a list begins. */
const TURN =
  /^ ((?:, )?(?:then|now|so|yet|still|let me see|let 's see|right|well)(?= (?:[:,]|-|--|an?|half|some|\d)))/;

const LEFT_AS_FOUND = /^[^.;!?]* (?:as (?:it is|they are|is|found|it was|they were)|alone|be) /;

const SHOP_HEAD =
  /^ (?:(?:and|for|on) )*(?:the |my )?(?:shop|shops|market|next (?:time in town|trip|shop|order|shopping)|(?:next )?time in town|wants?|wanted|still (?:wanted|to come)|required|(?:could (?:you|somebody|someone) )?(?:please )?remind me(?: (?:on \w+|tomorrow|later|next \w+|about|to get|please))*|for the list|on the list) (?::|-) /;

/** "must still get two balls of cotton", "we must just go and get thread": with a word between. Gives the index of the goods. */
function stillGet(items: Item[], k: number): number | undefined {
  if (!/^(must|should|shall|'ll|will|gotta)$/.test(w(items, k))) return undefined;
  let m = k + 1;
  while (m < k + 5 && /^(still|just|also|really|now|then|first|only|quickly|go|and)$/.test(w(items, m))) m++;
  if (m === k + 1 || !/^(get|fetch|grab|find)$/.test(w(items, m))) return undefined;
  // "must still get the net on 2-3" is work
  const next = items[m + 1];
  return next && (next.quantity || /^(some|more|another|a|an)$/.test(next.w)) ? m + 1 : undefined;
}

/** "cupboard: 2 packs pins", "sewing box - half a reel of thread", "under the bed, three yards of muslin": where it is kept, as a heading. Gives the index of the goods. */
function storeHead(items: Item[]): number | undefined {
  let m = 0;
  while (m < 3 && /^(and|then|up|out|down|over|still)$/.test(w(items, m))) m++;
  const led = /^(in|on|under|inside|from)$/.test(w(items, m));
  if (led) m++;
  while (/^(the|my|our|a)$/.test(w(items, m))) m++;
  const name = m;
  while (m < name + 3 && items[m]?.token.kind === 'word' && !/^[:,-]/.test(w(items, m))) m++;
  const store = w(items, m - 1);
  if (
    m === name ||
    !(
      STORES.test(store) ||
      (w(items, 0) === 'under' && /^(bed|stairs|bench|table|sofa|bunk)$/.test(store))
    ) ||
    // "press: 2-3", "hand: …"
    (!led && m === name + 1 && /^(press|hand|bolt|hall|rag)$/.test(store)) ||
    !(/^(:|-|--)$/.test(w(items, m)) || (led && w(items, m) === ','))
  )
    return undefined;
  const amount = items[m + 1]?.quantity;
  return amount?.unit || (amount && items.slice(m + 2, m + 5).some((x) => x.material)) ? m + 1 : undefined;
}

/** "two skeins short", "a yard short on the backing": where the amount stands before the word. Gives the index of the amount. */
function shortBy(items: Item[], k: number): number | undefined {
  if (!items[k] || (!items[k]!.quantity && !/^(?:'m|'re|am|are)$/.test(w(items, k)))) return undefined;
  const at = items[k]!.quantity ? k : k + 1;
  if (!items[at]?.quantity?.unit || w(items, at + 1) !== 'short') return undefined;
  return at;
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

/** Is it one block or some that "left" is told of, and nothing more behind it? */
export function isOfBlock(items: Item[], k: number): boolean {
  const at = /^(is|'s|are|was|were|gets|being|stays)$/.test(w(items, k - 1)) ? k - 2 : k - 1;
  const place = items[at]?.place;
  return (
    place !== undefined &&
    place.kind !== 'part' &&
    place.rule !== 'place.it' &&
    place.places.length > 0 &&
    /^(|[.,;!]|and|but|alone|as|be)$/.test(w(items, k + 1))
  );
}
