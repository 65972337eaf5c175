import type { Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';
import type { Mark } from './marks-of.ts';
import type { Named } from './task-near.ts';
import { hasObject } from './work-items.ts';

const LEAD = '^ (?:(?:and|so|right|ok|okay|well|oh|now|there|phew|um|uh|then|good|yes|,|\\.|--) )*';
const DAY =
  '(?:now|today|tonight|one (?:day|night|evening|sitting)|the (?:day|night|evening|moment|time being|week))';
const TAIL = `(?: for ${DAY}| ${DAY}| then| done| finished| over| over with| i 'm doing| i can do| i can stand| i 'll do)*(?: [.!])* $`;
const THE = '(?:the |this |that |my |any of the )?(?:old )?';

/** The name of the work stands as TASK in these. */
const STOPS: RegExp[] = [
  // "enough binding for one day", "quite enough of the mending"
  new RegExp(`${LEAD}(?:that 's )?(?:quite |more than )?enough (?:of )?${THE}TASK${TAIL}`),
  // "that's it for the cutting", "that's me with the quilting for today", "that'll do me for the mending"
  new RegExp(
    `${LEAD}that (?:'s|is|'ll do|will do|does|'ll be) ?(?:it |me |us |that |all |enough |my lot |your lot )*(?:(?:done |finished |through )?(?:for|with) )${THE}TASK${TAIL}`,
  ),
  // "that's the mending for tonight", "that's all the piecing I'm doing today"
  new RegExp(
    `${LEAD}that (?:'s|is|was) (?:all )?(?:the |my |of the )*TASK(?: for ${DAY}| i 'm doing| i 'll do| i can do)(?: ${DAY}| for ${DAY})*(?: [.!])* $`,
  ),
  // "no more mending tonight"
  new RegExp(`${LEAD}no more (?:of )?${THE}TASK(?: for me)?(?: for)? ${DAY}(?: [.!])* $`),
  // "so much for the survey", "had my fill of the tying"
  new RegExp(`${LEAD}so much for ${THE}TASK${TAIL}`),
  new RegExp(`${LEAD}(?:i 've |i have )?had (?:quite )?(?:enough|my fill) of ${THE}TASK${TAIL}`),
  // "the survey's behind me", "the mending's put to bed"
  new RegExp(
    `${LEAD}${THE}TASK (?:'s|is) (?:now )?(?:all )?(?:behind me|put to bed|in the bag|out of the way|over and done with|done and dusted|done with)${TAIL}`,
  ),
  // "I'll leave the mending there", "leaving the tying at that for tonight"
  new RegExp(
    `${LEAD}(?:i 'll |i 'm |i |we 'll )?(?:leave|leaving) ${THE}TASK (?:there|here|at that|be|for ${DAY})${TAIL}`,
  ),
];
const STARTS: RegExp[] = [
  // "clock's running, mending", "clock on for the piecing", "start the clock: survey"
  new RegExp(
    `${LEAD}(?:the )?clock (?:'s|is) (?:running|on|ticking|started|going)(?: now)?(?: [,:]| --| on| for)* ${THE}TASK(?: [.!])* $`,
  ),
  // "here goes the tying", "in hand now, the piecing"
  new RegExp(`${LEAD}(?:here goes(?: with)?|here we go with|in for some|time i was at) ${THE}TASK${TAIL}`),
];

type Closing = { task: Named; mark: Mark['mark']; from: number; to: number };

/** "enough binding for one day", "clock's running, mending", "patched 3-3, and that's the mending for tonight": the work ends or begins, by a turn of speech that names it. */
export function closingWords(items: Item[]): Closing | undefined {
  const tasks = items.flatMap((x, k) => (x.task !== undefined && !hasObject(items, k) ? [k] : []));
  for (const at of tasks) {
    for (const [from, to] of stretchesAround(items, at)) {
      const mark = markIn(items, from, to, at);
      if (mark) return { task: { task: items[at]!.task!, at, item: items[at]! }, mark, from, to };
    }
  }
  return undefined;
}

/** All of it, and the part between commas that the word stands in. */
function stretchesAround(items: Item[], at: number): [number, number][] {
  const stops = (x: Item): boolean => /^(?:,|;|\.|--)$/.test(x.w);
  const from = items.findLastIndex((x, k) => k < at && stops(x)) + 1;
  const next = items.findIndex((x, k) => k > at && stops(x));
  const to = next < 0 ? items.length : next;
  const and = items.findLastIndex((x, k) => k < at && k > from && x.w === 'and');
  const own: [number, number][] = [[0, items.length]];
  if (from > 0 || to < items.length) own.push([from, to]);
  if (and > 0) own.push([and, to]);
  return own;
}

function markIn(items: Item[], from: number, to: number, at: number): Mark['mark'] | undefined {
  const own = items.slice(from, to);
  if (own.length > 14 || own.some((x) => x.place?.kind === 'blocks' || x.finding)) return undefined;
  const words = [
    wordsBetween(items, from, at).trim(),
    /^the /.test(items[at]!.w) ? 'the' : '',
    'TASK',
    wordsBetween(items, at + 1, to).trim(),
  ]
    .filter(Boolean)
    .join(' ');
  const said = ` ${words} `;
  return STOPS.some((p) => p.test(said)) ? 'stop' : STARTS.some((p) => p.test(said)) ? 'start' : undefined;
}
