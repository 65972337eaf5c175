import type { QuiltGrid } from '../../shared/quilt.ts';
import { COLOURS, PATTERN_WORDS } from '../lexicon/colours.ts';
import type { Token } from '../text/tokenise.ts';
import { wordSet } from '../text/word-set.ts';
import { clothWords } from './fabrics/cloth-words.ts';

/** What is spoken of in the plural at the bench. */
const THINGS = wordSet(
  'ones blocks squares ties knots stitches seams patches tears rips holes stains spots marks corners edges borders strips pieces rows columns threads pins labels layers triangles hexagons stars splits repairs darns bits ends sides needles blks scraps skeins spools reels balls packs bobbins buttons sts',
);
/** What may stand between. */
const TOLD_BY = wordSet(
  'old new loose bad worn torn faded top bottom left right outer inner corner middle last first two three four five six same other little big nice brown small fine long short curved safety brass sharp fancy good',
);
/** These give something to them: "gave them patches", "got them pins for the quilting". */
const GIVES = wordSet('give gave given giving gives sell sold show send sent');
const EMPHASIS = wordSet('single last blessed bloody damn darn mortal');

/**
 * "every one of them blue checks", "took them old ties out", "a pack of them big needles": "those" as many people say it. "Them" alone, with
 * no thing in the plural right behind it, stays. And "every single one", "every last one" are every one.
 */
export function themAsThose(tokens: Token[], grid: QuiltGrid): Token[] {
  if (!tokens.some((t) => t.w === 'them' || t.w === 'every')) return tokens;
  const cloths = clothWords(grid);
  const isCloth = (w: string): boolean => cloths.has(w) || COLOURS.has(w) || PATTERN_WORDS.has(w);
  const kept = tokens.filter(
    (t, k) => !(EMPHASIS.has(t.w) && tokens[k - 1]?.w === 'every' && /^ones?$/.test(tokens[k + 1]?.w ?? '')),
  );
  const thingBehind = (k: number): boolean => {
    for (let j = k + 1; j < k + 5; j++) {
      const word = kept[j]?.w ?? '';
      if (THINGS.has(word)) return true;
      // "them blue checks", "them ginghams"
      if (word.endsWith('s') && !cloths.has(word) && cloths.has(word.slice(0, -1))) return true;
      if (!TOLD_BY.has(word) && !isCloth(word)) return false;
    }
    return false;
  };
  return kept.map((t, k) =>
    t.w === 'them' && !GIVES.has(kept[k - 1]?.w ?? '') && thingBehind(k) ? { ...t, w: 'those' } : t,
  );
}
