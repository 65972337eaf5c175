import type { Item } from '../item.ts';
import { signsOf } from './is-aside.ts';
import { strikesOut } from './strikes-out.ts';

/** What may stand before a command without changing it: "no no wait, please …", "oh dear, can you …". */
const LEAD_IN =
  /^(?:(?:no|nah|nope|oh|ah|aw|ach|right|righto|okay|ok|wait|sorry|so|and|but|please|actually|hang on|hold on|hold it|oops|whoops|damn|bother|blast|drat|shoot|well|just|can you|could you|would you|will you|you can|you 'd better|let 's|let us|better|now|yeah|yes|hey|whoa|argh|dear|dear me|my mistake|my fault|on second thoughts?|i 'd like to|i want to|i need to|go ahead and|kindly|apologies|excuse me|then) |[,.!:-]+ )+/;

/** The note, or the one before, as a thing that can be struck out. */
const NOTE_WORD = '(?:entry|entries|note|notes|thing|bit|one|lot|line|item|record|message|log|part|remark)';
const WHOLE =
  `(?:(?:all of |all |the whole of |everything in )?(?:that|this|it|them|those)(?: (?:last|previous|whole|latest|other))*(?: ${NOTE_WORD})?(?: all)?` +
  `|(?:the|my|that)? ?(?:very )?(?:last|previous|latest|most recent) ${NOTE_WORD}` +
  `|(?:the|my) (?:[\\w:.]+ )?(?:entry|note|message)` +
  "|(?:what|everything|all)(?: that)? i (?:just |have just |'ve just |last )?(?:said|put|logged|told you|wrote|entered|noted)(?: down| in)?)";
/** Verbs that are said of words only, or mostly. */
const STRIKE =
  '(?:scratch|strike|delete|undo|cancel|erase|disregard|void|scrub|unlog|withdraw|retract|discard|unsay|scrap|reverse|roll back|rub|cross|wipe|bin|axe|nix|chuck|dump|kill|lose)';
/** Verbs of the bench: only with the note itself as their object. */
const BENCH = '(?:take|pull|remove|drop|get rid of|throw|leave|rip|pick|forget|ignore|never mind|skip)';
const AWAY = '(?: (?:back|out|off|away|again|from the (?:log|record|list|book)))*';
const END =
  "(?= ?$| ?[,.!;:-]| (?:please|i |we |it |it's |that |they |he |she |there |then|will you|would you|for me|altogether|entirely|completely|my |wrong|meant|because|cos|since|as |no ))";

const STRIKE_IT = new RegExp(`^${STRIKE}(?: out| off| back)? ${WHOLE}${AWAY}${END}`);
const TAKE_BACK = new RegExp(
  `^(?:take|took|pull|roll|bring|i take|i 'll take|i 'm taking) ${WHOLE} back(?! (?:off|out|in|on|to|from (?!the (?:log|record)))\\b)${END}`,
);
const DROP_NOTE = new RegExp(
  `^${BENCH}(?: out| off| away)? (?:(?:the|my|that|this)? ?(?:very )?(?:last|previous|latest|most recent) ${NOTE_WORD}|(?:that|this|the|my) (?:entry|note|message|remark)|(?:what|everything|all)(?: that)? i (?:just |have just |'ve just |last )?(?:said|put|logged|told you|wrote|entered|noted)(?: down| in)?)${AWAY}${END}`,
);
const FORGET = new RegExp(
  `^(?:forget|ignore|never mind|pay no heed to|leave out|skip) (?:i (?:ever )?said )?(?:all )?(?:that|it|this|anything)(?: one| lot| all| last one| bit)?${END}`,
);
const BARE_STRIKE =
  /^(?:undo|delete|cancel|erase|unsay|strike|scratch|scrub|retract)(?: (?:please|that please))?(?= ?$| ?[,.!;:-])/;
const NOT_MEANT =
  /^(?:(?:take|pull) (?:that|it|this)(?: one| last one)?(?: back)? (?:out|off)[ ,.]+(?:i |it |that )[^.]{0,60}\b(?:wrong|other|another|different) (?:quilt|qlt|job)|(?:that|this|it|the last (?:one|note|entry|bit))(?: last)?(?: (?:one|entry|note|bit))? (?:was|is|'s) (?:all )?(?:meant |said )?(?:for )?(?:the |an? )?(?:wrong|another|different|other) (?:quilt|qlt|job|one)|wrong (?:quilt|qlt|job|piece|thread)|i (?:did n't|never) (?:mean|do|say) (?:that|any of that|to say that)|(?:take|leave|keep) (?:that|it|this)(?: one| last one)? out of the (?:log|record|notes|book)|pretend i (?:did n't|never) (?:say|said) (?:that|it)|that (?:never|did n't) happen(?:ed)?)\b/;
/** Why it was wrong. After these a block or a number names no correction. */
const REASON =
  /\b(wrong|mix(ed)?|muddled?|miscount(ed)?|counted|crossed|another|other|belongs?|mistake|error|again|later|tomorrow|not sure|meant for|says?|sleep on|have n't|has n't|did n't|not done|not yet|never)\b/;

/**
 * Does the note only take back the one before? `text` is the note's words as tokens joined by blanks, `items` its meanings;
 * `onBench`: the last note told of something that can be taken off or left itself.
 */
export function isUndo(text: string, items: Item[], onBench = false): boolean {
  const whole = `${text.trim()} `;
  const lead = LEAD_IN.exec(whole)?.[0] ?? '';
  const command = whole.slice(lead.length);
  const hit =
    STRIKE_IT.exec(command) ??
    TAKE_BACK.exec(command) ??
    DROP_NOTE.exec(command) ??
    (talksAside(items) ? null : FORGET.exec(command)) ??
    BARE_STRIKE.exec(command) ??
    NOT_MEANT.exec(command);
  if (!hit) return !talksAside(items) && (atTheEnd(whole.trim(), items) || strikesOut(whole, items, onBench));
  const rest = command.slice(hit[0].length).trim();
  if (!rest || REASON.test(hit[0]) || REASON.test(rest)) return true;
  // "scratch that, row four": what it should be, so the note is mended and not taken back
  const from = `${lead}${hit[0]}`.trim().split(' ').length;
  return !items.some((x) => x.i >= from && names(x));
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
