import {
  ASKING,
  ASKING_WITHIN,
  NOMINAL_HEAD,
  NOMINAL_LIGHT,
  NOT_ASKING,
  QUESTION_LEADS,
  READ_OUT,
  REPORT,
} from '../../../lexicon/questions.ts';
import type { Item } from '../../item.ts';
import { wordsBetween } from '../../words-between.ts';

/** The words from the question on, or nothing where the note does not ask. */
export function questionIn(whole: string, items: Item[], asked: boolean): string | undefined {
  let head = whole;
  for (let k = 0; k < 6; k++) {
    const lead = QUESTION_LEADS.map((p) => p.exec(head)).find((m) => m && m[0].length < head.length);
    if (!lead) break;
    head = head.slice(lead[0].length);
  }
  // "could you read me back everything that I did on Monday"
  if (
    READ_OUT.test(head) ||
    REPORT.test(head) ||
    (/^(?:everything|all)\b/.test(head) && READ_OUT.test(whole))
  )
    return head;
  // "where the binding was the top edge is ravelling", "where I had the pins, three two": told, not asked
  if (!asked && /^where (?:the|it|that|i|we|she|he|they|there|my|her|his|an?|some) /.test(head))
    return undefined;
  // "same for r3 b1?": a way in question
  if (/^(?:(?:and|or|so|maybe|perhaps|the) )*(?:same|ditto|likewise)\b/.test(head)) return undefined;
  // "so is the whole of that row", "so has the one below it"
  if (!asked && /^(?:and )?so (?:is|are|has|have|did|does|was|were|'s) /.test(whole)) return undefined;
  if (tellsSomething(whole, head, items, asked) || tellsAfterAsking(items)) return undefined;
  // "remind me what I haven't settled": an order, and no telling
  const told = !asked && !/ (?:remind|tell|show) me $/.test(` ${whole.slice(0, whole.length - head.length)}`);
  // "which batting I don't know"
  if (
    !asked &&
    /\b(?:i (?:still )?do n't know|no idea|i 'm (?:still )?not sure|i ca n't (?:decide|say|choose))\b/.test(
      head,
    )
  )
    return undefined;
  if (OF_THE_HOUSE.test(head) || (told && (TOLD_AS_WHAT.test(head) || TOLD_AFTER.test(head))))
    return undefined;
  if (SELF_ASKED.test(head) && !asked && items.some((x) => x.finding || x.fail || x.action?.form === 'past'))
    return undefined;
  if (WHICH_WAY.test(head) || IS_TO_BE.test(head) || (told && TOLD_OPEN.test(head))) return undefined;
  // "did the other lawn one, net over the top, couched it down, fifty minutes start to finish"
  if (
    !asked &&
    DID_A_PIECE.test(head) &&
    items.some((x) => x.duration || x.stitch || x.action?.form === 'past')
  )
    return undefined;
  if (
    !asked &&
    DID_IT.test(head) &&
    !items.some((x) => x.action?.form === 'base' && !x.seam && !x.part && x.w !== 'back')
  )
    return undefined;
  // "do the seams in row six tomorrow": work to do
  if (!asked && DO_IT.test(head)) return undefined;
  if (ASKING.test(head)) return head;
  if (nominal(head, itemsFrom(items, whole, head), asked)) return head;
  const within = ASKING_WITHIN.exec(head);
  // "1-4 1-5 stained, coffee?": found, and what it is of in doubt
  if (!within) return asked && items.length <= 14 && !findsDamage(items) ? head : undefined;
  const before = head.slice(0, within.index);
  // "that's net over the tear is what I'll do": told, with the answer before the word
  if (/ (?:is|'s|was|not|n't|than|like)$/.test(before)) return undefined;
  // "four blocks only, which one might have thought easy": a clause that tells more
  if (within[1]!.startsWith('which') && /\S+ \S+ ,$/.test(before.trim())) return undefined;
  if (NOT_ASKING.test(before) || before.split(' ').length > 7) return undefined;
  // what stands before the question word may only say what it is about
  const lead = items.slice(
    0,
    items.findIndex((x) => /^(what|how|which|when|have|did)$/.test(x.w)),
  );
  return lead.some(
    (x) => x.finding || x.cost || x.quantity?.unit || x.duration || (x.action && x.action.form === 'past'),
  )
    ? undefined
    : head;
}

/** "Did the second row today": she did; a question has a verb after its "did". */
const DID_IT =
  /^did (?:the|this|that|it)\b(?!.*\b(?:have|get|come|came|go|need|take|say|ask|want|run|fit|make|work|give|cost|dry|fade|bleed|last(?! (?:night|evening|week|month|\w+day|thing)\b)|reach|look|hold|do|end|start|finish|ever|i|we|you|she|he|they)\b)/;
const DO_IT =
  /^do (?:the|this|that|those|these|both|all|row|rows|block)\b(?!.*\b(?:have|get|need|want|match|fit|look|take|still|i|we|you)\b)/;
const findsDamage = (items: Item[]): boolean => {
  const place = items.findIndex((x) => x.place?.kind === 'blocks' && x.place.how === 'said');
  return place >= 0 && items.slice(place + 1).some((x) => x.finding && x.finding !== 'sound');
};
const DID_A_PIECE =
  /^did (?:it (?:all |again |both |too )*(?:on|in|by|at|for|,|tonight|today|yesterday|last|this|\w+day)|the|this|that|both|them|those|these|all|row|block|\d|some|another|a) /;
/** "what do I see, the bunny's torn": asked of herself, and what follows is the answer. */
const SELF_ASKED =
  /^what (?:do (?:i|we) (?:see|find|have)(?: here)?|have (?:i|we)(?: got)?(?: here)?|else do i see|'s this|is this|'s here)(?: ,)?(?! (?:got|been|done|said|logged|put|to|left|about|on|for|in|still))(?: \S+){3}/;

/** "Which print for the patch, red dot or stripe?", "what colour for the binding?": a matter to decide, and nothing that the log knows. */
const WHICH_WAY =
  /^(?:which|what)(?: colou?rs?(?: of)?| kind of| sort of| type of| shade of| weight of)?(?: (?:print|fabric|cloth|thread|yarn|floss|batting|wadding|backing|binding|border|stitch|pattern|loft|colou?rs?))?(?<! (?:of)|^what|^which)(?: (?:for|on|should|shall|would|do i (?:use|want|go)\b)| ,)(?!.*\b(?:did|have|had|used|was|were|need|buy|next)\b)/;
/** "what colour the binding must be", "which batting should go in": what is still to be chosen. */
const IS_TO_BE =
  /^(?:what|which|how) (?!(?:do|did|have|has|had|was|were|am|is|are|must|should|'s|else|much|many|long|blocks?|rows?|columns?|places?|bits?|ones?|things?|jobs?|parts?) )(?:\S+ ){1,4}?(?:should|must|ought to|has to|have to|is to|'s to|is going to|'s going to|is supposed to) (?:be|go in|go on|have|look|match)\b(?!.*\b(?:done|bought|finished|ready|left|next)\b)/;
/** "What I bought was the binding", "what she wants is to sleep under it", "what colour it'll be we've left open": told, not asked. */
const TOLD_AS_WHAT =
  /^(?:(?:what|all) (?:i|we|she|he|they|my \w+|her \w+|the \w+)(?: \S+){1,6} (?:was|is|'s|were|are) \S|what (?:do|did) i see\b (?!\S+ ?\?)|(?:what|which|how|whether) (?!(?:\S+ )?(?:have|did|do|am) (?:i|we) |(?:is|'s|was|were|are|else) )(?:.* )?(?:i|we) (?:have |'ve |'m |am )?(?:left|leave|put off|not (?:settled|decided)|have n't|do n't|ca n't|still to|yet to)\b)/;
/** "What's wrong with 3-1 is it's torn": told, not asked. */
const TOLD_AFTER =
  /(?:anyone|anybody) 's guess(?: yet| still| now)?$|^what (?:'s|is) (?:wrong|the (?:matter|trouble|problem)|happened)(?: \S+){0,5} is /;
/** "How close to quilt it, undecided", "how to wash it is still open, and so's the binding": told, not asked. */
const TOLD_OPEN =
  /^(?:(?:how|who|where|when)(?! (?:is|are|many|much|long|do|does|did|about))|how (?:much|many|long) (?:she|he|they|to)\b|(?:what|which)(?! (?:is|'s|are|have|has|else|all|am|do|did|things?|points?|items?|issues?|matters?|questions?|bits?|is|ones?|decisions?|remains?|stands?)\b)) .*\b(?:undecided|open|tbd|unsettled|up in the air|(?:still )?to (?:settle|decide|be decided|be settled)|not (?:yet )?(?:decided|settled|chosen|agreed)|n't (?:been )?(?:decided|settled|chosen|agreed))(?: yet| still)?(?:$| ,? ?(?:and|so|but) )/;

/** A statement before the question, or one that begins like a question ("have 30 cm interfacing", "still need 5 yd"). */
function tellsSomething(whole: string, head: string, items: Item[], asked: boolean): boolean {
  // "2-4 still to do"
  if (
    !asked &&
    items[0]?.place?.how === 'said' &&
    /^(?:(?:'s|is|are) )?still (?:to do|to go|to come)(?: then| yet| though)?$/.test(
      wordsBetween(items, 1).trim(),
    )
  )
    return true;
  const stop = items.findLastIndex((x, k) => /^[.!?;]$/.test(x.w) && k < items.length - 1);
  if (stop >= 0) {
    const before = items.slice(0, stop);
    // "and the piecing? how many hours"
    if (items[stop]!.w === '?' && stop <= 4 && before.every((x) => x.action?.form !== 'base')) return false;
    if (before.some((x) => x.finding || x.action || x.quantity?.unit || x.cost || x.span)) return true;
    if (before.some((x) => x.place && x.place.kind === 'blocks') && before.length > 4) return true;
  }
  // "did the binding from two till four"
  if (!asked && DID_THE_WORK.test(head)) return items.some((x) => x.span || x.clock || x.duration);
  // "did I get four hours in", "will five yards be enough"
  if (
    asked ||
    // "how big a piece of batting does it want"
    /^how (?:big|long|wide|large) (?:a|an) /.test(head) ||
    /^(?:did|have|had|will|would|can|am|is|are|should|might) (?:i|we|it|the|that|(?:\S+ ){1,4}(?:yards?|yds?|metres?|meters?|m)) /.test(
      head,
    )
  )
    return false;
  return items.some((x) => x.quantity?.unit || x.cost || x.span || x.duration) || / : /.test(whole.slice(8));
}

/** "will that dog ever be quiet? 3-2 is torn", "is that the postman? darned 3-1": nothing of the work was asked, and then something is told. */
function tellsAfterAsking(items: Item[]): boolean {
  const stop = items.findIndex((x) => x.w === '?');
  if (stop < 0 || stop > items.length - 3) return false;
  const ofWork = (x: Item): boolean =>
    Boolean(x.task || x.action || x.finding || x.quantity || x.material || x.topic || x.part || x.cost) ||
    (x.place !== undefined && x.place.kind !== 'pointer') ||
    /^(?:hours?|time|long|far|left|last|log|logged|note|notes|day|did|have|done|said|say|undecided|open|need)$/.test(
      x.w,
    );
  return (
    !items.slice(0, stop).some(ofWork) &&
    items.slice(stop + 1).some((x) => x.finding || x.fail || x.action?.form === 'past')
  );
}

const DID_THE_WORK =
  /^did (?:the|that|some|a bit of|more) (?:\S+ ){1,2}(?:from|between|for|till|until|at|in|this|last|,) /;

/** The items of the question proper, without what leads up to it. */
function itemsFrom(items: Item[], whole: string, head: string): Item[] {
  let led = whole
    .slice(0, whole.length - head.length)
    .split(' ')
    .filter(Boolean).length;
  return items.filter((x) => {
    led -= x.w.split(' ').length;
    return led < 0;
  });
}

/** "hrs mending so far", "total for fri": a question without a verb. Every word must be one of those that such a question has. */
function nominal(head: string, items: Item[], asked: boolean): boolean {
  // "I need, um, metres of batting": told, with the number left out
  if (!NOMINAL_HEAD.test(head) || items.length > 12 || (!asked && /^(?:i|we) (?!said|put)/.test(head)))
    return false;
  // "and everything below it": where the same was done
  if (!asked && items.some((x) => x.place?.rule === 'place.all-beyond')) return false;
  // "batting still undecided": told, where nothing asks
  if (
    !asked &&
    items[0]?.topic &&
    /^ ?(?:still|yet)? ?(?:undecided|open|pending) $/.test(wordsBetween(items, 1))
  )
    return false;
  return items.every(
    (x, k) =>
      x.task !== undefined ||
      (x.place !== undefined && x.place.places.length > 0) ||
      NOMINAL_LIGHT.has(x.w) ||
      /^(mon|tue|tues|wed|wednes|thu|thur|thurs|fri|sat|satur|sun)(day)?$/.test(x.w) ||
      // "hours on 19 July", "total for the 3rd of May"
      /^(jan|feb|mar|apr|may|june?|july?|aug|sept?|oct|nov|dec)[a-z]*$/.test(x.w) ||
      (x.token.kind === 'number' && (x.token.value ?? 99) <= 31 && !x.quantity?.unit) ||
      // "hours for the 12th"
      /^(?:st|nd|rd|th)$/.test(x.w) ||
      x.w.split(' ').every((w) => NOMINAL_LIGHT.has(w)) ||
      // "hours so far on the church quilt"
      (k > 0 && !x.action && !x.finding && /^(?:quilt|qlt|one|job)$/.test(items[k + 1]?.w ?? '')) ||
      (asked && (x.part !== undefined || x.material !== undefined || x.topic !== undefined)),
  );
}

/** At the door, on the wall: nothing that the log knows. */
const OF_THE_HOUSE =
  /\b(?:(?:back|front|side) door|at the door|is that the time|who (?:'s|is|was) (?:that|there|at|calling|ringing)|^what an? |how (?:are|were|is|'s) (?:you|your|she|he|they|himself|herself))\b/;
