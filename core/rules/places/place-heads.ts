import {
  BLOCK_SLIPS,
  BLOCK_WORDS,
  COLUMN_WORDS,
  LINE_SLIPS,
  ROW_SLIPS,
  ROW_WORDS,
  SIDES,
} from '../../lexicon/place-words.ts';
import { COUNT_WORDS, TEN_WORDS } from '../../text/number-words.ts';

const words = (list: string): string[] => list.split(' ');

const COUNTS = [...COUNT_WORDS, ...TEN_WORDS, 'fourty'];
const ORDINALS = words(
  'first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth last next penultimate final',
);
const ENDS = words(
  'top topmost upper uppermost highest higher head bottom btm bottommost lower lowest lowermost foot left leftmost lefthand lh l right rightmost righthand rh r t b 1st 2nd opening start beginning end ends endmost middle centre center central mid outer outside outermost inner inside far very',
);
const POINTING = words('the that this these those its same all both either each every any whole');

/**
 * Every word that a phrase for a place can begin with, by kind of phrase: where a token is no number and not among them, no
 * finder of that kind is asked. Most words of a note are none, and the finders were a fifth of the reader's time. A rule that
 * shall begin with another word needs it here; `tests/understand/place-heads.test.ts` shows that none is missing.
 */
export const PLACE_HEADS: Readonly<Record<'blocks' | 'part' | 'pointer', ReadonlySet<string>>> = {
  blocks: new Set([
    ...ROW_WORDS,
    ...ROW_SLIPS,
    ...LINE_SLIPS,
    ...COLUMN_WORDS,
    ...BLOCK_WORDS,
    ...BLOCK_SLIPS,
    ...COUNTS,
    ...ORDINALS,
    ...ENDS,
    ...POINTING,
    ...words('entire full complete alternate odd even a couple pair only just number no # from up as of'),
    ...words('rest others other remaining remainder following everything'),
    ...words('corner corners tl tr bl br to too for fore won tree free'),
  ]),
  part: new Set([
    ...Object.keys(SIDES),
    ...ENDS,
    ...COUNTS,
    ...words('both either front face back all the side sides border borders edge edges hem binding'),
  ]),
  pointer: new Set([
    ...BLOCK_WORDS,
    ...ROW_WORDS,
    ...COLUMN_WORDS,
    ...COUNTS,
    ...ORDINALS,
    ...ENDS,
    ...POINTING,
    ...words(
      'directly immediately below above diagonally opposite other others following previous preceding former latter one ones piece pair seam corner between',
    ),
    ...words('neighbour neighbours neighbor neighbors hand rest remainder remaining another'),
    ...words(
      'it there here them they everything below beneath underneath under above over next beside alongside to',
    ),
  ]),
};
