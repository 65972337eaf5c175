import type { QueryName, Task, Topic } from '../../../shared/vocabulary.ts';
import { tellsOfQuestion } from '../decisions/matter/asked-matter.ts';
import type { Item } from '../item.ts';
import { placesOfClause } from '../places/places-of-clause.ts';
import { type DayFound, dateOf } from '../times/find-day.ts';
import { isAskedOfHerself } from './asked-of-herself.ts';
import { taskOf, yardageTopic } from './query/asked-after.ts';
import { askedLast } from './query/asked-last.ts';
import { questionIn } from './query/question-in.ts';
import { shortDay } from './query/short-day.ts';
import { whatIsAsked } from './query/what-is-asked.ts';

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
      DOUBTED.test(whole) ||
      tellsOfQuestion(whole) ||
      RUN_OUT.test(whole))
  )
    return undefined;
  // only of the quilt's own matters: "what will I use for supper"
  if (isAskedOfHerself(whole)) return undefined;
  const body = questionIn(whole, items, asked);
  if (body === undefined) return asked ? askedLast(items, day, local) : undefined;
  return whatIsAsked(` ${plain(body)} `, ` ${whole} `, items, day, local);
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

/** "does it want a border or not, I've not made up my mind", "is it to be tied, I can't decide", "the backing's undecided and so's the binding": asked of herself, and left open. */
const DOUBTED =
  /^(?:(?:so|and|well|now|oh|right|um|uh|,) )*(?:(?:does|do|is|are|am|will|would|shall|should|can|could) (?:i|we|it|the|that|this|they|she)\b[^?.;]*? (?:i |we )?(?:(?:'ve |have |am |'m )?(?:still )?(?:not |n't |never )(?:yet |really |quite |even )?(?:decided|settled|chosen|sure|certain|made (?:up )?(?:my|our) minds?|know)|(?:do |ca |can |could )(?:n't |not )(?:yet |really )?(?:know|decide|say|tell|make (?:up )?my mind|make my mind up)|dunno|(?:'m |am )?in two minds|no idea)\b|[^?.;]{3,30}? (?:'s|is|are) (?:still )?(?:undecided|open|unsettled),? and so (?:'s|is|are) )/;

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
