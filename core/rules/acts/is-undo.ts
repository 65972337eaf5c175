import type { Item } from '../item.ts';
import { saysAnotherQuilt, wasAnotherQuilt } from './another-quilt.ts';
import { signsOf } from './is-aside.ts';
import { strikesOut } from './strikes-out.ts';

/** What may stand before a command without changing it: "no no wait, please …", "oh dear, can you …". */
const LEAD_IN =
  /^(?:(?:u+g+h*|u+r+g+h*|a+r+g+h+|o+h+|a+h+|u[hm]+|er|erm|gosh|bugger|sod it|blow|crumbs|blimey|fiddlesticks|rats|heck|oh heck|crikey|sugar|whoops a daisy|no|nah|nope|oh|ah|aw|ach|right|righto|okay|ok|wait|sorry|so|and|but|please|actually|hang on|hold on|hold it|hold up|wait up|oops|whoops|damn|bother|blast|drat|shoot|well|just|can we|could we|och|can you|could you|would you|will you|you can|you 'd better|let 's|let us|better|now|yeah|yes|hey|whoa|argh|dear|dear me|my mistake|my fault|on second thoughts?|i 'd like to|i want to|i need to|go ahead and|kindly|apologies|excuse me|(?:do )?you know what|know what|tell you what|listen|then|(?:that|it|this) (?:'s|is|was) (?:all |quite |completely |just )?(?:wrong|rubbish|nonsense|a mess)) |[,.!:-]+ )+/;

/** The note, or the one before, as a thing that can be struck out. */
const NOTE_WORD = '(?:entry|entries|note|notes|thing|bit|one|lot|line|item|record|message|log|part|remark)';
/** What was said, named by its telling: "the whole of what I just told you", "everything you've got from me". */
const TOLD_IT =
  "(?:(?:the )?(?:whole|all|lot|every word|every bit) of )?(?:what|whatever|everything|anything|every word|all)(?: that)? (?:i|we|you)(?: (?:just|now|only|last|ever|have|'ve|had|'d|was|were|'m|am|after|been|then))* (?:said|saying|told (?:you|it)|telling you|put|logged|wrote|entered|noted|gave you|got|took|dictated|mentioned)(?: (?:down|in|from me|off me|just|now|there|then))*";
const WHOLE =
  `(?:(?:all of |all |the whole of |everything in )?(?:that|this|it|them|those)(?: (?:last|previous|whole|latest|other))*(?: ${NOTE_WORD})?(?: all)?` +
  `|(?:the|my|that)? ?(?:very )?(?:last|previous|latest|most recent) ${NOTE_WORD}` +
  // "cancel last, had top and bottom mixed"
  '|(?:the )?(?:last|prev|previous)(?= ?$| ?[,.;:!-])' +
  `|(?:the|my) (?:[\\w:.]+ )?(?:entry|note|message)` +
  `|${TOLD_IT})`;
/** Verbs that are said of words only, or mostly. */
const STRIKE =
  '(?:scratch|strike|delete|del|undo|cancel|erase|expunge|redact|rewind|disregard|void|scrub|unlog|withdraw|retract|discard|unsay|scrap|reverse|roll back|back out|hit delete on|press delete on|rub|cross|wipe|bin|axe|nix|chuck|dump|kill|lose)';
/** Verbs of the bench: only with the note itself as their object. */
const BENCH = '(?:take|pull|remove|drop|get rid of|throw|leave|rip|pick|forget|ignore|never mind|skip)';
const AWAY = '(?: (?:back|out|off|away|again|from the (?:log|record|list|book)))*';
const END =
  "(?= ?$| ?[,.!;:-]| (?:please|i |we |it |it's |that |they |he |she |there |then|will you|would you|for me|altogether|entirely|completely|my |wrong|meant|because|cos|since|as |no |the (?:tape|ruler|rule|stick|scales?|clock|light) ))";

const STRIKE_IT = new RegExp(`^${STRIKE}(?: out| off| back)? ${WHOLE}${AWAY}${END}`);
const TAKE_BACK = new RegExp(
  `^(?:take|took|taking|pull|roll|bring|i take|i 'll take|i 'm taking) ${WHOLE} back(?: again| please| now| out)*(?! (?:off|out|in|on|to|from (?!the (?:log|record)))\\b)${END}`,
);
const DROP_NOTE = new RegExp(
  `^${BENCH}(?: out| off| away)? (?:(?:the|my|that|this)? ?(?:very )?(?:last|previous|latest|most recent) ${NOTE_WORD}|(?:that|this|the|my) (?:entry|note|message|remark)|${TOLD_IT})${AWAY}${END}`,
);
/** "take all that off that I just told you": the note pointed at, and told afterwards what it is. */
const TOLD_AFTER =
  /^(?:take|pull|strike|leave|drop|forget|ignore|rub|wipe|cross) (?:all )?(?:of )?(?:that|it|this)(?: one| lot)?(?: back| off| out| away)? (?:that |what |which |as )?i(?: (?:just|now|only|last|have|'ve|was|'m|after))* (?:said|saying|told you|telling you|gave you|put down|logged)\b/;
