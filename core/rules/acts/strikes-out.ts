import { PatternSet } from '../../text/pattern-set.ts';
import type { Item } from '../item.ts';

const NOTE_WORD =
  '(?:entry|entries|note|notes|one|bit|lot|remark|line|thing|item|message|part|record|log|statement|observation|sentence|comment|dictation|report)';
const LATEST = '(?:very )?(?:last|previous|latest|most recent|preceding|foregoing|prior|prev)';
const SAID_IT =
  "(?:what|whatever|everything|all)(?: that| of what)? (?:i|we) (?:just |have just |'ve just |last |just now )?(?:said|told you|put|logged|entered|noted|'m after saying|'m after telling you|was (?:just )?saying|was telling you)(?: down| in| just now| there)?";
/** The note before, in whatever words. */
const SAID = `(?:(?:all of |all )?(?:that|it|this|them|those)(?: (?:whole|${LATEST}))?(?: ${NOTE_WORD})?|(?:the|my|our)? ?(?:whole )?(?:${LATEST})(?: ${NOTE_WORD})?|the (?:whole )?(?:lot|thing|note|entry)|${SAID_IT}|line)`;
/** The same, by words that can be no thing of the bench. */
const THE_NOTE = `(?:(?:(?:that|this|the|my|our) )?${LATEST} ${NOTE_WORD}|(?:that|this|the|my) (?:entry|note|message|remark)|(?:that|this|my) line|${SAID_IT})`;
const LOGGED = '(?:log|put|write|record|note|enter|store|save|keep|count|say|send|post|add|mention)';
const LOGGED_PAST =
  '(?:logged|put|written|recorded|noted|entered|stored|saved|kept|counted|said|added|mentioned)';

