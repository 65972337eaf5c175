import type { Token } from './tokenise.ts';
import { wordSet } from './word-set.ts';

/** How things are told apart before their name. */
const DESCRIBES = wordSet(
  'big little small old new fine long short curved safety loose torn brass sharp fancy red blue brown green white black grey gray yellow pink two three four five six worn faded bad good first last',
);
/** Things of the bench and of the quilt, of which there are several. */
const THINGS = wordSet(
  'needles pins blocks blks ones squares seams holes patches ties stitches strips borders corners spots stains edges rows columns tears rips bits pieces scraps skeins spools reels balls packs bobbins labels buttons threads sts',
);

/** "a pack of them big needles", "patched them two blocks": as "those", where it stands before the name of what it points at. */
export function themAsThose(tokens: Token[]): Token[] {
  if (!tokens.some((t) => t.w === 'them')) return tokens;
  return tokens.map((t, k) => {
    if (t.w !== 'them') return t;
    let n = k + 1;
    while (DESCRIBES.has(tokens[n]?.w ?? '') && n < k + 3) n++;
    return THINGS.has(tokens[n]?.w ?? '') ? { ...t, w: 'those' } : t;
  });
}
