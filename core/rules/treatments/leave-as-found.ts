import type { Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';
import { found, type WayFound, type WordAt } from './way.ts';

/** "till tomorrow", "for another day": when it will be done. */
export const PUT_OFF =
  / (?:till|until|for) (?:tomorrow|later|next|another|after|tonight|(?:the )?(?:morning|weekend|evening|afternoon)|this (?:evening|afternoon|weekend)|(?:mon|tues|wednes|thurs|fri|satur|sun)day) /;

/** "left it as it was", "stays put", "live with it". */
export function leaveAsFound({ items, k, item }: WordAt): WayFound {
  if (isLeave(items, k)) {
    const form = item.action?.form ?? 'past';
    return found(
      {
        action: 'leave',
        form: /^(leave|leaving|let|letting)$/.test(item.w) ? (item.w.endsWith('ing') ? 'ing' : 'base') : form,
        at: k,
        items: [item],
        rule: 'treatment.leave',
      },
      k,
    );
  }
  return undefined;
}

const NOTHING_TO_DO =
  /^ (?:to be done|to do|doing|needs? doing|needed|required|called for)(?: (?:there|here|about (?:it|that|them|those)|(?:to|on|for|with) (?:it|that|them|those)))* (?:$|[,.;!] )/;

/** "net over? darn? nothing?", "a darn, or nothing at all": leaving it as one of the ways in question. */
export function nothingDone({ items, k, item, before, after, all }: WordAt): WayFound {
  // "nothing for 2-4", in a list of what each block gets
  if (
    item.w === 'nothing' &&
    k === 0 &&
    items[1]?.w === 'for' &&
    items[2]?.place?.kind === 'blocks' &&
    items.length <= 6
  )
    return found({ action: 'leave', form: 'past', at: k, items: [item], rule: 'treatment.leave' }, k);
  // "(6-1 gets the patch,) 6-2 nothing"
  if (item.w === 'nothing' && k > 0 && items.every((x) => x === item || x.place || /^(and|&|,)$/.test(x.w)))
    return found({ action: 'leave', form: 'past', at: k, items: [item], rule: 'treatment.leave' }, k);
  // "neither 4-1 nor 4-2 needs anything", "3-3 doesn't need anything"
  if (
    item.w === 'anything' &&
    / (?:needs?|wants?|wanting|requires?)(?: to have)? $/.test(before) &&
    items.some((x) => x.place?.kind === 'blocks') &&
    items.slice(0, k).some((x) => /^(neither|n't|not)$/.test(x.w)) &&
    /^ +(?:$|[,.;!] |done |doing |and |but |there |from me )/.test(after)
  )
    return found({ action: 'leave', form: 'past', at: k, items: [item], rule: 'treatment.leave' }, k);
  // "corners fraying a bit, nothing to be done there", "1-2 thin but holding, no work on it"
  if (
    items.some((x) => x.place?.places.length || x.finding) &&
    ((item.w === 'nothing' && NOTHING_TO_DO.test(after)) ||
      (/^(work|treatment|action|repair|repairs|mending)$/.test(item.w) &&
        / no (?:further |more )?$/.test(before) &&
        /^ (?:$|[,.;!] |needed|required|necessary|called for|on (?:it|that|this|them|those)|there|here|planned)/.test(
          after,
        )))
  )
    return found({ action: 'leave', form: 'past', at: k, items: [item], rule: 'treatment.leave' }, k);
  if (item.w !== 'nothing' || !(/ (or|either|maybe) $/.test(before) || /^ nothing (at all )?$/.test(all)))
    return undefined;
  return found({ action: 'leave', form: 'noun', at: k, items: [item], rule: 'treatment.nothing' }, k);
}

export const KEEP =
  /^(?:keep|keeping|kept|keeps|reuse|reusing|reused|retain|retaining|salvage|salvaging|save|saving|saved)$/;
/** "keep the backing out of the sun", "keep the scraps for patches", "keep it flat": how it is to be held, or for what. */
const KEPT_HOW =
  /^(?:out|away|clear|for|flat|safe|dry|damp|tight|straight|from|off|clean|even|level|smooth|taut|moving|going|square|back|separate|rolled|folded|wrapped|covered|to|until|till)$/;

/** "keep the batting", "the border I'll keep", "it's good, so I'm keeping it": a part or blocks of the quilt stay as they are. */
function keepsThing(items: Item[], k: number): boolean {
  let at = k + 1;
  while (
    /^(?:the|that|this|its|her|my|old|original|existing|all|both|of|on|to|quilt)$/.test(items[at]?.w ?? '')
  )
    at++;
  const thing = items[at];
  const end = items[at + 1];
  const isEnd = (x: Item | undefined): boolean =>
    !x ||
    x.token.kind === 'mark' ||
    /^(?:on|in|then|now|though|and|but|so|too|after|i|where|because|since)$/.test(x.w);
  const before = wordsBetween(items, Math.max(0, k - 4), k);
  if (/ (?:they|she|he|you|who|people|owners?)(?: \S+)? $/.test(before)) return false;
  if (isEnd(thing)) {
    return (
      / (?:i|we)(?: '?ll| will| can| could| 'm| am| shall)?(?: just| probably)? $/.test(before) &&
      items.slice(0, k).some((x) => x.place?.kind === 'part' || x.place?.kind === 'blocks')
    );
  }
  if (/^(?:it|them|that|those|these|this)$/.test(thing!.w))
    return (
      (isEnd(end) || end?.w === 'as') &&
      (items.slice(0, k).some((x) => x.place || x.part) || / (?:i|we) (?:'m|'ll|'re|will|am) $/.test(before))
    );
  if (!thing!.place && !(thing!.fabric && end?.place)) return false;
  let next = at + 1;
  while (items[next]?.place || /^(?:on|in|at|and|of|the|,)$/.test(items[next]?.w ?? '')) next++;
  return !KEPT_HOW.test(items[next]?.w ?? '');
}

/** What is left behind by something, and is no thing that somebody leaves alone. */
const DAMAGE_NOUN = /^(?:mark|ring|shadow|spot|stain|blotch|residue|outline|line|crease|tidemark|halo)s?$/;

function isLeave(items: Item[], k: number): boolean {
  const w = items[k]!.w;
  // "left the tails an inch long": the tails were read as a length and are gone from here
  const told = items[k + 1]?.w === 'the' || items[k + 1]?.w === 'my' ? items[k + 2] : items[k + 1];
  if (/^(left|leaving|leave)$/.test(w) && told?.w === '--') return false;
  // "that leaves me half a metre of it"
  if (/^(leaves?|leaving|left)$/.test(w) && /^(me|us)$/.test(items[k + 1]?.w ?? '')) return false;
  if (/^(remain|remains|remaining|retained|retain)$/.test(w))
    return (
      / (in situ|in place|as|where|untouched|undisturbed|put|alone|there|unaltered) /.test(
        wordsBetween(items, k + 1, k + 7),
      ) || w.startsWith('retain')
    );
  // "come here, Biscuit, leave that alone": said to somebody on four legs
  if (w.startsWith('leave') && / (come here|get down|good (boy|girl|dog)) /.test(wordsBetween(items)))
    return false;
  const after = wordsBetween(items, k + 1, Math.min(items.length, k + 9));
  const before = wordsBetween(items, k - 5, k);
  if (items[k]!.action?.v === 'leave' && w.includes(' ')) return true;
  if (KEEP.test(w))
    return (
      keepsThing(items, k) ||
      (w.startsWith('ke') &&
        / (as (is|it is|it 's|they are|found)|the way (it|they)|(the|that|its|this) old|well alone) /.test(
          after,
        ))
    );
  // "found a pin left in the batting"
  if (
    w === 'left' &&
    /^(pins?|needles?)$/.test(items[k - 1]?.w ?? '') &&
    /^ (?:in|inside|under|behind) /.test(after)
  )
    return false;
  // "there's a ring left on the back", "a tear left in 2-3": damage that is still there
  if (
    w === 'left' &&
    /^ (?:on|in|at|across|over|behind|from|by|where) /.test(after) &&
    / (?:an?|one|two|some|any) (?:[\w-]+ ){0,3}$/.test(before) &&
    (items[k - 1]!.finding || DAMAGE_NOUN.test(items[k - 1]!.w))
  )
    return false;
  // "not the top left, the bottom right", "from the left to the right": a side
  if (w === 'left' && /^(top|upper|bottom|lower|the)$/.test(items[k - 1]?.w ?? '')) return false;
  // "its neighbours to left and right"
  if (
    w === 'left' &&
    /^(to|on)$/.test(items[k - 1]?.w ?? '') &&
    /^(and|&|or)$/.test(items[k + 1]?.w ?? '') &&
    items[k + 2]?.w === 'right'
  )
    return false;
  // "it has left the cloth weak": what became of it
  if (
    w === 'left' &&
    / (?:it|that|which|this|they) (?:has|'s|had|have) $/.test(before) &&
    items.slice(k + 1, k + 6).some((x) => x.finding)
  )
    return false;
  // "where you left them": told of somebody else
  if (/^left/.test(w) && / (you|he|they|mum|dad|who) $/.test(before)) return false;
  // "I left the kettle on": nothing of the quilt
  if (w === 'left' && /^ (?:the|my|a) /.test(after) && isThingOfHouse(items, k + 2)) return false;
  // "she can leave a message", "leave the door open": nobody at the bench, or nothing of the quilt
  if (
    /^leav/.test(w) &&
    (LEFT_AT_HOME.test(after) ||
      / (?:she|he|they|you lot|mum|dad) (?:can|could|may|might|will|'ll|must|should|'d better) (?:just |always |only )?$/.test(
        before,
      ))
  )
    return false;
  // "leave the border off": not to be put on
  if (/^leav/.test(w) && /^ (?:the|that|a|any) (?:\S+ ){1,2}(?:off|out) /.test(after)) return false;
  // "that one I'll leave till tomorrow": put off, and not left as it is
  if (/^leav/.test(w) && PUT_OFF.test(after)) return false;
  // "a stay of muslin" is a thing
  if (w === 'stay' && / (a|an|the|new|cotton|muslin) $/.test(before)) return false;
  // "stay stitching round the edge"
  if (w === 'stay' && /^stitch/.test(items[k + 1]?.w ?? '')) return false;
  if (w === 'stays' || w === 'stay' || w === 'staying') return !/ (up late|to |with me|late) /.test(after);
  // "4-3 to leave", where each block has its own
  if (
    w === 'leave' &&
    k > 1 &&
    items[k - 1]!.w === 'to' &&
    (!items[k + 1] || items[k + 1]!.token.kind === 'mark') &&
    items.slice(0, k - 1).every((x) => x.place || /^(and|&|,|the|then)$/.test(x.w))
  )
    return true;
  if (w === 'leave' || w === 'leaves')
    return (
      !/ (for (the |my )?(shop|work|market|town|day)|at |by |early|notes?|room|a (gap|tail|note)) /.test(
        after,
      ) &&
      !/ (to|before i|on) $/.test(
        before.replace(
          / (better|best|going|decided|agreed|want|wants|like|said|says|happy|content|inclined|glad|tempted|minded|whether|how|about) to $/,
          ' ',
        ),
      )
    );
  if (items.slice(k + 1, k + 6).some((x) => x.measure === 'tail' || x.measure === 'overhang')) return false;
  // "she's leaving it to me", "leaving it to dry"
  if (/^leav/.test(w) && LEFT_TO.test(after)) return false;
  if (w === 'leaving') return !/ (a gap|for town|room|at |the house|by ) /.test(after);
  if (w === 'live' || w === 'living')
    return (
      /^ with (it|that|them|this|those|the) /.test(after) ||
      // "the weak spot in 2-2 I've decided to live with"
      (/^ with $/.test(after) && items.slice(0, k).some((x) => x.place)) ||
      (/ live with $/.test(`${before}live with `) && items[k + 2]?.place !== undefined)
    );
  // "5-5 I'm not bothering with"
  if (/^(bother|bothering)$/.test(w))
    return (
      / (not|n't) (going to |gonna |think i 'll |be |really )?$/.test(before) &&
      (/^ with (?:the|that|this) (?:\S+ ){1,2}(?:on|in|at) /.test(after) ||
        /^ with (it|that|them|those|this|these)? ?$/.test(after) ||
        (items[k + 2]?.place?.kind === 'blocks' && !items[k + 1]!.action)) &&
      items.some((x) => x.place)
    );
  if (w === 'left') {
    if (items[k]!.place) return false;
    // "on the windowsill, love, where you left them"
    if (/ (?:where|what) (?:you|he|she|they|i) $| you $/.test(before)) return false;
    // "with what was left of the gingham"
    if (/^ of /.test(after)) return false;
    // "I left the tails an inch": the length was read before, and "the" is all that stands behind
    if (/^ (the|them|it|a) $/.test(after) && !/ (them|it) $/.test(after)) return false;
    // "and that one I have left", "the cornflower in 2-4 I looked at and left"
    if (
      (!items[k + 1] || items[k + 1]!.token.kind === 'mark') &&
      / (i|have|'ve|and) $/.test(before) &&
      items
        .slice(0, k)
        // "the stained one I left"
        .some((x, m) => x.place || x.fabric || (x.finding && /^ones?$/.test(items[m + 1]?.w ?? ''))) &&
      !items.some((x) => x.clock || x.span || x.duration)
    )
      return true;
    // "should they be patched or simply left"
    if (
      (!items[k + 1] || items[k + 1]!.token.kind === 'mark') &&
      ((/ or (?:just |simply |else |only )*$/.test(before) && items.slice(0, k).some((x) => x.action)) ||
        (k > 0 && /^ (?:or |just |simply |else |only )+$/.test(before)))
    )
      return true;
    // "old wadding: left in place", "left where it is"
    if (/^ (?:in place|in situ|where (?:it|they) (?:is|are|was|were|'s)|undisturbed|untouched) /.test(after))
      return true;
    // "4-5 left", "4-5 can be left"
    const lead = items[k - 1];
    const next = items[k + 1];
    if (
      (!next || /^(,|and|for|\)|then|but|too)$/.test(next.w)) &&
      lead &&
      ((lead.place && lead.place.kind !== 'part') ||
        / (can|could|to|should|shall|will|'ll|may|might|get|gets|got|best) (?:(?:just|simply|well|as well|always|also|both|all) )*(be )?$/.test(
          before,
        ))
    )
      return !items.some((x) => x.quantity?.unit || x.duration);
    return / (it|that|them|those|the|alone|as|be|well|just|this|both|these) /.test(after.slice(0, 8)) &&
      !/ (on|to|over|hand|edge|side|with|is|what 's|whats|anything|have|i 've|'ve) $/.test(
        before.replace(/ (i|just|have|'ve|and|is|was|'s|are|be|'re) $/, ' x '),
      )
      ? !/ (is|are|'s) $/.test(before) || / (as|alone|be|well) /.test(after)
      : / (as (is|it|found|they|was|i found|i had)|alone|be|well alone|exactly as|just as|that way) /.test(
          after.slice(0, 18),
        );
  }
  if (w === 'let' || w === 'letting' || w === 'lets')
    return / (it|that|them|those|well)? ?(alone|be|lie) /.test(after);
  if (w === 'alone')
    return (
      !/^ (was|took|is|came) /.test(after) &&
      // "that alone 15 min", "15 min for that alone"
      !items.slice(Math.max(0, k - 3), k + 3).some((x) => x.duration) &&
      / (well|it|that|them|being) $/.test(before) &&
      !/ (leave|left|leaving|let|for that|on (?:that|it|them)) /.test(before)
    );
  if (w === 'touching' || w === 'touch')
    return / (not|n't|no) /.test(before) && !/ (missing|gone) /.test(after);
  return false;
}

/** A noun of which the rules know nothing, and where it is or how: "the kettle on", "my glasses in the kitchen". */
const isThingOfHouse = (items: Item[], k: number): boolean => {
  const x = items[k];
  return (
    x?.token.kind === 'word' &&
    !/^(rest|others?|ones?|whole|lot|two|three|four|five|old|other|same|next|last|first|entire|upper|lower|left|right|middle|back|front|worn|corner|side|sides)$/.test(
      x.w,
    ) &&
    !Object.entries(x).some(([sense, value]) => value !== undefined && !/^(i|j|w|token|end)$/.test(sense)) &&
    /^(on|off|open|in|at|behind|here|there|running|upstairs|downstairs|for|with|)$/.test(
      items[k + 1]?.w ?? '',
    ) &&
    !items.slice(k + 1).some((y) => y.place?.places.length)
  );
};

const LEFT_AT_HOME =
  /^ (?:(?:me|us|him|her|them) )?(?:an?|the|his|her|their|my|your|our|some|another) (?:\S+ )?(?:messages?|voicemail|voice mail|answer ?phone|word|number|card|parcels?|package|post|mail|keys?|door|gate|window|windows|light|lights|lamp|radio|telly|tv|heating|kettle|oven|tap|lid|money|tip|deposit|change|shopping|milk|washing up|dishes|bins?) /;
const LEFT_TO = /^ (?:\S+ ){1,3}(?:up )?to (?:me|her|him|them|you|us|soak|dry|cool|settle|rest|drip|air) /;