/** "forget I said that", whatever is told of sisters beside it. */
const UNSAID =
  /^(?:forget|ignore|pretend) i (?:ever |just |even )?(?:said|mentioned|told you) (?:that|it|this|anything|so)\b(?: last| whole)?(?: (?:bit|part|one|thing|lot)\b)?/;
/** At the end of what tells why: "…, not the quilt. Take it back, every word." */
const BACK_LAST =
  /[,.!;:-] (?:(?:so|and|please|now|just|better) )*take (?:it|that|this|that one|the lot|all of it|all that|everything) back(?: [,.!-])*(?: (?:again|please|every word|every bit|all of it|the whole lot|of it))*[ .!]*$/;
/** "no that's all back to front scratch that": what is wrong first, then the command. */
const STRIKE_LAST =
  /^[^.;]{0,60}\b(?:wrong|back to front|backwards|muddled(?: up)?|mixed up|upside down|not right|nonsense|rubbish|all over the place)[ ,.!-]+(?:(?:so|just|please|and|no) )*(?:scratch|strike|undo|delete|erase|scrub) (?:that|it|all that|all of it|the lot|that one|that last one)[ .!]*(?:please)?[ .!]*$/;
const FORGET = new RegExp(
  `^(?:forget|ignore|never mind|pay no heed to|leave out|skip) (?:i (?:ever )?said )?(?:all (?:of )?)?(?:that|it|this|anything)(?: one| lot| all| last one| bit)?${END}`,
);
const BARE_STRIKE =
  /^(?:undo|delete|cancel|erase|unsay|strike|scratch|scrub|retract)(?: (?:please|that please))?(?= ?$| ?[,.!;:-])/;
const NOT_MEANT =
  /^(?:(?:take|pull) (?:that|it|this)(?: one| last one)?(?: back)? (?:out|off)[ ,.]+(?:i |it |that )[^.]{0,60}\b(?:wrong|other|another|different) (?:quilt|qlt|job)|(?:that|this|it|the last (?:one|note|entry|bit))(?: last)?(?: (?:one|entry|note|bit))? (?:was|is|'s) (?:all )?(?:meant |said )?(?:for )?(?:the |an? )?(?:wrong|another|different|other) (?:quilt|qlt|job|one)|wrong (?:quilt|qlt|job|piece|thread)|i (?:did n't|never) (?:mean|do|say|said|meant|did) (?:that|any of that|to say that|any such thing|anything of the (?:sort|kind))|(?:take|leave|keep) (?:that|it|this)(?: one| last one)? out of the (?:log|record|notes|book)|pretend i (?:did n't|never) (?:say|said) (?:that|it)|pretend (?:that|it|this|the last)(?: one| bit| note)? (?:did n't|never|had n't) happen(?:ed)?|that (?:never|did n't) happen(?:ed)?)\b/;
/** Why it was wrong. After these a block or a number names no correction. */
const REASON =
  /\b(wrong|not (?:this|my|that|the) (?:quilt|one|job)|mix(ed|ing)?|muddl(e|ed|ing)|confus(ed|ing)|miscount(ed)?|counted|crossed|another|other|different|belongs?|mistake|error|again|later|tomorrow|not sure|meant for|says?|sleep on|have n't|has n't|did n't|not done|not yet|never|upside|holding (?:it|this|the quilt)|back to front|backwards|the other way (?:round|about|up)|inside out|swapped|(?:the|my) (?:tape|ruler|rule|stick|scales?|watch|clock|glasses|lamp|light) (?:was|were|is|had|has|'s))\b/;

