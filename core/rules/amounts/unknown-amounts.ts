import type { Token } from '../../text/tokenise.ts';
import { withoutHour } from '../times/hour-unknown.ts';
import { nought } from './blank-amounts.ts';
import { NOT_KNOWN } from './not-known.ts';

/** What somebody says she does not know of what she tells. */
export type Unknown = 'time' | 'quantity' | 'width' | 'cost' | 'deed' | 'hour';

const WHAT = String.raw`((?:for )?how (?:long|much|many|wide|far|deep|big)|the (?:time|hours|clock|amount|price|cost|width|length))`;
/** "can't think what it was", "forget what I did to it now": the deed; "what to do", "what colour it was" are no such thing. */
const DEED = String.raw`(what)(?: exactly| now)*(?: (?:it was|it is|that was|they were|i did|i 'd done|was done|we did|it was i did|i was doing)(?: (?:to|with|on|there|about) (?:it|them|that|those|that one))?(?: there| now| exactly)*)?`;
/** "how many I must count again", "I'd have to look": not known until she has seen to it. */
const TO_COUNT = String.raw`(?:must|need to|have to|'d have to|'ll have to|will have to|would have to|shall have to|'d better|ought to|will|'ll) (?:just |still |first )?(?:count|look|check|see|recount|look it up|look that up)(?: (?:again|first|later|up|still|yet|tonight|tomorrow|once more|in the bag|them|it))*`;
/** "how many yards I couldn't say", "how much of it is anybody's guess": what is not known stands first. */
const WHAT_FIRST = String.raw`(how (?:much|many))(?: (?:of (?:it|them)|yards|metres|meters|spools|skeins|balls|reels|packs|packets|hanks|spools|that is|that was|it was|there are|there were|i bought|i got|i used))* (?:i |i 'd |i 've |is |'s |was |honestly |really )*(?:${NOT_KNOWN}|any(?:body|one) 's guess|beyond me|${TO_COUNT})`;
const TAIL = String.raw`(?: (?:it took|that took|took|i took|i used|it was|that was|i bought|it cost|of it|exactly|yards|metres|meters|spools|skeins|balls|reels|packs|packets|minutes|hours|for|i spent|though|now))*`;
/** "I forgot to measure", "lost count" behind what was told. */
const PLAIN = String.raw`(forgot to (?:measure|count|time it|note it|look)|(?:it 's |that 's |which has |it has )?(?:gone|went|slipped) (?:clean |right |completely |straight )?(?:out of my head|out of my mind|my mind|from my mind)|(?:and )?my mind 's (?:gone )?(?:a )?blank|did n't (?:measure|count|time it)|lost count|never measured|never counted)(?: (?:it|them|that))?`;
const UNKNOWN = new RegExp(
  String.raw`(?:^| )(?:, |and |but |though |only |- |-- )*(?:now |i |i 'm |i 've |i have |for the life of me |honestly |really |just |'ve |only |please )*(?:${NOT_KNOWN}(?: (?:exactly|just|now|honestly|for the life of me))* (?:${WHAT}${TAIL}|${DEED})|${TO_COUNT} (how (?:many|much))${TAIL}|${PLAIN}|${WHAT_FIRST})(?= $| [.;!]| (?:and|but|so) | , )`,
);

/** A word behind which a statement has still to come to its end. */
const UNFINISHED =
  /^(?:is|are|was|were|be|'s|'re|the|a|an|at|of|by|to|for|in|on|with|about|around|measures?|comes|i|we|still|really|just)$/;

/**
 * "patched 4-1, can't remember how long it took", "some net over 3-3, no idea how much": the words that own to it are no doubt about the
 * deed and no open matter. Gives the words without them, and what is to be asked for.
 */
export function withoutUnknown(tokens: Token[]): { tokens: Token[]; unknown?: Unknown } {
  if (
    !tokens.some((t) => /^(?:at|how|the|what|measure|count|lost|counted|measured|time|head|mind)$/.test(t.w))
  )
    return { tokens };
  const hourless = tokens.some((t) => t.w === 'at') ? withoutHour(tokens) : undefined;
  if (hourless) return { tokens: hourless, unknown: 'hour' };
  const words = `${tokens.map((t) => t.w).join(' ')} `;
  const found = UNKNOWN.exec(words);
  if (!found || found.index < 8) return { tokens };
  const what = found[1] ?? found[2] ?? found[3] ?? found[4] ?? found[5] ?? '';
  const from = words.slice(0, found.index).trim().split(' ').length;
  const to = from + found[0].trim().split(' ').length;
  // "the border's I don't know how wide": in the midst of a statement; but "used some thread no idea how much"
  if (
    !/^(?:,|and|but|though|-|--|\.|;)$/.test(tokens[from]?.w ?? '') &&
    (UNFINISHED.test(tokens[from - 1]?.w ?? '') || /wide|width/.test(what))
  )
    return { tokens };
  const unknown: Unknown = /^what$|head|mind/.test(what)
    ? 'deed'
    : /long|time|hours|clock/.test(what)
      ? 'time'
      : /price|cost/.test(what)
        ? 'cost'
        : /wide|width/.test(what)
          ? 'width'
          : 'quantity';
  // "mended all afternoon, couldn't tell you how long" is time at work by these words
  if (unknown === 'time') return { tokens, unknown };
  return {
    tokens: [...tokens.slice(0, from), ...manyOf(tokens.slice(from, to)), ...tokens.slice(to)],
    unknown,
  };
}

/** "… a yard, and don't ask me how many yards": a gap stands for the number, so that what it is counted in is kept. */
function manyOf(own: Token[]): Token[] {
  const at = own.findIndex((t, k) => t.w === 'many' && own[k - 1]?.w === 'how');
  const unit = own[at + 1];
  if (at < 0 || !unit || !COUNTED_IN.test(unit.w)) return [];
  const gap = nought(own[at]!);
  return own[0]!.w === ',' ? [own[0]!, gap, unit] : [gap, unit];
}
const COUNTED_IN = /^(?:yards|yds|metres|meters|skeins|spools|reels|balls|packs|packets)$/;
