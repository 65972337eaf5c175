import type { Task } from '../../../shared/vocabulary.ts';
import type { Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';

/** Work told without a time: its kind, where that is said, and the run of items that tells it. */
type VagueWork = { task: Task | undefined; at: number; from: number; to: number };

/** Nobody knows how long: "couldn't tell you how long", "times not kept", "my watch had quit". */
export const UNKNOWN_LENGTH =
  /^ (?:(?:oh|um|uh|er|and|also|well|,) )*(?:a|some|another) (?:\w+ ){0,2}(?:while|spell|stretch|session|stint|time) (?:on|at) |(?:at|on) (?:the )?\w+ (?:for )?(?:ages|hours and hours) | (spent (a|some|a good|quite a) (while|time|bit)|(?:spent|spend|took|was|been|were|put in) (?:me |absolutely )?(?:ages|forever|hours and hours|(?:a|quite a|a good) while|donkey's years)|some time on|the odd half hour|(?:could|can) ?(?:n't|not) (honestly |really |quite )?(tell|say|remember)|(?:do|did) ?n't (know|remember|recall|note|notice|write|look|log|check|time|clock|keep)|dunno|(?:not|un|never|neglected to|forgot to|failed to) ?(noted?|written|write|sure how long|sure when|timed?|log|logged|looked?|wrote|kept|keep|clock|check)|forgot (the time|when|how long|times)|for(?:get|gotten) (the times?|when|how long)|how long|lost (count|track)|no note of|ca n't think when|no (idea|clue|notion) (when|what time)|for a (good |fair )?while|a (good|fair) while|at .{3,20} a while|never once (noted|looked)|goodness knows|god knows|who knows|heaven knows|lord knows) /;

/** A day or an hour that has been, or no day but what joins it to work told before. */
const PAST_DAY =
  / (?:yesterday|today|tonight|last (?:night|week|wk|evening|month)|this (?:morning|afternoon|evening|week)|weekend|(?:mon|tues|wednes|thurs|fri|satur|sun)day|mon|tue|tues|wed|thu|thur|thurs|fri|sat|sun|week|wk|morning|afternoon|evenings?|night|nights|earlier|recently|lately|lunchtime|at some point|a while (?:ago|back)|(?:days|nights|weeks) (?:ago|back)|(?:before|after|over) (?:work|breakfast|lunch|supper|dinner|tea)|(?:a|some|quite a|a good) (?:while|bit|spell|time) (?:before|after) (?:that|this|it)|beforehand|(?:the|some|an|one) ?(?:other )?(?:night|day|evening|afternoon|morning)) /;
const NOT_YET =
  / (?:might|maybe|either|whether|will|'ll|wo n't|going to|gonna|tomorrow|next|need|needs|should|want|wants|must|to do|to go|left|till|until|plan|planning|hope|hoping|shall|would|if|starting|started|start(?! of)|finished|stopped) /;

/** Before the name of the kind of work: "did a good bit of", "was at the", "there was some", "put in a while at the". */
const LEADS =
  / (?:(?:did|done|was|were|had|put in|put|got in|got|spent|managed|sat|found time for) (?:.* )?(?:some|more|bits?|lots?|loads?|heaps?|piles?|chunk|bunch|stint|stretch|spell|turn|evenings?|hours|ages|bout|session|go|share|amount|deal|little|while|time|in) (?:more |of |on |at |into |with |hand |machine )*(?:the |my |it )?|there (?:was|were|'s been|has been) (?:.* )?(?:some|more|bit of|little|bit more|little more|lot of|spell of|stretch of|session of|bout of|chunk of|deal of|while (?:at|on|of)|time (?:on|at|spent)) (?:the |hand |machine )?|(?:time|hours|evenings?|effort|while|bit|lot|morning|afternoon|day|night|(?:mon|tues|wednes|thurs|fri|satur|sun)day) (?:also )?(?:went|gone|was spent) (?:into|on) (?:the |some )?|(?:worked|working|was|been|sat|were) (?:also |just |busy )?(?:away )?(?:on |at |doing )?(?:the |my |some )?|(?:evenings?|hours|bits?) of |forgot to (?:log|note|say|mention) (?:the |my |some )?|(?:all|most of the|the whole|whole|half the|spent the|spent all|a whole|spent most of the) (?:morning|afternoon|evening|day|night|weekend) (?:on |at |doing |to )(?:the |my |some )?|did (?:the |my )?|got some (?:hand |machine )?|went )$/;
/** The name of the work with an amount and no verb: "bit of quilting done", "more piecing over the weekend". */
const AMOUNT_FIRST =
  /^ (?:(?:oh|um|uh|er|and|also|well|then|a|another|last|on|(?:mon|tues|wednes|thurs|fri|satur|sun)day|yesterday|evening|night|morning|,) )*(?:some|more|bit more|bit of|bit|little|little more|few hours 's|few hours|hours of|(?:good |fair |long |wee |little |short |old |decent |tidy )*(?:while|spell|stretch|session|stint|time|bit|go|age|ages|hours)) (?:more |of |on |at |with |hand |machine )*(?:the |my )?$/;
/** After a verb of work with nothing named: "pieced for a bit", "quilted on it", "worked on it last night". */
const VERB_TAILS =
  /^ (?:away |at it |on (?:it|this|that|the quilt|the thing) |(?:on it |on this )?(?:for )?(?:a |some |an |quite )*(?:good |fair |little |wee |long |old )*(?:bit|while|spell|stretch|some|little|more|ages|hours|time) (?!of )|some (?!of )|too |also |on and off |off and on )/;

const BOUNDARY = /^(,|--|-|:|;|\(|\)|but|though|although|only|so|because|since|&)$/;
const isBoundary = (items: Item[], k: number): boolean =>
  BOUNDARY.test(items[k]!.w) ||
  (items[k]!.w === 'and' &&
    items[k + 1]?.w !== 'all' &&
    !items[k + 1]?.task &&
    // "on and off"
    !(items[k - 1]?.w === 'on' && items[k + 1]?.w === 'off')) ||
  (items[k]!.w === 'then' && k > 2);

/** Does somebody say that the time is not known, and not the size of something? */
const OF_SIZE = /^(?:width|length|size|inches|cm|mm|measure|measured|figure)$/;
export const isLengthUnknown = (all: string, items: Item[]): boolean =>
  UNKNOWN_LENGTH.test(all) &&
  // "I might darn it or I might net it, I don't know yet": what to do, and not how long
  !/ (?:might|whether|either|or i) .* (?:know|sure|decide)/.test(all) &&
  // "1-4 I don't know either net over it or cut it out"
  !/ (?:know|sure|dunno|idea|say|tell)(?: yet| ,)* (?:either|whether|if|which|what)(?! time) /.test(all) &&
  !items.some((x) => (x.measure && x.w !== 'long') || OF_SIZE.test(x.w));

/** Does the part of the sentence around `k` only say that nobody looked at the clock? */
export function saysNoMore(items: Item[], k: number): boolean {
  const own = partAt(items, k);
  return !own.some((x) => isContent(x) || x.task) && UNKNOWN_LENGTH.test(wordsBetween(own));
}

function partAt(items: Item[], k: number): Item[] {
  let from = k;
  while (from > 0 && !isBoundary(items, from - 1)) from--;
  let to = k + 1;
  while (to < items.length && !isBoundary(items, to)) to++;
  return items.slice(from, to);
}

/** "a bit", "a good while", "as well" are no piece of cloth and nothing found sound. */
const AMOUNT_WORD = /^(?:good|well|bit|fair|long)$/;

/** Does the item say anything but that there was work? */
const isContent = (x: Item): boolean =>
  !AMOUNT_WORD.test(x.w) &&
  Boolean(
    x.duration ||
      x.clock ||
      x.span ||
      x.finding ||
      x.place?.kind === 'blocks' ||
      x.fabric ||
      x.seam ||
      x.cost ||
      x.measure ||
      x.quantity?.unit ||
      (!x.task && x.part !== 'quilt' && (x.object || x.material || x.part || x.stitch)),
  );

/** "cutting: put in a stint last week as well", "quilting, spent ages at it on Sunday": the name of the work as a heading. Gives the index behind what tells of it. */
function behindHead(items: Item[], k: number, from: number): number | undefined {
  if (from !== k || !/^(?::|--|-|,)$/.test(items[k + 1]?.w ?? '')) return undefined;
  let to = k + 2;
  while (to < items.length && !isBoundary(items, to)) to++;
  const words = wordsBetween(items, k + 2, to);
  return SPELL_OF_IT.test(words) &&
    !NOT_YET.test(words) &&
    !items.slice(k + 2, to).some((x) => (x.w !== 'it' && isContent(x)) || x.task)
    ? to
    : undefined;
}
const SPELL_OF_IT =
  /^ (?:(?:i|we|also|and|just|only|then) )*(?:(?:did|done|put in|put|had|got in|got|spent|sat|managed|was|were|been) (?:\S+ ){0,3}?)?(?:an? )?(?:(?:good|goodish|fair|long|longish|short|little|decent|tidy|another|wee|whole|most|some|of) )*(?:stint|spell|stretch|session|while|turn|bout|ages|evening|evenings|hours|some|bit|lot|more|go|it) /;

/**
 * "oh and I did some binding on it on Sunday night", "pieced for a bit over the weekend, no idea how long": work with no
 * time to it. Asked only of what no clock and no length was found for.
 *
 * @param isNamed is the word at `k` the name of the work, and no deed done to a thing that is named?
 * @param verbOfWork the kind of work of the verb at `k`, where nothing is named that it was done to
 */
export function vagueWork(
  items: Item[],
  unknown: boolean,
  isFree: (k: number) => boolean,
  isNamed: (k: number) => boolean,
  verbOfWork: (k: number) => Task | undefined,
): VagueWork | undefined {
  for (let k = 0; k < items.length; k++) {
    const x = items[k]!;
    const task = x.task && isNamed(k) ? x.task : verbOfWork(k);
    const plain = /^(worked|working)$/.test(x.w);
    if ((!task && !plain) || !isFree(k)) continue;
    let from = k;
    while (from > 0 && !isBoundary(items, from - 1)) from--;
    let to = k + 1;
    while (to < items.length && !isBoundary(items, to)) to++;
    const told = behindHead(items, k, from);
    if (told && x.task && (unknown || PAST_DAY.test(wordsBetween(items, k, told))))
      return { task, at: k, from, to: told };
    const own = items.slice(from, to);
    if (own.some((y) => y !== x && isContent(y))) continue;
    const words = wordsBetween(own);
    if (NOT_YET.test(words) || / (?:not|n't|no) /.test(wordsBetween(items.slice(from, k)))) continue;
    if (!unknown && !PAST_DAY.test(wordsBetween(items))) continue;
    const lead = wordsBetween(items.slice(from, k));
    // the time of what was told before: "the morning was taking apart"
    if (/ the (?:morning|afternoon|evening|night|rest|first|second|other) (?:\w+ )?was $/.test(lead))
      continue;
    const tail = wordsBetween(items.slice(k + 1, to));
    const worked = plain
      ? / (?:i|'ve|also|and) $/.test(lead) || lead === '  '
        ? VERB_TAILS.test(tail)
        : false
      : x.task && isNamed(k)
        ? LEADS.test(lead) ||
          (AMOUNT_FIRST.test(lead) &&
            !/^ (?:'s|is|are|was|were|has|have|had|come|came|gone|left|to) /.test(tail)) ||
          (lead === '  ' && VERB_TAILS.test(tail))
        : VERB_TAILS.test(tail) || (unknown && x.action?.form === 'past');
    if (!worked) continue;
    return { task, at: k, from, to };
  }
  return undefined;
}