/** "take that out again it's the wrong till slip": it was read off another paper. */
const WRONG_PAPER =
  /\b(?:take|took|pull|strike|scratch|cross|rub|delete|leave|get|have) (?:that|it|this|those|them|all that|that lot|that one|the lot)(?: one| lot)? (?:out|off|back|away)\b.{0,40}\b(?:wrong|another|different|last (?:week|month|year) 's) (?:till |sales |packing |shop |delivery )?(?:slip|receipt|docket|bill|invoice|chit|ticket|list|page|note|photo|picture)\b/;
/** "it's only soot from the stove", "that's just fluff": nothing that need be logged. */
const NO_DAMAGE =
  /^[ ,.!-]*(?:because |cos |since |as )?(?:it|that|they|those)(?: (?:is|was|are|were|'s|'re))? (?:only|just|nothing but|nothing more than) (?:a |some |the |my |a bit of )*(?:\w+ )?(?:soot|dust|fluff|lint|shadows?|chalk|crumbs?|light|lamp|dirt|creases?|folds?|hairs?|pollen|flour|thread|threads|ends?|crayon|pencil|reflection)\b/;
/** "take all that back, I've been up since five": why she may have said it wrong. */
const WORN_OUT =
  /^[ ,.!-]*(?:i|we) (?:(?:'ve|have) been (?:up|awake|at (?:it|this)|on the go|on my feet|working|sewing)|(?:'m|am|was|must be|must have been) (?:so |too |half |just |dead |very )*(?:tired|asleep|shattered|knackered|exhausted|dreaming|dozing|beat|miles away|rambling|wittering|talking (?:rubbish|nonsense)))\b/;
/** "undo that, I'll check the receipt first", "scratch that, let me measure it again": what she has to find out before it is said again. */
const LOOKS_FIRST =
  /^[ ,.!;-]*(?:because |cos |since |as )?(?:(?:i|we) (?:'ll|will|'d better|had better|need to|have to|must|should|want to|'ve got to|ought to)|let me|better)(?: \w+)? (?:check|look|measure|count|weigh|ask|see|think|find out|find)\b(?!.*\d)/;
/** The other thing that it was about, which is no work on this quilt: "it was my sister's quilt", "I was thinking of a cushion". */
const ELSEWHERE =
  /\b(?:(?:it|that|this) (?:was|is|'s)|i (?:was|were|am|'m)(?: \w+){0,2} (?:of|at|on|about)) .*(?:\b\w+ 's (?:quilt|qlt|one|coverlet|blanket)|\b(?:bag|cushion|cosy|cozy|blanket|curtains?|skirt|dress|shirt|pillow|apron|throw|hers|his|theirs)\b)|\b(?:thinking|talking) of (?!the (?:row|block))/;
const NAMED_NOTE = new RegExp(
  `^(?:${STRIKE}|forget|ignore|drop|lose) (?:out )?(?:the|that|my) (?:\\S+ ){1,5}?${NOTE_WORD}${END}`,
);
const OTHER_WORK =
  /\b(?:other|another|different|wrong) (?:quilt|qlt|job|piece|blanket|coverlet|comforter|throw|project)\b/;
/** "let me start that again", "none of that's right. start over": told anew from the beginning. */
const START_OVER =
  /(?:^|[ ,.!-])(?:(?:let me|i 'll|can i|i 'd better|better) (?:start|say|try|begin|put|tell)(?: (?:that|it|this|all that))?(?: one)? (?:again|over|afresh)(?: again)?|(?:let 's )?start(?: (?:that|this)(?: one)?| it)? over(?: again)?)(?: please| from (?:the top|scratch|the beginning))*[ .!]*$/;
/** "no need to log that", "I was talking to my sister, don't log that": said of the log by its own verb, whoever is named beside it. */
const UNLOGGED =
  /(?:^|[ ,.!-])(?:you (?:do n't|need n't) (?:need to |have to )?|no need to |do n't |need n't )(?:log|record|write|note|enter|save) (?:that|it|this)(?: one| last one| bit| lot)?(?: down| in| up)?(?: please| now| then)*[ .!]*$/;
/** Struck out once more in other words: "…, wipe it". */
const AGAIN =
  /^[ ,.!;:-]*(?:(?:just|and|please|so|then|go on|no) )*(?:wipe|scrap|strike|scratch|delete|drop|bin|scrub|lose|forget|cancel|ignore|undo|take) (?:it|that|this|the lot|every word)(?: all| out| off| back| away| please)*[ .!]*$/;

/** What may be read out, and a plan called off: neither takes back a note. */
const READ_BACK =
  /^(?:read|play|say|tell|give|show|repeat|recite)(?: me| us)? (?:back )?(?:the|that|my|what|it)\b/;
/** "what was the last thing I put down, read it back to me": asked, whatever is behind it. */
const ASKED_LAST =
  /^(?:what|which|where)(?: (?:was|is|were|did|have)|'s|'d) (?:the|my|that|i|we|it|you)\b(?!.*\b(?:scratch|strike|delete|undo|cancel|erase|scrub|wipe|scrap|forget|bin|ignore)\b)|[,.!;:-] (?:(?:and|please|just|can you|could you|would you|will you) )*(?:read|play|say|repeat) (?:it|that|them|this|the last|the lot)(?: \w+)? (?:back|again|out)\b/;
const PLAN_OFF =
  /^(?:scrap|drop|forget|ditch|cancel|bin|abandon|shelve|never mind) (?:all )?(?:that|the|this|my) (?:whole |last )?(?:plan|idea|thought|notion)\b/;

/**
 * Does the note only take back the one before? `text` is the note's words as tokens joined by blanks, `items` its meanings;
 * `onBench`: the last note told of something that can be taken off or left itself;
 * `onePlace`: all that it told is of one place.
 */
export function isUndo(text: string, items: Item[], onBench = false, onePlace = false): boolean {
  const whole = `${text.trim()} `;
  const lead = LEAD_IN.exec(whole)?.[0] ?? '';
  const command = whole.slice(lead.length);
  // "not the patch, scrub that bit": a part is named, and the rest stands
  if (isPartNamed(items)) return false;
  // "read me the last one back", "scrap that plan": asked, or a plan called off
  if (READ_BACK.test(command) || ASKED_LAST.test(command) || PLAN_OFF.test(command)) return false;
  // "scrap the row five one, that was the other quilt"
  if (onePlace && NAMED_NOTE.test(command) && OTHER_WORK.test(command)) return true;
  const hit =
    STRIKE_IT.exec(command) ??
    TAKE_BACK.exec(command) ??
    TOLD_AFTER.exec(command) ??
    UNSAID.exec(command) ??
    DROP_NOTE.exec(command) ??
    (talksAside(items) && !ELSEWHERE.test(command) ? null : FORGET.exec(command)) ??
    BARE_STRIKE.exec(command) ??
    NOT_MEANT.exec(command);
  if ((!hit && BACK_LAST.test(whole)) || STRIKE_LAST.test(whole)) return true;
  if (!hit && WRONG_PAPER.test(whole)) return true;
  if (!hit && (saysAnotherQuilt(whole.trim()) || START_OVER.test(whole) || UNLOGGED.test(whole))) return true;
  if (!hit) return (atTheEnd(whole.trim(), items) || strikesOut(whole, items, onBench)) && !talksAside(items);
  const rest = command.slice(hit[0].length).trim();
  if (NO_DAMAGE.test(rest) || WORN_OUT.test(rest) || LOOKS_FIRST.test(rest) || wasAnotherQuilt(rest))
    return true;
  if (!rest || REASON.test(hit[0]) || REASON.test(rest) || ELSEWHERE.test(rest) || AGAIN.test(rest))
    return true;
  // "scratch that it was a hundred"
  if (
    /^[ ,.]*(?:it|that|this) (?:was|is|'s|took|should be|should have been) /.test(` ${rest} `.trimStart()) &&
    items.some(
      (x) => x.i >= lead.split(' ').length + 1 && x.quantity?.value !== undefined && !x.quantity.unit,
    )
  )
    return false;
  // "scratch that, row four": what it should be, so the note is mended and not taken back
  const from = `${lead}${hit[0]}`.trim().split(' ').length;
  return !items.some((x) => x.i >= from && names(x));
}

/** "not the patch, …", "no, not the darn: …": what is wrong is named first. */
function isPartNamed(items: Item[]): boolean {
  const not = items.findIndex((x) => x.w === 'not');
  if (not < 0 || not > 2 || !/^(?:the|that|my)$/.test(items[not + 1]?.w ?? '')) return false;
  const named = items[not + 2];
  return (
    /^(?:,|:|--|-|\.|;)$/.test(items[not + 3]?.w ?? '') &&
    Boolean(named?.finding || named?.action || (named?.material && !named.part))
  );
}

/** "Never mind that, it's only the telephone" is said of the house. */
const talksAside = (items: Item[]): boolean => signsOf(items.map((x) => x.token)).things > 0;

/** "the lamp was behind me, strike that": nothing said before it but talk. */
function atTheEnd(text: string, items: Item[]): boolean {
  return (
    /\b(?:scratch|strike|delete|cancel|erase|undo|scrub|disregard) (?:that|it|all that|that last (?:one|note|entry|bit)|the last (?:one|note|entry))(?: out)?(?: please)?(?: [.!])*$/.test(
      text,
    ) && !items.some(names)
  );
}

const names = (x: Item): boolean =>
  Boolean(
    (x.place?.places.length && !/^place\.(it|them|both|those|that-one)$/.test(x.place.rule)) ||
      x.quantity?.unit ||
      x.cost ||
      x.duration ||
      x.clock ||
      x.span ||
      (x.stitch && !x.weakStitch) ||
      x.finding ||
      (x.action && x.w !== 'strike' && x.w !== 'scrub' && x.w !== 'quilt') ||
      (x.material && x.material !== 'other' && x.w !== 'thread'),
  );