/** Commands to strike out, wherever in a short note they stand. */
const STRIKES = new PatternSet([
  new RegExp(
    `\\b(?:scratch|strike|delete|del|undo|cancel|erase|wipe|bin|disregard|expunge|void|scrap|unsay|scrub|retract|withdraw|belay|unlog|nix|axe|kill)(?: out| off)? ${SAID}\\b`,
  ),
  new RegExp(`\\b(?:rub|cross|strike|x|wipe|blot|score|clear) ${SAID}(?: \\w+){0,3} (?:out|off)\\b`),
  new RegExp(`^(?:no |oh |ah |please |sorry |just )*(?:x|x out|clear) ${SAID}$`),
  // "put a line through that", "strike a pen through the last one"
  new RegExp(
    `\\b(?:put|draw|strike|run) (?:a|your|the) (?:line|pen|pencil|stroke|cross|red pen|blue pencil) (?:right |straight )?through ${SAID}\\b`,
  ),
  // "let's have that one off the record", "don't bother with that last one"
  /\b(?:have|get|want|take|leave|keep) (?:that|it|this)(?: last)?(?: one| note| bit)? (?:off|out of|struck from) the (?:record|log|book|books|list|notes)\b/,
  new RegExp(
    `\\b(?:do n't|do not|no need to) (?:bother|trouble)(?: yourself)? (?:with|about|keeping|noting|logging) ${THE_NOTE}\\b`,
  ),
  // "void entry", "delete note"
  /^(?:no |oh |ah |please |sorry )*(?:void|delete|cancel|strike|scratch|scrub|undo|erase|remove|discard) (?:entry|note|record|line|item)(?: please)?$/,
  // "you'd best not write that down", "better not log it"
  new RegExp(`\\b(?:best|better) not ${LOGGED} (?:that|it|this|any of (?:that|it)|them)\\b`),
  // "don't keep that", "let's not log it"
  new RegExp(
    `\\b(?:do n't(?: you)?|do not|never|let 's not|let us not|rather not|rather you did n't|not to|wo n't) ${LOGGED} (?:that|it|this|any of (?:that|it|this)|them|the last)\\b`,
  ),
  // "didn't mean to log that", "that wasn't meant to go in", "I shouldn't have said that"
  new RegExp(
    `\\b(?:did n't|did not|never) (?:mean|want|intend)(?: for)? (?:that |it |this )?to (?:${LOGGED}|go in|go down|be in|be ${LOGGED_PAST})\\b`,
  ),
  new RegExp(
    `\\b(?:should n't|should not|should never|ought n't to) have (?:been )?(?:${LOGGED_PAST}|gone in|gone down)\\b`,
  ),
  /\b(?:that|it|this|that one|last one|entry|note) (?:was n't|was not|is n't|was never) (?:meant|supposed) to (?:go|be)(?: in| down| there| here| logged)?\b/,
  /\b(?:should n't|does n't|did n't) (?:be|belong|go|need to be) (?:in there|in here|in the (?:log|notes|record|book))\b/,
  /\b(?:forget|ignore|disregard|never mind|pay no attention to|take no notice of) (?:that|it|this|all that|what i|everything i|i said|my last|the last|i spoke|i ever said)\b/,
  /^(?:no |oh |ah |please |sorry |not this (?:quilt|one|job) )*(?:disregard|ignore|retract|forget)(?: (?:last|previous|that))?(?: please)?(?: wrong (?:file|list|page|notebook|book|job|quilt|one|window|client|customer))?$/,
  // "that last entry needs to go", "last note was in error", "never you mind that last one"
  new RegExp(
    `\\b${THE_NOTE}\\b.{0,40}\\b(?:can go|goes|to go|gone|wrong|nonsense|rubbish|mistake|error|mistaken|never happened|should n't|out|off|away|back|deleted?|del|removed?|erased?|struck|strike|cancel(?:l?ed)?|scrap(?:ped)?|forget|forgotten|ignored?|withdrawn|retracted|binned?|chuck|lose|wiped?|scratch(?:ed)?|dropped|drop|void|undone?)\\b`,
  ),
  new RegExp(
    `\\b(?:do n't|never(?: you)?|pay no|no|pay) (?:mind|heed|attention|notice)(?: to)? (?:${THE_NOTE}|that|it)\\b`,
  ),
  /\b(?:pay|take) (?:that|it) no (?:mind|heed|notice)\b/,
  /^(?:no |oh |ah |please )*(?:that|this|it|that last)(?: one)? (?:i|i must|i 'll|i have to|must|should|is to|'s to|has to|needs to|ought to) (?:have to )?(?:take back|come (?:back )?out|go|be (?:deleted|removed|taken out|struck))(?: again)?$/,
  /\b(?:want|like|sooner|rather)(?: to have)? (?:that|it|this)(?: one)? (?:taken|took|struck|deleted?|removed) ?(?:out|off|back|away)?$/,
  /\b(?:that|it|this) should n't (?:be|have been) (?:in )?there\b/,
  /^(?:no |oh |ah |oops |whoops |please |sorry )*(?:del|rm|undo|delete|scratch|cancel)(?: (?:last|prev|previous|that|it))?(?: please)?$/,
  new RegExp(
    `\\b(?:remove|drop|lose|kill|get rid of|get shot of|pull|clear|take out|take off|take back|chuck out|leave out|tear up|throw out|throw away) (?:${THE_NOTE}|(?:the |my |that |what )?(?:last|previous|latest|i just|i said))\\b`,
  ),
  new RegExp(
    `\\b(?:take|pull|get|chuck|throw|leave|keep|pick) ${THE_NOTE}(?: \\w+)? (?:out|off|back|away|down)\\b`,
  ),
  /^(?:no |oh |ah |please |sorry )*(?:remove|del|delete|undo|cancel|scratch|drop|strike|erase|void|scrub|wipe) (?:last|prev|previous)\b/,
  /\b(?:get shot of|get rid of|chuck out|lose) (?:it|that|that one|the lot)\b/,
  // "take it back, every word"
  /(?:^|\b(?:so|and|please|now|just) )(?:take|taking) (?:that|it|this|all that|all of (?:that|it)|the lot|the whole lot|everything)(?: one)? back(?: again| out| please| all of it| every (?:word|bit)| the whole lot)*(?= *$| (?:i|it|that|because|cos|as)\b)/,
  /\b(?:would|could|do|can) you (?:mind )?(?:taking|striking|leaving|scratching|deleting) (?:that|it|this)(?: one| last one| bit)?(?: back)?(?: out| off| back)?\b/,
  // "hang on, that's not this quilt"
  /\b(?:that|it|this)(?: one)? (?:'s|is|was) (?:not|n't|no) (?:on |for |from )?(?:this|the right) (?:quilt|qlt|job)\b/,
  /\blet (?:that|the) last (?:note|one|entry|bit) go\b/,
  /^(?:no |oh |please )*(?:take|taking) back (?:everything|all|what)\b/,
  /^(?:no |oh |ok |okay |please )*go back (?:one|a step|a note)\b/,
  // told twice: it stands once already
  /^(?:no |oh |ah |oops |sorry |whoops |wait )*(?:(?:i (?:have |'ve )?)?(?:already )?(?:logged|said|told you|put) (?:that|it|this|that one)(?: one)?(?: down| in)? (?:already|twice|before)\b|(?:that|this|it|that one|the last one)(?: one)? (?:is|'s) (?:(?:already )?(?:in|down)(?: there| here)? twice|a (?:duplicate|double|repeat)|already (?:in|down|logged)))/,
  /\b(?:i (?:was|were|am|'m)|that was)(?: only| just)? (?:talking to (?:myself|the)|thinking (?:aloud|out loud)|just testing|only testing)\b.*\b(?:scratch|strike|delete|cancel|erase|wipe|ignore|forget|scrap|scrub|lose)\b/,
]);
/** Said at once, these undo: "scrap it", "wipe that". Only as a stretch of their own, since they are work too. */
const SHORT_STRIKE =
  /^(?:(?:so|and|please|just|then|better|let 's|you can|can you|could you|would you) )*(?:scrap|wipe|bin|chuck|delete|erase|cancel|remove|drop|scratch|strike|scrub|lose|kill|undo|ignore|forget|clear|dump|void) (?:it|that|this|them|one|the lot)(?: out| off| away| back)?(?: please| again| then| for now| would you| will you)*$/;
/** "take it off", "take that out": of the log where the note says nothing of the bench. */
const TAKES =
  /\b(?:take|taking|get|strike|pull|leave|chuck|throw|toss|cut) (?:that|it|this|them|that one|all of that|all that|all of it|all this|the lot|one|that last one|the last one)(?: \w+)? (?:out|off|back|away|down|of it)\b/;
const TAKE_NOW =
  /(?:^|\b(?:so|and|please|no|oh|ah|better|just|can you|could you|would you) )(?:take|pull|leave) (?:all )?(?:of )?(?:that|this)(?: one| lot| last one)?(?: back)? (?:out|off)(?: again| please| for now| then| of it)*(?= *$| (?:i|the|that|it|will|'ll|because|cos|we|they|there|wrong|not)\b)/;
const WHY =
  /\b(?:never did|did n't|have n't|wrong|mistake|mistaken|nonsense|rubbish|again|not right|not sure|n't sure|told you|(?:another|different) customer|another job|(?:was n't|is n't|not) (?:meant )?for you|not to you|last (?:week|month) 's|i (?:just )?said|too soon|muddled|mixed|misread|miscounted|other quilt|another quilt|not this|by accident|please|the log|the book|the record|the notes|twice|already|for now|of it|duplicate|(?:was n't|is n't|not) (?:this (?:quilt|qlt|job|one)|for this|on this)|och no|oh no|ah no|no no)\b/;
/** Words that have a sense at the bench, and another of what was said. */
const MEANT_OF_WORDS =
  /^(back|back out|scrap|good|no good|wipe|strike|scrub|clear|drop|bit|cut|tear|line|one|lot|last)$/;
/** Why the whole of it was wrong: what is named beside it belongs to the other thing. */
const ELSEWHERE =
  /\b(?:other|another|different|wrong) (?:quilt|qlt|job|piece|one|blanket|coverlet|comforter|throw|bedspread|project)\b|\bnot (?:this|that) (?:quilt|qlt|job)\b|\b(?:that|it) was (?:the|my|her|his|a|an) (?:\w+ )?(?:tablecloth|curtains?|sheets?|blanket|cushion|coverlet|pillow|pillowcase|apron|dress|shirt|towel|throw|runner|cloth|eiderdown|bedspread|bag)\b/;
/** "no I didn't, that was the tablecloth": nothing of it was done here. */
const DENIED =
  /^(?:oh |ah |er |wait |sorry )*(?:no|nope|nah)(?: wait| sorry| hang on| actually)* i (?:did n't|never|have n't)\b/;
const LATER =
  /\b(?:tomorrow|tonight|later|next|first|before|after|when|if|monday|tuesday|wednesday|thursday|friday|saturday|sunday)\b/;

/**
 * A short note that only says that the last one should not stand, in whatever words. Not one that names a block, damage, a
 * material or an amount: that says what should stand instead, or is work ("take the binding off"). `onBench`: something was
 * just told that can be taken off or left itself.
 */
export function strikesOut(text: string, items: Item[], onBench: boolean): boolean {
  if (text.split(' ').length > 26) return false;
  const says = items.some(
    (x) =>
      !MEANT_OF_WORDS.test(x.w) &&
      ((x.place?.kind === 'blocks' && x.place.places.length > 0) ||
        x.finding ||
        x.quantity?.unit ||
        x.cost ||
        x.duration ||
        x.clock ||
        x.span ||
        x.material ||
        x.stitch ||
        x.seam ||
        (x.part && x.part !== 'quilt')),
  );
  const words = text
    .trim()
    .replace(/[,.!;:-]/g, ' ')
    .replace(/ +/g, ' ')
    .trim();
  const struck = STRIKES.test(words);
  if (says) return (struck || (DENIED.test(words) && TAKES.test(words))) && ELSEWHERE.test(words);
  if (struck) return true;
  if (
    text
      .trim()
      .split(/ [,.!;:-]+(?: |$)/)
      .some(
        (part, _k, all) =>
          all.length > 1 && !(onBench && /remove|drop/.test(part)) && SHORT_STRIKE.test(part.trim()),
      )
  )
    return !LATER.test(words);
  if (TAKES.test(words) && WHY.test(words)) return true;
  return !onBench && !LATER.test(words) && TAKE_NOW.test(words);
}
