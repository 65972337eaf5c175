import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import type { PlaceFound } from '../place-found.ts';
import { isSide, LETTERS, NO_SIDE_BEFORE, SIDE_NOUNS, SIDE_OF } from './side-words.ts';
import { TOLD_OF_SIDE } from './told-of-side.ts';

/**
 * "the left edge and the top", "along the top and the right", "off the left side and the bottom", "L side + bottom", "top n l side": the
 * sides that follow the first one in a list, whose part they share.
 */
export function withMoreSides(tokens: Token[], i: number, found: PlaceFound): PlaceFound {
  const part = /^(edge|border)-/.exec(found.places[0] ?? '')?.[1];
  if (!part || found.places.length > 3 || (found.how === 'implied' && found.rule !== 'place.side-of-it'))
    return found;
  const places = [...found.places];
  let next = found.next;
  for (;;) {
    let k = next;
    if (/^(,|and|&|\+|n|\/)$/.test(w(tokens, k))) k++;
    if (k > next && /^(and|&|then)$/.test(w(tokens, k))) k++;
    if (k === next) break;
    if (/^(along|down|across|on|up)$/.test(w(tokens, k)) && w(tokens, k + 1) === 'the') k++;
    const the = w(tokens, k) === 'the';
    if (the) k++;
    const short = !the && tokens[k + 1]?.kind !== 'number' ? LETTERS.get(w(tokens, k)) : undefined;
    const side =
      SIDE_OF.get(w(tokens, k)) ??
      (/^[lrtb]$/.test(w(tokens, i)) || short === 'left' || w(tokens, next) === '+' ? short : undefined);
    if (!side || places.includes(`${part}-${side}`)) break;
    let j = k + 1;
    while (/^(hand|most)$/.test(w(tokens, j))) j++;
    const noun = /^(edge|edges|side|sides|one|ones|border|borders)$/.test(w(tokens, j));
    const word = w(tokens, noun ? j + 1 : j);
    if (SIDE_NOUNS.has(w(tokens, j)) && (SIDE_NOUNS.get(w(tokens, j)) === 'border') !== (part === 'border'))
      break;
    if (NO_SIDE_BEFORE.test(word) || (noun && word === 'in')) break;
    // "along the left edge, top to bottom": how far along it
    if (word === 'to' && isSide(w(tokens, w(tokens, j + 1) === 'the' ? j + 2 : j + 1))) break;
    // "… and left the rest", "… and right across"
    if (
      !the &&
      !noun &&
      /^(left|right)$/.test(w(tokens, k)) &&
      /^(the|a|an|in|along|across|through|round|down|up|into|over|away|my|off|on|it|them|that|this|as|alone|all)$/.test(
        word,
      )
    )
      break;
    // "along the bottom border, and the left border is puckered": the second side has a verb of its own
    if (/^(is|'s|has|was|needs|wants)$/.test(word)) break;
    if (
      w(tokens, next) === ',' &&
      (TOLD_OF_SIDE.test(word) || /^(tomorrow|tmrw|tonight|next|later)$/.test(word))
    )
      break;
    // "vacuumed the left border and the top": the patchwork
    if (!noun && side === 'top' && places.length < 2 && tokens.some((t) => FACE_WORK.test(t.w))) break;
    places.push(`${part}-${side}`);
    next = noun ? j + 1 : j;
  }
  return places.length > found.places.length ? { ...found, places, next } : found;
}

const FACE_WORK = /^(photo|photograph|pictures?|pics|snaps|vacuum|hoover|brush|dust|clean|wash)/;
