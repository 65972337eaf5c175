import type { QueryName, Task, Topic } from '../../../shared/vocabulary.ts';
import type { Item } from '../item.ts';
import { placesOfClause } from '../places/places-of-clause.ts';
import { type DayFound, dateOf } from '../times/find-day.ts';
import { wallMinutes, wallTime } from '../times/local-time.ts';

export type QueryFound = {
  query: QueryName;
  task?: Task;
  date?: string;
  places?: string[];
  about?: Topic;
  rule: string;
};

const ASKS =
  /^(so |and |ok(ay)? |right |now |um |oh |well |wait |hang on |remind me |actually |but |just |hey |, |- |by the way |then |sorry |let me (see|ask) |quick question |question |before i (forget|go|stop) |also )*(what|what 's|how|how 's|which|when|where|who|did|do|does|have|has|is|are|am|was|were|can|could|should|would|will|any|anything|read|show|tell|give|list|remind|total|hours|hrs|time|recap|status|sum|summary|summarise|summarize|say|play|find|look up|run through|go over|go through|history|still|last)\b/;

/**
 * A question to the log. Only words that ask are taken: a question about what to do with a block ("patch them or leave
 * them?") is a matter under consideration and belongs to the log.
 */
export function findQuery(
  text: string,
  items: Item[],
  asked: boolean,
  day: DayFound | undefined,
  local: string,
): QueryFound | undefined {
  const t = ` ${text.replace(/[?.!]+$/g, '').trim()} `;
  const head = t.trim();
  const question = asked || ASKS.test(head);
  if (!question) return undefined;
  const places = placesOfClause(items);
  const task = [...items].reverse().find((x) => x.task && !(x.part === 'backing'))?.task;
  const today = wallTime(wallMinutes(local)).slice(0, 10);
  const date = day && !day.vague ? dateOf(day) : undefined;
  const explicit =
    places.kind === 'specific' || (places.kind === 'general' && places.places[0] !== 'quilt')
      ? places.places
      : undefined;
  const whose = /\b(i|we|me|my|this|it|so far|log|have|down|left|still|there|here|on)\b/.test(t);
  // The last thing put down
  if (
    /\b(last (thing|entry|note|bit|one|item)|(did|have) i (just|last)|i just (say|said|log|put)|last (put|say|said|log|logged|note|noted|record|recorded|tell|told|wrote|write|enter|entered)|latest (entry|note)|most recent|read (that|it) back|say that (back|again)|what was that|repeat (that|the last)|last logged|what have you just|just (put|write|log|note|say|take|enter|told|tell) ?(down)?)\b/.test(
      t,
    ) &&
    !/\blast (night|week|monday|tuesday|wednesday|thursday|friday|saturday|sunday|row|two|time)\b/.test(t)
  )
    return { query: 'last-entry', rule: 'query.last-entry' };
  // What must be bought
  if (
    /\b(to buy|need to (get|buy|pick)|have to (get|buy|pick)|got to (get|buy)|must i (buy|get)|should i (buy|get)|shopping list|shop for|pick(ing)? up|from the shop|at the shop|do i (still )?need|am i (short|out|missing)|materials? (do i|still|are|needed|left|list|i need)|what 's (needed|missing)|still (need|short)|need from|to order|running low|on (my|the) (shopping )?list|buy next|still to get|supplies|short of|be buying|buying list|to get (in|from)|want from town|out of|stuff do i need|i need to get)\b/.test(
      t,
    ) &&
    !/\bhow (much|many)\b.*\b(yards?|yds?|metres?|meters?|fabric|cloth|backing|batting|binding|muslin|wadding)\b/.test(
      t,
    ) &&
    !/\b(to do|do next|finish)\b/.test(t)
  )
    return { query: 'materials-needed', rule: 'query.materials' };
  // Yardage
  const topic = yardageTopic(items, t);
  if (
    /\b(yardage|yards|yds|yd|how many (metres|meters|yards|yds|m)|how (much|long|big|wide|many) .*\b(fabric|cloth|backing|batting|wadding|binding|border|calico|muslin|lining|material|linen|flannel|back|strips|stuff)\b|how much do i (need|want) for|metres (of|for|do)|metreage|enough (fabric|backing|cloth|batting|wadding)|what size (batting|wadding|backing))\b/.test(
      t,
    ) &&
    !/\b(how (long|many hours|much time)|cost|spent|spend|bought|paid|used)\b/.test(t)
  )
    return { query: 'yardage', about: topic ?? 'fabric', rule: 'query.yardage' };
  // Money
  if (
    /\b(cost|costs|costing|spent|spend|spending|bill|expenses|outlay|money|how much (has|have|did|is|am|was) (this|it|i|the).*(cost|spent|paid|owe|pay|out|come|set)|paid (out|so far)|price so far|total (cost|price|spend|outlay)|set me back|pricey|owe|laid out|materials come to|come to so far|in (pounds|dollars|euros)|out of pocket|running to)\b/.test(
      t,
    ) &&
    !/\b(hours|how long|time)\b/.test(t)
  )
    return { query: 'cost', rule: 'query.cost' };
  // Hours
  const hours =
    /\b(how long|how many (hours|hrs|minutes)|how much time|hours?|hrs|time (have|did|on|so far|spent|in|total|for|am i|is|has)|total time|my time|what time have|minutes (have|did|on|so far|in)|time 's|tally|clock(ed)?)\b/.test(
      t,
    );
  if (hours && !/\b(how long (is|are) the|what time (is|did i start|do)|time is it)\b/.test(t)) {
    if (
      /\b(altogether|total|whole|in all|so far|all told|all in|overall|to date|on this quilt|on the quilt|on this one|everything)\b/.test(
        t,
      ) &&
      !task &&
      !date
    )
      return { query: 'hours-total', rule: 'query.hours' };
    if (task && !/^(other)$/.test(task) && !(task === 'quilting' && /\bthis quilt\b/.test(t)))
      return { query: 'hours-task', task, rule: 'query.hours-task' };
    if (date) return { query: 'hours-day', date, rule: 'query.hours-day' };
    return { query: 'hours-total', rule: 'query.hours' };
  }
  // Undecided
  if (
    /\b(undecided|not (yet )?decided|n't (yet )?decided|still (open|up in the air|to decide|undecided|hanging|deciding|unsettled|pending)|unsettled|open (matters|questions|things|points|items|decisions|ends)|to decide|up in the air|make up my mind|made up my mind|made my mind|decisions? (are|is|left|still|do|have|outstanding|remain|pending|to make)|hanging over|unresolved|on the fence|what 's open|left open|dithering|not settled|n't settled|undetermined|waiting on a decision|am i still deciding|sat on the fence|been putting off|have n't i (settled|decided)|still not sure|to make my mind)\b/.test(
      t,
    )
  )
    return { query: 'open-matters', rule: 'query.open' };
  // A place's story
  const history =
    /\b(history|say about|said about|do(ne)? (to|with|at|on|about|in|for)|been done|have i (got )?(done|down|put|written|logged|said|noted|recorded)|did i (do|put|say|find|use|note|decide|write|log|mend|record|see)|find (in|on|at)|happened|happening|going on|up with|story|so far|everything|all i|have i got|got down|wrong with|notes? (on|for|about)|tell me about|what about|show me|had done|what 's (been|down|the story|with|recorded|logged|noted)|what was|read me|remind me|what is|down (for|against|as|on)|what does|how did i|what stitch|which stitch)\b/.test(
      t,
    );
  if (explicit && history && !/\b(left|still|remaining|next)\b.* (to do|to be done)\b/.test(t))
    return { query: 'place-history', places: explicit, rule: 'query.place' };
  // To do
  if (
    /\b(left to do|to do|still to|todo|to be done|next|remaining|remains|outstanding|left (on|to|for|over|now)|planned|still (waiting|needs?|left|have to do|got to do)|what 's left|have i left|not done|n't done|yet to|unfinished|need(s)? doing|jobs|to finish|waiting to be|lined up|ahead of me|what else)\b/.test(
      t,
    ) &&
    !/\b(next door|did i do|what did)\b/.test(t)
  )
    return { query: 'to-do', rule: 'query.to-do' };
  // A day
  if (
    /\b(day|today|yesterday|last night|tonight|this (morning|afternoon|evening)|monday|tuesday|wednesday|thursday|friday|saturday|sunday|mon|tue|wed|thu|fri|sat|sun|review|recap|get done|got done|run through|the \d|january|february|march|april|june|july|august|september|october|november|december)\b/.test(
      t,
    ) ||
    date
  ) {
    if (
      /\b(what|read|show|tell|give|list|recap|review|sum|summary|run|go|remind|how|anything|did i|play)\b/.test(
        t,
      )
    )
      return { query: 'day-review', date: date ?? today, rule: 'query.day' };
  }
  if (
    explicit &&
    whose &&
    /^(so |and |ok(ay)? |right )*(what|show|tell|read|list|remind|anything|how|did|have|has)\b/.test(head)
  )
    return { query: 'place-history', places: explicit, rule: 'query.place-plain' };
  if (/^(read (me )?(back|through|out)|recap|summary)\b/.test(head))
    return { query: 'day-review', date: date ?? today, rule: 'query.day' };
  return undefined;
}

function yardageTopic(items: Item[], t: string): Topic | undefined {
  for (const topic of ['backing', 'batting', 'binding', 'border'] as const)
    if (items.some((x) => x.part === topic || x.topic === topic || x.material === topic)) return topic;
  if (/\b(back|lining)\b/.test(t)) return 'backing';
  if (/\b(wadding|batt)\b/.test(t)) return 'batting';
  if (/\bties|yarn\b/.test(t)) return 'tie-thread';
  return undefined;
}
