import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import type { PlaceFound } from '../place-found.ts';
import { PARTS_WITH_SIDES } from './side-words.ts';

/** "both faces", "back and front", "front and back": the top and the backing. */
export function bothFaces(tokens: Token[], i: number): PlaceFound | undefined {
  const a = w(tokens, i);
  const b = w(tokens, i + 1);
  // "photographed both sides", "stained on both sides": of the quilt, where no border or edge is spoken of
  if (
    a === 'both' &&
    b === 'sides' &&
    !/^(of|edges|borders)$/.test(w(tokens, i + 2)) &&
    !/^(down|along|up)$/.test(w(tokens, i - 1)) &&
    !tokens.some((t) => PARTS_WITH_SIDES.has(t.w) || OF_ITS_OWN.test(t.w)) &&
    tokens.some((t) => WHOLE_FACE.test(t.w))
  )
    return { next: i + 2, places: ['top', 'backing'], how: 'said', rule: 'place.both-faces', kind: 'part' };
  const pairEnd =
    /^(both|either)$/.test(a) && /^(faces|face)$/.test(b)
      ? i + 2
      : /^(front|face)$/.test(a) && /^(and|&|\+)$/.test(b) && w(tokens, i + 2) === 'back'
        ? i + 3
        : a === 'back' && /^(and|&|\+)$/.test(b) && /^(front|face)$/.test(w(tokens, i + 2))
          ? i + 3
          : undefined;
  return pairEnd
    ? { next: pairEnd, places: ['top', 'backing'], how: 'said', rule: 'place.both-faces', kind: 'part' }
    : undefined;
}

/** What has its own two sides: "vacuumed the whole blanket, both sides" is all of it. */
const OF_ITS_OWN =
  /^(?:seams?|stitch|it|blocks?|quilt|coverlet|comforter|bedspread|bedcover|spread|blanket|throw|hanging|whole|lot)$/;

const WHOLE_FACE =
  /^(photo|photograph|picture|shot|snap|clean|vacuum|vac$|vacc|hoover|brush|dust|press|iron|stain|fade|fading|wash|spong|discolou?r)/;
