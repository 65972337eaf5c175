import type { Token } from '../../text/tokenise.ts';
import { wordAt as w } from '../../text/word-at.ts';
import { wordsBetween } from '../words-between.ts';

const STUFF =
  /^(?:interfacing|fusible|vilene|net|netting|tulle|crepeline|organza|muslin|lawn|calico|silk|cotton|linen|cloth|fabric|lining|support|overlay|patch|patches)$/;
const LIES = /^(?:behind|over|under|underneath|on)$/;
/** Words that end the place, or make more of it than a place. */
const NO_PLACE =
  /^(?:[.,;:!?]|i|we|she|he|they|it|and|but|so|which|that|who|because|with|for|when|if|maybe|or|not|n't|never|is|was|are|were|has|have|had|'s|will|'ll|should|could|might|may|can|looks?|came|comes?|needs?|wants?)$/;
const ALSO = /^(?:now|since|all|both|also|just|already|finally|then|carefully|gently)$/;
const TAKEN = /^(?:removed|unpicked|stripped|peeled|lifted|taken|pulled|cut|picked|steamed|snipped)$/;
/** These take a thing off without an "off". */
const NEEDS_NO_OFF = /^(?:removed|unpicked|stripped)$/;
const OFF = /^(?:off|out|away)$/;

/**
 * "the interfacing behind 3-5 has been removed", "the old net over 2-2 came off": told of the thing that lies there, so that its words are
 * those of a thing put there. The tokens as if "removed the interfacing behind 3-5" had been said.
 */
export function withLaidThenOff(tokens: Token[]): Token[] {
  const out: Token[] = [];
  let from = 0;
  for (let at = 0; at < tokens.length - 3; at++) {
    if (!STUFF.test(w(tokens, at)) || !LIES.test(w(tokens, at + 1))) continue;
    const verb = behindPlace(tokens, at + 2);
    const off = verb > at + 2 ? offAt(tokens, verb) : undefined;
    const head = off && headOf(tokens, at);
    if (!off || head === undefined || head < from) continue;
    const said = tokens[off.verb]!;
    const lead = off.toCome ? ['must', 'remove'] : ['removed'];
    out.push(
      ...tokens.slice(from, head),
      ...lead.map((word) => ({ ...said, w: word })),
      ...tokens.slice(head, verb),
    );
    from = off.next;
    at = from;
  }
  return from ? [...out, ...tokens.slice(from)] : tokens;
}

/** The index behind the place that begins at `k`. */
function behindPlace(tokens: Token[], k: number): number {
  let m = k;
  while (
    m < k + 9 &&
    m < tokens.length &&
    !TAKEN.test(w(tokens, m)) &&
    // "2-2 and 2-3"
    (!NO_PLACE.test(w(tokens, m)) ||
      (w(tokens, m) === 'and' && /^(?:\d+|rows?|blocks?|columns?)$/.test(w(tokens, m + 1))))
  )
    m++;
  return m;
}

/** Where the statement begins: nothing but what belongs to the thing may stand before it. */
function headOf(tokens: Token[], at: number): number | undefined {
  let head = at;
  while (
    head > at - 5 &&
    /^(?:[a-z]+|iron-on)$/.test(w(tokens, head - 1)) &&
    !JOINT.test(w(tokens, head - 1))
  ) {
    if (/^(?:the|that|those|all|my)$/.test(w(tokens, head - 1))) {
      head--;
      break;
    }
    if (!OF_THING.test(w(tokens, head - 1))) return undefined;
    head--;
  }
  const before = w(tokens, head - 1);
  return before === '' || JOINT.test(before) ? head : undefined;
}

const JOINT = /^(?:[.,;:!]|\n|and|but|so|then|well|also|now|right|ok|okay|yes)$/;
const OF_THING =
  /^(?:old|iron|on|iron-on|fusible|fused|glued|silk|cotton|linen|nylon|fine|dyed|black|white|cream|brown|earlier|later|previous|bit|piece|of|layer|backing|support|ugly|stiff|nasty|original)$/;

type TakenOff = { verb: number; next: number; toCome?: boolean };

/** "has been removed", "was taken off", "came off", "has to come off": the verb, and the index behind it. */
function offAt(tokens: Token[], k: number): TakenOff | undefined {
  const toCome = TO_COME.exec(wordsBetween(tokens, k, k + 6))?.[0];
  if (toCome) {
    const next = k + toCome.trim().split(' ').length;
    return onlyThere(tokens, next) ? undefined : { verb: k, next, toCome: true };
  }
  let m = k;
  while (
    m < k + 5 &&
    (/^(?:has|have|had|'s|'ve|is|are|was|were|got|been)$/.test(w(tokens, m)) || ALSO.test(w(tokens, m)))
  )
    m++;
  // "came off", "has come off now"
  const came = w(tokens, m) === 'came' || (w(tokens, m) === 'come' && m > k);
  if (!came && !TAKEN.test(w(tokens, m))) return undefined;
  if (OFF.test(w(tokens, m + 1))) return onlyThere(tokens, m + 2) ? undefined : { verb: m, next: m + 2 };
  return NEEDS_NO_OFF.test(w(tokens, m)) ? { verb: m, next: m + 1 } : undefined;
}

const TO_COME =
  /^ (?:(?:has|have|needs?|wants?|ought|is|are|'s|got|will have) to (?:come (?:off|out|away)|be (?:removed|taken (?:off|out)|peeled off|unpicked))|(?:needs?|wants?) (?:removing|taking (?:off|out)|peeling off|unpicking)|(?:must|should|will|'ll) (?:come (?:off|out|away)|be (?:removed|taken (?:off|out)|peeled off))) /;

/** "has come off at one corner", "was cut out of an old shirt": loose, or where it is from, and not taken off. */
const onlyThere = (tokens: Token[], k: number): boolean =>
  /^(?:at|along|down|round|around)$/.test(w(tokens, k)) ||
  (w(tokens, k) === 'of' && /^(?:an?|some|my|her|his)$/.test(w(tokens, k + 1)));
