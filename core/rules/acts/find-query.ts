import { TASK_OF_ACTION } from '../../../shared/task-of-action.ts';
import type { QueryName, Task, Topic } from '../../../shared/vocabulary.ts';
import {
  ASKING,
  ASKING_WITHIN,
  NOMINAL_HEAD,
  NOMINAL_LIGHT,
  NOT_ASKING,
  QUESTION_LEADS,
  READ_OUT,
  REPORT,
  QUESTION_SIGNS as SIGN,
} from '../../lexicon/questions.ts';
import type { Item } from '../item.ts';
import { placesOfClause } from '../places/places-of-clause.ts';
import { type DayFound, dateOf } from '../times/find-day.ts';
import { wallMinutes, wallTime } from '../times/local-time.ts';
import { wordsBetween } from '../words-between.ts';
import { isAskedOfHerself } from './asked-of-herself.ts';

export type QueryFound = {
  query: QueryName;
  task?: Task;
  date?: string;
  places?: string[];
  about?: Topic;
  rule: string;
};

/**
 * A question to the log. Only words that ask are taken: a question about what to do with a block ("patch them or leave
 * them?") is a matter under consideration and belongs to the log, and so is anything told beside a question.
 * `text` is the note's words joined by blanks, `asked` whether it ends in a question mark.
 */
export function findQuery(
  text: string,
  items: Item[],
  asked: boolean,
  day: DayFound | undefined,
  local: string,
): QueryFound | undefined {
  const whole = text
    .replace(/(?: (?:[?.!]|please|pls))+$/g, '')
    .replace(WHY_ASKED, '')
    .replace(/\bgotta\b/g, 'got to')
    .trim();
  if (
    !asked &&
    (SAID_WRONG.test(whole) ||
      WHERE_THEY_MEET.test(whole) ||
      WHAT_WITH.test(whole) ||
      TELLS_WHAT.test(whole) ||
      TELLS_OPEN.test(whole) ||
      RUN_OUT.test(whole))
  )
    return undefined;
  // only of the quilt's own matters: "what will I use for supper"
  if (isAskedOfHerself(whole)) return undefined;
  const body = questionIn(whole, items, asked);
  if (body === undefined) return undefined;
  return classify(` ${plain(body)} `, ` ${whole} `, items, day, local);
}

