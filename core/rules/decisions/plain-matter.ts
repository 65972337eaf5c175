import type { DecisionStatus, Topic } from '../../../shared/vocabulary.ts';
import { NO_CHOICE } from '../../lexicon/whole-statements.ts';

const WASH_WAY =
  '(?:(?:warm|hot|cold|cool|lukewarm|tepid)(?: water| wash)?|in the (?:bath|tub|sink|machine)|bath|tub|hand wash|machine wash)';

/** What is told outright by the words of one part of a sentence, whatever stands beside it. */
const PLAIN: [RegExp, Topic, DecisionStatus][] = [
  // "flannel on the back that's settled", "ticking on the back it is"
  [
    new RegExp(
      `^ (?:(?:and|so|right|ok|okay|then) )*(?!${NO_CHOICE})(?:the |plain )?[a-z]+(?: [a-z]+)? on the back(?:ing)? (?:then )?(?:that 's (?:settled|decided|agreed|fixed|final)|it is|it shall be)(?: then| now)? $`,
    ),
    'backing',
    'settled',
  ],
  // "it's not having a border", "decided against a border", "doing without a border", "no border."
  [
    /\b(?:(?:not|n't) (?:having|getting|going to have|going to get|putting)|(?:wo n't|will not|sha n't) (?:have|get|be having)|(?:decided|voted) against|(?:do|doing|managing|go|going) without|skip|skipping|ruled out) (?:a |any |the |on a )?borders?\b(?! on | round )/,
    'border',
    'settled',
  ],
  [
    /^ (?:and |so |but )*no borders?(?: then| at all| this time| for (?:it|this one))* $/,
    'border',
    'settled',
  ],
  // "cold hand wash it is", "wash lukewarm, that's settled" is told with its cue
  [
    /^ (?:so |and |right |ok )*(?:a )?(?:(?:cold|cool|lukewarm|tepid|warm|gentle|hand|machine|hot) )+(?:water )?(?:wash|hand wash) (?:it is|then|it 's going to be) $/,
    'washing',
    'settled',
  ],
  // "she says a cold wash is fine", "a cool bath would be all right", "washing it by hand is ok"
  [
    /^ (?:(?:and|so|but|right|well|ok|okay|oh|um|then) )*(?:(?:she|he|they|the owner|owner|client|the client)(?: 's| has)? (?:says?|said|thinks?|reckons?) (?:that )?)?(?:(?:a |the )?(?:(?:cold|cool|lukewarm|tepid|warm|gentle|hand|machine|hot) )+(?:water )?(?:wash|bath|soak)|washing (?:it )?(?:by hand|(?:in )?(?:cold|cool|lukewarm|warm)(?: water)?|in the (?:bath|tub|machine))) (?:is|'s|'ll be|will be|would be|'d be) (?:fine|ok|okay|all right|alright|good)(?: (?:by|with|for) (?:her|him|them|me|us))?(?: then| too| now)* $/,
    'washing',
    'settled',
  ],
  // "(I'll wash it on Monday.) Warm or cold, I don't know yet", "in the bath or the machine, undecided": how it is to be washed
  [
    new RegExp(
      `^ (?:(?:and|but|so|whether|either|in|with|by|it 's|do i|should i|wash it) )*(?:the )?${WASH_WAY} (?:or|vs|versus|/) (?:(?:in|with|by|the) )*${WASH_WAY} (?:(?:is|'s|i|we|am|are|'m|still|just|have|has|do|n't|not|yet|know|known|decide|decided|settled|made|up|my|mind|ca|can|sure|undecided|open|then|though|really) )*$`,
    ),
    'washing',
    'open',
  ],
  // "what to put on the label is anybody's guess"
  [
    /^ (?:and |but )*(?:what|which|how)(?: \S+){1,5} (?:the )?label .*(?:guess|open|undecided|n't know|no idea|n't decided|n't made up|to decide)/,
    'other',
    'open',
  ],
  // "no date set yet", "when it's to be finished we haven't agreed"
  [
    /^ (?:and |but |there 's )*no (?:finish |end )?(?:date|deadline)(?: is| has been)? (?:set|fixed|agreed|given|yet|settled)\b/,
    'deadline',
    'open',
  ],
  [
    /^ (?:and |but )*when (?:it|she|he|they)(?: 's| is| 're| are| has| have)?(?: to be| needs?| wants?| got to be| to have)(?: it| finished| done| ready| back)+ .*(?:n't (?:agreed|decided|said|settled|know)|not (?:yet )?(?:agreed|decided|settled)|open|undecided|up in the air)\b/,
    'deadline',
    'open',
  ],
  // "don't know yet when she needs it back", "no idea when it's due"
  [
    /(?:n't know|not sure|no idea|n't said|n't decided|not decided|undecided|no clue)(?: yet| still)? when (?:it|she|he|they)(?: 's| is| 're| are| has| have)?(?: due| to be| needs?| wants?| will| 'll| must| should)\b/,
    'deadline',
    'open',
  ],
  // "we've dropped the idea of a new border"
  [
    /\b(?:dropped|scrapped|abandoned|ditched|shelved|given up(?: on)?|gave up(?: on)?|forget|forgetting) (?:the |that |any )?(?:idea|plan|thought|notion) of (?:a |any |adding a |putting a |having a )*(?:new |wide |wider |plain |pieced )?borders?(?: on)? $/,
    'border',
    'settled',
  ],
  // "the border idea is dead", "we're having a border", "border yes"
  [
    /^ (?:(?:and|so|but|right|well) )*(?:the border (?:idea|plan|question) (?:is|'s) (?:dead|off|out|gone|dropped|scrapped|closed)|(?:never mind|forget|forget about|scrap|scrapping|drop|dropping) (?:the|a|any) (?:new )?border(?: idea)?|(?:i |we |it )(?:'m|'re|'s|am|are|is) (?:having|getting|going to have|doing|to have) a (?:\w+ )?border|there 's (?:to be|going to be|gonna be) (?:a|no) (?:\w+ )?border|border (?:yes|no|yep|nope)|yes to (?:a|the) border|no to (?:a|the) border)(?: then| after all| now)* $/,
    'border',
    'settled',
  ],
  // "the border's a maybe", "border maybe"
  [/^ (?:and |but )*(?:the |a )?border(?: is| 's)?(?: a| still a)? maybe(?: still)? $/, 'border', 'open'],
  // "date not fixed", "the finishing date isn't agreed yet"
  [
    /^ (?:and |but )*(?:the )?(?:finish(?:ing)? |end |due |hand ?over |return |delivery )?date(?: is| 's| has| 's been| been)*(?: still| yet| now)* ?(?:not|n't|to be|open|up in the air|undecided)(?: (?:yet|been|fixed|set|agreed|settled|decided|known|confirmed))* $/,
    'deadline',
    'open',
  ],
  [
    /^ (?:and |but )*(?:the )?(?:finish(?:ing)? |end |due |hand ?over |return |delivery )?date(?: is| 's| has| been)* (?:fixed|set|agreed|settled|confirmed) $/,
    'deadline',
    'settled',
  ],
  // "cold water, by hand: that's how it'll be washed"
  [
    /^ (?:and |so |well )*(?:that|this) (?:'s|is) how (?:it|i|we)(?: 's| is| 'll| will| 'm| am| 're| are| going to| to| be| gonna)* (?:washed|wash|washing)(?: it)? $/,
    'washing',
    'settled',
  ],
  // "ninety dollars is what we shook on"
  [
    /^ (?:and )?(?:\S+ ){1,5}(?:is|was|'s) (?:what|the (?:price|sum|figure)) (?:we|she and i|i|she) (?:(?:shook|agreed|settled)(?: hands)?(?: on)?|said|fixed on|fixed|quoted her|quoted)(?: (?:together|in the end|and that 's that))* $/,
    'price',
    'settled',
  ],
];
const HINT =
  /\b(?:said|fixed|quoted|borders?|warm|hot|cold|cool|lukewarm|tepid|bath|tub|wash|washed|washing|label|date|deadline|when|shook|agreed|settled|decided|final|on the back(?:ing)?)\b/;

/** A matter that the words of one part tell outright. */
export function plainMatter(words: string): { topic: Topic; status: DecisionStatus } | undefined {
  if (!HINT.test(words)) return undefined;
  const told = PLAIN.find(([said]) => said.test(words));
  return told && { topic: told[1], status: told[2] };
}

/** "no machine quilting, it's going to be by hand", "not by machine, hand it is": of the two ways to quilt, the one it is to be. */
export const isHandOrMachine = (words: string, next: string): boolean =>
  /^ (?:so |and |but )*(?:no|not) (?:by )?(?:hand|machine) ?(?:quilting)? $/.test(words) &&
  / quilting /.test(`${words}${next}`) &&
  / (?:by )?(?:hand|machine)(?: quilting)?(?: it is| then| it 'll be| for this one)? $/.test(next);
