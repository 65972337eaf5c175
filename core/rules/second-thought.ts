import type { Item } from './item.ts';

/** Words one of which every second thought has: without them none is looked for. */
const TRIGGERS = new Set(
  'wait hang hold let going looking exact honest precise fair accurate strict misread miscounted wrong second seconds minute moment sec tick think saying lie mistake fault muddled muddling mixed mixing upside misremembered forgetting what check checked look looked counting speaking truth fact better lying lied fibbing mistaken confused dreaming rubbish nonsense low high far count place out off'.split(
    ' ',
  ),
);

export const mayThinkAgain = (items: Item[]): boolean => items.some((x) => TRIGGERS.has(x.w));

const THING = '(?:it|that|this|them|(?:the|my|this|that) \\S+)';
/** A look, a count or a thought that comes between what was said wrongly and what is right. */
const ALONE = [
  // "let me be exact", "let me look again", "let me measure that again"
  "(?:let me|let 's) be (?:quite )?(?:exact|honest|precise|fair|accurate|strict)",
  `(?:let me|let 's|i 'd better|better) (?:just )?(?:look|see|check|count|measure|think|read|start|say|try|do|get)(?: at)?(?: ${THING})? (?:again|once more|over)`,
  `(?:let me|let 's) (?:recount|get ${THING} (?:right|straight))`,
  'on second thoughts?',
  '(?:come|now i come) to think (?:of|about) it',
  '(?:i )?tell a lie',
  "i (?:(?:'m|am|was|do|did) )?(?:lying|lie|lied|fibbing|fib|mistaken|confused|dreaming|talking (?:rubbish|nonsense))",
  "(?:my|that 's my) (?:mistake|error|fault)",
  // "that's wrong", "that isn't right"
  "(?:that|it) (?:'s|is|was) (?:all |quite )?(?:wrong|a lie|a slip|not right|not it|not so)",
  "(?:that|it) (?:is|was) n't (?:right|it|so)",
  // "I've got the clock wrong", "I'm upside down here", "I misread my own figures"
  "(?:i|i 'm|i 've|i am|i have|i was|i had) (?:\\S+ ){0,6}?(?:wrong|upside down|back to front|muddled|muddling|mixed up|mixing up|misread|miscounted|misremembered|forgetting|astray)(?: \\S+){0,3}?",
  // "I'm a row too low", "I was one block out", "I can't count", "I've lost my place"
  "i (?:'m|am|was|'ve gone|went) (?:an? |one |two )?(?:rows?|blocks?|columns?|lines?|squares?) (?:too (?:low|high|far(?: \\S+)?)|out|off)",
  "i (?:ca n't|can not|could n't) count(?: today| tonight| straight)?",
  "i 've lost my place",
];
const AFTER_NO = [
  `(?:let me|let 's|i 'd better|better) (?:just )?(?:look|see|check|count|measure|think)(?: ${THING})?`,
  // "let me turn it round": whatever it is that she does first
  "(?:let me|let 's)(?: \\S+){1,4}?(?= [,:-])",
  'to be (?:quite )?(?:exact|honest|precise|fair|accurate)',
  // "going by the clock", "now I look at it", "looking at the receipt"
  `(?:going|judging) by ${THING}`,
  `(?:now )?looking (?:at|back at) ${THING}(?: again| properly)?`,
  '(?:now )?(?:that )?i (?:look|check|count|think)(?: (?:at|about|of) (?:it|that|them)| it| them)?(?: again| properly)?',
  "i (?:'ve )?(?:just )?(?:looked|checked|counted|measured)(?: it| them| that)?(?: again)?",
  'what (?:was|is) (?:it|that)',
  'what (?:am i|did i) (?:saying|say|on about|talking about|thinking)',
  '(?:just )?(?:wait|hang on|hold on)(?: (?:a|one|just a) (?:minute|moment|second|sec|tick|bit|mo))?',
  '(?:a|one) (?:minute|moment|second|sec|tick|mo)',
  '(?:silly|stupid) me',
];
const PAUSE = '(?: (?:,|:|-|--|\\.|;|\\?))*';
const MARK = '(?:(?:oh|er|um) )?(?:no|nope|sorry|wait|or|well|oops|actually|hang on|hold on)';
const run = (looks: string[]): string => `(?: (?:${looks.join('|')})${PAUSE}(?: no(?: ,)?)?)+`;
const SECOND_THOUGHT = new RegExp(`^(?:${run(ALONE)}| ${MARK}${PAUSE}${run([...ALONE, ...AFTER_NO])})$`);

/** What is said behind the right one: "Twenty-five, to be honest." */
const AFTER =
  /^(?:to be (?:quite )?(?:exact|honest|precise|fair|accurate)|strictly speaking|in (?:truth|fact)|truth be told|if i 'm honest|more like|i should say|i should have said|now i (?:look|check|think)(?: (?:at|about|of) it)?|i think you 'll find)(?: [.!,;])?$/;

/** Words with which a second thought may begin. */
const FIRST = new Set(
  "no nope sorry wait or well oops actually oh er um let i better on come now tell my that it 'd hang hold".split(
    ' ',
  ),
);

/**
 * How many items at `k` are a second thought and no matter of their own: "no, let me be exact," in "thirty millilitres,
 * no, let me be exact, forty-five". Zero where there is none. What comes before and after decides whether it mends anything.
 */
export function secondThoughtAt(items: Item[], k: number): number {
  if (!FIRST.has(items[k]!.w)) return 0;
  // "and, what was it, 1-4" goes on with the list
  const before = items[k - 1]?.w === ',' ? k - 2 : k - 1;
  if (/^(and|&|plus|with|by|to|then)$/.test(items[before]?.w ?? '')) return 0;
  let words = '';
  let length = 0;
  let own = false;
  for (let m = k; m < Math.min(items.length, k + 16); m++) {
    const x = items[m]!;
    if (tellsFigure(x) && !/^(a|one) (minute|moment|second|sec|tick)$/.test(x.w)) break;
    own = own || TRIGGERS.has(x.w);
    words += ` ${x.w}`;
    if (own && SECOND_THOUGHT.test(words)) length = m + 1 - k;
  }
  return length;
}

/** Is what follows `k` said of the figure before it: ", to be honest."? Gives how many items. */
export function afterthoughtAt(items: Item[], k: number): number {
  const at = items[k]?.w === ',' ? k + 1 : k;
  let words = '';
  for (let m = at; m < Math.min(items.length, at + 8); m++) {
    words += (words ? ' ' : '') + items[m]!.w;
    if (/^[.!;]$/.test(items[m + 1]?.w ?? '.') && AFTER.test(words)) return m + 1 - k;
  }
  return 0;
}

/** "I'm counting from the wrong side" speaks of no backing. */
const tellsFigure = (x: Item): boolean =>
  Boolean(x.place?.places.length && x.place.how === 'said' && x.w !== 'wrong side') ||
  Boolean(x.clock || x.span || x.quantity || x.duration || x.cost || x.stitch);