/** "what'd I get done yesterday I can't even remember": why she asks. */
const WHY_ASKED =
  /(?<=^(?:(?:so|and|oh|right|ok|okay|well|um|uh|er|now) )*(?:what|how|when|where|which)\b.*)(?: ,| -| --)? (?:i (?:ca n't|can not|cannot|could n't|do n't)(?: (?:even|quite|for the life of me|honestly|really))* (?:remember|recall|think|know)|i (?:forget|forgot|'ve forgotten)|it 's gone|remind me)$/;

/** "What looked like mould is only dust", "what comes next is the border", "what's left to decide is the batting", "did I say two four, I meant three four": told, not asked. */
const TELLS_WHAT =
  /^(?:(?:so|and|right|okay|ok|now|well|oh|here|all right) )*(?:what (?:(?:looked|looks|seemed|appeared|(?:i|we) (?:took|mistook|thought was|thought were|had down))(?: at first)? .*|comes next|(?:'s|is) (?:next|left)(?: to \w+)?|(?:i|we)(?: (?:'ve|have|'ll|will|'m|am|still|need|did|do|want|got|to|going|left|buy|get|settle|decide|order))*) (?:is|was|are|were|'s|turned out|turns out) (?!\?)\S|did i say .* i meant? )/;

/** "what with the damp, the last two rows have gone mouldy": why it is so. */
const WHAT_WITH = /^(?:(?:so|and|well|oh) )*what with (?:the|all|its|it|that|this|her|his|one|being|me|my)\b/;

/** "run out of pins", "running low on muslin and pins": told, with the "I have" left out. */
const RUN_OUT =
  /^(?:(?:oh|and|so|right|now|also|damn|bother|just|nearly|almost|,) )*(?:run|ran|running) (?:clean |right |completely )?(?:out of|low on|short of) (?!what\b|any)(?!.*\b(?:what|do i|have i|how)\b)/;

/** "ah what am I saying, that's 4-4": no question, but a mend. */
const SAID_WRONG =
  /^(?:(?:ah|oh|no|sorry|wait|now|god|,) )*(?:what am i saying\b|when(?:ever)? i (?:say|said|put|wrote|write) .* i (?:mean|meant)\b)|, (?:(?:no|oh|sorry) ,? ?)?what am i (?:saying|on about|like) ,/;

/** "agreed is the backing, and what's still open is the border" */
const TELLS_OPEN =
  /\bwhat (?:'s|is|remains|stays|stands) (?:still |left |yet |already |now |wide )*(?:settled|open|undecided|decided|agreed|fixed|unsettled|to (?:settle|decide|agree|choose|be (?:settled|decided|agreed|chosen))) (?:is|are|'s) (?!\?)\S/;

/** "where 2-2 meets 2-3 it's come apart": told of a seam. */
const WHERE_THEY_MEET =
  /^(?:(?:and|so|right|oh|now|just|,) )*where (?:\S+ ){1,8}(?:meets?|joins?|abuts|butts|touches) [^?]*$/;

/** What was asked in the note before. */
export type Asked = { query: QueryName };
const GOES_ON_ASKING =
  /^(?:(?:oh|ok|okay|right|so|um|uh|er) )*(?:and|what about|and what about|how about|and how about|and for|or) (?:in |on |for |of |to |at )*(?:(?:the|my|all|row|block|this|that|last|just|on) )*\S+(?: \S+){0,3}$/;
const WHOLE_OF_IT =
  /\b(?:whole (?:quilt|qlt|thing|job|lot)|all of it|altogether|in total|everything|overall|so far|all told|(?:the )?total)\b/;

/** "how many hours went into the binding?", then "and the whole quilt?", "and 3-3?", "what about yesterday?": asked on. */
export function findNextQuestion(
  asked: Asked | undefined,
  text: string,
  items: Item[],
  day: DayFound | undefined,
  local: string,
): QueryFound | undefined {
  const body = text.replace(/(?: [?.!])+$/g, '').trim();
  if (!asked || items.length > 9 || !GOES_ON_ASKING.test(body)) return undefined;
  if (
    items.some(
      (x) =>
        x.finding ||
        x.stitch ||
        x.quantity?.unit ||
        x.cost ||
        x.duration ||
        x.clock ||
        x.span ||
        (x.action && !x.task && !x.part),
    ) ||
    /\b(?:what|how|which|when|is|are|was|were|do|did|does|have|has|will|can|need|then)\b/.test(
      body.replace(/^(?:\S+ )?(?:what|how) about/, ''),
    )
  )
    return undefined;
  const rule = 'query.asked-on';
  const date = day && !day.vague ? dateOf(day) : shortDay(` ${body} `, local);
  const places = placesOfClause(items);
  const task = taskOf(items);
  switch (asked.query) {
    case 'hours-total':
    case 'hours-task':
    case 'hours-day':
      if (task) return { query: 'hours-task', task, rule };
      if (date) return { query: 'hours-day', date, rule };
      return WHOLE_OF_IT.test(body) ? { query: 'hours-total', rule } : undefined;
    case 'place-history':
    case 'to-do':
      return places.kind === 'specific' || (places.kind === 'general' && places.places[0] !== 'quilt')
        ? { query: asked.query, places: places.places, rule }
        : undefined;
    case 'yardage':
      return items.some((x) => x.part || x.material || x.topic)
        ? { query: 'yardage', about: yardageTopic(items), rule }
        : undefined;
    case 'day-review':
      return date ? { query: 'day-review', date, rule } : undefined;
    default:
      return undefined;
  }
}

/** "What'd I" and "what've I" are asked with the full words. */
const plain = (words: string): string =>
  words
    .replace(/ 'd (?=i|you|we) ?/g, ' did ')
    .replace(/ 've /g, ' have ')
    .replace(/ 'll /g, ' will ')
    .replace(/ gonna /g, ' going to ');

/** The words from the question on, or nothing where the note does not ask. */
function questionIn(whole: string, items: Item[], asked: boolean): string | undefined {
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
  if (WHICH_WAY.test(head) || (told && TOLD_OPEN.test(head))) return undefined;
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

function classify(
  t: string,
  whole: string,
  items: Item[],
  day: DayFound | undefined,
  local: string,
): QueryFound | undefined {
  const today = wallTime(wallMinutes(local)).slice(0, 10);
  const date = day && !day.vague ? dateOf(day) : shortDay(whole, local);
  const spoken = date
    ? items.filter(
        (x) => !inDay(x, day) && !(day === undefined && /^(?:the )?\w*(?:first|second|third|th)$/.test(x.w)),
      )
    : items;
  const placed = placesOfClause(
    spoken.filter(
      (x, k) =>
        !(x.w === 'back' && /^(read|me|it|that|this|play|everything|all|set)$/.test(spoken[k - 1]?.w ?? '')),
    ),
  );
  const explicit =
    placed.kind === 'specific' || (placed.kind === 'general' && placed.places[0] !== 'quilt')
      ? placed.places
      : undefined;
  const namedTask = taskOf(items);

  if (SIGN.lastEntry.test(t) && !SIGN.notLast.test(t))
    return { query: 'last-entry', rule: 'query.last-entry' };
  if (SIGN.cost.test(t) && !SIGN.notCost.test(t)) return { query: 'cost', rule: 'query.cost' };
  if (SIGN.yardage.test(t) && !SIGN.notYardage.test(t))
    return { query: 'yardage', about: yardageTopic(items), rule: 'query.yardage' };
  // "did I log the stain?"
  if (/^ ?did (?:i|we) (?:ever |already |not )?(?:log|put|note|write|mention|record|enter)\b/.test(t))
    return { query: 'place-history', ...(explicit ? { places: explicit } : {}), rule: 'query.did-i-log' };
  if (SIGN.heard.test(t) && !explicit && !date && !namedTask)
    return { query: 'last-entry', rule: 'query.heard' };
  const total = /\btotal\b/.test(t) && !SIGN.materials.test(t);
  if ((SIGN.hours.test(t) || total) && !SIGN.notHours.test(t)) {
    const task =
      namedTask ?? (/\b(?:take|taken|took)(?: me| us)? to /.test(t) ? taskOfDeed(items) : undefined);
    if (task) return { query: 'hours-task', task, ...(date ? { date } : {}), rule: 'query.hours-task' };
    if (date) return { query: 'hours-day', date, rule: 'query.hours-day' };
    return { query: 'hours-total', rule: 'query.hours' };
  }
  // "how much of that was the quilting", "what's the mending come to"
  if (namedTask && SIGN.ofTask.test(t))
    return { query: 'hours-task', task: namedTask, ...(date ? { date } : {}), rule: 'query.of-task' };
  // "what did we settle for 2-5" asks for that block's story
  if (
    explicit?.some((p) => /^\d/.test(p)) &&
    /\b(?:did|have|had) (?:i|we) (?:decide|settle|choose|decided|settled|chosen)\b/.test(t)
  )
    return { query: 'place-history', places: explicit, rule: 'query.place' };
  if (SIGN.open.test(t) && !SIGN.notOpen.test(t)) return { query: 'open-matters', rule: 'query.open' };
  // "the bottom left block" leaves nothing to do
  const left = SIGN.toDo.test(t.replace(LEFT_SIDE, ' '));
  const buys = SIGN.materials.test(t);
  if (buys && !SIGN.notMaterials.test(t)) return { query: 'materials-needed', rule: 'query.materials' };
  // "what's left to do on row three" asks for the plan, "what's been done to row three" for the story
  if (
    explicit &&
    SIGN.history.test(t) &&
    !(
      left &&
      /\b(?:left|to do|to be done|next|remaining|still|unfinished|planned|need(?:s|ed)? \w+ing)\b/.test(t)
    )
  )
    return { query: 'place-history', places: explicit, rule: 'query.place' };
  if (
    left &&
    !/\bnext door\b/.test(t) &&
    !(date && !/\b(?:left|to do|to be done|still|planned?|on for)\b/.test(t))
  )
    return { query: 'to-do', ...(explicit ? { places: explicit } : {}), rule: 'query.to-do' };
  if (explicit) return { query: 'place-history', places: explicit, rule: 'query.place-plain' };
  // "what did I do to the green twill ones"
  if (
    !date &&
    SIGN.history.test(t) &&
    items.some((x, k) => x.fabric && OF_CLOTH.test(wordsBetween(items, k - 3, k)))
  )
    return { query: 'place-history', rule: 'query.place-of-cloth' };
  if (date || SIGN.day.test(t)) return { query: 'day-review', date: date ?? today, rule: 'query.day' };
  // a block that only its cloth names, or that the ear has missed
  if (SIGN.history.test(t) && (items.some((x) => x.fabric) || /\bbeen done (?:to|on|with|about)\b/.test(t)))
    return { query: 'place-history', rule: 'query.place-of-cloth' };
  // "which blocks are stained", "where was that moth damage"
  if (
    /^ (?:which|where|how many) (?:of (?:the|those) )?(?:blocks?|ones?|squares?|pieces?|rows?|'s|is|was|were|are|did) /.test(
      t,
    ) &&
    items.some((x) => x.finding || x.action?.form === 'past')
  )
    return { query: 'place-history', rule: 'query.where-found' };
  if (READ_OUT.test(t.trim()) && /\b(?:everything|all|log|notes|entries|back|through|over|up)\b/.test(t))
    return { query: 'day-review', date: today, rule: 'query.day' };
  return undefined;
}

const OF_CLOTH = / (?:to|with|about|on|for) (?:the|those|that|both|all)(?: the)? $/;
const LEFT_SIDE =
  / (?:(?:top|bottom|upper|lower|middle|centre|center|far|very) left(?: hand)?|left(?: hand)? (?:hand|side|edge|border|corner|column|block|one|row)|(?:on|from|to|down|at) the left|left to right|left of) /g;
/** At the door, on the wall: nothing that the log knows. */
const OF_THE_HOUSE =
  /\b(?:(?:back|front|side) door|at the door|is that the time|who (?:'s|is|was) (?:that|there|at|calling|ringing)|^what an? |how (?:are|were|is|'s) (?:you|your|she|he|they|himself|herself))\b/;

/** Words that only name the day ("the fifth") are no place. */
const inDay = (x: Item, day: DayFound | undefined): boolean =>
  day !== undefined && x.token.from >= day.index && x.token.from < day.index + day.length;

const WEEKDAYS = ['sun', 'mon', 'tue', 'wed', 'thu', 'fri', 'sat'];
const ORDINALS =
  'first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth thirteenth fourteenth fifteenth sixteenth seventeenth eighteenth nineteenth twentieth'.split(
    ' ',
  );

/** Days as questions name them and notes do not: "yest", "fri", "the fifth". */
function shortDay(words: string, local: string): string | undefined {
  const now = wallMinutes(local);
  const dayAt = (back: number): string => wallTime(now - back * 1440).slice(0, 10);
  if (/\bthis day\b/.test(words)) return dayAt(0);
  if (/\b(?:yest|yday|yesty|ystdy|yesterdays)\b/.test(words)) return dayAt(1);
  if (/\btoday\b/.test(words)) return dayAt(0);
  const weekday =
    /\b(?:for|on|last|this|from|of|hrs|hours|do|did|done|in) (mon|tue|wed|thu|fri|sat|sun)(?:s|rs|r|nes|ur)?\b/.exec(
      words,
    )?.[1] ??
    // "mon hrs", "fri total"
    /^ ?(mon|tue|wed|thu|fri|sat|sun)(?:s|rs|r|nes|ur)?(?: 's)? (?:hrs|hours|total|time|tally)\b/.exec(
      words,
    )?.[1];
  if (weekday) {
    const today = Math.floor(now / 1440);
    // 1 January 1970 was a Thursday
    const back = (((today + 4) % 7) - WEEKDAYS.indexOf(weekday) + 7) % 7 || 7;
    return dayAt(back);
  }
  const ordinal =
    /\b(?:on|for|from|of|since) the (?:(\d{1,2}) ?(?:st|nd|rd|th)|(\w+(?:first|second|third|th|st|nd|rd)|first|second|third))\b(?! (?:row|block|column|one|square))/.exec(
      words,
    );
  if (!ordinal) return undefined;
  const nth = ordinal[1] ? Number(ordinal[1]) : ORDINALS.indexOf(ordinal[2]!) + 1;
  if (nth < 1 || nth > 31) return undefined;
  for (let back = 0; back < 62; back++) if (Number(dayAt(back).slice(8)) === nth) return dayAt(back);
  return undefined;
}

/** The kind of work asked after; a part of the quilt ("the backing") is none by itself. */
function taskOf(items: Item[]): Task | undefined {
  const found = items.findLast((x, k) => {
    if (!x.task || x.part === 'backing') return false;
    // "on this quilt", "on the log"
    if (x.task === 'quilting' && x.w === 'quilt') return false;
    return (
      !(x.task === 'paperwork' && /^(?:the )?(?:notes|writing|log)$/.test(x.w)) || items[k - 1]?.w === 'on'
    );
  });
  return found?.task;
}

/** "how long did it take to tie": the kind of work that a deed belongs to. */
function taskOfDeed(items: Item[]): Task | undefined {
  const action = items.findLast((x) => x.action?.form === 'base')?.action;
  return action && TASK_OF_ACTION[action.v];
}

function yardageTopic(items: Item[]): Topic {
  const topicOf = (x: Item): Topic | undefined => {
    for (const topic of ['backing', 'batting', 'binding', 'border'] as const)
      if (x.part === topic || x.topic === topic || x.material === topic || x.part?.startsWith(`${topic}-`))
        return topic;
    if (x.material === 'tie-thread' || x.w === 'ties') return 'tie-thread';
    return undefined;
  };
  const after = items.findIndex((x) => x.w === 'for');
  const named =
    items
      .slice(after + 1)
      .map(topicOf)
      .find(Boolean) ?? items.map(topicOf).find(Boolean);
  return named ?? 'fabric';
}
