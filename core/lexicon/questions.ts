/** How a question to the log is put. Patterns over a note's words joined by blanks, its lead-in and its "please" taken off. */

/** What is said before the question proper: a call, a breath, a clause of its own. */
export const QUESTION_LEADS: RegExp[] = [
  /^(?:so|and|&|ok|okay|right|righto|now|oh|well|wait|hang on|hold on|actually|but|just|hey|then|sorry|also|please|pls|,|-|--|:|\.|no|yes|yeah|alright|all right|listen|look|remind me|by the way|quick question|question|one more thing|one thing|another thing|let me (?:see|ask|think)|let 's see|all told|all in all|altogether|in all|in total|overall|in the end|for the (?:record|log)|again|where was i|where were we|go on then|go on|before i forget|out of interest|come to think of it) /,
  /^(?:before|while|when|since|as|if|now that|after|once) (?:i|we|it|she|he|they|you)(?: [^\s,?]+){1,8} , /,
  /^(?:can|could|would|will|do) you (?:please |just )?(?:tell me|remind me|say|read me|show me|check|look up|find|list|read|give me|let me know|work out|know)(?: (?:please|again))? (?=what|how|which|when|where|who|if|the|my|back|everything|anything|all|me)/,
  /^(?:say|hey there|well now) (?=what|how|which|when|where|who)/,
  /^(?:tell me|remind me|show me|let me know|i want to know|i 'd like to (?:know|see|hear)|i need to know|i wonder|do you know|what i want to know is) (?=what|how|which|when|where|who|if)/,
];

/** An order to read out or to sum up. */
export const READ_OUT =
  /^(?:(?:would|could|can|will) you |please )*(?:read|show|tell|give|list|recap|sum|summarise|summarize|review|run|go|play|find|look|repeat|say|remind|bring up|let 's (?:hear|see|have))\b(?= (?:me|us|back|out|up|over|through|off|everything|all|what|the|my|that|this|it|again|row|block|\d|of|about|today|yesterday|monday|tuesday|wednesday|thursday|friday|saturday|sunday|last)|$)/;

/** A word that asks, with the inversion or the noun that makes it a question and no subordinate clause. */
export const ASKING =
  /^(?:what|what 's|whats|which|when|when 's|where|who|how|how 's|why|(?:did|do|does) (?:i|we|you|it|that|this|the|she|he|they|any|anything)|have i|have we|have you|has (?:it|the|that|this|any|anything|everything)|had i|is (?:there|it|that|this|the|everything|anything|any)|are (?:there|any|we|the|those)|is (?:row|block|column|square|any)|are (?:row|rows|block|blocks)|am i|was (?:it|i|there|that|row|block)|were (?:there|any)|can i|could i|should i|shall i|will (?:i|it|that|the)|any|anything|anywhere)\b/;
/** A question word further on, after a light lead ("on the mending, how long …"). */
export const ASKING_WITHIN =
  /(?: |^)(what (?:did|have|has|is|am|are|do|was|all|else|'s|'ve|'d|about|i)|what 's|what 'd|how (?:many|much|long)|which (?:ones?|blocks?|materials|matters|things|jobs|bits)|when did i|have i (?:got|done|said)|did i)\b/;
/** With one of these before it, such a word is no question. */
export const NOT_ASKING =
  /\b(?:ignore|delete|scrap|wipe|cancel|remove|undo|strike|scratch|drop|erase|know|knows|knew|tell|say|said|says|see|seen|saw|figured?|decided?|settled?|sure|idea|remember|recall|wonder|wondering|ask|asked|asks|told|care|matter|shows?|showing|found|find|work out|guess|depends?|thinking|forget|forgot|that 's|here 's)\b/;
/** Words that make a question without a verb, and those that may stand beside them. */
export const NOMINAL_HEAD =
  /\b(?:money|spent|hours?|hrs|time|total|totals|cost|costs|spend|outlay|yardage|yds|yards|metres|meters|metreage|m of|last (?:entry|note|thing|one|item|bit)|latest (?:entry|note)|shopping list|to ?-? ?do(?: list)?|todos?|history|summary|recap|review|everything|undecided|open (?:matters|questions|items|points|things|decisions)|what 's left|still (?:to do|open|undecided|to buy|needed)|left to do|materials (?:needed|still|left|to)|entries for|notes (?:for|on)|running total|tally|so far)\b/;
export const NOMINAL_LIGHT = new Set(
  'spent money $ £ € treatment treatments full record repair repairs mending gone into worked hours hour hrs hr time total totals cost costs spend outlay yardage yds yd yards metres meters metreage m last latest entry entries note notes thing one item bit shopping list to do todo todos history summary recap review everything all undecided open matters questions items points things decisions left still needed buy need materials material stuff supplies running tally so far now again please pls then on of for in the a this that it at today yesterday yest tonight week day days date up altogether overall my me i we put said log logged down here quilt qlt job thing back and & , ? . : - story done what cloth fabric backing batting binding border wadding new cleaning'.split(
    ' ',
  ),
);

const CLOTH =
  '(?:fabric|cloth|material|backing|back|batting|wadding|batt|binding|border|borders|sashing|calico|muslin|lining|linen|lawn|flannel|cotton|sheeting|ticking|print|strips|stuff|yarn|bias)';

/** What tells the questions apart, in the order in which they are tried. */
export const QUESTION_SIGNS = {
  lastEntry:
    /\b(?:last (?:thing|entry|note|bit|one|item|line|record)|latest (?:thing|entry|note|one)|most recent (?:thing|entry|note|one)|(?:did|have|'ve|'d) (?:i|you|we) (?:just |last )(?:say|said|put|log|logged|tell|told|write|wrote|written|enter|entered|note|noted|record|recorded|take|taken|got|get|hear|heard|add|added)|(?:i|you|we) (?:just |last )(?:said|put|logged|told|wrote|entered|noted|recorded|took|take|got|heard|added|say|log)|(?:say|said|put|logged?|written?|wrote|entered?|noted?|recorded?|told) (?:(?:down|you|it) )?last|read (?:that|it|this) (?:back|again)|say (?:that|it) (?:back|again)|repeat (?:that|it|the last)|what was that (?:again|last)|what was i saying|where was i(?: up to)?(?= ?$)|where did i (?:get to|leave off|stop|finish)(?= ?$)|last logged)\b/,
  notLast:
    /\blast (?:night|week|evening|monday|tuesday|wednesday|thursday|friday|saturday|sunday|row|rows|column|block|two|three|time|month)\b/,
  cost: /\b(?:costs?|costing|spent|spend|spending|bill|expenses|expenditure|outlay|money|money wise|budget|paid|pay|out of pocket|set (?:me|us) back|laid out|forked out|shelled out|owe|owes|owed|(?:materials|cloth|receipts|it|everything|bits|supplies|all that|this) (?:all )?(?:has |have |'s |'ve )?(?:come|comes|came|run|runs|running|added|add|adds) (?:up )?to|price so far|in (?:pounds|dollars|euros|cash)|how much (?:is|am|was) (?:it|this|i|that|the (?:quilt|job|lot))(?: so far| altogether| in| up to| running| at)|how much has (?:it|this|all this|that|the (?:quilt|job|lot))(?: all)? (?:come|run|cost|been|added))\b/,
  notCost: /\b(?:charge|charging|quote|ask (?:her|him|them) for|hours?|hrs|time|how long|minutes)\b/,
  yardage: new RegExp(
    `\\b(?:yardage|metreage|meterage|(?:how many|number of) (?:yards|yds|metres|meters|m|feet|inches|strips|fat quarters)|how (?:much|long|big|wide|large)(?: a| an| is| are| does| do| will| must| should)?(?: the| my| this| of the| more| new)*(?: [^\\s?,]+){0,2} ${CLOTH}|how much (?:do|will|would|does|should|must|of)(?: i| it| the| we)?(?: [^\\s?,]+){0,6} (?:for|as) (?:the |my |a |new )*${CLOTH}|(?:yards|yds|yd|metres|meters|m) (?:of|for|do|will|does|needed|on)|enough (?:of )?(?:the |my )?${CLOTH}|what size(?: of| a)? (?:${CLOTH})|how much ${CLOTH}|(?:what|how much) (?:will|do|would) (?:i|it) (?:need|want|take) (?:in cloth )?for the (?:back|backing|lining|binding|borders?))\\b`,
  ),
  notYardage:
    /\b(?:how many hours|how much time|cost|spent|spend|bought|paid|used|have i (?:got )?(?:left|used)|did i (?:use|buy|cut)|took|how long (?:did|have|has|was|'s the (?:backing|binding|batting) (?:come|taken|been)))\b/,
  hours:
    /\b(?:how long|how much (?:work )?(?:have|did|has) (?:i|we|been) (?:done|do|put in|put|gone)(?: in)?(?: so far)? (?:on|into|at) (?:the )?\w+ing|how many (?:hours?|hrs|minutes|mins|evenings|days)|how much time|hours?|hrs|minutes so far|time (?:have|has|did|on|so far|spent|in|total|for|am i|is (?:on|in)|went|gone|put)|(?:total|my|the) time|time on|what time have i|tally|clocked?|time sheet|time 's (?:gone|been))\b/,
  notHours:
    /\b(?:how long (?:is|are) (?:the|each|a|this|that|it|one|my)|how long (?:a|an)|what time (?:is it|did|do)|the time now|time is it|24 hours|48 hours)\b/,
  open: /\b(?:undecided|(?:which|what|any) (?:\w+ )?(?:questions|decisions)|left hanging|(?:did|have) (?:i|we) agreed?|agree(?:d)? on|unsettled|unresolved|undetermined|decid(?:e|ed|ing|es)|decisions?|open (?:matters?|questions?|things?|points?|items?|ends?|issues)|(?:still|left|'s|is|are|remains?|stands?) (?:wide )?open|up in the air|ma[dk]e up my mind|ma[dk]e (?:up )?m[ye] mind|hanging over|hanging fire|on the fence|dithering|dither|swithering|humming and hawing|hemming and hawing|wavering|torn|in two minds|of two minds|settled?|not sure (?:about|of|on)|unsure|choos(?:e|ing)|chosen|have n't picked|undone decisions|pending|outstanding (?:decisions?|questions?|matters?)|been putting off|mull(?:ing)?(?: over)?|puzzling over|to sleep on|loose ends)\b/,
  materials:
    /\b(?:how much (?:\w+ ){1,2}have i (?:got )?left|do i have (?:any|enough|more)|have i (?:got )?(?:any|enough|more)(?! (?:to do|left to))|buy|buying|bought yet|purchase|shopping|shop|shops|shopping list|store|pick(?:ing)? up|get in|got in|to get|need to get|have to get|got to get|order|to fetch|from town|short of|short on|running (?:low|short|out)|run out|out of|low on|supplies|materials?|lacking|am i missing|do i (?:still )?(?:need|lack|want)|(?:still )?need (?:for|from)|needed|notions|stuff do i|things do i need)\b/,
  notMaterials:
    /\b(?:to (?:do|be done|finish|mend|patch|darn|fix|sew|wash|tie|quilt)|do next|doing|need doing|needs? (?:mending|doing|patching|darning|washing)|need to (?:do|mend|patch|darn|fix|sew|wash|finish|tie|quilt)|used|did i use)\b/,
  history:
    /\b(?:history|story|do(?:ne|ing)?|been|happened|happening|going on|have (?:i|we|you)|'ve i|did (?:i|we)|'d i|said|say|says|log|logged|recorded|record|noted|notes?|written|put|got|down|found|find|wrong|see|saw|everything|all|so far|tell me|what about|show me|read|remind me|what is|what 's|what was|what does|how did|how is|how 's|how does|which (?:stitch|thread|cloth|fabric)|what (?:stitch|thread|cloth|fabric)|state|condition|entries|up to)\b/,
  toDo: /\b(?:still (?:wants?|needs?|requires?)|have (?:i|we) not|have n't (?:i|we)|n't i (?:done|looked|touched)|must (?:i|we) (?:[^\s]+ ){0,4}(?:still|yet|do|make)|(?:left|still|yet|remaining|remains|got|have|need|needs|waiting|more|much|next|things?|jobs?|work) (?:\w+ ){0,4}?(?:to do|to be done|to finish|to go|to mend|to patch|to darn|to sew|to tie|to quilt|doing|undone|on (?:my|the) list)|to ?-? ?do(?: list)?|todo|next(?: up| job| thing)?|remaining|remains|outstanding|left|planned|unfinished|not (?:yet )?(?:done|finished)|n't (?:yet )?(?:done|finished|got round|been (?:done|mended|finished))|yet to|lined up|ahead of me|what else|on (?:my|the) list|list (?:for|of jobs|to do)|where am i up to|how (?:far|close|near)|needs? (?:mending|doing|patching|darning|washing|attention)|supposed to|meant to|promised|got round to|gotten around to|got around to|should i be doing|waiting)\b/,
  day: /\b(?:today|yesterday|tonight|this (?:morning|afternoon|evening|week)|last (?:night|week|evening)|(?:mon|tues?|wednes|thurs?|fri|satur|sun)(?:day)?|day|recap|review|summary|sum up|run through|go (?:over|through)|get (?:done|through|up to)|got (?:done|through)|have i done|did i do|did i (?:manage|get)|the \d+|january|february|march|april|may|june|july|august|september|october|november|december)\b/,
};
