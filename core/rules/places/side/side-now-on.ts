import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import { wordsBetween } from '../../words-between.ts';
import type { PlaceFound } from '../place-found.ts';
import { readSides } from './read-sides.ts';
import { isSide } from './side-words.ts';
import { sidesFound } from './sides-found.ts';

const LEADS = /^(|[.,;:\n]|the|then|and|&|\+|so|now|but|with)$/;
const SEWN = /^(borders?|bindings?|bdg|bndg)$/;
/** "'s on now", "are on by machine": nothing else than that it is on. */
const IS_ON =
  /^ (?:(?:is|'s|are|'re|was|were|went|both|all|now|back|has|have|gone) )+on(?: now| too| as well| already| at last| finally)* (?:$|[.,;:(] |(?:and|with|by|so|but|in|w|then|at) )/;

/**
 * "(pieced the border strips) and the bottom one's on now", "(on with the binding) top and left are on": sides of the border or of the
 * binding that the note is about.
 */
export function sideNowOn(tokens: Token[], i: number): PlaceFound | undefined {
  if (!isSide(w(tokens, i)) || !LEADS.test(w(tokens, i - 1))) return undefined;
  const read = readSides(tokens, i);
  if (!read) return undefined;
  let j = read.next;
  if (/^(sides?|ones?)$/.test(w(tokens, j))) j++;
  const after = wordsBetween(tokens, j, j + 7);
  if (!after.includes(' on ') || !IS_ON.test(after)) return undefined;
  const sewn = tokens.slice(0, i).findLast((t) => SEWN.test(t.w));
  return (
    sewn &&
    sidesFound(sewn.w.startsWith('border') ? 'border' : 'edge', read.sides, j, 'place.side-now-on', 'implied')
  );
}
