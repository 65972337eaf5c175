import type { Token } from './tokenise.ts';
import { wordSet } from './word-set.ts';

/** Parts and stuffs that have no plural, or hardly one, in talk of one quilt. */
const SINGLE = wordSet(
  'front back backing batting batten wadding padding bedding binding border quilting stitching sashing interfacing lining label fabric cloth top bottom edge corner middle centre center seam row column col block patch quilt hexagon ribbon silk velvet wool cotton linen calico muslin net tulle crepeline thread yarn yarns patchwork fringe lace',
);
/** Of these the plural is common, so that one of them is meant only behind a word that tells so. */
const COUNTED = wordSet(
  'edge corner seam row column col block patch hexagon ribbon border top bottom label fabric cloth silk velvet wool cotton linen thread',
);
const ONE_OF_THEM = wordSet(
  'that this a an another each every first second third fourth fifth sixth last next middle left right top bottom other',
);
/** What only a verb of one thing has behind it. */
const STATE =
  /^(?:been|gone|got|off|on|out|in|all|coming|going|getting|not|just|still|only|quite|very|really|pretty|badly|too|so|a|the|done|good|sound|fine|ok|okay|damp|dry|wet|loose|open|bad|weak|tender|thin|musty|dirty|dull|worn|torn|split|shot|sewn|cut|come|fallen|rotten|shattered|brittle|lumpy|tatty|ragged|broken|missing|eaten|shrunk|tore|perished|crumbling|splitting|fraying|rotting|[a-z]{2,}ed)$/;
const BARE_STATE =
  /^(?:been|gone|got|coming|going|not|just|still|quite|very|really|pretty|badly|good|sound|fine|ok|okay|off|out|on|in|all|had)$/;
const WHO = wordSet('somebodys someones whoevers');
const ASKED = wordSet('whos wheres whens sos everythings nothings');
const HAS = wordSet('been gone got come fallen had started lost');
const DEED_DONE = /^(?:been|already|had|put|cut|sewn|done|made|gone|tried|got|left|stuck|[a-z]{2,}ed)$/;

/**
 * The tokens with contractions taken apart that lost their apostrophe: "its off the top edge", "that rows tied", "fronts been
 * brushed", "somebodys mended 2-3", "column fives been bleached", "the battings good". A plural ("the rows", "both edges") and what
 * belongs to something ("its owner") stay.
 */
export function withApostrophes(tokens: Token[]): Token[] {
  if (!tokens.some((t) => t.kind === 'word' && t.w.length > 2 && t.w.endsWith('s'))) return tokens;
  return tokens.flatMap((t, k) => {
    const stem = t.w.slice(0, -1);
    if (t.kind !== 'word' || !t.w.endsWith('s') || !isContraction(t.w, stem, tokens, k)) return [t];
    return [
      { ...t, w: stem, to: t.to - 1 },
      { ...t, w: "'s", from: t.to - 1, glued: true },
    ];
  });
}

function isContraction(word: string, stem: string, tokens: Token[], k: number): boolean {
  const next = tokens[k + 1]?.w ?? '';
  const before = tokens[k - 1]?.w ?? '';
  if (ASKED.has(word)) return next !== '';
  if (WHO.has(word)) return DEED_DONE.test(next);
  // "its" before a noun is what belongs to it
  if (word === 'its')
    return (
      STATE.test(next) ||
      /^(?:still|now|also|nearly|almost|about|time|to|at|\d+|(?:dry|soak|fall|hang|hold|shatter|bleed|runn|peel|crack|ravell?|air|rest|sitt|lift|look)ing)$/.test(
        next,
      )
    );
  // "column fives faded", "seven ones torn"; "the yellow ones got wet" are several
  if (NUMBERS.has(stem))
    return /^(?:rows?|col|column|blocks?)$/.test(before)
      ? STATE.test(next)
      : HAS.has(next) && (stem !== 'one' || NUMBERS.has(before));
  if (!SINGLE.has(stem)) return false;
  if (COUNTED.has(stem)) return ONE_OF_THEM.has(before) && BARE_STATE.test(next);
  return STATE.test(next) && before !== 'both';
}
const NUMBERS = wordSet('one two three four five six seven eight nine ten');
