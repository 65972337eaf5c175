import type { Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';

const ORDINAL =
  'first|second|third|fourth|fifth|sixth|seventh|eighth|ninth|tenth|eleventh|twelfth|thirteenth|fourteenth|fifteenth|sixteenth|seventeenth|eighteenth|nineteenth|twent|thirt';
const MONTHS = 'january|february|march|april|may|june|july|august|september|october|november|december';
const SHORT_MONTHS = 'jan|feb|mar|apr|jun|jul|aug|sept?|oct|nov|dec';
const FEASTS =
  "christmas|xmas|good friday|easter|whitsun|michaelmas|thanksgiving|new year|hogmanay|midsummer|mother 's day|harvest|term|half term";
const BY_A_DATE = new RegExp(
  `\\b(?:by|before|for|on|till|until|no later than) (?:the )?(?:\\d|${ORDINAL}|end of|(?:last|first) (?:day|week|weekend|of)|(?:mid|early|late) ?-? ?(?:${MONTHS}|${SHORT_MONTHS})|middle of|start of|${FEASTS}|jan\\b|feb\\b|mar\\b|apr\\b|jun\\b|jul\\b|aug\\b|sept?\\b|oct\\b|nov\\b|dec\\b|${MONTHS}|monday|tuesday|wednesday|thursday|friday|saturday|sunday|(?:her|his|their) (?:birthday|wedding|anniversary|christening)|(?:\\w+ 's )?(?:wedding|christening|birthday|anniversary|funeral|fair|show|raffle|exhibition|party|reunion|jubilee|opening)|next)`,
);
const A_DATE = new RegExp(
  `\\b(?:mid|early|late|beginning of|start of) ?-? ?(?:${MONTHS}|${SHORT_MONTHS})\\b|\\b(?:${MONTHS}|${SHORT_MONTHS}) (?:the )?(?:\\d|${ORDINAL})|\\b(?:\\d{1,2}|\\d{1,2} (?:st|nd|rd|th)|(?:the )?(?:\\w+ )?(?:${ORDINAL})\\w*)(?: of)? (?:${MONTHS}|${SHORT_MONTHS})\\b`,
);
const MONTH_BEFORE = new RegExp(`^ (?:.* )?(?:${MONTHS}|${SHORT_MONTHS})(?: the)? $`);
const MONTH_BEHIND = new RegExp(`^ (?:(?:st|nd|rd|th) )?(?:of )?(?:${MONTHS}|${SHORT_MONTHS}) `);

/** "November 20", "the 20th of November": is the number at `k` a day of a month? */
export const isDayOfMonth = (items: Item[], k: number): boolean =>
  MONTH_BEFORE.test(wordsBetween(items, k - 2, k)) || MONTH_BEHIND.test(wordsBetween(items, k + 1, k + 4));

const ANY_TIME =
  / (?:any ?time|some ?time|as long as it 's|so long as it 's|no later than) (?:before|by|till|until|up to|in) /;
/** "it goes home the last day of May" */
const LAST_DAY = new RegExp(
  `\\b(?:last|first) (?:day|week|weekend|\\w+day) (?:of|in) (?:the )?(?:${MONTHS}|${SHORT_MONTHS}|month|year|term|holidays?)\\b`,
);
const HANDING =
  /\b(?:finish(?:ed)?|ready|done|back(?! (?:at|on|to) (?:it|work)\b)|due|needs? it|needed|wants? it|want it|have it|have this|collect(?:s|ed|ing)?|delivered|deliver|hand(?:ed)? (?:it )?over|must be|has to be|got to be|returned|return|promised|collection|pick ?up|complete|completed|hung|posted|in (?:their|her|his) hands|fetch(?:es|ing)?|pick(?:s|ing)? it up|wanted|sent off(?! for)|go(?:es)? (?:home|out)|ship(?:s|ped)?|gone by|out of here)\b/;
const FETCHES =
  / (?:i|i 'm|we|i 'll)(?: will| 'll| can| going to|'m going to)? (?:pick|picking|collect|collecting|fetch|fetching|get|getting)(?: up)? (?:the|some|my|more|a) (?!quilt|qlt)/;
/** "must be finished 12/18, firm", "wanted back 3.6." */
const FIGURES =
  /\b(?:must be|has to be|got to be|due|wanted|needed|to be)\b[^\d]{0,24} \d{1,2} ?[/.] ?\d{1,2} (?:firm |sharp |at |$)/;
/** "due fri", "due tomorrow". */
const DUE =
  /\bdue (?:back )?(?:on )?(?:mon|tue|tues|wed|thu|thur|thurs|fri|sat|sun|tomorrow|tmrw|tmw|next|in a|in two|the end|end|xmas|christmas)(?:s|nes|rs|ur)?(?:day)?\b/;
const PAST =
  /\b(?:there (?:was|were)|washed|bought|cut|started|made (?:in|for|by)|will buy|shop|stopped|was (?:made|finished|born)|nothing (?:was )?done|since|i did|got done|finished at)\b/;

/** "took it to Joan on Saturday": it has gone already. */
const HANDED =
  /(?:^ ?|[,.] |and | {2})(?:i |we |i 've |then )*(?:took|delivered|handed|gave|sent|posted|dropped) (?:it|them|the quilt)\b/;

/** Is this a date for the work to be finished or handed back? `words` are the part's words joined by blanks. */
export function isDeadline(words: string, items: Item[]): boolean {
  if (/\b(?:deadline|due date|due back)\b/.test(words)) return true;
  // "survey done by 1145": an hour
  if (/\b(?:done|finished|over|off|out|on) (?:by|at|before) (?:[01]\d|2[0-3])[0-5]\d\b/.test(words))
    return false;
  // "the back can wait till Thursday"
  if (/\b(?:can|could|will|must|have to|has to) wait\b/.test(words)) return false;
  // "I pick up the soap on Monday": an errand
  if (FETCHES.test(words)) return false;
  // "came back with a pack of needles for 3.25"
  if (
    / (?:came|come|went|got) (?:home|back) with /.test(words) ||
    (items.some((x) => x.cost) && items.some((x) => x.material))
  )
    return false;
  // "no rush on it, any time before Christmas"
  if (ANY_TIME.test(words) && BY_A_DATE.test(words)) return true;
  if (!HANDING.test(words) || items.some((x) => x.duration || x.span)) return false;
  // "hung over the urn for thirty years"
  if (/\bfor (?:\S+ ){1,4}(?:years|decades|generations|winters|summers)\b/.test(words)) return false;
  // "the other one will be done on Saturday": a block, and not the quilt
  if (
    /\b(?:other|second|last|next|remaining|that) (?:ones?|two|three|four|[2-9]|blocks?)\b|\bthe rest\b/.test(
      words,
    ) &&
    !/\b(?:she|he|they|her|his|must|has to)\b/.test(words)
  )
    return false;
  // "finished size 60 by 72 in"
  if (
    items.some(
      (x, k) =>
        /^(by|x)$/.test(x.w) &&
        items[k + 1]?.quantity &&
        // "1.5 by 2 metres", whose first figure may be a block
        (items[k - 1]?.quantity || items[k + 1]!.quantity!.unit),
    )
  )
    return false;
  if (FIGURES.test(words) || DUE.test(words)) return true;
  // "I've done the patch on 2-3": a block, and no day of a month
  const dated = items.some(isBlockWorkedOn)
    ? ` ${items.flatMap((x, k) => (isBlockWorkedOn(x, k, items) ? [] : [x.w])).join(' ')} `
    : words;
  return (
    (BY_A_DATE.test(dated) || A_DATE.test(dated) || LAST_DAY.test(dated)) &&
    !PAST.test(words) &&
    !HANDED.test(words)
  );
}

/** "settled today: 240, the 12th of June": in a list of matters a date by itself. */
export const isBareDate = (words: string): boolean => /^(?: \S+){2,6} $/.test(words) && A_DATE.test(words);

const isBlockWorkedOn = (x: Item, k: number, items: Item[]): boolean =>
  x.place?.kind === 'blocks' && /(?:^| )(?:on|for|in|at|of|and|,)$/.test(items[k - 1]?.w ?? '');
