import type { Token } from '../../text/tokenise.ts';
import { wordAt as w } from '../../text/word-at.ts';

const OLD = /^(?:old|older|earlier|previous|past|prior|former)$/;
const REPAIRS = /^(?:repairs?|mends?|mendings?)$/;
/** Where they are as a whole, before they are told one by one: "in row two", "on this one", "here". */
const WHERE =
  /^(?:in|on|the|this|that|quilt|top|front|row|rows|column|bottom|left|right|it|here|there|of|one|two|three|four|five|six|seven|eight|\d+)$/;
const INTO_LIST = /^(?:[:,;]|-|--|is|are|being|namely)$/;
const JOINT = /^(?:[,;+]|and|&|plus)$/;
const OF_THING =
  /^(?:a|an|the|some|one|another|old|small|large|big|little|crude|clumsy|neat|rough|bit|piece|layer|of|iron|on|iron-on|fused|fusible|glued|silk|cotton|linen|nylon|wool|fine|black|white|cream|brown|red|blue|green|hand|machine)$/;
const THING =
  /^(?:darns?|darning|patch|patches|interfacing|fusible|vilene|net|netting|tulle|crepeline|lining|muslin|lawn|calico|silk|cotton|support|whipstitching|oversewing|zigzag)$/;
const LIES = /^(?:in|on|at|to|behind|over|under|underneath|across)$/;

/**
 * "two earlier repairs, a darn in 1-4 and interfacing behind 3-5", "old repairs: patch on 2-2, net over 3-3": what was found there, told one
 * by one, and no work of today. The tokens as if "an old darn in 1-4 and someone fused interfacing behind 3-5" had been said, so that each
 * is known again by its word.
 */
export function withOldRepairsListed(tokens: Token[]): Token[] {
  for (let k = 0; k < tokens.length - 4; k++) {
    if (!OLD.test(w(tokens, k)) || !REPAIRS.test(w(tokens, k + 1))) continue;
    let list = k + 2;
    while (list < k + 8 && WHERE.test(w(tokens, list))) list++;
    if (!INTO_LIST.test(w(tokens, list))) continue;
    let thing = thingAt(tokens, list + 1);
    if (!thing) continue;
    const out = tokens.slice(0, k);
    let at = thing;
    let from = list + 1;
    while (thing) {
      const said = tokens[thing]!;
      out.push(
        ...wordsFor(tokens.slice(from, thing + 1)).map((word): Token => ({ ...said, w: word, kind: 'word' })),
      );
      at = thing + 1;
      thing = undefined;
      // the place, up to the next of the list
      while (at < tokens.length && !/^[.!?\n]$/.test(w(tokens, at))) {
        let next = at;
        while (JOINT.test(w(tokens, next)) && next < at + 2) next++;
        thing = next > at ? thingAt(tokens, next) : undefined;
        if (thing) {
          from = next;
          out.push({ ...tokens[at]!, w: 'and', kind: 'word' });
          break;
        }
        out.push(tokens[at]!);
        at++;
      }
    }
    return [...out, ...tokens.slice(at)];
  }
  return tokens;
}

function wordsFor(thing: Token[]): string[] {
  if (thing.some((t) => FUSED.test(t.w))) return ['someone', 'fused', 'interfacing', 'behind'];
  const name = thing.find((t) => /^(?:darns?|darning|patch|patches)$/.test(t.w))?.w ?? 'repair';
  return ['old', name, 'in'];
}
const FUSED = /^(?:interfacing|fusible|vilene)$/;

/** Behind "an old bit of net over": the index of the word that tells where; undefined where no such thing is named. */
function thingAt(tokens: Token[], k: number): number | undefined {
  let m = k;
  let named = false;
  while (m < k + 7 && (OF_THING.test(w(tokens, m)) || THING.test(w(tokens, m)))) {
    if (THING.test(w(tokens, m))) {
      named = true;
      if (liesAt(tokens, m + 1)) return m + 1;
      // "darn 1-4"
      if (/^\d+$/.test(w(tokens, m + 1)) && w(tokens, m + 2) === '-') return m;
    }
    m++;
  }
  return named && liesAt(tokens, m) ? m : undefined;
}

/** "behind 2-3"; "interfacing glued behind", with no place to it, tells how the repair was made. */
const liesAt = (tokens: Token[], k: number): boolean =>
  LIES.test(w(tokens, k)) &&
  tokens[k + 1] !== undefined &&
  tokens[k + 1]!.kind !== 'mark' &&
  !/^(?:it|and|that)$/.test(w(tokens, k + 1));
